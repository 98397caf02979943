#include "core/drawing/base_marks.h"

#include <algorithm>

namespace lidwright {
namespace {

/// More than so many are not measured one by one.
constexpr std::size_t kMostMeasured = 6;

Point inwardOf(BoxWall wall)
{
    switch (wall) {
        case BoxWall::HeadEnd:
            return {1, 0};
        case BoxWall::TailEnd:
            return {-1, 0};
        case BoxWall::BassSide:
            return {0, 1};
        case BoxWall::TrebleSide:
            return {0, -1};
    }
    return {};
}

}  // namespace

std::vector<double> baseFixingsAlong(const Plan& plan, const Layout& layout, BoxWall wall)
{
    std::vector<double> out;
    if (plan.box.shape != BoxShape::Rectangle) return out;
    const Point inward = inwardOf(wall);
    for (const BaseFixing& fixing : baseFixings(plan, layout))
        if (dot(fixing.inward, inward) > 0.5) out.push_back(inward.x != 0 ? fixing.at.y : fixing.at.x);
    std::sort(out.begin(), out.end());
    return out;
}

std::vector<double> measuredFixings(const std::vector<double>& along, bool fromHigh)
{
    if (along.size() <= kMostMeasured) return along;
    const std::size_t last = along.size() - 1;
    if (fromHigh) return {along[0], along[last - 1], along[last]};
    return {along[0], along[1], along[last]};
}

const char* baseFixingsName(BaseFastening fastening)
{
    return fastening == BaseFastening::Nailed ? "nails" : "screws";
}

BaseMarks::BaseMarks(const ViewInput& in, BoxWall wall)
    : m_in(in), m_along(baseFixingsAlong(in.plan, in.layout, wall)), m_z(baseFixingZ(in.layout))
{}

void BaseMarks::draw(ViewPen& pen, double arm, LineKind kind) const
{
    for (const double at : m_along) {
        pen.line("box", "base-fixings", {{at - arm, m_z}, {at + arm, m_z}}, kind);
        pen.line("box", "base-fixings", {{at, m_z - arm}, {at, m_z + arm}}, kind);
    }
}

void BaseMarks::addRows(ViewPen& pen, DimensionRows& below, DimensionRows& beside, Point from,
                        Point besideAt) const
{
    if (!any()) return;
    for (const double at : measuredFixings(m_along, from.x > m_along.back()))
        pen.row(below, "box", from, {at, m_z}, "");
    pen.row(beside, "box", besideAt, {besideAt.x, m_z}, "");
}

std::vector<NoteLine> BaseMarks::notes() const
{
    if (!any()) return {};
    const UnitStyle& style = m_in.options.style;
    const std::string what = baseFixingsName(m_in.plan.box.baseFastening);
    std::string words = "Base: " + std::to_string(m_along.size()) + " " + what +
                        " level through this wall into the middle of the base's edge, " +
                        lengthWithUnit(m_z - m_in.layout.walls.low, style) +
                        " above the lower edge (crosses there)";
    if (m_along.size() > kMostMeasured)
        words += ", each " + lengthWithUnit(m_along[1] - m_along[0], style) + " from the next";
    return {{words + ".", 2.5},
            {"Drill for them with wall and base clamped together: clearance in the wall, pilot in the base.",
             2.5}};
}

}  // namespace lidwright
