#include "core/checks/gravest.h"
#include "core/checks/supports/support_checks.h"
#include "core/geometry/segment_tree.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace lidwright {
namespace {

constexpr const char* kRule = "lid.screws";
/// A lid has a screw at each corner at least, and one every so often (common practice, no source).
constexpr int kLeastScrews = 4;
constexpr double kFineGap = 200;
constexpr double kMostGap = 400;
/// Middle of a screw to the wood's face, in diameters, with a pilot hole (common practice, no source).
constexpr double kLeastEdge = 1.0;
constexpr double kFineEdge = 1.5;
/// Of screws that are proposed, as fresh ones are.
const double kDiameter = LidFixing{}.diameter;

/// Wood under the lid that a screw may go into: walls, blocks, the stick where the lid lies on it.
Region woodUnder(const CheckInput& in)
{
    const Layout& l = in.layout;
    std::vector<Region> parts{
        subtract(fill({l.boxOuter}, FillRule::NonZero), fill({l.boxInner}, FillRule::NonZero))};
    for (const BlockLayout& block : l.blocks)
        if (!block.outline.empty()) parts.push_back(fill({block.outline}, FillRule::NonZero));
    for (const Ring& stick : stickAgainst(in.plan, l, 0.3))
        parts.push_back(fill({stick}, FillRule::NonZero));
    return unite(parts);
}

double toSegment(Point p, Point a, Point b)
{
    const Point d = b - a;
    const double run = dot(d, d);
    const double t = run > 0 ? std::clamp(dot(p - a, d) / run, 0.0, 1.0) : 0;
    return distance(p, a + t * d);
}

/// Wood from a screw's middle to the nearest face of it inside the lid's edge, which is lid.fixings' matter;
/// infinite where there is none.
double toFace(const SegmentTree& wood, const SegmentTree& lidEdge, Point p)
{
    constexpr double kOnEdge = 1e-3;
    double least = std::numeric_limits<double>::infinity();
    for (const SegmentTree::Segment& s : wood.segments()) {
        const double away = toSegment(p, s.a, s.b);
        if (away >= least) continue;
        if (lidEdge.nearest(s.a).distance < kOnEdge && lidEdge.nearest(s.b).distance < kOnEdge) continue;
        least = away;
    }
    return least;
}

void judgeSplits(const CheckInput& in, const SegmentTree& wood, std::vector<Finding>& out)
{
    const SegmentTree lidEdge({in.layout.lidOutline});
    for (std::size_t i = 0; i < in.plan.fixings.size(); ++i) {
        const LidFixing& screw = in.plan.fixings[i];
        const Point at{screw.x, screw.y};
        if (screw.kind != FixingKind::Screw || !wood.inside(at)) continue;
        const double face = toFace(wood, lidEdge, at);
        // One that does not even stand in the wood with its whole hole is lid.fixings' matter.
        if (!std::isfinite(face) || face < screw.diameter / 2) continue;
        Finding f = atLeast(kRule, "fixing." + std::to_string(i + 1), face, kLeastEdge * screw.diameter,
                            kFineEdge * screw.diameter);
        const Measure number{static_cast<double>(i + 1), Quantity::Count};
        f.sentence = {f.verdict == Verdict::Good ? "Screw %1 stands %2 inside its wood."
                      : f.verdict == Verdict::Tight
                          ? "Screw %1 stands %2 inside its wood: drill it well first, or it splits."
                          : "Screw %1 stands only %2 inside its wood: it splits it.",
                      {number, mm(face)}};
        f.places = {topPlace(in.layout.fixings[i])};
        out.push_back(std::move(f));
    }
}

/// Twice the way from the place of the lid's edge that is farthest from any screw to the nearest one: about
/// the longest stretch of edge between two screws.
double longestGap(const Ring& edge, const std::vector<Point>& screws)
{
    constexpr double kStep = 1;  // mm; the screws are set by hand
    double most = 0;
    for (std::size_t i = 0; i < edge.size(); ++i) {
        const Point a = edge[i], b = edge[(i + 1) % edge.size()];
        // Even, so that the middle is among them.
        const int steps = 2 * (static_cast<int>(distance(a, b) / (2 * kStep)) + 1);
        for (int k = 0; k <= steps; ++k) {
            const Point p = a + (static_cast<double>(k) / steps) * (b - a);
            double nearest = std::numeric_limits<double>::infinity();
            for (const Point screw : screws)
                nearest = std::min(nearest, distance(p, screw));
            most = std::max(most, nearest);
        }
    }
    return 2 * most;
}

std::vector<Point> screwsInWood(const CheckInput& in, const SegmentTree& wood)
{
    std::vector<Point> out;
    for (const LidFixing& f : in.plan.fixings)
        if (f.kind == FixingKind::Screw && wood.inside({f.x, f.y})) out.push_back({f.x, f.y});
    return out;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    const bool screwed = in.plan.lid.fastening == LidFastening::Screwed;
    const bool any = std::any_of(in.plan.fixings.begin(), in.plan.fixings.end(),
                                 [](const LidFixing& f) { return f.kind == FixingKind::Screw; });
    if (l.lidOutline.empty() || l.boxInner.empty() || (!screwed && !any)) return;
    const SegmentTree wood(woodUnder(in).rings);
    judgeSplits(in, wood, out);
    if (!screwed) return;
    const std::vector<Point> screws = screwsInWood(in, wood);
    const Measure count{static_cast<double>(screws.size()), Quantity::Count};
    Finding f;
    if (screws.size() < kLeastScrews) {
        f = finding(kRule, "lid", Verdict::Wrong,
                    {screws.empty() ? "The lid is to be screwed on, but no screw is planned that has wood "
                                      "under it."
                                    : "The lid is to be screwed on, but only %1 screws have wood under them.",
                     {count}});
        f.measured = count;
        f.required = Measure{kLeastScrews, Quantity::Count};
    } else {
        const double gap = longestGap(l.lidOutline, screws);
        f = finding(kRule, "lid", judgeAtMost(gap, kFineGap, kMostGap),
                    {gap <= kFineGap ? "%1 screws hold the lid, at most %2 apart along its edge."
                                     : "%1 screws hold the lid, but %2 of its edge are without one.",
                     {count, mm(gap)}});
        f.measured = mm(gap);
        f.required = mm(kMostGap);
        f.comfortable = mm(kFineGap);
        f.bound = Bound::AtMost;
    }
    f.places = {topPlace(l.lidOutline)};
    out.push_back(std::move(f));
}

/// Places in the four corner blocks, next to the walls.
std::vector<Point> inCornerBlocks(const CheckInput& in)
{
    std::vector<Point> out;
    const Point middle = in.layout.body.centre();
    for (const BlockLayout& block : in.layout.blocks) {
        if (block.part != "corner-blocks") continue;
        const Bounds b = bounds(block.outline);
        const double inX = std::min(2 * kDiameter, b.width() / 2);
        const double inY = std::min(2 * kDiameter, b.height() / 2);
        const Point c = b.centre();
        out.push_back(
            {c.x < middle.x ? b.minX + inX : b.maxX - inX, c.y < middle.y ? b.minY + inY : b.maxY - inY});
    }
    return out;
}

/// Places along the middle of the walls, evenly and off the neck.
std::vector<Point> alongWalls(const CheckInput& in, double apart)
{
    const Layout& l = in.layout;
    std::vector<Point> out;
    if (in.plan.lid.seat != LidSeat::OnWalls) return out;
    const double wall = in.plan.box.shape == BoxShape::Rectangle
                            ? std::min(in.plan.box.endWall, in.plan.box.sideWall)
                            : in.plan.box.sideWall;
    const Region line = offset(Region{{l.boxOuter}}, -wall / 2);
    if (line.rings.size() != 1) return out;
    const Ring& ring = line.rings.front();
    double around = 0;
    for (std::size_t i = 0; i < ring.size(); ++i)
        around += distance(ring[i], ring[(i + 1) % ring.size()]);
    const double step = around / std::max(4.0, std::ceil(around / apart));
    const double offNeck = in.plan.neck.width / 2 + 4 * kDiameter;
    double next = step / 2;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i], b = ring[(i + 1) % ring.size()];
        const double run = distance(a, b);
        for (; next <= run; next += step) {
            Point p = a + (next / run) * (b - a);
            const double aside = p.y - l.neckY;
            const bool end = p.x < l.headWall.innerMaxX || p.x > l.tailWall.innerMinX;
            if (end && std::abs(aside) < offNeck) p.y = l.neckY + (aside < 0 ? -offNeck : offNeck);
            out.push_back(p);
        }
        next -= run;
    }
    return out;
}

Remedy screwsAt(const Plan& plan, Sentence label, const std::vector<std::vector<Point>>& places)
{
    Remedy remedy{std::move(label), {}};
    std::size_t count = plan.fixings.size();
    std::vector<Edit> edits;
    for (const auto& group : places)
        for (const Point p : group) {
            const std::string part = "fixing." + std::to_string(++count);
            edits.push_back({part + ".kind", static_cast<double>(FixingKind::Screw)});
            // To half a tenth: places are read off the template, not measured.
            edits.push_back({part + ".x", std::round(p.x * 20) / 20});
            edits.push_back({part + ".y", std::round(p.y * 20) / 20});
            edits.push_back({part + ".diameter", kDiameter});
        }
    if (edits.empty()) return remedy;
    remedy.edits.push_back({"fixing.count", static_cast<double>(count)});
    remedy.edits.insert(remedy.edits.end(), edits.begin(), edits.end());
    return remedy;
}

std::vector<Remedy> proposeSplit(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const LidFixing& screw = in.plan.fixings[memberIndex(f.part)];
    const Point at{screw.x, screw.y};
    const Region wood = woodUnder(in);
    for (const double diameters : {kFineEdge, (kFineEdge + kLeastEdge) / 2, kLeastEdge}) {
        const Region room = offset(wood, -diameters * screw.diameter);
        if (room.empty() || contains(room, at)) continue;
        const Point to = SegmentTree(room.rings).nearest(at).onTree;
        out.push_back({{"Move it %1 into the wood", {mm(distance(at, to))}},
                       {{f.part + ".x", to.x}, {f.part + ".y", to.y}}});
    }
    if (f.measured) {
        const double thinner = std::floor(2 * f.measured->value / kFineEdge) / 2;
        if (thinner > 0 && thinner < screw.diameter)
            out.push_back(oneEdit({"Take a screw %1 thick", {mm(thinner)}}, f.part + ".diameter", thinner));
    }
    return out;
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    if (f.part != "lid") return proposeSplit(in, f);
    std::vector<Remedy> out;
    const auto corners = inCornerBlocks(in);
    out.push_back(screwsAt(in.plan, {"Set a screw into each corner block", {}}, {corners}));
    for (const double apart : {kFineGap * 0.9, kFineGap * 0.6}) {
        const auto walls = alongWalls(in, apart);
        const Measure count{static_cast<double>(walls.size()), Quantity::Count};
        out.push_back(screwsAt(in.plan, {"Set %1 screws along the walls", {count}}, {walls}));
    }
    out.push_back(oneEdit({"Glue the lid on: it cannot be taken off then", {}}, "lid.fastening",
                          static_cast<double>(LidFastening::Glued)));
    return out;
}

}  // namespace

const Check kLidScrews{kRule, "Screws of the lid", "common practice, no source", judge, propose};

}  // namespace lidwright
