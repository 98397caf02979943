#include "core/io/svg/svg_colour.h"

#include "core/io/svg/svg_colour_names.h"
#include "core/io/svg/svg_scan.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace lidwright::svg {

namespace {

std::uint8_t channel(double value)
{
    return static_cast<std::uint8_t>(std::lround(std::clamp(value, 0.0, 255.0)));
}

std::optional<Colour> parseHex(std::string_view digits)
{
    std::vector<int> values;
    for (const char c : digits) {
        if (c >= '0' && c <= '9') {
            values.push_back(c - '0');
        } else if (c >= 'a' && c <= 'f') {
            values.push_back(c - 'a' + 10);
        } else {
            return std::nullopt;
        }
    }
    std::vector<int> channels;
    if (values.size() == 3 || values.size() == 4) {
        for (const int v : values)
            channels.push_back(v * 17);
    } else if (values.size() == 6 || values.size() == 8) {
        for (std::size_t i = 0; i < values.size(); i += 2)
            channels.push_back(values[i] * 16 + values[i + 1]);
    } else {
        return std::nullopt;
    }
    return Colour{channel(channels[0]), channel(channels[1]), channel(channels[2]),
                  channels.size() == 4 ? channels[3] / 255.0 : 1.0};
}

struct Term {
    double value = 0;
    bool percent = false;
};

/// The numbers between the parentheses, with commas, spaces or a slash between.
std::optional<std::vector<Term>> terms(std::string_view text)
{
    std::vector<Term> out;
    Scanner scan(text);
    scan.skipSpace();
    while (!scan.atEnd()) {
        const auto value = scan.number();
        if (!value) return std::nullopt;
        const bool percent = scan.accept('%');
        if (!percent && startsWith(scan.rest(), "deg")) scan.word();
        out.push_back({*value, percent});
        scan.skipSeparator();
        if (scan.accept('/')) scan.skipSpace();
    }
    return out;
}

double share(const Term& term)
{
    return std::clamp(term.percent ? term.value / 100 : term.value, 0.0, 1.0);
}

/// CSS Color 4, section 7.1: one channel of an HSL colour, 0...1.
double hslChannel(double n, double hue, double saturation, double lightness)
{
    const double k = std::fmod(n + hue / 30, 12);
    const double a = saturation * std::min(lightness, 1 - lightness);
    return lightness - a * std::max(-1.0, std::min({k - 3, 9 - k, 1.0}));
}

std::optional<Colour> fromFunction(std::string_view name, std::string_view arguments)
{
    const auto list = terms(arguments);
    if (!list || list->size() < 3 || list->size() > 4) return std::nullopt;
    const std::vector<Term>& t = *list;
    const double alpha = t.size() == 4 ? share(t[3]) : 1.0;
    if (name == "rgb" || name == "rgba") {
        const auto value = [](const Term& term) {
            return channel(term.percent ? term.value / 100 * 255 : term.value);
        };
        return Colour{value(t[0]), value(t[1]), value(t[2]), alpha};
    }
    if (name == "hsl" || name == "hsla") {
        double hue = std::fmod(t[0].value, 360);
        if (hue < 0) hue += 360;
        const double saturation = std::clamp(t[1].value / 100, 0.0, 1.0);
        const double lightness = std::clamp(t[2].value / 100, 0.0, 1.0);
        return Colour{channel(255 * hslChannel(0, hue, saturation, lightness)),
                      channel(255 * hslChannel(8, hue, saturation, lightness)),
                      channel(255 * hslChannel(4, hue, saturation, lightness)), alpha};
    }
    return std::nullopt;
}

}  // namespace

std::optional<Colour> parseColour(std::string_view given)
{
    const std::string text = lowered(trimmed(given));
    if (text.empty()) return std::nullopt;
    if (text[0] == '#') return parseHex(std::string_view(text).substr(1));
    const std::size_t open = text.find('(');
    if (open != text.npos) {
        if (text.back() != ')') return std::nullopt;
        const std::string_view all = text;
        return fromFunction(trimmed(all.substr(0, open)), all.substr(open + 1, all.size() - open - 2));
    }
    if (text == "transparent") return Colour{0, 0, 0, 0};
    const auto value = namedColour(text);
    if (!value) return std::nullopt;
    return Colour{channel(*value >> 16 & 255), channel(*value >> 8 & 255), channel(*value & 255), 1};
}

std::string hexName(const Colour& colour)
{
    constexpr char kDigits[] = "0123456789abcdef";
    std::string out = "#";
    for (const int value : {colour.red, colour.green, colour.blue}) {
        out += kDigits[value / 16];
        out += kDigits[value % 16];
    }
    return out;
}

Colour mixed(const Colour& a, const Colour& b, double part)
{
    const auto mix = [part](double from, double to) { return from + part * (to - from); };
    return {channel(mix(a.red, b.red)), channel(mix(a.green, b.green)), channel(mix(a.blue, b.blue)),
            mix(a.alpha, b.alpha)};
}

}  // namespace lidwright::svg
