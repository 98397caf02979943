#include "core/base/units.h"
#include "core/drawing/template_views.h"
#include "core/geometry/arc.h"
#include "core/materials/material.h"
#include "core/solvers/lists/cut_pieces.h"
#include "core/solvers/piece_weights.h"

#include <algorithm>
#include <set>

namespace lidwright {
namespace {

// All in mm; common practice, no source.
constexpr double kNeckShown = 14;   // of the neck that goes on beyond the nut
constexpr double kPunch = 1.2;      // arms of a punch mark
constexpr double kCrossOver = 1.5;  // of a hole's centre lines
constexpr double kBeside = 10;      // dimension lines from the part, as of DimensionRows
constexpr double kNutLineOver = 3;  // of the nut line beyond the neck
constexpr double kArc = 26;         // radius of the arc that measures an angle

/// The head as its face is seen: x runs from the head's end to the nut, 0 where the head's lengths are
/// measured from; y to the treble side from the neck's centre line. A face that leans back is laid flat, so
/// that every length along it is true.
class HeadPlan {
public:
    explicit HeadPlan(const ViewInput& in) : m_in(in), m_head(in.layout.head) {}

    double length() const { return m_head.faceLength; }
    /// x of a station of the layout.
    double x(double layoutX) const
    {
        const HeadFace& face = m_head.face;
        if (layoutX >= face.startX) return layoutX - face.startX - face.startS;
        return (layoutX - face.startX) / face.cosine - face.startS;
    }
    double y(double layoutY) const { return layoutY - m_in.layout.neckY; }

    void draw(ViewPen& pen) const
    {
        outline(pen);
        edges(pen);
        strings(pen);
        for (std::size_t i = 0; i < m_head.posts.size(); ++i)
            post(pen, i);
        measures(pen);
    }

private:
    const ViewInput& m_in;
    const HeadLayout& m_head;

    double halfHead() const { return m_head.width / 2; }
    double halfNeck() const { return m_in.plan.neck.width / 2; }
    double half() const { return std::max(halfHead(), halfNeck()); }
    /// Where the head becomes as wide as it is, under the nut or behind it.
    double shoulder() const { return -std::min(m_in.plan.head.step, length()); }

    void outline(ViewPen& pen) const
    {
        const double end = -length(), h = halfHead(), n = halfNeck();
        Polyline line{{kNeckShown, -n}};
        const auto corner = [&](Point p) {
            if (!(line.back() == p)) line.push_back(p);
        };
        for (const Point p : {Point{shoulder(), -n}, Point{shoulder(), -h}, Point{end, -h}, Point{end, h},
                              Point{shoulder(), h}, Point{shoulder(), n}, Point{kNeckShown, n}})
            corner(p);
        pen.line("head", "outline", line, LineKind::Cut);
        addBreak(pen, "neck", kNeckShown, -n, n);
        pen.line("head", "centre", {{end - 4, 0}, {kNeckShown + 4, 0}}, LineKind::Centre);
        const double front = m_in.layout.nutEdgeX - m_in.layout.nutX,
                     nut = m_in.plan.fretboard.widthAtNut / 2;
        pen.outline("scale", "nut",
                    {{front - kNutWidth, -nut}, {front, -nut}, {front, nut}, {front - kNutWidth, nut}},
                    LineKind::Phantom);
        pen.line("head", "nut-line", {{0, -half() - kNutLineOver}, {0, half() + kNutLineOver}},
                 LineKind::Narrow);
    }

    void edges(ViewPen& pen) const
    {
        const auto across = [&](double at, LineKind kind) {
            if (at < 0 && at > -length())
                pen.line("head", "edges", {{at, -halfHead()}, {at, halfHead()}}, kind);
        };
        const Head& head = m_in.plan.head;
        switch (head.shape) {
            case HeadShape::Thinned:
                across(-head.step, LineKind::Visible);
                across(-m_head.wayEndS, LineKind::Visible);
                break;
            case HeadShape::Scarfed:
                across(-head.step, LineKind::Visible);
                across(-head.step - m_head.scarfLength, LineKind::Narrow);
                break;
            case HeadShape::Tree:
                across(-head.step, LineKind::Hidden);
                across(-m_head.backThinFrom, LineKind::Hidden);
                break;
        }
        Ring tree;
        for (const Point p : m_head.tree)
            tree.push_back({x(p.x), y(p.y)});
        pen.outline("head", "tree", tree, LineKind::Phantom);
    }

    void strings(ViewPen& pen) const
    {
        for (const HeadString& string : m_head.strings) {
            Polyline way;
            for (const RaisedPoint& p : string.way)
                way.push_back({way.empty() ? x(p.at.x) : -m_head.face.s({p.at.x, p.z}), y(p.at.y)});
            pen.line("strings", "strings", way, LineKind::Narrow);
        }
    }

    void post(ViewPen& pen, std::size_t index) const
    {
        const HeadPost& post = m_head.posts[index];
        const Tuners& t = m_in.plan.tuners;
        const Point c{-post.face.x, y(post.face.y)};
        const Bounds b = post.plateOnFace;
        pen.outline("tuners", "plates",
                    {{-b.maxX, y(b.minY)}, {-b.minX, y(b.minY)}, {-b.minX, y(b.maxY)}, {-b.maxX, y(b.maxY)}},
                    LineKind::Hidden);
        if (t.bush > t.hole) pen.outline("tuners", "bush", circleRing(c, t.bush / 2), LineKind::Narrow);
        pen.outline("tuners", "tuners", circleRing(c, t.hole / 2), LineKind::Cut);
        const auto cross = [&](const char* layer, double arm, LineKind kind) {
            pen.line("tuners", layer, {{c.x - arm, c.y}, {c.x + arm, c.y}}, kind);
            pen.line("tuners", layer, {{c.x, c.y - arm}, {c.x, c.y + arm}}, kind);
        };
        cross("centre", std::max(t.hole, t.bush) / 2 + kCrossOver, LineKind::Centre);
        // Whole lines on the very middle, which a dash-dotted cross may leave blank.
        cross("punch", kPunch, LineKind::Narrow);
    }

    /// Every post from the nut on its own side, and each row from the centre line at the head's end.
    void measures(ViewPen& pen) const
    {
        double edge = -length();
        std::vector<Point> rows;
        for (const bool treble : {true, false}) {
            const Point last = row(pen, treble, edge);
            if (last.x < 0) rows.push_back(last);
        }
        DimensionRows left(Side::Left, edge, 1);
        for (const Point last : rows)
            pen.row(left, "tuners", {-length(), 0}, last, "");
        pen.row(left, "head", {-length(), -halfHead()}, {-length(), halfHead()}, "");
        pen.add(left);
        const double beside = kNeckShown + 6;
        pen.text("head", "words", {beside, 2}, "treble", 2.5, Anchor::Left, 90);
        pen.text("head", "words", {beside, -2}, "bass", 2.5, Anchor::Right, 90);
    }

    /// The running dimensions of one side's posts. Gives the rim of the last one, so that the middle stays
    /// free for the punch; (0, 0) without posts. `edge` is moved out where the words reach farther.
    Point row(ViewPen& pen, bool treble, double& edge) const
    {
        const double out = treble ? 1 : -1, r = m_in.plan.tuners.hole / 2;
        std::vector<std::size_t> own;
        double far = half() + kBeside;
        for (std::size_t i = 0; i < m_head.posts.size(); ++i) {
            if (m_head.posts[i].treble != treble) continue;
            own.push_back(i);
            // A post that the plan puts beyond its edge keeps its hole clear of the words.
            far = std::max(far, out * y(m_head.posts[i].face.y) + r + kCrossOver + 1);
        }
        if (own.empty()) return {};
        std::vector<PlacedWords> places{{0, "nut"}};
        Point last;
        for (const std::size_t i : own) {
            const Point face = m_head.posts[i].face;
            const double at = -face.x;
            pen.line("tuners", "running", {{at, y(face.y) + out * (r + 1)}, {at, out * (far + 1)}},
                     LineKind::Narrow);
            places.push_back({at, std::to_string(i + 1) + ": " + pen.words(face.x)});
            if (at - r - 1 < last.x) last = {at - r - 1, y(face.y)};
        }
        edge = std::min(edge, fanReach(places).minX);
        addRunning(pen, "tuners", 0, places, out * far, treble ? Side::Above : Side::Below);
        return last;
    }
};

/// The head from the side in the stick's own heights: x from the nut line, z over the stick's top.
class HeadSide {
public:
    explicit HeadSide(const ViewInput& in) : m_in(in), m_head(in.layout.head)
    {
        m_shown = kNeckShown;
        // A scarf's heel may lie under the neck.
        for (const Point p : m_head.lower)
            m_shown = std::max(m_shown, at(p).x + kNeckShown);
    }

    void draw(ViewPen& pen) const
    {
        const double low = in().neckZ.low - in().neckZ.high;
        Polyline line{{m_shown, 0}};
        for (const Point p : m_head.upper)
            line.push_back(at(p));
        for (const Point p : m_head.lower)
            line.push_back(at(p));
        line.push_back({m_shown, low});
        pen.line("head", "side", line, LineKind::Cut);
        addBreak(pen, "neck", m_shown, low, 0);
        nutAndStrings(pen);
        asSawn(pen);
        posts(pen);
        measures(pen, low);
    }

private:
    const ViewInput& m_in;
    const HeadLayout& m_head;
    double m_shown = 0;

    const Layout& in() const { return m_in.layout; }
    Point at(Point xz) const { return {xz.x - in().nutX, xz.y - in().neckZ.high}; }
    Point onFace(double s, double height = 0) const { return at(m_head.face.at(s, height)); }
    bool leans() const { return m_head.face.sine != 0; }

    void nutAndStrings(ViewPen& pen) const
    {
        const double front = in().nutEdgeX - in().nutX;
        const double top = m_head.nutZ + nutOverStrings(m_in.plan) - in().neckZ.high;
        pen.outline("scale", "nut",
                    {{front - kNutWidth, 0}, {front, 0}, {front, top}, {front - kNutWidth, top}},
                    LineKind::Phantom);
        for (const HeadString& string : m_head.strings) {
            Polyline way;
            for (const RaisedPoint& p : string.way)
                way.push_back(at({p.at.x, p.z}));
            pen.line("strings", "strings", way, LineKind::Narrow);
        }
    }

    /// The stick as it was, and where a scarf is sawn and glued.
    void asSawn(ViewPen& pen) const
    {
        const Plan& plan = m_in.plan;
        if (plan.head.shape == HeadShape::Scarfed) {
            Polyline glue, saw;
            for (const Point p : m_head.glueLine)
                glue.push_back(at(p));
            for (const Point p : m_head.sawLine)
                saw.push_back(at(p));
            pen.line("head", "glue", glue, LineKind::Narrow);
            pen.line("head", "saw", saw, LineKind::Phantom);
            return;
        }
        if (!(plan.neck.thickness > m_head.thickness)) return;
        const bool front = plan.head.shape == HeadShape::Thinned;
        const double z = front ? in().neckZ.high : in().neckZ.low;
        const double from = front ? m_head.lines.front() : m_head.lower.back().x;
        pen.line(
            "head", "blank",
            {at({from, z}), at({in().headEndX, z}), onFace(m_head.faceLength, front ? 0 : -m_head.thickness)},
            LineKind::Phantom);
    }

    void posts(ViewPen& pen) const
    {
        std::set<double> drawn;
        const double r = m_in.plan.tuners.hole / 2, t = m_head.thickness;
        for (const HeadPost& post : m_head.posts) {
            const double s = post.face.x;
            if (!drawn.insert(s).second) continue;
            for (const double edge : {s - r, s + r})
                pen.line("tuners", "holes", {onFace(edge, 0), onFace(edge, -t)}, LineKind::Hidden);
            pen.line("tuners", "centre", {onFace(s, kCrossOver), onFace(s, -t - kCrossOver)},
                     LineKind::Centre);
        }
    }

    void measures(ViewPen& pen, double low) const
    {
        const Plan& plan = m_in.plan;
        const double length = in().nutX - in().headEndX, step = std::min(plan.head.step, length);
        const double t = m_head.thickness, all = m_head.faceLength;
        const auto aligned = [&](Point a, Point b, double measure) {
            if (!(measure > 0)) return;
            Dimension d;
            d.a = a;
            d.b = b;
            d.offset = DimensionRows::kFirstRow;
            d.words = pen.words(measure);
            pen.addSheetElements({{"head", "dimensions", std::move(d)}});
        };
        aligned(onFace(all, -t), onFace(all), t);
        if (leans()) {
            aligned(onFace(step, -t), onFace(all, -t), all - step);
            angle(pen, step);
        }
        DimensionRows below(Side::Below, pen.extent().minY, 1);
        const double slopeEnd = plan.head.shape == HeadShape::Thinned ? m_head.wayEndS : m_head.backThinFrom;
        pen.row(below, "head", {-step, low}, {0, low}, "");
        if (!leans()) pen.row(below, "head", {-slopeEnd, low}, {-step, low}, "");
        if (!m_head.tree.empty()) pen.row(below, "head", {-m_head.treeS, low}, {0, low}, "");
        pen.row(below, "head", {-length, onFace(all, -t).y}, {0, low}, "");
        pen.add(below);
        DimensionRows right(Side::Right, std::max(m_shown, pen.extent().maxX), 1);
        pen.row(right, "neck", {m_shown, low}, {m_shown, 0}, "");
        pen.add(right);
    }

    void angle(ViewPen& pen, double step) const
    {
        const double lean = m_in.plan.head.angle;
        const Point apex{-step, 0};
        Polyline arc;
        appendArc(arc, apex, kArc, kPi, radians(lean), 0.01);
        pen.line("head", "angle", {apex, {-step - kArc - 4, 0}}, LineKind::Narrow);
        pen.line("head", "angle", arc, LineKind::Narrow);
        const double middle = kPi + radians(lean) / 2;
        const Point at = apex + (kArc - 2) * Point{std::cos(middle), std::sin(middle)};
        pen.text("head", "words", {at.x, at.y - 1.25},
                 spoken(Measure{lean, Quantity::Angle}, m_in.options.style), 2.5, Anchor::Left, 0, true);
    }
};

/// How the head comes to its shape.
std::string shapeWords(const ViewInput& in)
{
    const Plan& plan = in.plan;
    const HeadLayout& head = in.layout.head;
    const auto mm = [&](double value) { return wholeLength(value, in.options.style); };
    switch (plan.head.shape) {
        case HeadShape::Thinned:
            return head.thickness < plan.neck.thickness
                       ? "The face is sawn down to " + mm(head.thickness) +
                             " behind the step and its slope: double-dotted in the side view, what comes off."
                       : "The head stays as thick as the stick.";
        case HeadShape::Scarfed:
            return "The face leans back and is shown laid flat, so that its lengths are true. Saw the stick "
                   "through along the double-dotted line of the side view, " +
                   mm(head.scarfLength) +
                   " long; turn the piece over, glue it under the slope and plane its back down. The thin "
                   "line across the face is the end of the sawn slope.";
        case HeadShape::Tree:
            break;
    }
    return "The face stays level with the stick's top; dashed, where the back is thinned. Double-dotted bar: "
           "the string tree, its underside " +
           mm(plan.head.treeHeight) + " over the face.";
}

std::vector<NoteLine> notes(const ViewInput& in)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    const UnitStyle& style = in.options.style;
    const auto mm = [&](double value) { return wholeLength(value, style); };
    const std::size_t count = l.head.posts.size();
    std::vector<NoteLine> out{
        {plan.sheet.title, 5},
        {"Head, its face seen from the front. Full size.", 3.5},
        {"Drill " + (count == 1 ? std::string("one hole") : std::to_string(count) + " holes") +
             ", diameter " + gaugeWords(plan.tuners.hole, style) + ", square to the face.",
         3.5},
        {materialName(plan.neck.wood) + ", grain along the neck, " + mm(l.head.thickness) +
             " left under the face. " + unitNote(style) + ".",
         2.5},
        {"Outline: saw outside the line, leave the line and plane down to it.", 2.5},
        {shapeWords(in), 2.5},
        {"Holes: punch the small cross in the middle of each, drill a pilot hole, then the whole diameter, "
         "from the face on a drill stand with scrap clamped below. Try one tuner in scrap first.",
         2.5},
        {"At each hole: the string, counted from the treble side, and the distance from the nut line along "
         "the face. At the head's end: distances from the centre line.",
         2.5},
        {"Thin circle: the bush's collar. Dashed: the plate behind the head; its button looks over the edge "
         "that it lies at. Thin lines: the strings' ways. Double-dotted: the nut.",
         2.5}};
    if (l.nutEdgeX != l.nutX)
        out.push_back({"The nut's front edge stands " + mm(l.nutEdgeX - l.nutX) +
                           " nearer to the first fret than the nut line, from which all is measured here.",
                       2.5});
    if (l.head.width > plan.neck.width)
        out.push_back(
            {"The head is wider than the stick: ears are glued on before the outline is sawn.", 2.5});
    const double half = l.head.width / 2 - plan.tuners.hole / 2;
    const bool off = std::any_of(l.head.posts.begin(), l.head.posts.end(), [&](const HeadPost& post) {
        return std::abs(post.face.y - l.neckY) > half ||
               post.face.x + plan.tuners.hole / 2 > l.head.faceLength;
    });
    if (off) out.push_back({"Not every hole lies on the head: change the plan before drilling.", 3.5});
    out.push_back(
        {"Saw and drill: eye and ear protection, hair and sleeves tied back, work clamped; the "
         "makers' instructions decide.",
         2.5});
    return out;
}

}  // namespace

Sheet headTemplate(const ViewInput& in)
{
    ViewPen pen(View::Top, false, in), side(View::Top, false, in);
    HeadPlan(in).draw(pen);
    addViewName(pen, "head", "Face, 1 : 1", GrainShown::Yes);
    HeadSide(in).draw(side);
    addViewName(side, "head", "Side, seen from the bass side, 1 : 1");
    stackBelow(pen, side);
    addNotes(pen, 0, wrapped(notes(in), notesWidth(pen.extent().width())));
    return templateOf(pen, in.plan.sheet.title + ": head");
}

}  // namespace lidwright
