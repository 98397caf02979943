#include "core/layout/head_layout.h"

#include "core/geometry/region.h"
#include "core/layout/layout.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// A string tree is drawn as a bar this wide along the strings (common practice, no source).
constexpr double kTreeDrawn = 4;

/// The ring that lies on the face in s and y, seen from above.
Ring inPlan(const HeadFace& face, const Ring& ring)
{
    Ring out;
    // s runs against x: turned round so that it stays counter-clockwise.
    for (auto p = ring.rbegin(); p != ring.rend(); ++p)
        out.push_back({face.at(p->x).x, p->y});
    return out;
}

Ring rectangle(double s0, double s1, double y0, double y1)
{
    return {{s0, y0}, {s1, y0}, {s1, y1}, {s0, y1}};
}

void layoutThinned(const Plan& plan, const Layout& l, HeadLayout& out)
{
    const Head& head = plan.head;
    const double high = l.neckZ.high, low = l.neckZ.low;
    const double step = std::min(head.step, plan.neck.headLength);
    const double end = std::min(step + head.ramp, plan.neck.headLength);
    const double face = low + out.thickness;
    out.face = {l.nutX, face, 0, 1, 0};
    out.faceLength = plan.neck.headLength;
    out.wayEndS = end;
    out.upper = {{l.nutX, high}, {l.nutX - step, high}, {l.nutX - end, face}, {l.headEndX, face}};
    out.lower = {{l.headEndX, low}};
    out.lines = {l.nutX - step, l.nutX - end};
    out.blankUsed = plan.neck.headLength;
}

void layoutTree(const Plan& plan, const Layout& l, HeadLayout& out)
{
    const Head& head = plan.head;
    const double high = l.neckZ.high, low = l.neckZ.low;
    const double step = std::min(head.step, plan.neck.headLength);
    const double end = std::min(step + head.ramp, plan.neck.headLength);
    out.face = {l.nutX, high, 0, 1, 0};
    out.faceLength = plan.neck.headLength;
    out.upper = {{l.nutX, high}, {l.headEndX, high}};
    const double back = high - out.thickness;
    out.lower = {{l.headEndX, back}, {l.nutX - end, back}, {l.nutX - step, low}};
    out.backThinFrom = end;
    out.treeS = head.treeAt;
    out.tree = inPlan(out.face, rectangle(head.treeAt - kTreeDrawn / 2, head.treeAt + kTreeDrawn / 2,
                                          l.neckY - out.width / 2, l.neckY + out.width / 2));
    out.blankUsed = plan.neck.headLength;
}

/// The stick is sawn through at the head's angle. The piece cut off is turned over and glued with its sawn
/// face under the stick, so that its own face goes on where the sawn slope ends; its back is then planed to
/// the thickness wanted. With t = thickness of the stick, F = length of the face from the angle on: the slope
/// is t / sin a long, the piece glued on needs F - t / sin a on its shorter side, and since the saw cut runs
/// t / tan a along the stick the whole takes F - t tan(a / 2) of it (derived).
void layoutScarf(const Plan& plan, const Layout& l, HeadLayout& out)
{
    const Head& head = plan.head;
    const double high = l.neckZ.high, low = l.neckZ.low, thick = plan.neck.thickness;
    const double step = std::min(head.step, plan.neck.headLength);
    const double angle = radians(head.angle);
    const double c = std::cos(angle), s = std::sin(angle);
    const Point start{l.nutX - step, high};
    out.face = {start.x, start.y, step, c, s};
    const double slope = (plan.neck.headLength - step) / c;
    out.faceLength = step + slope;
    out.wayEndS = step;
    const Point end = out.face.at(out.faceLength);
    // Where the planed back comes out at the stick's underside, which may be under the nut already.
    const double heel = start.x - (thick - out.thickness / c) * c / s;
    out.upper = {{l.nutX, high}, start, end};
    const Point back = out.face.at(out.faceLength, -out.thickness);
    out.lower = {back};
    if (heel > back.x) out.lower.push_back({heel, low});
    out.backThinFrom = out.face.s({heel, low});
    out.scarfLength = thick / s;
    out.glueLength = out.thickness / s;
    out.headPiece = slope - out.scarfLength;
    const Point tip{start.x - thick * c / s, low};
    out.glueLine = {tip, {tip.x + out.glueLength, low}};
    out.sawLine = {start, tip};
    out.lines = {start.x, std::max(tip.x, l.headEndX)};
    out.blankUsed = step + slope - thick * std::tan(angle / 2) + plan.shop.kerf / s;
}

bool onTreble(TunerSide side, std::size_t string, std::size_t count)
{
    switch (side) {
        case TunerSide::Treble:
            return true;
        case TunerSide::Bass:
            return false;
        case TunerSide::BothOddTreble:
            return string < (count + 1) / 2;
        case TunerSide::BothOddBass:
            break;
    }
    return string < count / 2;
}

void layoutPosts(const Plan& plan, const Layout& l, HeadLayout& out)
{
    const Tuners& t = plan.tuners;
    const std::size_t count = plan.stringSet.size();
    for (std::size_t i = 0; i < count; ++i) {
        HeadPost post;
        post.treble = onTreble(t.side, i, count);
        // Strings count from the treble side, so the outermost one of a bass row is the last.
        post.place = static_cast<int>(post.treble ? i : count - 1 - i);
        const double y = l.neckY + (post.treble ? 1 : -1) * (out.width / 2 - t.edge);
        post.face = {t.first + post.place * t.spacing, y};
        post.middle = {out.face.at(post.face.x).x, y};
        post.hole = inPlan(out.face, circleRing(post.face, t.hole / 2));
        post.bush = inPlan(out.face, circleRing(post.face, t.bush / 2));
        post.post = inPlan(out.face, circleRing(post.face, t.post / 2));
        const double from = post.face.x - t.plateBefore;
        const double half = t.plateWidth / 2;
        const Ring plate = rectangle(from, from + t.plateLength, y - half, y + half);
        post.plate = inPlan(out.face, plate);
        post.plateOnFace = bounds(plate);
        out.posts.push_back(std::move(post));
    }
}

/// Where a straight line from `from` touches the circle, on the side of +y or -y. Inside the circle: its
/// middle.
Point tangentPoint(Point from, Point middle, double radius, double side)
{
    const Point to = middle - from;
    const double far = length(to);
    if (far <= radius || far <= 0) return middle;
    const Point along = (1 / far) * to;
    const Point across{-along.y, along.x};
    const double share = radius / far, rise = std::sqrt(std::max(0.0, 1 - share * share));
    const Point one = middle + radius * (rise * across - share * along);
    const Point two = middle - radius * (rise * across + share * along);
    return (one.y - two.y) * side > 0 ? one : two;
}

double turn(Point before, Point after)
{
    if (length(before) <= 0 || length(after) <= 0) return 0;
    return degrees(std::atan2(cross(before, after), dot(before, after)));
}

void layoutString(const Plan& plan, const Layout& l, std::size_t i, HeadLayout& out)
{
    const double gauge = plan.stringSet[i].gauge;
    const HeadPost& post = out.posts[i];
    const RaisedPoint nut{l.strings[i].first, out.nutZ + gauge / 2};
    const Point nutXz{nut.at.x, nut.z};
    const double s = out.face.s(nutXz), height = out.face.height(nutXz);
    const Point touch =
        tangentPoint({s, nut.at.y}, post.face, (plan.tuners.post + gauge) / 2, post.treble ? -1 : 1);
    const double leaves = std::max(gauge / 2, out.holeOverFace - plan.tuners.windings * gauge);
    const auto raised = [&](double atS, double y, double over) {
        const Point xz = out.face.at(atS, over);
        return RaisedPoint{{xz.x, y}, xz.y};
    };
    HeadString string;
    string.way = {nut};
    if (!out.tree.empty() && out.treeS > s && out.treeS < touch.x) {
        const double share = (out.treeS - s) / (touch.x - s);
        const double under = std::max(gauge / 2, plan.head.treeHeight - gauge / 2);
        if (height + share * (leaves - height) > under) {
            string.way.push_back(raised(out.treeS, nut.at.y + share * (touch.y - nut.at.y), under));
            string.underTree = true;
        }
    }
    string.way.push_back(raised(touch.x, touch.y, leaves));

    const RaisedPoint& next = string.way[1];
    const Point saddle = l.strings[i].second;
    // In the stick's own heights, as all of the head is.
    const double saddleZ = l.bridgeZ.high + gauge / 2 - l.neckRise(saddle.x);
    string.splay = -turn(nut.at - saddle, next.at - nut.at);
    const double behind = std::atan2(nut.z - next.z, distance(nut.at, next.at));
    const double before = std::atan2(saddleZ - nut.z, distance(nut.at, saddle));
    string.breakAngle = degrees(behind - before);
    out.strings.push_back(std::move(string));
}

void layoutOutline(const Plan& plan, const Layout& l, HeadLayout& out)
{
    const double x = l.nutX - std::min(plan.head.step, plan.neck.headLength);
    const double half = out.width / 2;
    out.outline = {
        {l.headEndX, l.neckY - half}, {x, l.neckY - half}, {x, l.neckY + half}, {l.headEndX, l.neckY + half}};
}

/// The least of a convex function over 0..1 (golden section search; Kiefer, Proc. Amer. Math. Soc. 4 (1953)
/// 502).
template <typename F>
double leastOf(F f)
{
    constexpr double kGolden = 0.6180339887498949;
    constexpr int kSteps = 60;
    double low = 0, high = 1;
    double a = high - kGolden, b = low + kGolden;
    double fa = f(a), fb = f(b);
    for (int i = 0; i < kSteps; ++i) {
        if (fa <= fb) {
            high = b;
            b = a;
            fb = fa;
            a = high - kGolden * (high - low);
            fa = f(a);
        } else {
            low = a;
            a = b;
            fa = fb;
            b = low + kGolden * (high - low);
            fb = f(b);
        }
    }
    return std::min({f(0), f(1), fa, fb});
}

}  // namespace

Point HeadFace::at(double s, double height) const
{
    const double along = s - startS;
    return {startX - along * cosine - height * sine, startZ - along * sine + height * cosine};
}

double HeadFace::s(Point xz) const
{
    return startS + (startX - xz.x) * cosine + (startZ - xz.y) * sine;
}

double HeadFace::height(Point xz) const
{
    return (xz.y - startZ) * cosine - (xz.x - startX) * sine;
}

HeadLayout headLayout(const Plan& plan, const Layout& layout)
{
    HeadLayout out;
    out.width = plan.head.width > 0 ? plan.head.width : plan.neck.width;
    out.thickness = std::min(plan.head.thickness, plan.neck.thickness);
    switch (plan.head.shape) {
        case HeadShape::Thinned:
            layoutThinned(plan, layout, out);
            break;
        case HeadShape::Scarfed:
            layoutScarf(plan, layout, out);
            break;
        case HeadShape::Tree:
            layoutTree(plan, layout, out);
            break;
    }
    layoutOutline(plan, layout, out);
    out.nutZ = layout.frets.fretTops + layout.frets.nutOverFrets;
    out.holeOverFace = plan.tuners.reach - out.thickness;
    out.tipOverFace = out.holeOverFace + plan.tuners.tip;
    layoutPosts(plan, layout, out);
    for (std::size_t i = 0; i < out.posts.size(); ++i)
        layoutString(plan, layout, i, out);
    return out;
}

double wayToPost(const HeadLayout& head, std::size_t string, std::size_t post, double diameter, double top)
{
    const auto& way = head.strings[string].way;
    const HeadPost& other = head.posts[post];
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t k = 1; k < way.size(); ++k) {
        const RaisedPoint &a = way[k - 1], &b = way[k];
        least =
            std::min(least, leastOf([&](double t) {
                         const Point at = a.at + t * (b.at - a.at);
                         const Point xz{at.x, a.z + t * (b.z - a.z)};
                         const double aside = distance({head.face.s(xz), at.y}, other.face) - diameter / 2;
                         const double above = head.face.height(xz) - top;
                         if (aside > 0 && above > 0) return std::hypot(aside, above);
                         return std::max(aside, above);
                     }));
    }
    return least;
}

double airToPost(const Plan& plan, const HeadLayout& head, std::size_t string, std::size_t post)
{
    const double bare = wayToPost(head, string, post, plan.tuners.post, head.tipOverFace);
    const double wound = plan.tuners.post + 2 * plan.stringSet[post].gauge;
    return std::min(bare, wayToPost(head, string, post, wound, head.holeOverFace)) -
           plan.stringSet[string].gauge / 2;
}

double wayOverHead(const HeadLayout& head, std::size_t string)
{
    const auto& way = head.strings[string].way;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t k = 1; k < way.size(); ++k) {
        const Point a{way[k - 1].at.x, way[k - 1].z}, b{way[k].at.x, way[k].z};
        // Over the edge where the face begins to go down: the corner that a steep string would rub on.
        for (const Point& corner : head.upper) {
            if (corner.x > std::max(a.x, b.x) || corner.x < std::min(a.x, b.x) || a.x == b.x) continue;
            least = std::min(least, a.y + (b.y - a.y) * (corner.x - a.x) / (b.x - a.x) - corner.y);
        }
        least = std::min(least, head.face.height(b));
    }
    return least;
}

}  // namespace lidwright
