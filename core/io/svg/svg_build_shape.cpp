#include "core/io/svg/svg_builder.h"
#include "core/io/svg/svg_shapes.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace lidwright::svg {

namespace {

/// Beyond this, px, numbers no longer tell points of the page apart.
constexpr double kFarthestPx = 1e15;

}  // namespace

void SceneBuilder::shape(std::string_view name, const pugi::xml_node& node, const Style& style,
                         const Place& place)
{
    const ShapeValue value = [&](const char* property) {
        for (auto own = style.geometry.rbegin(); own != style.geometry.rend(); ++own) {
            if (own->first == property) return std::string_view(own->second);
        }
        return attributeOf(node, property);
    };
    ShapeReading reading = shapeOutline(name, value, lengths(style, place));
    const bool marked = (name == "path" || name == "line" || name == "polyline" || name == "polygon") &&
                        !(style.markerStart.empty() && style.markerMid.empty() && style.markerEnd.empty());
    const std::string_view id = attributeOf(node, "id");
    const bool seen = m_purpose != Purpose::Measure && style.visibility == Visibility::Visible;
    if (reading.broken && seen) m_notes.add(Issue::BadPath, id);
    outlinedShape(std::move(reading.outline), id, marked, style, place);
}

/// Paints an outline, or does with it whatever the walk is for.
void SceneBuilder::outlinedShape(Outline made, std::string_view id, bool marked, const Style& style,
                                 const Place& place)
{
    if (!m_budget.points(made.pointCount())) return;
    const Bounds box = tightBounds(made, place.map);
    const auto near = [](double px) { return std::abs(px) < kFarthestPx; };
    if (!box.empty() && !(near(box.minX) && near(box.minY) && near(box.maxX) && near(box.maxY))) {
        m_notes.add(Issue::BadTransform, id);
        return;
    }
    if (m_purpose == Purpose::Measure) {
        m_measured.include(box);
        return;
    }
    if (style.visibility == Visibility::Hidden || made.empty()) return;
    const auto outline = std::make_shared<const Outline>(std::move(made));
    if (m_purpose == Purpose::Clip) {
        m_clipShapes.push_back({outline, place.map, style.clipRule, std::nullopt, place.clip});
        return;
    }
    if (marked && style.markersFirst) markers(*outline, style, place);
    if (style.strokeFirst) paintLine(outline, style, place);
    paintFill(outline, style, place);
    if (!style.strokeFirst) paintLine(outline, style, place);
    if (marked && !style.markersFirst) markers(*outline, style, place);
}

void SceneBuilder::paintFill(const OutlinePtr& outline, const Style& style, const Place& place)
{
    const Choice choice = choose(style.fill, style.fillOpacity, *outline, style, place);
    if (choice.painted) put({outline, place.map, style.fillRule, std::nullopt, place.clip}, choice, place);
}

void SceneBuilder::paintLine(const OutlinePtr& outline, const Style& style, const Place& place)
{
    const Choice choice = choose(style.stroke, style.strokeOpacity, *outline, style, place);
    if (!choice.painted) return;
    const LineStyle line = lineStyle(style, place);
    if (!(line.width > 0)) return;
    if (style.fixedWidth) m_notes.add(Issue::FixedWidth);
    put({outline, place.map, style.fillRule, line, place.clip}, choice, place);
}

void SceneBuilder::put(SceneShape painted, const Choice& choice, const Place& place)
{
    if (choice.pattern && layTiles(choice.pattern, painted, place)) return;
    if (choice.pattern) m_notes.add(Issue::Pattern);
    if (choice.seeThrough || place.opacity < 1) m_notes.add(Issue::SeeThrough);
    const bool line = painted.line.has_value();
    const std::string name = (line ? "line " : "fill ") + choice.name;
    const auto [known, isNew] = m_paintIndex.emplace(name, static_cast<int>(m_scene.paints.size()));
    if (isNew) m_scene.paints.push_back({name, choice.colour, line});
    m_scene.items.push_back({std::move(painted), known->second});
}

LineStyle SceneBuilder::lineStyle(const Style& style, const Place& place) const
{
    const LengthContext context = lengths(style, place);
    LineStyle line;
    line.width = context.user(style.strokeWidth, Axis::Diagonal);
    line.join = style.join;
    line.cap = style.cap;
    line.miterLimit = style.miterLimit;
    double sum = 0;
    for (const Length& dash : style.dashes) {
        line.dashes.push_back(context.user(dash, Axis::Diagonal));
        sum += line.dashes.back();
    }
    // All zero is a solid line; an odd list is walked twice (SVG 1.1, section 11.4).
    if (!(sum > 0) || !std::isfinite(sum)) line.dashes.clear();
    if (line.dashes.size() % 2 == 1) {
        const std::vector<double> once = line.dashes;
        line.dashes.insert(line.dashes.end(), once.begin(), once.end());
    }
    line.dashOffset = context.user(style.dashOffset, Axis::Diagonal);
    return line;
}

}  // namespace lidwright::svg
