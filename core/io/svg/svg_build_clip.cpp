#include "core/io/svg/svg_builder.h"
#include "core/io/svg/svg_scan.h"
#include "core/io/svg/svg_shapes.h"
#include "core/io/svg/svg_viewport.h"

#include <utility>

namespace lidwright::svg {

void SceneBuilder::clipTo(const pugi::xml_node& node, std::string_view name, const Style& style, Place& place)
{
    const auto url = parseUrl(style.clipPath);
    if (!url) return;
    if (url->external) {
        m_notes.add(Issue::External, url->id);
        return;
    }
    const pugi::xml_node clipPath = referenced("#" + url->id);
    if (svgName(clipPath) != "clipPath") return;
    const bool byBox = attributeOf(clipPath, "clipPathUnits") == "objectBoundingBox";
    const Bounds box = byBox ? measure(node, name, style, place) : Bounds{0, 0, 1, 1};
    place.clip = clipFrom(clipPath, place, box);
}

/// The clip that the clipPath element cuts at this place; `box` is the unit square, or what stands for it
/// where the path is given in parts of a bounding box.
ClipPtr SceneBuilder::clipFrom(const pugi::xml_node& clipPath, const Place& place, const Bounds& box)
{
    auto clip = std::make_shared<Clip>();
    clip->outer = place.clip;
    if (!follow(clipPath)) return place.clip;
    const Style& style = treeStyle(clipPath);
    Place inside = place;
    inside.style = &style;
    inside.clip = nullptr;
    ++inside.depth;
    const bool counted = m_budget.elements(1) && m_budget.depth(inside.depth);
    // Nothing stands in an empty box, and so nothing stays visible.
    const bool usable = counted && box.width() > 0 && box.height() > 0;
    if (usable && applyTransform(clipPath, style, inside)) {
        inside.map = inside.map * Transform{box.width(), 0, 0, box.height(), box.minX, box.minY};
        const Purpose purpose = std::exchange(m_purpose, Purpose::Clip);
        std::vector<SceneShape> shapes = std::exchange(m_clipShapes, {});
        visitChildren(clipPath, inside);
        clip->shapes = std::exchange(m_clipShapes, std::move(shapes));
        m_purpose = purpose;
    }
    m_following.pop_back();
    // A clipPath may be clipped itself.
    if (!style.clipPath.empty() && !m_budget.broken()) {
        Place outer = place;
        outer.depth = inside.depth;
        m_following.push_back(clipPath);
        clipTo(clipPath, "g", style, outer);
        m_following.pop_back();
        clip->outer = outer.clip;
    }
    return clip;
}

ClipPtr SceneBuilder::rectangleClip(const Transform& map, const Bounds& area, const ClipPtr& outer) const
{
    auto clip = std::make_shared<Clip>();
    SceneShape rectangle;
    rectangle.outline =
        std::make_shared<Outline>(rectangleOutline(area.minX, area.minY, area.width(), area.height()));
    rectangle.map = map;
    clip->shapes.push_back(std::move(rectangle));
    clip->outer = outer;
    return clip;
}

/// The bounding box of the element's geometry in its own user units (SVG 1.1, section 7.11).
Bounds SceneBuilder::measure(const pugi::xml_node& node, std::string_view name, const Style& style,
                             const Place& place)
{
    Place inside = place;
    inside.map = Transform{};
    const Purpose purpose = std::exchange(m_purpose, Purpose::Measure);
    const Bounds before = std::exchange(m_measured, Bounds{});
    content(name, node, style, inside);
    m_purpose = purpose;
    return std::exchange(m_measured, before);
}

}  // namespace lidwright::svg
