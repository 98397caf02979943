#include "core/drawing/board_views.h"

#include <algorithm>

namespace lidwright {
namespace {

/// How far the two lines of a hole's centre cross run beyond it, mm on paper (common practice).
constexpr double kCrossOverrun = 1.5;

void drawCross(ViewPen& pen, Point middle, double radius)
{
    const double arm = radius + pen.paper(kCrossOverrun);
    pen.line("tuners", "centre", {{middle.x - arm, middle.y}, {middle.x + arm, middle.y}}, LineKind::Centre);
    pen.line("tuners", "centre", {{middle.x, middle.y - arm}, {middle.x, middle.y + arm}}, LineKind::Centre);
}

/// Edges across the head, and the joint of a scarf.
void drawAcross(ViewPen& pen, const Layout& l, const std::vector<double>& lines, LineKind kind)
{
    const double half = l.head.width / 2;
    for (const double x : lines)
        if (x > l.headEndX && x < l.nutX)
            pen.line("head", "head", {{x, l.neckY - half}, {x, l.neckY + half}}, kind);
}

std::vector<double> backLines(const Layout& l)
{
    std::vector<double> out;
    for (std::size_t i = 1; i < l.head.lower.size(); ++i)
        out.push_back(l.head.lower[i].x);
    return out;
}

/// A cylinder that stands on the face, as it is seen from the side.
Ring standing(const HeadFace& face, double s, double diameter, double from, double to)
{
    const double r = diameter / 2;
    return {face.at(s - r, from), face.at(s - r, to), face.at(s + r, to), face.at(s + r, from)};
}

}  // namespace

void drawHeadTop(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    const HeadLayout& head = l.head;
    drawAcross(pen, l, head.lines, LineKind::Visible);
    drawAcross(pen, l, backLines(l), LineKind::Hidden);
    for (const HeadPost& post : head.posts) {
        pen.outline("tuners", "tuners", post.plate, LineKind::Hidden);
        pen.area("tuners", "tuners", post.bush, FillKind::Paper, LineKind::Visible);
        pen.outline("tuners", "tuners", post.hole, LineKind::Hidden);
        pen.outline("tuners", "tuners", post.post, LineKind::Visible);
        drawCross(pen, post.middle, std::max(in.plan.tuners.bush, in.plan.tuners.hole) / 2);
    }
    for (const HeadString& string : head.strings) {
        Polyline way;
        for (const RaisedPoint& p : string.way)
            way.push_back(p.at);
        pen.line("strings", "strings", way, LineKind::Narrow);
    }
    if (!head.tree.empty()) pen.area("head", "head", head.tree, FillKind::Bridge, LineKind::Visible);
}

void drawHeadUnder(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    drawAcross(pen, l, backLines(l), LineKind::Visible);
    for (const HeadPost& post : l.head.posts) {
        pen.area("tuners", "tuners", post.plate, FillKind::Paper, LineKind::Visible);
        pen.outline("tuners", "tuners", post.hole, LineKind::Hidden);
        drawCross(pen, post.middle, in.plan.tuners.hole / 2);
    }
}

void drawHeadSection(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    const HeadLayout& head = l.head;
    const Tuners& t = in.plan.tuners;
    // The stick as it was, where wood comes off or the head leans away from it.
    const double wood = in.plan.neck.thickness - head.thickness;
    if (in.plan.head.shape == HeadShape::Scarfed) {
        pen.line("head", "head", head.glueLine, LineKind::Narrow);
        pen.line("head", "head", head.sawLine, LineKind::Cut);
    } else if (wood > 0) {
        const bool front = in.plan.head.shape == HeadShape::Thinned;
        const double z = front ? l.neckZ.high : l.neckZ.low;
        const double x = front ? head.lines.front() : head.lower.back().x;
        pen.line("head", "head",
                 {{x, z}, {l.headEndX, z}, head.face.at(head.faceLength, front ? 0 : -head.thickness)},
                 LineKind::Phantom);
    }
    // Posts of a row that stand behind another's are the same lines.
    std::vector<double> drawn;
    for (const HeadPost& post : head.posts) {
        const double s = post.face.x;
        if (std::find(drawn.begin(), drawn.end(), s) != drawn.end()) continue;
        drawn.push_back(s);
        pen.outline("tuners", "tuners", standing(head.face, s, t.hole, -head.thickness, 0), LineKind::Hidden);
        pen.outline("tuners", "tuners", standing(head.face, s, t.post, 0, std::max(0.1, head.tipOverFace)),
                    LineKind::Visible);
        const double over = pen.paper(kCrossOverrun);
        pen.line("tuners", "centre",
                 {head.face.at(s, std::max(head.tipOverFace, 0.0) + over),
                  head.face.at(s, -head.thickness - over)},
                 LineKind::Centre);
        const double from = s - t.plateBefore;
        pen.line("tuners", "tuners",
                 {head.face.at(from, -head.thickness), head.face.at(from + t.plateLength, -head.thickness)},
                 LineKind::Visible);
    }
    if (!head.tree.empty()) {
        const Bounds tree = bounds(head.tree);
        const double z = head.face.at(head.treeS, in.plan.head.treeHeight).y;
        pen.line("head", "head", {{tree.minX, z}, {tree.maxX, z}}, LineKind::Visible);
        pen.line("head", "head", {{tree.centre().x, l.neckZ.high}, {tree.centre().x, z}}, LineKind::Centre);
    }
    for (const HeadString& string : head.strings) {
        Polyline way;
        for (const RaisedPoint& p : string.way)
            way.push_back({p.at.x, p.z});
        pen.line("strings", "strings", way, LineKind::Narrow);
    }
}

void drawHeadEnd(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    const HeadLayout& head = l.head;
    const double y0 = l.neckY - head.width / 2, y1 = l.neckY + head.width / 2;
    const auto upright = [&](double low, double high) {
        const double rise = l.neckRise(l.headEndX);
        return Ring{{y0, low + rise}, {y1, low + rise}, {y1, high + rise}, {y0, high + rise}};
    };
    const double top = head.upper.back().y, back = head.lower.front().y;
    // The face of a head that leans back is seen foreshortened over its end.
    if (in.plan.head.shape == HeadShape::Scarfed)
        pen.area("head", "head", upright(top, l.neckZ.high), FillKind::Wood, LineKind::Visible);
    pen.area("head", "head", upright(std::min(back, top), top), FillKind::WoodEnd, LineKind::Visible);
}

void drawHeadDimensions(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    const HeadLayout& head = l.head;
    const double away = pen.paper(7), half = head.width / 2;
    const std::string& part = in.options.selected;
    const auto on = [&](double s, double y) { return Point{head.face.at(s).x, y}; };
    // Lengths along a leaning face are not seen true from above.
    const bool level = head.face.sine == 0;
    if (part == "head") {
        const double x = l.nutX - in.plan.head.step;
        pen.dimension("head", {x, l.neckY - half}, {l.nutX, l.neckY - half}, -away, "head.step");
        if (in.plan.head.width > 0)
            pen.dimension("head", {l.headEndX, l.neckY - half}, {l.headEndX, l.neckY + half}, -away,
                          "head.width");
        if (!head.tree.empty())
            pen.dimension("head", on(head.treeS, l.neckY + half), {l.nutX, l.neckY + half}, away,
                          "head.tree-at");
    }
    if (part != "tuners" || head.posts.empty()) return;
    const HeadPost* first = nullptr;
    const HeadPost* second = nullptr;
    for (const HeadPost& post : head.posts) {
        if (post.place == 0) first = &post;
    }
    for (const HeadPost& post : head.posts)
        if (first != nullptr && post.treble == first->treble && post.place == 1) second = &post;
    if (first == nullptr) return;
    const double side = first->treble ? 1 : -1;
    const double edge = l.neckY + side * half;
    if (level) {
        pen.dimension("tuners", first->middle, {l.nutX, first->middle.y},
                      side * (std::abs(edge - first->middle.y) + away), "tuners.first");
        if (second != nullptr)
            pen.dimension("tuners", second->middle, first->middle,
                          side * (std::abs(edge - first->middle.y) + away), "tuners.spacing");
    }
    const Point at = on(head.faceLength, 0);
    const double last = second != nullptr ? second->middle.x : first->middle.x;
    const double outwards = last - at.x + away;
    if (side > 0)
        pen.dimension("tuners", {last, first->middle.y}, {last, edge}, outwards, "tuners.edge");
    else
        pen.dimension("tuners", {last, edge}, {last, first->middle.y}, outwards, "tuners.edge");
}

}  // namespace lidwright
