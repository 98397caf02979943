#include "core/io/svg/svg_builder.h"
#include "core/io/svg/svg_scan.h"
#include "core/io/svg/svg_viewport.h"

#include <algorithm>

namespace lidwright::svg {

/// The element that "#id" names; a reference elsewhere is noted and nothing comes back.
pugi::xml_node SceneBuilder::referenced(std::string_view href)
{
    if (href.empty()) return {};
    if (href.front() != '#') {
        m_notes.add(Issue::External, startsWith(href, "data:") ? std::string_view() : href);
        return {};
    }
    const auto found = m_ids.find(href.substr(1));
    if (found == m_ids.end()) {
        m_notes.add(Issue::Broken, href);
        return {};
    }
    return found->second;
}

bool SceneBuilder::follows(const pugi::xml_node& target) const
{
    return std::find(m_following.begin(), m_following.end(), target) != m_following.end();
}

/// Marks the target as being followed; false, with a note, where that would go in a circle.
bool SceneBuilder::follow(const pugi::xml_node& target)
{
    if (follows(target)) {
        m_notes.add(Issue::Cycle, target.attribute("id").value());
        return false;
    }
    m_following.push_back(target);
    return true;
}

void SceneBuilder::use(const pugi::xml_node& node, const Style& style, const Place& place)
{
    const pugi::xml_node target = referenced(hrefOf(node));
    if (!target) return;
    for (pugi::xml_node up = node; up; up = up.parent()) {
        if (up != target) continue;
        m_notes.add(Issue::Cycle, target.attribute("id").value());
        return;
    }
    if (!follow(target)) return;
    const LengthContext context = lengths(style, place);
    Place inside = place;
    inside.map = place.map * Transform::translation(attributeLength(node, "x", Axis::X, context, 0),
                                                    attributeLength(node, "y", Axis::Y, context, 0));
    const std::string_view name = svgName(target);
    if (name == "symbol" || name == "svg") {
        const Style own = styleOf(target, style, m_sheet, m_budget);
        inside.style = &own;
        inside.opacity *= own.opacity;
        ++inside.depth;
        const bool counted = m_budget.elements(1) && m_budget.depth(inside.depth);
        if (counted && own.displayed && own.opacity > 0 && applyTransform(target, own, inside)) {
            innerSvg(target, own, inside, node);
        }
    } else {
        visit(target, inside);
    }
    m_following.pop_back();
}

/// An svg inside the drawing, or a symbol or svg that `user` places (its sizes then go first).
void SceneBuilder::innerSvg(const pugi::xml_node& node, const Style& style, const Place& place,
                            const pugi::xml_node& user)
{
    const LengthContext context = lengths(style, place);
    const auto size = [&](const char* name, Axis axis, double whole) {
        const bool symbol = svgName(node) == "symbol";
        const double own = symbol && user ? whole : attributeLength(node, name, axis, context, whole);
        return user ? attributeLength(user, name, axis, context, own) : own;
    };
    const bool symbol = svgName(node) == "symbol";
    const double x = symbol ? 0 : attributeLength(node, "x", Axis::X, context, 0);
    const double y = symbol ? 0 : attributeLength(node, "y", Axis::Y, context, 0);
    const double width = size("width", Axis::X, place.viewportWidth);
    const double height = size("height", Axis::Y, place.viewportHeight);
    viewport(node, style, place, {x, y, x + width, y + height});
}

/// Opens a viewport over `area` and paints the element's children in it.
void SceneBuilder::viewport(const pugi::xml_node& node, const Style& style, Place place, Bounds area)
{
    if (!(area.width() > 0 && area.height() > 0)) return;
    if (!style.overflowVisible) place.clip = rectangleClip(place.map, area, place.clip);
    place.map = place.map * Transform::translation(area.minX, area.minY);
    place.viewportWidth = area.width();
    place.viewportHeight = area.height();
    if (const auto box = parseViewBox(attributeOf(node, "viewBox"))) {
        if (!(box->width > 0 && box->height > 0)) return;
        place.map = place.map *
                    viewBoxMap(*box, area.width(), area.height(), attributeOf(node, "preserveAspectRatio"));
        place.viewportWidth = box->width;
        place.viewportHeight = box->height;
    }
    if (!isFinite(place.map)) {
        m_notes.add(Issue::BadTransform);
        return;
    }
    visitChildren(node, place);
}

/// The style by the element's place in the file, whoever refers to it.
const Style& SceneBuilder::treeStyle(const pugi::xml_node& node)
{
    static const Style initial;
    if (!node || node.type() != pugi::node_element) return initial;
    const auto known = m_treeStyles.find(node);
    if (known != m_treeStyles.end()) return known->second;
    // The recursion is as deep as the file's nesting, which is limited.
    m_budget.elements(1);
    const Style style = styleOf(node, treeStyle(node.parent()), m_sheet, m_budget);
    return m_treeStyles.emplace(node, style).first->second;
}

LengthContext SceneBuilder::lengths(const Style& style, const Place& place) const
{
    LengthContext context;
    context.viewportWidth = place.viewportWidth;
    context.viewportHeight = place.viewportHeight;
    context.fontSize = style.fontSize.value;
    context.unitsPerInch = m_unitsPerInch;
    return context;
}

double SceneBuilder::attributeLength(const pugi::xml_node& node, const char* name, Axis axis,
                                     const LengthContext& context, double otherwise) const
{
    const auto length = parseLength(attributeOf(node, name));
    return length ? context.user(*length, axis) : otherwise;
}

}  // namespace lidwright::svg
