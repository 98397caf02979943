#include "core/io/svg/svg_style.h"

#include "core/io/svg/svg_property.h"
#include "core/io/svg/svg_scan.h"

namespace lidwright::svg {

Style inherited(const Style& parent)
{
    const Style initial;
    Style style = parent;
    style.displayed = initial.displayed;
    style.opacity = initial.opacity;
    style.clipPath.clear();
    style.mask.clear();
    style.filter.clear();
    style.overflowVisible = initial.overflowVisible;
    style.fixedWidth = initial.fixedWidth;
    style.stopColor = initial.stopColor;
    style.stopCurrentColour = initial.stopCurrentColour;
    style.stopOpacity = initial.stopOpacity;
    style.baselineShift = initial.baselineShift;
    style.transform.reset();
    style.geometry.clear();
    return style;
}

bool applyProperty(Style& style, const Style& parent, std::string_view name, std::string_view value)
{
    if (name == "marker") {
        const bool start = applyProperty(style, parent, "marker-start", value);
        const bool middle = applyProperty(style, parent, "marker-mid", value);
        return applyProperty(style, parent, "marker-end", value) && start && middle;
    }
    const Property* property = findProperty(name);
    if (!property) return false;
    static const Style initial;
    if (value == "inherit") {
        property->copy(style, parent);
    } else if (value == "initial") {
        property->copy(style, initial);
    } else if (value == "unset") {
        property->copy(style, property->inherited ? parent : initial);
    } else {
        // These two are steps from what is inherited, whatever a weaker rule has set since.
        if (value == "bolder" || value == "lighter") property->copy(style, parent);
        return property->set(style, value);
    }
    return true;
}

Style styleOf(const pugi::xml_node& node, const Style& parent, const StyleSheet& sheet, Budget& budget)
{
    Style style = inherited(parent);
    std::string_view inlineText;
    for (const pugi::xml_attribute attribute : node.attributes()) {
        const std::string_view name = attribute.name();
        if (name == "style") {
            inlineText = attribute.value();
        } else if (isPresentationAttribute(name)) {
            applyProperty(style, parent, name, trimmed(attribute.value()));
        }
    }
    const auto blocks = sheet.blocksFor(node, budget);
    const std::vector<Declaration> own = parseDeclarations(inlineText);
    bool anyImportant = false;
    const auto apply = [&](const std::vector<Declaration>& list, bool important) {
        for (const Declaration& d : list) {
            anyImportant |= d.important;
            if (d.important != important) continue;
            if (isGeometryProperty(d.property)) {
                style.geometry.emplace_back(d.property, d.value);
            } else {
                applyProperty(style, parent, d.property, d.value);
            }
        }
    };
    for (const auto* block : blocks)
        apply(*block, false);
    apply(own, false);
    if (anyImportant) {
        for (const auto* block : blocks)
            apply(*block, true);
        apply(own, true);
    }
    // Percent and em of a font size refer to the parent's; kept in user units from here on.
    if (style.fontSize.unit != Unit::User) {
        LengthContext context;
        context.fontSize = parent.fontSize.value;
        context.viewportWidth = context.viewportHeight = parent.fontSize.value;
        style.fontSize = {context.user(style.fontSize, Axis::X), Unit::User};
    }
    // Those of letters and words refer to the font size; percent of nothing that is known here.
    for (Length* spacing : {&style.letterSpacing, &style.wordSpacing}) {
        if (spacing->unit == Unit::User) continue;
        LengthContext context;
        context.fontSize = style.fontSize.value;
        *spacing = {context.user(*spacing, Axis::X), Unit::User};
    }
    return style;
}

std::optional<Reference> parseUrl(std::string_view text)
{
    text = trimmed(text);
    if (!startsWith(lowered(text.substr(0, 4)), "url(")) return std::nullopt;
    const std::size_t end = text.find(')');
    if (end == text.npos) return std::nullopt;
    std::string_view inside = trimmed(text.substr(4, end - 4));
    if (inside.size() >= 2 && (inside.front() == '"' || inside.front() == '\'') &&
        inside.back() == inside.front()) {
        inside = trimmed(inside.substr(1, inside.size() - 2));
    }
    if (startsWith(inside, "#")) return Reference{std::string(inside.substr(1)), false};
    return Reference{std::string(inside), true};
}

}  // namespace lidwright::svg
