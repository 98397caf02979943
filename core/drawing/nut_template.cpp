#include "core/base/units.h"
#include "core/drawing/template_views.h"
#include "core/geometry/arc.h"
#include "core/materials/material.h"
#include "core/solvers/lists/cut_pieces.h"
#include "core/solvers/piece_weights.h"

#include <algorithm>
#include <optional>

namespace lidwright {
namespace {

// All in mm on paper; common practice, no source.
constexpr double kCentreOver = 3;      // centre lines of the slots beyond the nut
constexpr double kBeside = 10;         // dimension lines from the part, as of DimensionRows
constexpr double kBoardShown = 6;      // of the fretboard beside the nut
constexpr double kLevelOver = 2;       // lines of the levels beyond the nut
constexpr double kLeastBetween = 0.7;  // between lines that run side by side, ISO 128
constexpr double kMostHigh = 60;       // and its height
constexpr double kSameHeight = 1e-6;

/// One string in the nut: x from the nut's bass end, all at full size.
struct NutSlot {
    std::size_t string = 0;
    double x = 0;
    double width = 0;
    double slope = 0;   ///< how much the string falls towards the head, per mm along the neck
    double aside = 0;   ///< and how much it goes to the treble side
    bool known = true;  ///< false where its post does not lie behind the nut
};

/// The nut as the plan has it; z over the stick's top.
struct NutShape {
    double length = 0;  ///< across the strings
    double height = 0;
    double floor = 0;     ///< of the slots at the front edge: the strings' undersides
    double boardTop = 0;  ///< 0 without a fretboard
    double fretTops = 0;
    std::vector<NutSlot> slots;  ///< from the bass side

    double x(const Layout& l, double y) const { return y - l.neckY + length / 2; }
};

std::optional<NutShape> nutShape(const ViewInput& in)
{
    const Layout& l = in.layout;
    const std::vector<CutPiece> pieces = cutPieces(in.plan, l);
    const auto piece =
        std::find_if(pieces.begin(), pieces.end(), [](const CutPiece& p) { return p.name == "Nut"; });
    if (piece == pieces.end()) return std::nullopt;
    NutShape nut;
    nut.length = piece->length;
    nut.height = piece->width;
    nut.floor = l.head.nutZ - l.neckZ.high;
    nut.boardTop = l.frets.boardTop - l.neckZ.high;
    nut.fretTops = l.frets.fretTops - l.neckZ.high;
    for (std::size_t i = l.strings.size(); i-- > 0;) {
        NutSlot slot{i, nut.x(l, l.strings[i].first.y), in.plan.stringSet[i].gauge, 0, 0, false};
        const auto& way = l.head.strings[i].way;
        if (way.size() > 1 && way[0].at.x - way[1].at.x > 0) {
            const double back = way[0].at.x - way[1].at.x;
            slot.slope = (way[0].z - way[1].z) / back;
            slot.aside = (way[1].at.y - way[0].at.y) / back;
            slot.known = true;
        }
        nut.slots.push_back(slot);
    }
    std::stable_sort(nut.slots.begin(), nut.slots.end(),
                     [](const NutSlot& a, const NutSlot& b) { return a.x < b.x; });
    return nut;
}

RoundGroove grooveOf(const NutShape& nut, const NutSlot& slot)
{
    return {slot.x, slot.width, nut.floor, nut.height};
}

/// Seen from the fretboard: bass left, treble right. `scale` times full size.
void drawFront(ViewPen& pen, const NutShape& nut, double scale, LineKind kind)
{
    const double w = scale * nut.length, h = scale * nut.height;
    pen.line("scale", "outline", {{0, h}, {0, 0}, {w, 0}, {w, h}}, kind);
    // The top edge stands between the slots; those that run into one another leave none.
    double from = 0;
    for (const NutSlot& slot : nut.slots) {
        const RoundGroove groove = grooveOf(nut, slot);
        const double half = groove.halfMouth();
        const double left = std::clamp(scale * (slot.x - half), 0.0, w);
        if (left > from) pen.line("scale", "top", {{from, h}, {left, h}}, kind);
        from = std::max(from, std::clamp(scale * (slot.x + half), 0.0, w));
        // Wide lines would fill a slot that is hardly wider than they are.
        pen.line("scale", "slots", groove.line(scale),
                 scale * slot.width < kLeastBetween + lineWidth(kind) ? LineKind::Cut : kind);
        pen.line("scale", "centre",
                 {{scale * slot.x, scale * nut.floor - 1}, {scale * slot.x, h + kCentreOver}},
                 LineKind::Centre);
    }
    if (from < w) pen.line("scale", "top", {{from, h}, {w, h}}, kind);
}

/// Seen from the bass end: head left, fretboard right, 0 at the front edge.
void drawEnd(ViewPen& pen, const NutShape& nut, const ViewInput& in, double scale, LineKind kind)
{
    const double t = scale * kNutWidth, h = scale * nut.height, front = scale * nut.floor;
    pen.outline("scale", "end", {{-t, 0}, {0, 0}, {0, h}, {-t, h}}, kind);
    const double board = scale * nut.boardTop;
    if (board > 0)
        pen.line("fretboard", "board", {{kBoardShown, 0}, {0, 0}, {0, board}, {kBoardShown, board}},
                 LineKind::Phantom);
    pen.line("neck", "board", {{-t - kBoardShown, 0}, {kBoardShown, 0}}, LineKind::Phantom);
    // The floors of the slots: the steepest and the flattest fall.
    const NutSlot *least = nullptr, *most = nullptr;
    for (const NutSlot& slot : nut.slots) {
        if (!slot.known) continue;
        if (least == nullptr || slot.slope < least->slope) least = &slot;
        if (most == nullptr || slot.slope > most->slope) most = &slot;
    }
    for (const NutSlot* slot : {least, most}) {
        if (slot == nullptr || (slot == most && most == least)) continue;
        pen.line("scale", "floors", {{0, front}, {-t, front - slot->slope * t}}, LineKind::Hidden);
        pen.line("strings", "strings",
                 {{-t, front - slot->slope * t}, {-t - kBoardShown, front - slot->slope * (t + kBoardShown)}},
                 LineKind::Narrow);
    }
    const auto& string = in.layout.strings.front();
    const double run = string.second.x - string.first.x;
    if (run > 0) {
        const double rise =
            (in.layout.bridgeZ.high - in.layout.neckRise(string.second.x) - in.layout.head.nutZ) / run;
        pen.line("strings", "strings", {{0, front}, {kBoardShown, front + rise * kBoardShown}},
                 LineKind::Narrow);
    }
}

/// Seen from above, head up: the front edge at 0.
void drawTop(ViewPen& pen, const NutShape& nut)
{
    pen.outline("scale", "above", {{0, 0}, {nut.length, 0}, {nut.length, kNutWidth}, {0, kNutWidth}},
                LineKind::Cut);
    for (const NutSlot& slot : nut.slots) {
        const double half = slot.width / 2, aside = slot.aside * kNutWidth;
        for (const double side : {-half, half})
            pen.line("scale", "slots-above", {{slot.x + side, 0}, {slot.x + side + aside, kNutWidth}},
                     LineKind::Narrow);
        const double over = slot.aside * kCentreOver;
        pen.line("strings", "centre",
                 {{slot.x, -kCentreOver}, {slot.x, 0}, {slot.x + aside + over, kNutWidth + kCentreOver}},
                 LineKind::Centre);
    }
}

/// The larger enlargement of ISO 5455 that leaves a view of that size on its page.
int enlargement(double length, double height)
{
    return 5 * length + 2 * kLevelOver <= kPageViews && 5 * height <= kMostHigh ? 5 : 2;
}

void enlargedEnd(ViewPen& pen, const NutShape& nut, const ViewInput& in)
{
    const int times = enlargement(kNutWidth, nut.height);
    drawEnd(pen, nut, in, times, LineKind::Visible);
    // Measures are those of the nut and not of its enlargement.
    DimensionRows under(Side::Below, 0, 1);
    under.add("scale", {-times * kNutWidth, 0}, {0, 0}, pen.words(kNutWidth), "");
    pen.add(under);
    // Words too wide for the thickness run out beside it.
    DimensionRows beside(Side::Right, pen.extent().maxX, 1);
    double before = 0;
    for (const double z : {nut.boardTop, nut.fretTops, nut.floor, nut.height}) {
        // One height once: a zero fret is as high as the slots' floors, a board of lines as its top.
        if (std::abs(z - before) > kSameHeight)
            beside.add("scale", {0, 0}, {0, times * z}, gaugeWords(z, in.options.style), "");
        before = z;
    }
    pen.add(beside);
    addViewName(pen, "scale", "End, " + scaleWords(times));
}

void enlargedFront(ViewPen& pen, const NutShape& nut)
{
    const int times = enlargement(nut.length, nut.height);
    const double scale = times, right = scale * nut.length;
    drawFront(pen, nut, scale, LineKind::Visible);
    const auto level = [&](double z) {
        if (z > 0 && z < nut.height)
            pen.line("scale", "levels", {{-kLevelOver, scale * z}, {right + kLevelOver, scale * z}},
                     LineKind::Narrow);
    };
    level(nut.boardTop);
    if (nut.fretTops > nut.boardTop) level(nut.fretTops);
    DimensionRows below(Side::Below, 0, 1);
    for (std::size_t i = 1; i < nut.slots.size(); ++i) {
        const double a = nut.slots[i - 1].x, b = nut.slots[i].x, z = scale * nut.floor;
        below.add("scale", {scale * a, z}, {scale * b, z}, pen.words(b - a), "");
    }
    pen.add(below);
    addViewName(pen, "scale", "Front, " + scaleWords(times));
}

void drawAll(ViewPen& pen, const NutShape& nut, const ViewInput& in)
{
    drawFront(pen, nut, 1, LineKind::Cut);
    std::vector<PlacedWords> places{{0, "bass end"}};
    for (const NutSlot& slot : nut.slots) {
        places.push_back({slot.x, std::to_string(slot.string + 1) + ": " + pen.words(slot.x)});
        pen.line("scale", "running",
                 {{slot.x, nut.height + kCentreOver + 0.5}, {slot.x, nut.height + kBeside + 1}},
                 LineKind::Narrow);
    }
    addRunning(pen, "scale", 0, places, nut.height + kBeside, Side::Above);
    DimensionRows below(Side::Below, 0, 1);
    pen.row(below, "scale", {0, 0}, {nut.length, 0}, "");
    pen.add(below);
    addViewName(pen, "scale", "Front, 1 : 1");
    ViewPen end(View::Top, false, in), large(View::Top, false, in), above(View::Top, false, in),
        front(View::Top, false, in);
    drawEnd(end, nut, in, 1, LineKind::Cut);
    addViewName(end, "scale", "End, 1 : 1");
    placeRight(pen, end);
    enlargedEnd(large, nut, in);
    placeBesideOrBelow(pen, large);
    drawTop(above, nut);
    addViewName(above, "scale", "Above, 1 : 1", GrainShown::Yes);
    enlargedFront(front, nut);
    placeBesideOrBelow(above, front);
    stackBelow(pen, above);
}

SheetTable slotTable(const NutShape& nut, const ViewInput& in)
{
    ViewPen words(View::Top, false, in);
    SheetTable table;
    table.heads = {"String", "Note", "Slot width", "From bass end", "To the next", "Lower at back"};
    for (std::size_t i = 0; i < nut.slots.size(); ++i) {
        const NutSlot& slot = nut.slots[i];
        const GuitarString& string = in.plan.stringSet[slot.string];
        table.rows.push_back({std::to_string(slot.string + 1),
                              spoken(Measure{string.pitch, Quantity::Pitch}, in.options.style),
                              gaugeWords(slot.width, in.options.style), words.words(slot.x),
                              i + 1 < nut.slots.size() ? words.words(nut.slots[i + 1].x - slot.x) : "",
                              slot.known ? gaugeWords(slot.slope * kNutWidth, in.options.style) : ""});
    }
    return table;
}

std::vector<NoteLine> notes(const NutShape& nut, const ViewInput& in)
{
    const Plan& plan = in.plan;
    const UnitStyle& style = in.options.style;
    const auto mm = [&](double value) { return wholeLength(value, style); };
    const bool zeroFret = plan.frets.zeroFret && plan.frets.kind == FretKind::Wire && plan.frets.number > 0;
    const bool frets = nut.fretTops > nut.boardTop;
    const std::string heights =
        "Over the stick's top: " +
        (nut.boardTop > 0 ? "fretboard " + gaugeWords(nut.boardTop, style) + ", " : std::string{}) +
        (frets ? "frets " + gaugeWords(nut.fretTops, style) + ", " : std::string{}) + "floors of the slots " +
        gaugeWords(nut.floor, style) + ", top " + gaugeWords(nut.height, style) + ".";
    std::vector<NoteLine> out{
        {materialName(plan.bridge.wood) + ", grain along its length, " + mm(kNutWidth) +
             " thick along the strings. " + unitNote(style) + ".",
         2.5},
        {"Front: from the fretboard, bass at the left. End: from the bass end, fretboard at the right. "
         "Above: "
         "head side up.",
         2.5},
        {"Blank: saw outside the line, leave the line and plane down to it. It stands on the stick's top, "
         "its "
         "front edge where the strings leave it.",
         2.5},
        {heights, 2.5},
        {"Slots: mark the middles, start with a fine saw, then file to the width in the table, the string's "
         "own. A file a little wider lets the string slide (common practice, no source).",
         2.5},
        {"File to the floor at the front edge and no deeper, " + gaugeWords(nutOverStrings(plan), style) +
             " below the top: half the thickest string. Toward the head it falls with the string, which then "
             "rests on the front edge; dashed: the flattest and the steepest fall.",
         2.5}};
    if (zeroFret)
        out.push_back(
            {"The zero fret carries the strings: file every slot until its string lies on that fret.", 3.5});
    else
        out.push_back({"Strings stand " + gaugeWords(in.layout.frets.nutOverFrets, style) + " over the " +
                           (frets ? "frets' tops" : "board") +
                           " at the front edge: stop short of it and finish with the strings on.",
                       3.5});
    if (in.layout.fretboardOutline.empty())
        out.push_back({"The plan has no fretboard: the nut stands on the bare stick.", 2.5});
    bool beyond = false, together = false, rises = false;
    for (std::size_t i = 0; i < nut.slots.size(); ++i) {
        const NutSlot& slot = nut.slots[i];
        beyond = beyond || slot.x - slot.width / 2 < 0 || slot.x + slot.width / 2 > nut.length;
        together =
            together || (i > 0 && slot.x - nut.slots[i - 1].x < (slot.width + nut.slots[i - 1].width) / 2);
        rises = rises || !slot.known || slot.slope <= 0;
    }
    if (beyond) out.push_back({"Not every string lies on the nut: change the plan before sawing.", 3.5});
    if (together) out.push_back({"Slots run into one another: change the plan before sawing.", 3.5});
    if (rises)
        out.push_back({"Not every string goes down behind the nut: it would not stay in its slot.", 3.5});
    out.push_back(
        {"Thin lines: levels of fretboard and frets. Saw and files: work held in a vise, eye "
         "protection; a mask where bone or hard woods make dust.",
         2.5});
    return out;
}

}  // namespace

Sheet nutTemplate(const ViewInput& in)
{
    ViewPen pen(View::Top, false, in);
    std::vector<NoteLine> lines{{in.plan.sheet.title, 5}};
    double width = kLeastNotes;
    if (const auto nut = nutShape(in)) {
        lines.push_back({"Nut with its string slots, full size; views enlarged to read it by.", 3.5});
        drawAll(pen, *nut, in);
        ViewPen slots(View::Top, false, in);
        slots.addSheetElements(tableElements("scale", slotTable(*nut, in)));
        stackFlush(pen, slots, 0);
        width = notesWidth(pen.extent().width());
        for (const NoteLine& line : notes(*nut, in))
            lines.push_back(line);
    } else {
        lines.push_back({"The plan leaves no nut: it would have no height or width.", 3.5});
    }
    addNotes(pen, 0, wrapped(lines, width));
    return templateOf(pen, in.plan.sheet.title + ": nut");
}

}  // namespace lidwright
