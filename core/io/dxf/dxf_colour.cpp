#include "core/io/dxf/dxf_colour.h"

#include <array>
#include <charconv>
#include <cmath>

namespace lidwright {
namespace {

constexpr std::array<DxfRgb, 10> kNamed{0x000000, 0xff0000, 0xffff00, 0x00ff00, 0x00ffff,
                                        0x0000ff, 0xff00ff, 0x000000, 0x808080, 0xc0c0c0};
/// Brightness of the pairs 0 and 1, 2 and 3 ... within a hue.
constexpr std::array<double, 5> kBrightness{255, 165, 127, 76, 38};
constexpr std::array<DxfRgb, 6> kGreys{0x333333, 0x5b5b5b, 0x848484, 0xadadad, 0xd6d6d6, 0xffffff};

/// Share of a primary that stands `steps` hues of 15 degrees from it, 0 to 1: a trapezium over the circle.
double share(int steps)
{
    constexpr int kCircle = 24, kFull = 4, kFade = 4;
    const int around = ((steps % kCircle) + kCircle) % kCircle;
    const int away = std::min(around, kCircle - around);
    if (away <= kFull) return 1;
    return away >= kFull + kFade ? 0 : 1 - static_cast<double>(away - kFull) / kFade;
}

DxfRgb hueColour(int number)
{
    constexpr int kFirst = 10, kPerHue = 10, kGreen = 8, kBlue = 16;
    const int hue = (number - kFirst) / kPerHue, within = (number - kFirst) % kPerHue;
    const double bright = kBrightness[static_cast<std::size_t>(within / 2)];
    DxfRgb rgb = 0;
    for (const int primary : {0, kGreen, kBlue}) {
        const double full = share(hue - primary);
        const double seen = within % 2 == 0 ? full : (1 + full) / 2;
        rgb = rgb << 8U | static_cast<DxfRgb>(bright * seen);
    }
    return rgb;
}

int channel(DxfRgb colour, unsigned shift)
{
    return static_cast<int>((colour >> shift) & 0xffU);
}

}  // namespace

DxfRgb dxfColour(int number)
{
    constexpr int kFirstGrey = 250;
    if (number < 1 || number > 255) return 0;
    if (number < static_cast<int>(kNamed.size())) return kNamed[static_cast<std::size_t>(number)];
    if (number >= kFirstGrey) return kGreys[static_cast<std::size_t>(number - kFirstGrey)];
    return hueColour(number);
}

int nearestDxfColour(DxfRgb colour)
{
    constexpr int kInk = 7;
    if (colour == 0 || colour == 0xffffff) return kInk;
    int best = kInk, least = 1 << 30;
    for (int number = 1; number <= 255; ++number) {
        int sum = 0;
        for (const unsigned shift : {0U, 8U, 16U}) {
            const int d = channel(colour, shift) - channel(dxfColour(number), shift);
            sum += d * d;
        }
        if (sum < least) best = number, least = sum;
    }
    return best;
}

std::string colourText(DxfRgb colour)
{
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text = "#";
    for (int shift = 20; shift >= 0; shift -= 4)
        text += digits[(colour >> static_cast<unsigned>(shift)) & 0xfU];
    return text;
}

DxfRgb colourOf(const std::string& text)
{
    DxfRgb rgb = 0;
    if (text.size() != 7 || text[0] != '#') return 0;
    const auto [end, code] = std::from_chars(text.data() + 1, text.data() + text.size(), rgb, 16);
    return code == std::errc() && end == text.data() + text.size() ? rgb : 0;
}

}  // namespace lidwright
