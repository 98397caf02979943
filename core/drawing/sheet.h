#pragma once

#include "core/base/sentence.h"
#include "core/geometry/region.h"

#include <string>
#include <variant>
#include <vector>

namespace lidwright {

/// Line kinds as ISO 128-2 uses them: visible edges wide, the rest narrow.
enum class LineKind {
    Visible,  ///< continuous wide
    Narrow,   ///< continuous narrow: dimension, extension, leader, hatching
    Hidden,   ///< dashed narrow 12-3
    Centre,   ///< long-dashed dotted narrow 24-3-0.5-3
    Phantom,  ///< long-dashed double-dotted narrow: adjacent parts
    Cut,      ///< continuous, the line to saw or cut to
    Mark,     ///< continuous narrow: registration, rulers
    Frame,    ///< continuous, 0.7 mm: a sheet's border (ISO 5457)
};

/// What an area is, for its tint, hatch and grain.
enum class FillKind {
    Paper,
    Wood,        ///< grain along the sheet's x
    WoodAcross,  ///< grain along the sheet's y
    WoodEnd,     ///< cut across the grain
    CutThrough,
    Engraved,
    Bridge,
    Fretboard,
    Backing,
    Block,
    Warning
};

struct Stroke {
    std::vector<Point> points;
    bool closed = false;
    LineKind kind = LineKind::Visible;
};
struct Fill {
    /// One ring is painted as its own polygon. Cut-outs come as later fills over the wood, never as holes of
    /// it.
    Ring ring;
    FillKind kind = FillKind::Wood;
};
enum class Anchor { Left, Middle, Right };
struct Text {
    Point at;             ///< base line
    std::string words;    ///< UTF-8
    double height = 2.5;  ///< capital height, mm on paper (ISO 3098: 2.5 3.5 5 7)
    double angle = 0;     ///< degrees counter-clockwise
    Anchor anchor = Anchor::Middle;
    bool boxed = false;  ///< stands on a piece of bare paper, to be read over what lies below
};
/// A linear dimension: extension lines from a and b, the dimension line `offset` mm beside (positive: left of
/// a->b).
struct Dimension {
    Point a, b;
    double offset = 10;
    std::string words;    ///< the measure as shown
    std::string key;      ///< parameter that is edited there; empty when derived
    double height = 2.5;  ///< of the words, mm on paper
    /// How much farther than a and b the extension lines reach, away from the dimension line, drawing mm.
    double reachA = 0, reachB = 0;
    /// Middle of the words along a->b from the line's middle, drawing mm. At 0 words that are too wide for
    /// the line go beside it by themselves.
    double shift = 0;
    bool boxed = false;               ///< the words as in Text::boxed
    bool lineA = true, lineB = true;  ///< false where another dimension's extension line runs already
    /// American practice: the line is broken for the words and ends in arrowheads (ASME Y14.5), not in
    /// oblique strokes with the words above (ISO 129-1).
    bool american = false;
};

struct Element {
    std::string part;   ///< "bridge", "art.1", "" for furniture; what a click selects
    std::string layer;  ///< "lid", "artwork", "neck", "dimensions" ...
    std::variant<Stroke, Fill, Text, Dimension> what;
};

/// A drawing in millimetres, y up, elements in painting order. Composed once; screen, paper and files paint
/// it.
struct Sheet {
    std::string title;
    Bounds extent;
    std::vector<Element> elements;
    /// Drawing millimetres per paper millimetre, 1 at full size: what line widths, dashes and text heights
    /// are multiplied by where the sheet is painted at the size of its numbers.
    double paper = 1;
};

/// The lines and texts that a dimension consists of (ISO 129-1), for painters that draw plain lines:
/// extension lines, the dimension line, an oblique stroke at each end, the words above the line, to be read
/// from below or from the right; by American practice arrowheads and the words within the line. `paper` is
/// the number of drawing millimetres per paper millimetre (1 at full size).
std::vector<Element> dimensionElements(const Dimension& dimension, const std::string& part, double paper);

/// Where the words of a dimension stand.
Text dimensionText(const Dimension& dimension, double paper);

/// All that the element covers, texts by their estimated width, without half the line width.
Bounds elementBounds(const Element& element, double paper);

/// The element moved by `by`.
Element moved(Element element, Point by);

/// Line width in mm on paper by kind (ISO 128-2 group 0.5 for A4 to A2: wide 0.5, narrow 0.25).
double lineWidth(LineKind kind);
/// Dash pattern in mm on paper (dash, gap, dash, gap ...), empty for continuous lines.
std::vector<double> dashPattern(LineKind kind);

/// "visible", "hidden" ...: the words that name kinds in files.
const char* word(LineKind kind);
const char* word(FillKind kind);

}  // namespace lidwright
