#include "core/drawing/lettering.h"

#include "core/base/units.h"

namespace lidwright {
namespace {

/// Advance width in capital heights (DejaVu Sans, rounded up within each class).
double advance(unsigned char c)
{
    constexpr std::string_view thin = "ijlI'|";
    constexpr std::string_view narrow = " .,:;-/!()[]ftr";
    constexpr std::string_view wide = "mMwW@%+=<>";
    if (thin.find(static_cast<char>(c)) != std::string_view::npos) return 0.41;
    if (narrow.find(static_cast<char>(c)) != std::string_view::npos) return 0.5;
    if (wide.find(static_cast<char>(c)) != std::string_view::npos) return 1.2;
    if (c >= 'A' && c <= 'Z') return 0.97;
    // The lead byte of a character beyond ASCII: fractions, signs, accented letters.
    if (c >= 0xC0) return 1.1;
    return 0.87;
}

}  // namespace

double textWidth(std::string_view utf8, double height)
{
    double sum = 0;
    for (const char ch : utf8) {
        const auto c = static_cast<unsigned char>(ch);
        const bool continued = (c & 0xC0U) == 0x80U;
        if (!continued && c >= 0x20) sum += advance(c);
    }
    return sum * height;
}

Ring textOutline(const Text& text, double paper)
{
    const double width = textWidth(text.words, text.height) * paper;
    const double height = text.height * paper;
    const double angle = radians(text.angle);
    const Point along{std::cos(angle), std::sin(angle)};
    const Point up{-along.y, along.x};
    const double start = text.anchor == Anchor::Left ? 0 : text.anchor == Anchor::Right ? -width : -width / 2;
    const Point low = text.at + start * along - 0.25 * height * up;
    return {low, low + width * along, low + width * along + 1.25 * height * up, low + 1.25 * height * up};
}

}  // namespace lidwright
