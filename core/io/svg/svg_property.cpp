#include "core/io/svg/svg_property.h"

#include "core/io/svg/svg_font.h"
#include "core/io/svg/svg_scan.h"

#include <algorithm>
#include <array>
#include <unordered_map>

namespace lidwright::svg {

namespace {

template <auto Member>
void copyMember(Style& to, const Style& from)
{
    to.*Member = from.*Member;
}

std::optional<Paint> parsePlainPaint(std::string_view text)
{
    Paint paint;
    const std::string word = lowered(text);
    if (word == "none") return paint;
    if (word == "currentcolor") {
        paint.kind = Paint::Kind::CurrentColour;
    } else if (word == "context-fill") {
        paint.kind = Paint::Kind::ContextFill;
    } else if (word == "context-stroke") {
        paint.kind = Paint::Kind::ContextStroke;
    } else {
        // A colour for printing may stand behind the one for the screen: "#cd853f icc-color(...)".
        const std::size_t icc = word.find("icc-color");
        const auto colour = parseColour(std::string_view(word).substr(0, icc));
        if (!colour) return std::nullopt;
        paint.kind = Paint::Kind::Colour;
        paint.colour = *colour;
    }
    return paint;
}

std::optional<Paint> parsePaint(std::string_view text)
{
    const auto url = parseUrl(text);
    if (!url) return parsePlainPaint(text);
    Paint paint;
    paint.kind = Paint::Kind::Server;
    paint.server = url->external ? std::string() : url->id;
    const auto fallback = parsePlainPaint(trimmed(text.substr(text.find(')') + 1)));
    if (fallback) {
        paint.fallback = fallback->kind;
        paint.fallbackColour = fallback->colour;
    }
    return paint;
}

template <auto Member>
bool setPaint(Style& style, std::string_view text)
{
    const auto paint = parsePaint(text);
    if (paint) style.*Member = *paint;
    return paint.has_value();
}

template <auto Member>
bool setOpacity(Style& style, std::string_view text)
{
    Scanner scan(text);
    const auto value = scan.number();
    const bool percent = scan.accept('%');
    if (!value || !scan.atEnd()) return false;
    style.*Member = std::clamp(percent ? *value / 100 : *value, 0.0, 1.0);
    return true;
}

template <auto Member>
bool setRule(Style& style, std::string_view text)
{
    if (text != "nonzero" && text != "evenodd") return false;
    style.*Member = text == "evenodd" ? FillRule::EvenOdd : FillRule::NonZero;
    return true;
}

template <auto Member>
bool setLength(Style& style, std::string_view text)
{
    const auto length = parseLength(text);
    if (length) style.*Member = *length;
    return length.has_value();
}

template <auto Member>
bool setSpace(Style& style, std::string_view text)
{
    return setSpacing(style.*Member, text);
}

template <auto Member>
bool setReference(Style& style, std::string_view text)
{
    if (text == "none") {
        (style.*Member).clear();
        return true;
    }
    if (!parseUrl(text)) return false;
    style.*Member = std::string(text);
    return true;
}

bool setColor(Style& style, std::string_view text)
{
    const auto colour = parseColour(text);
    if (colour) style.color = *colour;
    return colour.has_value();
}

bool setCap(Style& style, std::string_view text)
{
    if (text == "butt") {
        style.cap = Cap::Butt;
    } else if (text == "round") {
        style.cap = Cap::Round;
    } else if (text == "square") {
        style.cap = Cap::Square;
    } else {
        return false;
    }
    return true;
}

bool setJoin(Style& style, std::string_view text)
{
    if (text == "miter" || text == "miter-clip" || text == "arcs") {
        style.join = Join::Miter;
    } else if (text == "round") {
        style.join = Join::Round;
    } else if (text == "bevel") {
        style.join = Join::Bevel;
    } else {
        return false;
    }
    return true;
}

bool setMiterLimit(Style& style, std::string_view text)
{
    Scanner scan(text);
    const auto value = scan.number();
    if (!value || !scan.atEnd() || *value < 1) return false;
    style.miterLimit = *value;
    return true;
}

bool setStrokeWidth(Style& style, std::string_view text)
{
    const auto length = parseLength(text);
    if (!length || length->value < 0) return false;
    style.strokeWidth = *length;
    return true;
}

bool setDashes(Style& style, std::string_view text)
{
    if (text == "none") {
        style.dashes.clear();
        return true;
    }
    const auto list = parseLengths(text);
    if (!list) return false;
    // A negative length makes the whole list void: the line is solid (SVG 2, section 13.5.6).
    const bool negative =
        std::any_of(list->begin(), list->end(), [](const Length& length) { return length.value < 0; });
    style.dashes = negative ? std::vector<Length>() : *list;
    return true;
}

bool setVisibility(Style& style, std::string_view text)
{
    if (text != "visible" && text != "hidden" && text != "collapse") return false;
    style.visibility = text == "visible" ? Visibility::Visible : Visibility::Hidden;
    return true;
}

bool setDisplay(Style& style, std::string_view text)
{
    style.displayed = text != "none";
    return true;
}

bool setOverflow(Style& style, std::string_view text)
{
    style.overflowVisible = text == "visible" || text == "auto";
    return true;
}

bool setVectorEffect(Style& style, std::string_view text)
{
    style.fixedWidth = text.find("non-scaling-stroke") != text.npos;
    return true;
}

bool setStopColor(Style& style, std::string_view text)
{
    style.stopCurrentColour = lowered(text) == "currentcolor";
    if (style.stopCurrentColour) return true;
    const auto paint = parsePlainPaint(text);
    if (!paint || paint->kind != Paint::Kind::Colour) return false;
    style.stopColor = paint->colour;
    return true;
}

void copyStopColor(Style& to, const Style& from)
{
    to.stopColor = from.stopColor;
    to.stopCurrentColour = from.stopCurrentColour;
}

bool setTransform(Style& style, std::string_view text)
{
    style.transform = std::string(text);
    return true;
}

bool setPaintOrder(Style& style, std::string_view text)
{
    const std::vector<std::string_view> order = words(text);
    const auto place = [&](std::string_view word, std::size_t missing) {
        const auto at = std::find(order.begin(), order.end(), word);
        return at == order.end() ? missing : static_cast<std::size_t>(at - order.begin());
    };
    // What is not named follows in the usual order behind what is.
    style.strokeFirst = place("stroke", 4) < place("fill", 3);
    style.markersFirst = place("markers", 5) < std::min(place("fill", 3), place("stroke", 4));
    return true;
}

void copyPaintOrder(Style& to, const Style& from)
{
    to.strokeFirst = from.strokeFirst;
    to.markersFirst = from.markersFirst;
}

void copyDecoration(Style& to, const Style& from)
{
    to.underline = from.underline;
    to.overline = from.overline;
    to.strikeOut = from.strikeOut;
}

constexpr Property kProperties[] = {
    {"fill", true, setPaint<&Style::fill>, copyMember<&Style::fill>},
    {"stroke", true, setPaint<&Style::stroke>, copyMember<&Style::stroke>},
    {"color", true, setColor, copyMember<&Style::color>},
    {"fill-opacity", true, setOpacity<&Style::fillOpacity>, copyMember<&Style::fillOpacity>},
    {"stroke-opacity", true, setOpacity<&Style::strokeOpacity>, copyMember<&Style::strokeOpacity>},
    {"fill-rule", true, setRule<&Style::fillRule>, copyMember<&Style::fillRule>},
    {"clip-rule", true, setRule<&Style::clipRule>, copyMember<&Style::clipRule>},
    {"stroke-width", true, setStrokeWidth, copyMember<&Style::strokeWidth>},
    {"stroke-linecap", true, setCap, copyMember<&Style::cap>},
    {"stroke-linejoin", true, setJoin, copyMember<&Style::join>},
    {"stroke-miterlimit", true, setMiterLimit, copyMember<&Style::miterLimit>},
    {"stroke-dasharray", true, setDashes, copyMember<&Style::dashes>},
    {"stroke-dashoffset", true, setLength<&Style::dashOffset>, copyMember<&Style::dashOffset>},
    {"font", true, setFont, copyFont},
    {"font-family", true, setFontFamily, copyMember<&Style::fontFamily>},
    {"font-size", true, setFontSize, copyMember<&Style::fontSize>},
    {"font-weight", true, setFontWeight, copyMember<&Style::fontWeight>},
    {"font-stretch", true, setFontStretch, copyMember<&Style::fontStretch>},
    {"font-style", true, setFontStyle, copyMember<&Style::italic>},
    {"font-variant", true, setFontVariant, copyMember<&Style::smallCapitals>},
    {"letter-spacing", true, setSpace<&Style::letterSpacing>, copyMember<&Style::letterSpacing>},
    {"word-spacing", true, setSpace<&Style::wordSpacing>, copyMember<&Style::wordSpacing>},
    {"text-anchor", true, setTextAnchor, copyMember<&Style::textAnchor>},
    {"writing-mode", true, setWritingMode, copyMember<&Style::leftToRightLines>},
    {"direction", true, setDirection, copyMember<&Style::leftToRightLetters>},
    {"dominant-baseline", true, setBaseline, copyMember<&Style::baseline>},
    {"text-decoration", true, setTextDecoration, copyDecoration},
    {"text-decoration-line", true, setTextDecoration, copyDecoration},
    {"visibility", true, setVisibility, copyMember<&Style::visibility>},
    {"marker-start", true, setReference<&Style::markerStart>, copyMember<&Style::markerStart>},
    {"marker-mid", true, setReference<&Style::markerMid>, copyMember<&Style::markerMid>},
    {"marker-end", true, setReference<&Style::markerEnd>, copyMember<&Style::markerEnd>},
    {"paint-order", true, setPaintOrder, copyPaintOrder},
    {"display", false, setDisplay, copyMember<&Style::displayed>},
    {"opacity", false, setOpacity<&Style::opacity>, copyMember<&Style::opacity>},
    {"clip-path", false, setReference<&Style::clipPath>, copyMember<&Style::clipPath>},
    {"mask", false, setReference<&Style::mask>, copyMember<&Style::mask>},
    {"filter", false, setReference<&Style::filter>, copyMember<&Style::filter>},
    {"overflow", false, setOverflow, copyMember<&Style::overflowVisible>},
    {"vector-effect", false, setVectorEffect, copyMember<&Style::fixedWidth>},
    {"stop-color", false, setStopColor, copyStopColor},
    {"stop-opacity", false, setOpacity<&Style::stopOpacity>, copyMember<&Style::stopOpacity>},
    {"alignment-baseline", false, setBaseline, copyMember<&Style::baseline>},
    {"baseline-shift", false, setBaselineShift, copyMember<&Style::baselineShift>},
    {"transform", false, setTransform, copyMember<&Style::transform>},
};

}  // namespace

const Property* findProperty(std::string_view name)
{
    static const auto table = [] {
        std::unordered_map<std::string_view, const Property*> rows;
        for (const Property& row : kProperties)
            rows.emplace(row.name, &row);
        return rows;
    }();
    const auto row = table.find(name);
    return row == table.end() ? nullptr : row->second;
}

bool isPresentationAttribute(std::string_view name)
{
    // Browsers take the shorthand in style sheets only, whatever SVG 1.1 says.
    return name != "font" && findProperty(name) != nullptr;
}

bool isGeometryProperty(std::string_view name)
{
    constexpr std::array<std::string_view, 10> kNames{"x",  "y",  "width", "height", "r",
                                                      "rx", "ry", "cx",    "cy",     "d"};
    return std::find(kNames.begin(), kNames.end(), name) != kNames.end();
}

}  // namespace lidwright::svg
