#pragma once

#include "core/geometry/region.h"
#include "core/geometry/transform.h"
#include "core/io/svg/svg_colour.h"
#include "core/io/svg/svg_css.h"
#include "core/io/svg/svg_length.h"

#include <pugixml.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace lidwright::svg {

/// What fill or stroke paint with.
struct Paint {
    enum class Kind { None, Colour, CurrentColour, Server, ContextFill, ContextStroke };
    Kind kind = Kind::None;
    Colour colour;       ///< for Kind::Colour
    std::string server;  ///< id that url(#id) names
    /// What is painted where the server does not exist (None, Colour or CurrentColour).
    Kind fallback = Kind::None;
    Colour fallbackColour;

    bool operator==(const Paint&) const = default;
};

enum class Visibility { Visible, Hidden };
enum class TextAnchor { Start, Middle, End };
/// Which height of the letters stands on the text's y.
enum class Baseline { Alphabetic, Middle, Central, Top, Bottom, Other };

/// The properties that matter for outlines, with their initial values.
struct Style {
    // Inherited.
    Paint fill{Paint::Kind::Colour, {}, {}, Paint::Kind::None, {}};
    Paint stroke;
    Colour color;
    double fillOpacity = 1;
    double strokeOpacity = 1;
    FillRule fillRule = FillRule::NonZero;
    FillRule clipRule = FillRule::NonZero;
    Length strokeWidth{1, Unit::User};
    Cap cap = Cap::Butt;
    Join join = Join::Miter;
    double miterLimit = 4;
    std::vector<Length> dashes;
    Length dashOffset;
    std::string fontFamily;           ///< as written; empty where nothing was
    Length fontSize{16, Unit::User};  ///< always in user units once computed
    int fontWeight = 400;
    double fontStretch = 100;  ///< %
    bool italic = false, smallCapitals = false;
    Length letterSpacing, wordSpacing;  ///< always in user units once computed
    TextAnchor textAnchor = TextAnchor::Start;
    bool leftToRightLines = true;    ///< writing-mode
    bool leftToRightLetters = true;  ///< direction
    Baseline baseline = Baseline::Alphabetic;
    bool underline = false, overline = false, strikeOut = false;
    Visibility visibility = Visibility::Visible;
    std::string markerStart, markerMid, markerEnd;  ///< url(...) or empty
    bool strokeFirst = false;                       ///< paint-order puts the stroke below the fill
    bool markersFirst = false;                      ///< paint-order puts the markers below all

    // Not inherited.
    bool displayed = true;
    double opacity = 1;
    std::string clipPath, mask, filter;  ///< url(...) or empty
    bool overflowVisible = false;
    bool fixedWidth = false;  ///< vector-effect: non-scaling-stroke
    Colour stopColor;
    bool stopCurrentColour = false;
    double stopOpacity = 1;
    Length baselineShift;  ///< upwards, of the parent's base line
    std::optional<std::string> transform;
    /// Places and sizes that a style gives (SVG 2, section 7.1), by property name.
    std::vector<std::pair<std::string, std::string>> geometry;
};

/// The style that children begin with: what is inherited is kept, the rest is initial.
Style inherited(const Style& parent);

/// Sets one property from its text; `parent` answers "inherit". False where the property is not ours or
/// the text no value of it: the declaration then counts as not written.
bool applyProperty(Style& style, const Style& parent, std::string_view property, std::string_view value);

/// The element's own style: presentation attributes, then the sheet's rules, then its style attribute,
/// then what is !important in the same order (CSS Cascade 3; SVG 1.1, section 6.4).
Style styleOf(const pugi::xml_node& node, const Style& parent, const StyleSheet& sheet, Budget& budget);

/// The id in "url(#id)" with or without quotes; the whole address without the hash where it names
/// another file (`external` is then set).
struct Reference {
    std::string id;
    bool external = false;
};
std::optional<Reference> parseUrl(std::string_view text);

}  // namespace lidwright::svg
