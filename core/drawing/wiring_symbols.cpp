#include "core/drawing/wiring_symbols.h"

#include "core/geometry/region.h"

#include <numbers>

namespace lidwright {
namespace {

constexpr double kDot = 0.9;  // radius of a joint, mm

/// Half a circle over `from`-`to`, both on one level line.
std::vector<Point> bump(Point from, Point to)
{
    constexpr int kChords = 12;
    const double r = (to.x - from.x) / 2;
    std::vector<Point> out;
    for (int i = 0; i <= kChords; ++i) {
        const double a = std::numbers::pi * (1 - static_cast<double>(i) / kChords);
        out.push_back({from.x + r + r * std::cos(a), from.y + r * std::sin(a)});
    }
    return out;
}

Ring box(Point middle, double width, double height)
{
    return rectangleRing(middle, width, height);
}

}  // namespace

void WiringPen::line(const std::string& part, std::vector<Point> points, LineKind kind, bool closed)
{
    m_elements.push_back({part, "wiring", Stroke{std::move(points), closed, kind}});
}

void WiringPen::hot(const std::string& part, std::vector<Point> way)
{
    m_elements.push_back({part, "hot", Stroke{std::move(way), false, LineKind::Visible}});
}

void WiringPen::ground(const std::string& part, std::vector<Point> way)
{
    m_elements.push_back({part, "ground", Stroke{std::move(way), false, LineKind::Hidden}});
}

void WiringPen::joint(Point at)
{
    m_elements.push_back({"", "joints", Fill{circleRing(at, kDot), FillKind::CutThrough}});
}

void WiringPen::words(Point at, const std::string& words, Anchor anchor, double height)
{
    m_elements.push_back({"sheet", "words", Text{at, words, height, 0, anchor}});
}

void WiringPen::pickup(const std::string& part, DeviceKind kind, Point middle)
{
    // From its own edge to where the wires begin.
    const auto leads = [&](double half) {
        hot(part, {{middle.x + half, middle.y}, {middle.x + kPickupHalf, middle.y}});
        ground(part, {{middle.x - half, middle.y}, {middle.x - kPickupHalf, middle.y}});
    };
    switch (kind) {
        case DeviceKind::DiscPickup:
            line(part, circleRing(middle, 7), LineKind::Visible, true);
            line(part, circleRing(middle, 4.5), LineKind::Narrow, true);
            leads(7);
            break;
        case DeviceKind::RodPickup:
            line(part, box(middle, 20, 3), LineKind::Visible, true);
            leads(10);
            break;
        case DeviceKind::MagneticPickup:
        case DeviceKind::Pot:
        case DeviceKind::Socket: {
            // A coil in its case.
            line(part, box(middle, 20, 11), LineKind::Visible, true);
            constexpr int kTurns = 4;
            constexpr double kTurn = 4;
            for (int i = 0; i < kTurns; ++i) {
                const double x = middle.x + (i - kTurns / 2) * kTurn;
                line(part, bump({x, middle.y - 1}, {x + kTurn, middle.y - 1}), LineKind::Narrow);
            }
            leads(10);
            break;
        }
    }
}

void WiringPen::pot(const std::string& part, Point middle)
{
    line(part, circleRing(middle, kPotRadius), LineKind::Visible, true);
    line(part, circleRing(middle, 2.5), LineKind::Hidden, true);
    for (int i = -1; i <= 1; ++i) {
        const double x = middle.x + i * kLugPitch;
        line(part, box({x, middle.y - 11.5}, 2.4, 5), LineKind::Visible, true);
        words({x + 1.7, middle.y - 13.5}, std::to_string(i + 2));
    }
    // Lug 3 to the case.
    const double x = middle.x + kLugPitch;
    ground(part, {{x, middle.y - kLugEnd},
                  {x, middle.y - kLugEnd - 2},
                  {middle.x + kPotRadius + 4, middle.y - kLugEnd - 2},
                  {middle.x + kPotRadius + 4, middle.y},
                  {middle.x + kPotRadius, middle.y}});
    joint({middle.x + kPotRadius, middle.y});
}

void WiringPen::socket(const std::string& part, Point middle)
{
    line(part, circleRing(middle, kSocketRadius), LineKind::Visible, true);
    line(part, circleRing(middle, 3.5), LineKind::Visible, true);
    line(part, {{middle.x - kSocketRadius, middle.y}, {middle.x - 3.5, middle.y}}, LineKind::Narrow);
    joint({middle.x - kSocketRadius, middle.y});
    joint({middle.x + kSocketRadius, middle.y});
}

}  // namespace lidwright
