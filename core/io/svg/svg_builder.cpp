#include "core/io/svg/svg_builder.h"

#include "core/io/svg/svg_conditions.h"
#include "core/io/svg/svg_scan.h"
#include "core/io/svg/svg_viewport.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace lidwright::svg {

namespace {

template <std::size_t N>
bool isOneOf(std::string_view name, const std::array<std::string_view, N>& names)
{
    return std::find(names.begin(), names.end(), name) != names.end();
}

constexpr std::array<std::string_view, 7> kShapes{"path", "rect",     "circle", "ellipse",
                                                  "line", "polyline", "polygon"};
constexpr std::array<std::string_view, 5> kGroups{"g", "a", "svg", "use", "switch"};
constexpr std::array<std::string_view, 3> kTexts{"text", "flowRoot", "flowDiv"};
constexpr std::array<std::string_view, 5> kAnimations{"animate", "animateMotion", "animateTransform",
                                                      "animateColor", "set"};

/// All words inside the element, limited to what a message can show.
std::string wordsInside(const pugi::xml_node& node)
{
    constexpr std::size_t kEnough = 100;
    std::string out;
    pugi::xml_node now = node.first_child();
    while (now && out.size() < kEnough) {
        if (now.type() == pugi::node_pcdata || now.type() == pugi::node_cdata) {
            out += std::string(trimmed(now.value())) + " ";
        }
        if (now.first_child()) {
            now = now.first_child();
            continue;
        }
        while (now != node && !now.next_sibling())
            now = now.parent();
        if (now == node) break;
        now = now.next_sibling();
    }
    return std::string(trimmed(out));
}

}  // namespace

SceneBuilder::SceneBuilder(const XmlFile& file, const Page& page, double unitsPerInch,
                           TextOutliner outlineText, Notes& notes, Budget& budget)
    : m_root(file.root),
      m_page(page),
      m_unitsPerInch(unitsPerInch),
      m_outlineText(std::move(outlineText)),
      m_notes(notes),
      m_budget(budget)
{}

Scene SceneBuilder::build()
{
    collect();
    const Style initial;
    Place place;
    place.style = &initial;
    place.viewportWidth = m_page.viewportWidth;
    place.viewportHeight = m_page.viewportHeight;
    if (m_page.bounded) {
        auto page = std::make_shared<Clip>();
        const Bounds area{0, 0, m_page.width, m_page.height};
        *page = *rectangleClip({}, area, nullptr);
        page->page = true;
        place.clip = page;
    }
    visit(m_root, place);
    return std::move(m_scene);
}

/// Style sheets and names must be known before anything is painted: both may stand behind their use.
void SceneBuilder::collect()
{
    for (pugi::xml_node node = m_root; node;) {
        const std::string_view name = svgName(node);
        if (name == "style") {
            const std::string_view type = attributeOf(node, "type");
            if (type.empty() || type == "text/css") m_sheet.add(textInside(node), m_notes);
        } else if (name == "script") {
            m_notes.add(Issue::Script);
        } else if (isOneOf(name, kAnimations)) {
            m_notes.add(Issue::Animation);
        } else if (name == "font-face" && svgName(node.parent()) == "font") {
            m_ownFonts.insert(lowered(attributeOf(node, "font-family")));
        }
        const std::string_view id = node.attribute("id").value();
        if (!id.empty()) m_ids.emplace(id, node);
        if (node.first_child()) {
            node = node.first_child();
            continue;
        }
        while (node && node != m_root && !node.next_sibling())
            node = node.parent();
        if (node == m_root) break;
        node = node.next_sibling();
    }
}

void SceneBuilder::visit(const pugi::xml_node& node, const Place& parent)
{
    const std::string_view name = svgName(node);
    if (name.empty()) return;
    if (!m_budget.elements(1) || !m_budget.depth(parent.depth + 1)) return;
    const bool shapeElement = isOneOf(name, kShapes);
    const bool painted = shapeElement || isOneOf(name, kGroups) || isOneOf(name, kTexts) || name == "image" ||
                         name == "foreignObject";
    if (!painted || !conditionsHold(node)) return;

    const Style style = styleOf(node, *parent.style, m_sheet, m_budget);
    if (m_budget.broken() || !style.displayed) return;
    if (m_purpose == Purpose::Paint && style.opacity == 0) return;
    Place place = parent;
    place.style = &style;
    place.depth = parent.depth + 1;
    place.opacity = parent.opacity * style.opacity;
    if (!applyTransform(node, style, place)) return;
    if (m_purpose == Purpose::Paint) {
        if (!style.filter.empty()) m_notes.add(Issue::Filter);
        if (!style.mask.empty()) m_notes.add(Issue::Mask);
    }
    if (m_purpose != Purpose::Measure && !style.clipPath.empty()) {
        clipTo(node, name, style, place);
        if (m_budget.broken()) return;
    }
    content(name, node, style, place);
}

bool SceneBuilder::applyTransform(const pugi::xml_node& node, const Style& style, Place& place)
{
    // A transform of the outermost element moves the page's content as a whole (SVG 2, section 8.2).
    const bool outermost = node == m_root && place.depth == 1;
    if (style.transform) {
        const auto own = parseTransform(*style.transform);
        if (!own) {
            m_notes.add(Issue::BadTransform);
        } else {
            place.map = place.map * *own;
        }
    }
    if (outermost) place.map = place.map * m_page.map;
    if (!isFinite(place.map)) {
        m_notes.add(Issue::BadTransform);
        return false;
    }
    // Squeezed to a line: nothing is painted (SVG 1.1, section 7.4).
    return place.map.determinant() != 0;
}

void SceneBuilder::content(std::string_view name, const pugi::xml_node& node, const Style& style,
                           const Place& place)
{
    if (isOneOf(name, kShapes)) return shape(name, node, style, place);
    if (name == "g" || name == "a") return visitChildren(node, place);
    if (name == "use") return use(node, style, place);
    if (name == "switch") return visitSwitch(node, place);
    if (name == "svg") {
        if (node == m_root && place.depth == 1) return visitChildren(node, place);
        return innerSvg(node, style, place, {});
    }
    if (name == "text" && text(node, style, place)) return;
    if (style.visibility == Visibility::Hidden || m_purpose == Purpose::Measure) return;
    if (isOneOf(name, kTexts)) {
        const std::string text = wordsInside(node);
        if (!text.empty()) m_notes.add(Issue::Text, text);
    } else if (name == "image") {
        if (!hrefOf(node).empty()) m_notes.add(Issue::Image);
    } else if (name == "foreignObject") {
        m_notes.add(Issue::ForeignObject);
    }
}

void SceneBuilder::visitChildren(const pugi::xml_node& node, const Place& place)
{
    for (const pugi::xml_node child : node.children()) {
        if (m_budget.broken()) return;
        visit(child, place);
    }
}

void SceneBuilder::visitSwitch(const pugi::xml_node& node, const Place& place)
{
    for (const pugi::xml_node child : node.children()) {
        if (svgName(child).empty() || !conditionsHold(child)) continue;
        return visit(child, place);
    }
}

}  // namespace lidwright::svg
