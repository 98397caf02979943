#include "core/io/svg/svg_viewport.h"

#include "core/base/units.h"
#include "core/geometry/point.h"
#include "core/io/svg/svg_scan.h"

#include <cmath>
#include <string>
#include <vector>

namespace lidwright::svg {

namespace {

/// 0, 0.5 or 1 for Min, Mid and Max.
double alignment(std::string_view word)
{
    if (word == "Min") return 0;
    return word == "Max" ? 1 : 0.5;
}

Transform turn(double angle_degrees)
{
    return Transform::rotation(radians(std::fmod(angle_degrees, 360)));
}

std::optional<Transform> single(std::string_view name, const std::vector<double>& v)
{
    const std::size_t n = v.size();
    if (name == "matrix" && n == 6) return Transform{v[0], v[1], v[2], v[3], v[4], v[5]};
    if (name == "translate" && (n == 1 || n == 2)) return Transform::translation(v[0], n == 2 ? v[1] : 0);
    if (name == "translatex" && n == 1) return Transform::translation(v[0], 0);
    if (name == "translatey" && n == 1) return Transform::translation(0, v[0]);
    if (name == "scale" && (n == 1 || n == 2)) return Transform::scaling(v[0], n == 2 ? v[1] : v[0]);
    if (name == "scalex" && n == 1) return Transform::scaling(v[0], 1);
    if (name == "scaley" && n == 1) return Transform::scaling(1, v[0]);
    if (name == "rotate" && n == 1) return turn(v[0]);
    if (name == "rotate" && n == 3) {
        return Transform::translation(v[1], v[2]) * turn(v[0]) * Transform::translation(-v[1], -v[2]);
    }
    const auto slope = [](double angle_degrees) { return std::tan(radians(std::fmod(angle_degrees, 360))); };
    if (name == "skewx" && n == 1) return Transform{1, 0, slope(v[0]), 1, 0, 0};
    if (name == "skewy" && n == 1) return Transform{1, slope(v[0]), 0, 1, 0, 0};
    if (name == "skew" && (n == 1 || n == 2)) {
        return Transform{1, n == 2 ? slope(v[1]) : 0, slope(v[0]), 1, 0, 0};
    }
    return std::nullopt;
}

std::optional<std::vector<double>> transformArguments(Scanner& scan)
{
    std::vector<double> out;
    scan.skipSpace();
    while (!scan.accept(')')) {
        const auto value = scan.number();
        if (!value || out.size() >= 6) return std::nullopt;
        const std::string unit = lowered(scan.word());
        if (unit == "rad") {
            out.push_back(degrees(*value));
        } else if (unit.empty() || unit == "px" || unit == "deg") {
            out.push_back(*value);
        } else {
            return std::nullopt;
        }
        scan.skipSeparator();
    }
    return out;
}

}  // namespace

bool isFinite(const Transform& map)
{
    // Squares of the entries must be finite as well: determinants and lengths are made of them.
    constexpr double kLargest = 1e150;
    for (const double value : {map.a, map.b, map.c, map.d, map.e, map.f}) {
        if (!(std::abs(value) < kLargest)) return false;
    }
    return true;
}

std::optional<ViewBox> parseViewBox(std::string_view text)
{
    bool complete = false;
    const std::vector<double> v = numberList(text, &complete);
    if (!complete || v.size() != 4 || v[2] < 0 || v[3] < 0) return std::nullopt;
    return ViewBox{v[0], v[1], v[2], v[3]};
}

Transform viewBoxMap(const ViewBox& box, double width, double height, std::string_view aspect)
{
    double scaleX = width / box.width, scaleY = height / box.height;
    double alignX = 0.5, alignY = 0.5;
    bool slice = false, stretch = false;
    for (const std::string_view word : words(aspect)) {
        if (word == "none") stretch = true;
        if (word == "slice") slice = true;
        if (word.size() == 8 && word[0] == 'x' && word[4] == 'Y') {
            alignX = alignment(word.substr(1, 3));
            alignY = alignment(word.substr(5, 3));
        }
    }
    if (!stretch) {
        const double scale = slice ? std::max(scaleX, scaleY) : std::min(scaleX, scaleY);
        scaleX = scaleY = scale;
    }
    return Transform{scaleX,
                     0,
                     0,
                     scaleY,
                     alignX * (width - box.width * scaleX) - box.x * scaleX,
                     alignY * (height - box.height * scaleY) - box.y * scaleY};
}

std::optional<Transform> parseTransform(std::string_view text)
{
    Transform all;
    Scanner scan(trimmed(text));
    if (scan.rest() == "none") return all;
    while (!scan.atEnd()) {
        const std::string name = lowered(scan.word());
        scan.skipSpace();
        if (name.empty() || !scan.accept('(')) return std::nullopt;
        const auto arguments = transformArguments(scan);
        const auto map = arguments ? single(name, *arguments) : std::nullopt;
        if (!map) return std::nullopt;
        all = all * *map;
        if (!isFinite(all)) return std::nullopt;
        scan.skipSeparator();
    }
    return all;
}

}  // namespace lidwright::svg
