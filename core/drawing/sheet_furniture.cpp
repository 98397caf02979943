#include "core/drawing/sheet_furniture.h"

#include "core/base/units.h"

namespace lidwright {
namespace {

constexpr const char* kLayer = "furniture";

}  // namespace

std::vector<Element> projectionSign(Projection projection, double size)
{
    const double half = size / 2;
    const double coneAt = projection == Projection::FirstAngle ? 0 : 1.5 * size;
    const Point circles{projection == Projection::FirstAngle ? 2 * size : half, half};
    // The small end looks to the left in both; what differs is on which side its view stands.
    const Ring cone{{coneAt, half - size / 4},
                    {coneAt + size, half - half},
                    {coneAt + size, half + half},
                    {coneAt, half + size / 4}};
    std::vector<Element> out;
    out.push_back({"", kLayer, Stroke{cone, true, LineKind::Visible}});
    out.push_back({"", kLayer, Stroke{circleRing(circles, half), true, LineKind::Visible}});
    out.push_back({"", kLayer, Stroke{circleRing(circles, size / 4), true, LineKind::Visible}});
    const double over = 0.15 * size;
    out.push_back({"", kLayer, Stroke{{{-over, half}, {2.5 * size + over, half}}, false, LineKind::Centre}});
    out.push_back(
        {"", kLayer, Stroke{{{circles.x, -over}, {circles.x, size + over}}, false, LineKind::Centre}});
    return out;
}

Stroke arrowHead(Point tip, Point direction, double size)
{
    const Point back = (-size / length(direction)) * direction;
    const Point side = std::tan(radians(15)) * Point{-back.y, back.x};
    return {{tip + back + side, tip, tip + back - side}, false, LineKind::Narrow};
}

std::vector<Element> grainArrow(const std::string& part, double length, double paper)
{
    const double half = length / 2;
    const double head = 3 * paper;
    return {{part, "grain", Stroke{{{-half, 0}, {half, 0}}, false, LineKind::Narrow}},
            {part, "grain", arrowHead({-half, 0}, {-1, 0}, head)},
            {part, "grain", arrowHead({half, 0}, {1, 0}, head)}};
}

std::vector<Element> turnedUpright(std::vector<Element> elements)
{
    for (Element& element : elements) {
        const auto turn = [](std::vector<Point>& points) {
            for (Point& p : points)
                p = {-p.y, p.x};
        };
        if (auto* stroke = std::get_if<Stroke>(&element.what)) turn(stroke->points);
        if (auto* fill = std::get_if<Fill>(&element.what)) turn(fill->ring);
    }
    return elements;
}

std::vector<Element> cuttingPlaneEnd(const std::string& letter, double outward, double paper)
{
    // All in mm on paper; ISO 128-3 shows the arrows on to the line and leaves the sizes open.
    const auto at = [&](double x, double y) { return Point{outward * x * paper, y * paper}; };
    return {{"", kLayer, Stroke{{at(4, 0), at(9, 0)}, false, LineKind::Visible}},
            {"", kLayer, Stroke{{at(9, 0), at(9, -8)}, false, LineKind::Narrow}},
            {"", kLayer, arrowHead(at(9, -0.3), {0, 1}, 3 * paper)},
            {"", kLayer, Text{at(9, -12.5), letter, 3.5}}};
}

std::string shortened(const std::string& utf8, std::size_t most)
{
    std::size_t characters = 0;
    for (std::size_t i = 0; i < utf8.size(); ++i) {
        if ((static_cast<unsigned char>(utf8[i]) & 0xC0U) == 0x80U) continue;
        if (++characters > most) return utf8.substr(0, i) + "\xE2\x80\xA6";
    }
    return utf8;
}

}  // namespace lidwright
