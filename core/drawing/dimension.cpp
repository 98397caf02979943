#include "core/base/units.h"
#include "core/drawing/lettering.h"
#include "core/drawing/sheet.h"

namespace lidwright {
namespace {

// All in mm on paper. Gap and overrun are 8 narrow line widths (ISO 129-1, from memory).
constexpr double kExtensionGap = 2;
constexpr double kExtensionOverrun = 2;
constexpr double kTick = 3;         // length of the oblique stroke, common practice
constexpr double kTextGap = 0.9;    // words above their line, common practice
constexpr double kTextPad = 1.4;    // words to the extension lines beside them
constexpr double kLineOverrun = 1;  // of the dimension line beyond oblique strokes
// American arrowheads are three times as long as wide (ASME Y14.2); length: common practice.
constexpr double kArrow = 3;
constexpr double kArrowOutside = 2;  // clear of words that stand beside the line
constexpr double kArrowSlope = 1.0 / 6;

/// The frame of one dimension: along a->b, left of it, and how the words run.
struct Frame {
    Point along{1, 0};
    Point left{0, 1};
    Point textAlong{1, 0};
    Point textUp{0, 1};
    double span = 0;
    double width = 0;  // of the words
    double shift = 0;  // of their middle along a->b
    Point middle;      // of the dimension line
};

Frame frameOf(const Dimension& d, double paper)
{
    Frame f;
    f.span = distance(d.a, d.b);
    if (f.span > 0) f.along = (1 / f.span) * (d.b - d.a);
    f.left = {-f.along.y, f.along.x};
    // Read from below, or from the right where it stands upright.
    constexpr double kUpright = 1e-9;
    const bool turned = f.along.x < -kUpright || (std::abs(f.along.x) <= kUpright && f.along.y < 0);
    f.textAlong = turned ? -1.0 * f.along : f.along;
    f.textUp = {-f.textAlong.y, f.textAlong.x};
    f.width = textWidth(d.words, d.height) * paper;
    f.middle = 0.5 * (d.a + d.b) + d.offset * f.left;
    f.shift = d.shift;
    const bool fits = f.width + 2 * kTextPad * paper <= f.span;
    if (!fits && d.shift == 0)
        f.shift = (turned ? -1 : 1) * (f.span / 2 + (kTextPad + kLineOverrun) * paper + f.width / 2);
    return f;
}

Element along(const Frame& f, const std::string& part, double from, double to)
{
    return {part, "dimensions",
            Stroke{{f.middle + from * f.along, f.middle + to * f.along}, false, LineKind::Narrow}};
}

/// The dimension line as ISO 129-1 has it: whole, with an oblique stroke of 45 degrees at each end.
void addStrokeLine(const Frame& f, const std::string& part, double paper, std::vector<Element>& out)
{
    const double over = kLineOverrun * paper;
    const double from = std::min(-f.span / 2 - over, f.shift - f.width / 2);
    const double to = std::max(f.span / 2 + over, f.shift + f.width / 2);
    out.push_back(along(f, part, from, to));
    const Point slant = kTick / 2 * paper / std::sqrt(2.0) * (f.textAlong + f.textUp);
    for (const double end : {-f.span / 2, f.span / 2}) {
        const Point p = f.middle + end * f.along;
        out.push_back({part, "dimensions", Stroke{{p - slant, p + slant}, false, LineKind::Visible}});
    }
}

/// The same by American practice: broken for the words, an arrowhead at each end, which comes from outside
/// where there is no room between the ends.
void addArrowLine(const Frame& f, const std::string& part, double paper, std::vector<Element>& out)
{
    // Words within the line need their room beside the heads.
    const bool within = std::abs(f.shift) < f.span / 2;
    const double need = within ? f.width + 2 * std::abs(f.shift) + kTextPad * paper : 0.5 * kArrow * paper;
    const bool outside = f.span < need + 2 * kArrow * paper;
    const double arrow = (outside ? kArrowOutside : kArrow) * paper;
    const double half = f.span / 2 + (outside ? arrow : 0);
    const double wordsFrom = f.shift - f.width / 2 - kTextPad * paper / 2;
    const double wordsTo = f.shift + f.width / 2 + kTextPad * paper / 2;
    // Up to the words where they stand beside the line.
    const double from = wordsTo < -half ? wordsTo : -half, to = wordsFrom > half ? wordsFrom : half;
    if (wordsFrom > from && wordsTo < to) {
        out.push_back(along(f, part, from, wordsFrom));
        out.push_back(along(f, part, wordsTo, to));
    } else {
        out.push_back(along(f, part, from, to));
    }
    for (const double end : {-1.0, 1.0}) {
        const Point tip = f.middle + end * f.span / 2 * f.along;
        const Point back = tip + (outside ? end : -end) * arrow * f.along;
        const Point aside = kArrowSlope * arrow * f.left;
        out.push_back(
            {part, "dimensions", Stroke{{tip, back + aside, back - aside}, true, LineKind::Narrow}});
    }
}

}  // namespace

Text dimensionText(const Dimension& d, double paper)
{
    const Frame f = frameOf(d, paper);
    Text text;
    const double up = d.american ? -d.height / 2 : kTextGap;
    text.at = f.middle + f.shift * f.along + up * paper * f.textUp;
    text.words = d.words;
    text.height = d.height;
    text.angle = degrees(std::atan2(f.textAlong.y, f.textAlong.x));
    text.boxed = d.boxed;
    return text;
}

std::vector<Element> dimensionElements(const Dimension& d, const std::string& part, double paper)
{
    const Frame f = frameOf(d, paper);
    std::vector<Element> out;
    const auto line = [&](Point from, Point to, LineKind kind) {
        out.push_back({part, "dimensions", Stroke{{from, to}, false, kind}});
    };
    const double side = d.offset < 0 ? -1 : 1;
    const double away = std::abs(d.offset);
    const auto extension = [&](Point feature, double reach) {
        const double whole = away + reach;
        if (whole <= 0) return;
        const double gap = std::min(kExtensionGap * paper, whole / 2);
        line(feature + side * (gap - reach) * f.left,
             feature + side * (away + kExtensionOverrun * paper) * f.left, LineKind::Narrow);
    };
    if (d.lineA) extension(d.a, d.reachA);
    if (d.lineB) extension(d.b, d.reachB);

    if (d.american)
        addArrowLine(f, part, paper, out);
    else
        addStrokeLine(f, part, paper, out);
    out.push_back({part, "dimensions", dimensionText(d, paper)});
    return out;
}

}  // namespace lidwright
