#include "core/base/units.h"
#include "core/drawing/lettering.h"
#include "core/drawing/template_views.h"
#include "core/solvers/fret_wire.h"
#include "core/solvers/height_chain.h"

#include <algorithm>

namespace lidwright {
namespace {

// All in mm; common practice, no source.
constexpr double kTickUp = 6;        // strings' ticks from a strip's lower edge
constexpr double kMargin = 4;        // of a strip beyond the last mark or word
constexpr double kTabWidth = 14;     // of a depth gauge's tabs
constexpr double kShoulder = 10;     // beside them, lying on the board
constexpr double kBody = 18;         // height of a gauge's body
constexpr double kWedge = 160;       // greatest length of the action wedge
constexpr double kRunPerStep = 10;   // of the wedge for one step of its height, where it fits
constexpr double kGrip = 34;         // of the wedge
constexpr double kMetricStep = 0.5;  // of its height
constexpr double kInchStep = kMillimetresPerInch / 64;
constexpr double kDecimalInchStep = kMillimetresPerInch / 50;
constexpr double kOverAction = 1.5;  // that the wedge reaches beyond the planned action
constexpr double kCardError = 0.3;   // of an edge cut by hand
constexpr double kFoot = 20;         // of a height gauge, standing on the lid

struct StringPlace {
    std::size_t string = 0;
    double at = 0;  ///< from the bass end
};

/// A strip to be cut out whose lower edge is laid to the part: the ends of the part at 0 and `length`, a tick
/// for every string, its measure from the bass end and that to the next beside it.
void spacingStrip(ViewPen& pen, const std::string& part, const std::string& name, double length,
                  std::vector<StringPlace> places)
{
    std::stable_sort(places.begin(), places.end(),
                     [](const StringPlace& a, const StringPlace& b) { return a.at < b.at; });
    std::vector<PlacedWords> words{{0, "bass end"}, {length, "treble end"}};
    for (std::size_t i = 0; i < places.size(); ++i) {
        std::string own = std::to_string(places[i].string + 1) + ": " + pen.words(places[i].at);
        if (i + 1 < places.size()) own += ", next " + pen.words(places[i + 1].at - places[i].at);
        words.push_back({places[i].at, own});
    }
    Bounds reach = fanReach(words);
    reach.include(Point{0, 0});
    reach.include(Point{length, 0});
    for (const StringPlace& place : places)
        reach.include(Point{place.at, 0});
    const double left = reach.minX - kMargin;
    const double right = std::max(reach.maxX + kMargin, left + textWidth(name, 2.5) + 2 * kMargin);
    const double high = kTickUp + reach.maxY + 2 * kMargin + 2;
    pen.outline(part, "strip", {{left, 0}, {right, 0}, {right, high}, {left, high}}, LineKind::Cut);
    for (const double end : {0.0, length})
        pen.line(part, "ends", {{end, 0}, {end, kTickUp}}, LineKind::Visible);
    for (const StringPlace& place : places)
        pen.line(part, "ticks", {{place.at, 0}, {place.at, kTickUp}}, LineKind::Mark);
    addFan(pen, part, words, kTickUp, Side::Above);
    pen.text(part, "words", {left + kMargin, high - kMargin}, name, 2.5, Anchor::Left);
}

void nutStrip(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    const double width = in.plan.fretboard.widthAtNut;
    std::vector<StringPlace> places;
    for (std::size_t i = 0; i < l.strings.size(); ++i)
        places.push_back({i, l.strings[i].first.y - l.neckY + width / 2});
    spacingStrip(pen, "scale", l.fretboardOutline.empty() ? "nut" : "nut, edges of the fretboard", width,
                 std::move(places));
    addViewName(pen, "scale", "Strings at the nut");
}

void saddleStrip(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    const Point along = l.saddleTo - l.saddleFrom;
    std::vector<StringPlace> places;
    for (std::size_t i = 0; i < l.strings.size(); ++i)
        places.push_back({i, dot(l.strings[i].second - l.saddleFrom, (1 / length(along)) * along)});
    spacingStrip(pen, "bridge", "saddle, ends of the bridge", length(along), std::move(places));
    addViewName(pen, "bridge", "Strings along the saddle line");
}

/// One tab as long as the slot is deep, the other as the blade stands out; the shoulders lie on the board.
void depthGauge(ViewPen& pen, const FretSlot& slot, const UnitStyle& style)
{
    const double d = slot.depth, b = slot.bladeProjection, far = 2 * (kTabWidth + kShoulder) + kShoulder;
    const double low = kShoulder, high = far - kShoulder;
    pen.outline("frets", "depth",
                {{0, 0},
                 {low, 0},
                 {low, -d},
                 {low + kTabWidth, -d},
                 {low + kTabWidth, 0},
                 {far, 0},
                 {far, kBody},
                 {high, kBody},
                 {high, kBody + b},
                 {high - kTabWidth, kBody + b},
                 {high - kTabWidth, kBody},
                 {0, kBody}},
                LineKind::Cut);
    pen.text("frets", "words", {low + kTabWidth / 2, 3.5}, "slot", 2.5, Anchor::Middle);
    pen.text("frets", "words", {high - kTabWidth / 2, kBody - 5.5}, "blade", 2.5, Anchor::Middle);
    DimensionRows left(Side::Left, 0, 1), right(Side::Right, far, 1);
    left.add("frets", {low, -d}, {0, 0}, gaugeWords(d, style), "");
    right.add("frets", {far, kBody}, {high, kBody + b}, gaugeWords(b, style), "");
    pen.add(left);
    pen.add(right);
    addViewName(pen, "frets", "Depth of the fret slots");
}

double wedgeStep(const UnitStyle& style)
{
    switch (style.unit) {
        case LengthUnit::Millimetre:
            return kMetricStep;
        case LengthUnit::InchDecimal:
            return kDecimalInchStep;
        case LengthUnit::InchFraction:
            break;
    }
    return kInchStep;
}

/// Marks of a wedge are finer than the fractions that the plan may be content with.
UnitStyle fineStyle(UnitStyle style)
{
    style.denominator = 64;
    return style;
}

/// A wedge that stands on the octave's fret and is pushed in under a string from the side.
void actionWedge(ViewPen& pen, const ViewInput& in)
{
    const double action = in.plan.setup.action;
    const double step = wedgeStep(in.options.style);
    const double last = std::ceil((action + kOverAction) / step - 1e-9);
    const double first = action < step ? 0 : 1;
    const double run = std::min(kRunPerStep, kWedge / (last - first));
    const auto x = [&](double height) { return (height / step - first) * run; };
    const double end = x(last * step), grip = std::max(kBody, last * step);
    Ring ring{{0, 0}, {end + kGrip, 0}, {end + kGrip, grip}, {end, grip}, {end, last * step}};
    if (first > 0) ring.push_back({0, first * step});
    pen.outline("setup", "wedge", ring, LineKind::Cut);
    std::vector<PlacedWords> words;
    for (double k = std::max(first, 1.0); k <= last; ++k) {
        pen.line("setup", "ticks", {{x(k * step), 0}, {x(k * step), k * step}}, LineKind::Mark);
        words.push_back({x(k * step), dimensionWords(k * step, fineStyle(in.options.style))});
    }
    const double at = x(action);
    pen.line("setup", "wanted", {{at, 0}, {at, action}}, LineKind::Visible);
    words.push_back({at, gaugeWords(action, in.options.style)});
    pen.text("setup", "words", {end + kGrip / 2, grip - 5}, "action", 2.5, Anchor::Middle);
    addFan(pen, "setup", std::move(words), -1, Side::Below);
    addViewName(pen, "setup", "Action at the octave");
}

/// Stands on the lid beside the bridge; its arm lies over the crown.
void heightGauge(ViewPen& pen, const ViewInput& in)
{
    const double h = in.layout.bridgeZ.high, arm = in.plan.bridge.width / 2 + kFoot;
    pen.outline("bridge", "height",
                {{0, 0}, {kFoot, 0}, {kFoot, h}, {kFoot + arm, h}, {kFoot + arm, h + kBody}, {0, h + kBody}},
                LineKind::Cut);
    pen.text("bridge", "words", {3, h + kBody / 2 - 1.25}, "bridge", 2.5, Anchor::Left);
    DimensionRows right(Side::Right, kFoot + arm, 1);
    pen.row(right, "bridge", {kFoot, 0}, {kFoot + arm, h}, "");
    pen.add(right);
    addViewName(pen, "bridge", "Height of the bridge");
}

std::vector<NoteLine> notes(const ViewInput& in, const std::string& slots)
{
    const Layout& l = in.layout;
    const UnitStyle& style = in.options.style;
    const double octave = heightChain(in.plan, l).atOctave;
    return {
        {in.plan.sheet.title, 5},
        {"Gauges, full size.", 3.5},
        {unitNote(style) +
             ". Glue the sheet on stiff card or thin metal and cut along the middle of the lines. A gauge is "
             "only as exact as it is printed and cut, card hardly to " +
             gaugeWords(kCardError, style) + " (common practice, no source): check it with a rule.",
         2.5},
        {"Strings: lay the lower edge to the part, bass end to bass end, and prick the ticks through. "
         "Written: "
         "string from the treble side, distance from the bass end and to the next.",
         2.5},
        {slots, 2.5},
        {"Action: stand the wedge on the octave's fret or line, " +
             wholeLength(l.nutX + in.plan.scale.length / 2 - l.nutEdgeX, style) +
             " from the nut's front edge, push it in from the side until the string touches and count the "
             "marks, each " +
             gaugeWords(wedgeStep(style), style) + " higher. Bold: the action wanted, " +
             gaugeWords(in.plan.setup.action, style) + ". By the heights of this plan " +
             (octave > 0 ? "it comes to " + wholeLength(octave, fineStyle(style)) + "."
                         : "the strings would lie on the board."),
         2.5},
        {"Bridge: stand the foot on the lid in front of it; the arm just touches the crown, " +
             wholeLength(l.bridgeZ.high, style) + " up, where the strings' undersides lie.",
         2.5},
        {"Knife: cut away from the hand, along a steel rule; sheet metal has sharp edges, file them.", 2.5}};
}

}  // namespace

Sheet gaugeTemplates(const ViewInput& in)
{
    ViewPen pen(View::Top, false, in), saddle(View::Top, false, in), depth(View::Top, false, in);
    ViewPen wedge(View::Top, false, in), height(View::Top, false, in);
    nutStrip(pen, in);
    saddleStrip(saddle, in);
    placeBesideOrBelow(pen, saddle);
    const double left = pen.extent().minX;
    std::string slots;
    const bool wire = in.plan.frets.kind == FretKind::Wire && !in.layout.frets.lines.empty();
    if (!wire) {
        slots = "Fret slots: none, so there is no gauge for their depth.";
    } else if (const auto slot = plannedSlot(in.plan); slot.ok()) {
        slots = "Fret slots: with the tab in a slot the shoulders touch the board when it is " +
                gaugeWords(slot->depth, in.options.style) + " deep; it must be thinner than " +
                gaugeWords(in.plan.frets.slotWidth, in.options.style) +
                ". The other tab sets how far the saw's blade stands out under its stop.";
        depthGauge(depth, *slot, in.options.style);
    } else {
        slots = "Fret slots: no gauge, " + slot.error().where + ": " + slot.error().what + ".";
    }
    heightGauge(height, in);
    placeBesideOrBelow(depth, height);
    stackFlush(pen, depth, left);
    actionWedge(wedge, in);
    stackFlush(pen, wedge, left);
    addNotes(pen, left, wrapped(notes(in, slots), notesWidth(pen.extent().width())));
    return templateOf(pen, in.plan.sheet.title + ": gauges");
}

}  // namespace lidwright
