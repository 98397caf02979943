#include "core/base/units.h"
#include "core/io/svg/svg_builder.h"
#include "core/io/svg/svg_scan.h"
#include "core/io/svg/svg_vertices.h"
#include "core/io/svg/svg_viewport.h"

#include <cmath>

namespace lidwright::svg {

void SceneBuilder::markers(const Outline& outline, const Style& style, const Place& place)
{
    const auto find = [&](const std::string& text) {
        const auto url = parseUrl(text);
        if (!url) return pugi::xml_node();
        const pugi::xml_node node = referenced(url->external ? url->id : "#" + url->id);
        return svgName(node) == "marker" ? node : pugi::xml_node();
    };
    const pugi::xml_node first = find(style.markerStart), middle = find(style.markerMid),
                         last = find(style.markerEnd);
    const std::vector<Vertex> vertices = markerVertices(outline);
    for (std::size_t i = 0; i < vertices.size() && !m_budget.broken(); ++i) {
        const Vertex& v = vertices[i];
        const bool begins = i == 0, ends = i + 1 == vertices.size();
        if (begins && first) marker(first, v.at, v.angle, true, style, place);
        if (!begins && !ends && middle) marker(middle, v.at, v.angle, false, style, place);
        if (ends && last) marker(last, v.at, v.angle, false, style, place);
    }
}

/// One marker at a vertex (SVG 1.1, section 11.6).
void SceneBuilder::marker(const pugi::xml_node& node, Point at, double angle, bool start, const Style& style,
                          const Place& place)
{
    if (!m_budget.elements(1) || !m_budget.depth(place.depth + 1) || !follow(node)) return;
    const Style& own = treeStyle(node);
    const LengthContext context = lengths(own, place);
    const double width = attributeLength(node, "markerWidth", Axis::X, context, 3);
    const double height = attributeLength(node, "markerHeight", Axis::Y, context, 3);
    const double refX = attributeLength(node, "refX", Axis::X, context, 0);
    const double refY = attributeLength(node, "refY", Axis::Y, context, 0);
    const bool byLine = attributeOf(node, "markerUnits") != "userSpaceOnUse";
    const double scale = byLine ? lineStyle(style, place).width : 1;

    const std::string_view orient = attributeOf(node, "orient");
    if (startsWith(orient, "auto")) {
        if (start && orient == "auto-start-reverse") angle += kPi;
    } else {
        Scanner scan(orient);
        angle = radians(std::fmod(scan.number().value_or(0), 360));
        if (startsWith(scan.rest(), "rad")) angle = degrees(angle);
    }

    Transform map = place.map * Transform::translation(at.x, at.y) * Transform::rotation(angle) *
                    Transform::scaling(scale, scale);
    const auto box = parseViewBox(attributeOf(node, "viewBox"));
    const bool sized = width > 0 && height > 0 && scale > 0 &&
                       (!box || (box->width > 0 && box->height > 0)) && own.displayed;
    if (sized) {
        Place inside = place;
        inside.style = &own;
        inside.context = &style;
        ++inside.depth;
        Bounds area{0, 0, width, height};
        if (box) {
            const Transform fit = viewBoxMap(*box, width, height, attributeOf(node, "preserveAspectRatio"));
            map = map * Transform::translation(-fit.a * refX - fit.e, -fit.d * refY - fit.f) * fit;
            area = {(0 - fit.e) / fit.a, (0 - fit.f) / fit.d, (width - fit.e) / fit.a,
                    (height - fit.f) / fit.d};
            inside.viewportWidth = box->width;
            inside.viewportHeight = box->height;
        } else {
            map = map * Transform::translation(-refX, -refY);
            inside.viewportWidth = width;
            inside.viewportHeight = height;
        }
        inside.map = map;
        if (isFinite(map) && map.determinant() != 0) {
            if (!own.overflowVisible) inside.clip = rectangleClip(map, area, place.clip);
            visitChildren(node, inside);
        }
    }
    m_following.pop_back();
}

}  // namespace lidwright::svg
