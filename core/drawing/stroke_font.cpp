#include "core/drawing/stroke_font.h"

#include "core/base/units.h"
#include "core/drawing/stroke_glyphs.h"

#include <cstdint>
#include <utility>

namespace lidwright {
namespace {

constexpr double kCapital = 9;  // grid steps of a capital's height
constexpr double kGlyph = 6;    // ... of its width
constexpr double kPitch = 9;    // ... from one letter to the next

/// Bytes of the UTF-8 sequence that begins at i, 0 where none does.
std::size_t sequenceLength(std::string_view s, std::size_t i)
{
    const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(s[k]); };
    const unsigned char c = byte(i);
    if (c < 0x80) return 1;
    const std::size_t n = c >= 0xF0 && c < 0xF5   ? 4
                          : c >= 0xE0 && c < 0xF0 ? 3
                          : c >= 0xC2 && c < 0xE0 ? 2
                                                  : 0;
    if (n == 0 || i + n > s.size()) return 0;
    for (std::size_t k = 1; k < n; ++k)
        if ((byte(i + k) & 0xC0U) != 0x80U) return 0;
    return n;
}

bool isCharacter(char32_t code, std::size_t bytes)
{
    const bool overlong = (bytes == 3 && code < 0x800) || (bytes == 4 && code < 0x10000);
    return !overlong && !(code >= 0xD800 && code < 0xE000) && code <= 0x10FFFF;
}

int gridStep(char c)
{
    return c >= 'a' ? c - 'a' + 10 : c - '0';
}

/// Pairs of grid steps, a blank between strokes.
void appendStrokes(std::vector<Polyline>& strokes, std::string_view spelling, double shift)
{
    Polyline stroke;
    for (std::size_t i = 0; i + 1 < spelling.size();) {
        if (spelling[i] == ' ') {
            strokes.push_back(std::exchange(stroke, {}));
            ++i;
            continue;
        }
        stroke.push_back({shift + gridStep(spelling[i]), static_cast<double>(gridStep(spelling[i + 1]))});
        i += 2;
    }
    if (stroke.size() > 1) strokes.push_back(std::move(stroke));
}

}  // namespace

std::vector<char32_t> codePoints(std::string_view utf8)
{
    constexpr char32_t kUnreadable = 0xFFFD;
    std::vector<char32_t> out;
    for (std::size_t i = 0; i < utf8.size();) {
        const std::size_t n = sequenceLength(utf8, i);
        const auto first = static_cast<unsigned char>(utf8[i]);
        char32_t code = n == 0 ? kUnreadable : n == 1 ? first : first & (0x7FU >> n);
        for (std::size_t k = 1; k < n; ++k)
            code = (code << 6U) | (static_cast<unsigned char>(utf8[i + k]) & 0x3FU);
        const bool good = n > 0 && isCharacter(code, n);
        out.push_back(good ? code : kUnreadable);
        i += good ? n : 1;
    }
    return out;
}

double strokedWidth(std::string_view utf8, double height)
{
    std::size_t letters = 0;
    for (const char32_t code : codePoints(utf8))
        letters += lettersOf(code).size();
    if (letters == 0) return 0;
    return height / kCapital * (static_cast<double>(letters - 1) * kPitch + kGlyph);
}

std::vector<Polyline> strokedText(const Text& text)
{
    std::vector<Polyline> strokes;
    double shift = 0;
    for (const char32_t code : codePoints(text.words)) {
        for (const StrokeLetter& letter : lettersOf(code)) {
            appendStrokes(strokes, letter.body, shift);
            appendStrokes(strokes, letter.accent, shift);
            shift += kPitch;
        }
    }
    const double scale = text.height / kCapital;
    const double width = strokedWidth(text.words, text.height);
    const double start = text.anchor == Anchor::Left ? 0 : text.anchor == Anchor::Right ? -width : -width / 2;
    const double angle = radians(text.angle);
    const Point along{std::cos(angle), std::sin(angle)}, up{-along.y, along.x};
    for (Polyline& stroke : strokes)
        for (Point& p : stroke)
            p = text.at + (start + scale * p.x) * along + scale * p.y * up;
    return strokes;
}

}  // namespace lidwright
