#include "core/base/units.h"
#include "core/drawing/template_views.h"
#include "core/materials/material.h"
#include "core/solvers/lists/cut_pieces.h"
#include "core/solvers/neck_bow.h"

#include <algorithm>

namespace lidwright {
namespace {

// All in mm on paper; common practice, no source.
constexpr double kOver = 4;     // centre lines and the lid beyond the bridge
constexpr double kBeside = 10;  // dimension lines from the part, as of DimensionRows
constexpr double kDetail = 8;   // least width of the groove in its detail
constexpr double kLid = 8;      // of the lid beside the bridge

/// One string over the bridge: x along the saddle line from the bass end.
struct BridgeGroove {
    std::size_t string = 0;
    double x = 0;
    double width = 0;
    double aside = 0;  ///< how much the string goes to the treble side, per mm across the bridge to the tail
};

/// The bridge in its own straight frame: the bass end at 0, y over the saddle line to the head side.
class BridgeFrame {
public:
    explicit BridgeFrame(const ViewInput& in) : m_plan(in.plan)
    {
        const Layout& l = in.layout;
        const double a = radians(m_plan.bridge.angle);
        m_across = {-std::sin(a), std::cos(a)};
        m_back = {std::cos(a), std::sin(a)};
        m_from = l.saddleFrom;
        for (const Point p : l.bridgeOutline)
            outline.push_back(own(p));
        saddle = {own(l.saddleFrom), own(l.saddleTo)};
        neck = own({l.saddleX, l.neckY});
        for (std::size_t i = l.strings.size(); i-- > 0;) {
            const Point run = l.strings[i].second - l.strings[i].first;
            const double back = dot(run, m_back);
            grooves.push_back({i, own(l.strings[i].second).x, m_plan.stringSet[i].gauge,
                               back > 0 ? dot(run, m_across) / back : 0});
        }
        std::stable_sort(grooves.begin(), grooves.end(),
                         [](const BridgeGroove& a1, const BridgeGroove& b1) { return a1.x < b1.x; });
    }

    Ring outline;
    Polyline saddle;
    Point neck;                         ///< where the neck's centre line crosses the saddle line
    std::vector<BridgeGroove> grooves;  ///< from the bass side

private:
    const Plan& m_plan;
    Point m_across, m_back, m_from;

    Point own(Point p) const { return {dot(p - m_from, m_across), -dot(p - m_from, m_back)}; }
};

void drawPlan(ViewPen& pen, const BridgeFrame& bridge)
{
    const Bounds b = bounds(bridge.outline);
    pen.outline("bridge", "outline", bridge.outline, LineKind::Cut);
    pen.line("bridge", "saddle", {bridge.saddle[0] - Point{kOver, 0}, bridge.saddle[1] + Point{kOver, 0}},
             LineKind::Centre);
    pen.line("neck", "centre", {{bridge.neck.x, b.minY - kOver}, {bridge.neck.x, b.maxY + kOver}},
             LineKind::Centre);
    std::vector<PlacedWords> places{{0, "bass end"}};
    const double line = b.maxY + kBeside;
    for (const BridgeGroove& groove : bridge.grooves) {
        const auto at = [&](double y, double side) { return Point{groove.x - y * groove.aside + side, y}; };
        const double half = groove.width / 2;
        pen.outline("bridge", "slots",
                    {at(b.minY, -half), at(b.minY, half), at(b.maxY, half), at(b.maxY, -half)},
                    LineKind::Narrow);
        // From the saddle line, where the measure is taken.
        pen.line("bridge", "running", {{groove.x, 0}, {groove.x, line + 1}}, LineKind::Narrow);
        places.push_back({groove.x, std::to_string(groove.string + 1) + ": " + pen.words(groove.x)});
    }
    addRunning(pen, "bridge", 0, places, line, Side::Above);
    DimensionRows below(Side::Below, b.minY, 1);
    pen.row(below, "bridge", {b.minX, b.minY}, {b.maxX, b.minY}, "");
    pen.row(below, "bridge", {b.minX, b.minY}, {bridge.neck.x, b.minY}, "");
    pen.add(below);
    // Words may run out beyond a short bridge.
    DimensionRows right(Side::Right, pen.extent().maxX, 1);
    pen.row(right, "bridge", {b.maxX, b.minY}, {b.maxX, b.maxY}, "");
    pen.row(right, "bridge", {b.maxX, 0}, {b.maxX, b.maxY}, "");
    pen.add(right);
}

/// Seen from the fretboard, the bass end at the left.
void drawFront(ViewPen& pen, const BridgeFrame& bridge, const ViewInput& in)
{
    const double length = in.plan.bridge.length, height = in.layout.bridgeZ.high;
    const double top = height + nutOverStrings(in.plan);
    pen.outline("bridge", "front", {{0, 0}, {length, 0}, {length, height}, {0, height}}, LineKind::Cut);
    pen.line("bridge", "left-for-grooves", {{0, height}, {0, top}, {length, top}, {length, height}},
             LineKind::Phantom);
    pen.line("lid", "lid", {{0, 0}, {-kLid, 0}}, LineKind::Phantom);
    pen.line("lid", "lid", {{length, 0}, {length + kLid, 0}}, LineKind::Phantom);
    for (const BridgeGroove& groove : bridge.grooves)
        pen.line("bridge", "grooves", RoundGroove{groove.x, groove.width, height, top}.line(1),
                 LineKind::Cut);
    DimensionRows right(Side::Right, length + kLid, 1);
    pen.row(right, "bridge", {length, 0}, {length, height}, "");
    pen.add(right);
}

/// Seen from the bass end, the head at the left.
void drawEnd(ViewPen& pen, const ViewInput& in)
{
    const double half = in.plan.bridge.width / 2, height = in.layout.bridgeZ.high;
    const double top = height + nutOverStrings(in.plan);
    pen.outline("bridge", "end", {{-half, 0}, {half, 0}, {half, height}, {-half, height}}, LineKind::Cut);
    pen.line("bridge", "saddle", {{0, -kOver}, {0, top + kOver}}, LineKind::Centre);
    pen.line("lid", "lid", {{-half, 0}, {-half - kLid, 0}}, LineKind::Phantom);
    pen.line("lid", "lid", {{half, 0}, {half + kLid, 0}}, LineKind::Phantom);
}

/// The thickest string's groove, enlarged so that its measures can be seen.
const BridgeGroove* thickest(const BridgeFrame& bridge)
{
    const auto most =
        std::max_element(bridge.grooves.begin(), bridge.grooves.end(),
                         [](const BridgeGroove& a, const BridgeGroove& b) { return a.width < b.width; });
    return most == bridge.grooves.end() ? nullptr : &*most;
}

int enlargement(double width)
{
    for (const int scale : {2, 5, 10, 20})
        if (scale * width >= kDetail) return scale;
    return 50;
}

void drawDetail(ViewPen& pen, const BridgeGroove& groove, const ViewInput& in)
{
    const int times = enlargement(groove.width);
    const double scale = times, w = scale * groove.width, depth = scale * nutOverStrings(in.plan);
    // The groove's floor is 0 here, the wood is shown as far as it says something.
    const double side = std::max(w, 14.0), under = std::max(w / 2, 10.0);
    const Polyline line = RoundGroove{0, groove.width, 0, depth / scale}.line(scale);
    pen.line("bridge", "detail", {{-side, -under}, {-side, depth}, line.front()}, LineKind::Visible);
    pen.line("bridge", "detail", line, LineKind::Visible);
    pen.line("bridge", "detail", {line.back(), {side, depth}, {side, -under}}, LineKind::Visible);
    pen.outline("strings", "strings", circleRing({0, w / 2}, w / 2), LineKind::Phantom);
    pen.line("bridge", "floor", {{-side, 0}, {side, 0}}, LineKind::Narrow);
    DimensionRows above(Side::Above, std::max(w, depth), 1);
    above.add("bridge", {-w / 2, w / 2}, {w / 2, w / 2}, gaugeWords(groove.width, in.options.style), "");
    pen.add(above);
    // Words that run out beside the line above.
    DimensionRows right(Side::Right, pen.extent().maxX, 1);
    right.add("bridge", {side, 0}, {side, depth}, gaugeWords(nutOverStrings(in.plan), in.options.style), "");
    pen.add(right);
    pen.text("bridge", "words", {0, -under - 5},
             "floor " + pen.words(in.layout.bridgeZ.high) + " over the lid", 2.5, Anchor::Middle);
    addViewName(pen, "bridge", "String " + std::to_string(groove.string + 1) + ", " + scaleWords(times));
}

SheetTable grooveTable(const BridgeFrame& bridge, const ViewInput& in)
{
    ViewPen words(View::Top, false, in);
    SheetTable table;
    table.heads = {"String", "Note", "Groove width", "From bass end", "To the next"};
    for (std::size_t i = 0; i < bridge.grooves.size(); ++i) {
        const BridgeGroove& groove = bridge.grooves[i];
        table.rows.push_back(
            {std::to_string(groove.string + 1),
             spoken(Measure{in.plan.stringSet[groove.string].pitch, Quantity::Pitch}, in.options.style),
             gaugeWords(groove.width, in.options.style), words.words(groove.x),
             i + 1 < bridge.grooves.size() ? words.words(bridge.grooves[i + 1].x - groove.x) : ""});
    }
    return table;
}

std::string standsOn(const ViewInput& in)
{
    return neckBow(in.plan, in.layout).bridgeOnNeck
               ? "It stands on the lid, over the stick that bears it."
               : "It stands on the lid alone: the stick does not bear it.";
}

std::vector<NoteLine> notes(const BridgeFrame& bridge, const ViewInput& in)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    const UnitStyle& style = in.options.style;
    const auto mm = [&](double value) { return wholeLength(value, style); };
    std::vector<NoteLine> out{
        {plan.sheet.title, 5},
        {"Bridge, full size.", 3.5},
        {materialName(plan.bridge.wood) + ", grain along its length. " + unitNote(style) + ".", 2.5},
        {"The saddle line, not an edge of the bridge, stands " + mm(l.saddleX - l.nutEdgeX) +
             " from the nut's front edge, measured on the neck's centre line.",
         3.5}};
    if (plan.bridge.angle != 0)
        out.push_back({"The bridge stands turned by " +
                           spoken(Measure{std::abs(plan.bridge.angle), Quantity::Angle}, style) + ", its " +
                           (plan.bridge.angle > 0 ? "treble" : "bass") +
                           " end nearer to the head; it is drawn straight.",
                       2.5});
    out.push_back(
        {"Above: the head side up, the bass end at the left, upright the neck's centre line. Front: seen "
         "from the fretboard. End: seen "
         "from the bass end, the head at the left.",
         2.5});
    out.push_back(
        {"Outline: saw outside the line, leave the line and plane down to it. Fit the foot to the lid "
         "before the height is set. " +
             standsOn(in),
         2.5});
    out.push_back({"Height " + mm(l.bridgeZ.high) +
                       " from the lid's top to the strings' undersides, a saddle that stands out counted in.",
                   2.5});
    out.push_back(
        {"Without grooves the top ends at the whole line. For grooves leave it " +
             gaugeWords(nutOverStrings(plan), style) +
             " higher, half the thickest string (double-dotted; common practice, no source), and file "
             "each as wide as its string down to the whole line.",
         2.5});
    out.push_back(
        {"Slope the top down to both edges, so that the strings touch only on the saddle line.", 2.5});
    const double length = plan.bridge.length;
    const bool beyond = std::any_of(bridge.grooves.begin(), bridge.grooves.end(), [&](const BridgeGroove& g) {
        return g.x - g.width / 2 < 0 || g.x + g.width / 2 > length;
    });
    if (beyond) out.push_back({"Not every string lies on the bridge: change the plan before sawing.", 3.5});
    out.push_back({"Saw and files: work held in a vise, eye protection, a mask against dust.", 2.5});
    return out;
}

}  // namespace

Sheet bridgeTemplate(const ViewInput& in)
{
    const BridgeFrame bridge(in);
    ViewPen pen(View::Top, false, in), front(View::Top, false, in), end(View::Top, false, in);
    ViewPen table(View::Top, false, in), detail(View::Top, false, in);
    drawPlan(pen, bridge);
    addViewName(pen, "bridge", "Above, 1 : 1", GrainShown::Yes);
    drawFront(front, bridge, in);
    addViewName(front, "bridge", "Front, 1 : 1");
    drawEnd(end, in);
    addViewName(end, "bridge", "End, 1 : 1");
    placeRight(front, end);
    stackBelow(pen, front);
    table.addSheetElements(tableElements("bridge", grooveTable(bridge, in)));
    if (const BridgeGroove* groove = thickest(bridge)) drawDetail(detail, *groove, in);
    placeBesideOrBelow(table, detail);
    stackFlush(pen, table, 0);
    addNotes(pen, 0, wrapped(notes(bridge, in), notesWidth(pen.extent().width())));
    return templateOf(pen, in.plan.sheet.title + ": bridge");
}

}  // namespace lidwright
