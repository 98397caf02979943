#include "core/io/svg/svg_builder.h"
#include "core/io/svg/svg_scan.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace lidwright::svg {

namespace {

constexpr std::size_t kTemplateSteps = 32;

struct Stop {
    double offset = 0;
    Colour colour;
};

/// The colour half way along the stops.
Colour middleOf(const std::vector<Stop>& stops)
{
    for (std::size_t i = 0; i < stops.size(); ++i) {
        if (stops[i].offset < 0.5) continue;
        if (i == 0) return stops[i].colour;
        const double span = stops[i].offset - stops[i - 1].offset;
        const double part = span > 0 ? (0.5 - stops[i - 1].offset) / span : 1;
        return mixed(stops[i - 1].colour, stops[i].colour, part);
    }
    return stops.back().colour;
}

/// A number or a percentage, which stands for a hundredth.
std::optional<double> share(std::string_view text)
{
    Scanner scan(text);
    const auto value = scan.number();
    return value && scan.accept('%') ? *value / 100 : value;
}

/// True where a radial gradient's focus lies outside its circle: SVG 1.1 moves it in, SVG 2 paints only a
/// cone.
bool shinesFromOutside(const std::vector<pugi::xml_node>& chain)
{
    if (svgName(chain.front()) != "radialGradient") return false;
    const auto given = [&](const char* name) -> std::optional<double> {
        for (const pugi::xml_node& step : chain) {
            const auto value = share(attributeOf(step, name));
            if (value) return value;
        }
        return std::nullopt;
    };
    const Point centre{given("cx").value_or(0.5), given("cy").value_or(0.5)};
    const Point focus{given("fx").value_or(centre.x), given("fy").value_or(centre.y)};
    return distance(centre, focus) > given("r").value_or(0.5);
}

}  // namespace

SceneBuilder::Choice SceneBuilder::plain(const Colour& colour, double opacity) const
{
    Choice choice;
    choice.painted = opacity * colour.alpha > 0;
    choice.seeThrough = opacity * colour.alpha < 1;
    choice.name = choice.colour = hexName(colour);
    return choice;
}

SceneBuilder::Choice SceneBuilder::choose(const Paint& paint, double opacity, const Outline& outline,
                                          const Style& style, const Place& place)
{
    if (opacity == 0) return {};
    switch (paint.kind) {
        case Paint::Kind::None:
            return {};
        case Paint::Kind::Colour:
            return plain(paint.colour, opacity);
        case Paint::Kind::CurrentColour:
            return plain(style.color, opacity);
        case Paint::Kind::ContextFill:
        case Paint::Kind::ContextStroke: {
            if (!place.context) return {};
            const bool fill = paint.kind == Paint::Kind::ContextFill;
            Place outside = place;
            outside.context = nullptr;
            return choose(fill ? place.context->fill : place.context->stroke, opacity, outline,
                          *place.context, outside);
        }
        case Paint::Kind::Server:
            break;
    }
    const auto otherwise = [&]() -> Choice {
        if (paint.fallback == Paint::Kind::Colour) return plain(paint.fallbackColour, opacity);
        if (paint.fallback == Paint::Kind::CurrentColour) return plain(style.color, opacity);
        return {};
    };
    const auto found = m_ids.find(paint.server);
    const std::string_view name = found == m_ids.end() ? "" : svgName(found->second);
    Choice choice;
    if (name == "linearGradient" || name == "radialGradient") {
        const Gradient shades = gradient(paint.server, found->second);
        if (!shades.painted) return otherwise();
        const Bounds box = shades.boundingBox ? tightBounds(outline, {}) : Bounds{0, 0, 1, 1};
        if (!(box.width() > 0 && box.height() > 0)) return otherwise();
        choice.painted = true;
        choice.seeThrough = shades.seeThrough || opacity < 1;
        choice.colour = hexName(shades.middle);
        choice.name = "gradient " + choice.colour;
    } else if (name == "pattern") {
        choice.painted = true;
        choice.seeThrough = opacity < 1;
        choice.colour = "#808080";
        choice.name = "pattern";
        choice.pattern = found->second;
    } else {
        choice = otherwise();
        if (name.empty()) {
            m_notes.add(paint.server.empty() ? Issue::External : Issue::Broken, "#" + paint.server);
        } else if (!choice.painted) {
            m_notes.add(Issue::PaintServer, name);
        }
    }
    return choice;
}

/// The element and those that it takes over attributes and children from, nearest first.
std::vector<pugi::xml_node> SceneBuilder::templateChain(const pugi::xml_node& node)
{
    std::vector<pugi::xml_node> chain;
    for (pugi::xml_node step = node; step && chain.size() < kTemplateSteps;) {
        if (std::find(chain.begin(), chain.end(), step) != chain.end()) break;
        chain.push_back(step);
        m_budget.elements(1);
        const std::string_view href = hrefOf(step);
        const auto next = m_ids.find(href.substr(std::min<std::size_t>(1, href.size())));
        step = startsWith(href, "#") && next != m_ids.end() ? next->second : pugi::xml_node();
    }
    return chain;
}

SceneBuilder::Gradient SceneBuilder::gradient(const std::string& id, const pugi::xml_node& node)
{
    const auto known = m_gradients.find(id);
    if (known != m_gradients.end()) return known->second;
    Gradient out;
    std::vector<Stop> stops;
    bool unitsKnown = false;
    const std::vector<pugi::xml_node> chain = templateChain(node);
    if (shinesFromOutside(chain)) m_notes.add(Issue::Focus);
    for (const pugi::xml_node& step : chain) {
        const std::string_view units = attributeOf(step, "gradientUnits");
        if (!unitsKnown && !units.empty()) {
            unitsKnown = true;
            out.boundingBox = units != "userSpaceOnUse";
        }
        if (!stops.empty()) continue;
        for (const pugi::xml_node child : step.children()) {
            if (svgName(child) != "stop" || !m_budget.elements(1)) continue;
            const Style style = styleOf(child, treeStyle(step), m_sheet, m_budget);
            Colour colour = style.stopCurrentColour ? style.color : style.stopColor;
            colour.alpha *= style.stopOpacity;
            const double floor = stops.empty() ? 0 : stops.back().offset;
            stops.push_back(
                {std::max(floor, std::clamp(share(attributeOf(child, "offset")).value_or(0), 0.0, 1.0)),
                 colour});
        }
    }
    const auto clear = [](const Stop& stop) { return stop.colour.alpha == 0; };
    const auto solid = [](const Stop& stop) { return stop.colour.alpha == 1; };
    out.painted = !std::all_of(stops.begin(), stops.end(), clear);
    out.seeThrough = !std::all_of(stops.begin(), stops.end(), solid);
    if (out.painted) out.middle = middleOf(stops);
    m_gradients.emplace(id, out);
    return out;
}

}  // namespace lidwright::svg
