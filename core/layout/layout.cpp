#include "core/layout/layout.h"

#include "core/layout/art_place.h"
#include "core/layout/body_layout.h"
#include "core/layout/mend_lid.h"
#include "core/layout/string_spacing.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// Heights closer than this are the same height; far below what any shop can cut.
constexpr double kSameHeight = 1e-6;

void layoutWallOpening(const Plan& plan, const Layout& layout, const WallOpening& given, EndWallLayout& wall)
{
    wall.wall = layout.walls;
    if (!layout.body.empty()) {
        wall.minY = layout.body.minY;
        wall.maxY = layout.body.maxY;
    }
    // A lid laid on covers the wall, so whatever stands above its underside there is cut away with the seat.
    // Where it is tilted, the stick takes up more height in the wall than it is thick.
    const auto [least, most] = std::minmax({layout.neckRise(wall.outerX), layout.neckRise(wall.innerX)});
    const double high = layout.neckZ.high + most;
    const double neckTop = std::min(high, plan.lid.seat == LidSeat::OnWalls ? layout.lid.low : high);
    wall.neck = {layout.neckZ.low + least, neckTop};
    if (given.cut) {
        wall.openingCentre = given.centre;
        wall.openingWidth = given.width;
        wall.opening = {wall.wall.high - given.depth, wall.wall.high - given.strip};
    } else {
        wall.openingCentre = layout.neckY;
        wall.openingWidth = plan.neck.width + 2 * plan.shop.fit;
        wall.opening = {wall.neck.low, std::min(neckTop, wall.wall.high)};
    }
    wall.stripAbove = std::max(0.0, wall.wall.high - wall.opening.high);
    wall.notch = wall.stripAbove < kSameHeight;
    if (wall.notch) {
        wall.stripAbove = 0;
        wall.opening.high = wall.wall.high;
    }
    wall.leftUnder = wall.opening.low - wall.wall.low;
    wall.leftBass = wall.openingCentre - wall.openingWidth / 2 - wall.minY;
    wall.leftTreble = wall.maxY - (wall.openingCentre + wall.openingWidth / 2);
}

void layoutEndWalls(const Plan& plan, Layout& out)
{
    const double low = out.neckY - plan.neck.width / 2;
    const double high = out.neckY + plan.neck.width / 2;
    const auto outer = crossingOverStrip(out.boxOuter, low, high);
    const auto inner = crossingOverStrip(out.boxInner, low, high);
    const auto outerLine = crossingAtY(out.boxOuter, out.neckY);
    const auto innerLine = crossingAtY(out.boxInner, out.neckY);
    EndWallLayout& head = out.headWall;
    EndWallLayout& tail = out.tailWall;
    if (outer && outerLine) {
        head.outerX = outerLine->first;
        head.outerMinX = outer->firstMin;
        head.outerMaxX = outer->firstMax;
        tail.outerX = outerLine->last;
        tail.outerMinX = outer->lastMin;
        tail.outerMaxX = outer->lastMax;
    } else {
        // No wall to measure from: the stations fall back on the box's ends, and a check says what is wrong.
        tail.outerX = tail.outerMinX = tail.outerMaxX = out.bodyLength;
    }
    if (inner && innerLine) {
        head.innerX = innerLine->first;
        head.innerMinX = inner->firstMin;
        head.innerMaxX = inner->firstMax;
        tail.innerX = innerLine->last;
        tail.innerMinX = inner->lastMin;
        tail.innerMaxX = inner->lastMax;
    } else {
        head.innerX = head.innerMinX = head.innerMaxX = head.outerX;
        tail.innerX = tail.innerMinX = tail.innerMaxX = tail.outerX;
    }
    head.crossed = tail.crossed = outer.has_value() && inner.has_value();
    layoutWallOpening(plan, out, plan.headOpening, head);
    layoutWallOpening(plan, out, plan.tailOpening, tail);
}

void layoutNeck(const Plan& plan, Layout& out)
{
    const Neck& neck = plan.neck;
    const Scale& scale = plan.scale;
    const double nutByBox = out.headWall.outerX - scale.nutToBox;
    const double saddleByTail = out.tailWall.outerX - scale.saddleToTail;
    switch (scale.hold) {
        case ScaleHold::NutToBox:
            out.nutX = nutByBox;
            out.saddleX = nutByBox + scale.length + scale.setback;
            break;
        case ScaleHold::SaddleToTail:
            out.saddleX = saddleByTail;
            out.nutX = saddleByTail - scale.length - scale.setback;
            break;
        case ScaleHold::BothAsMeasured:
            out.nutX = nutByBox;
            out.saddleX = saddleByTail;
            break;
    }
    out.headEndX = out.nutX - neck.headLength;
    out.tailEndX = out.tailWall.outerMaxX + neck.tailLength;
    out.neckNeeded = out.tailEndX - out.headEndX;
    const double half = neck.width / 2;
    out.neckOutline = {{out.headEndX, out.neckY - half},
                       {out.tailEndX, out.neckY - half},
                       {out.tailEndX, out.neckY + half},
                       {out.headEndX, out.neckY + half}};
    out.nutEdgeX = out.nutX;
    if (!(plan.frets.zeroFret && plan.frets.kind == FretKind::Wire)) out.nutEdgeX += scale.nutForward;
    if (const auto lid = crossingOverStrip(out.lidOutline, out.neckY - half, out.neckY + half)) {
        out.seatFrom = lid->firstMin;
        out.seatTo = lid->lastMax;
    }
    const double highest = std::max(out.neckRise(out.seatFrom), out.neckRise(out.seatTo));
    out.seatDepth = std::clamp(neck.top + highest, 0.0, neck.thickness);
}

void layoutFretboard(const Plan& plan, Layout& out)
{
    const Fretboard& board = plan.fretboard;
    out.fretboardEndX =
        board.end == FretboardEnd::AtBox ? out.headWall.outerMinX : out.headWall.outerX + board.overLid;
    out.fretboardCut = out.fretboardEndX - out.nutEdgeX;
    out.fretboardZ = {out.neckZ.high, out.neckZ.high + board.thickness};
    if (out.fretboardCut <= 0) return;
    out.fretboardOutline = {{out.nutEdgeX, out.neckY - board.widthAtNut / 2},
                            {out.fretboardEndX, out.neckY - board.widthAtEnd / 2},
                            {out.fretboardEndX, out.neckY + board.widthAtEnd / 2},
                            {out.nutEdgeX, out.neckY + board.widthAtNut / 2}};
}

/// y of each string from the neck's middle, from the treble side, where the outer ones are `spread` apart.
std::vector<double> stringPlaces(const Plan& plan, double spread)
{
    if (plan.strings.spacing == StringSpacing::EqualGaps && plan.strings.perCourse <= 1) {
        std::vector<double> gauges;
        for (const GuitarString& string : plan.stringSet)
            gauges.push_back(string.gauge);
        std::reverse(gauges.begin(), gauges.end());
        // Strings that would touch have no equal gaps; their centres are then spaced as ever.
        if (const auto gaps = stringsAbout(spread, gauges, StringSpacing::EqualGaps))
            return {gaps->centres.rbegin(), gaps->centres.rend()};
    }
    const int count = static_cast<int>(plan.stringSet.size());
    const int each = std::clamp(plan.strings.perCourse, 1, std::max(count, 1));
    const int courses = (count + each - 1) / each;
    std::vector<double> places;
    // A last course may have fewer strings; the outer strings are what the spread is measured between.
    const auto width = [&](int course) {
        return (std::min(each, count - course * each) - 1) * plan.strings.courseGap;
    };
    const double first = spread / 2 - width(0) / 2, last = -spread / 2 + width(courses - 1) / 2;
    for (int course = 0; course < courses; ++course) {
        const double middle =
            courses == 1 ? 0 : first + (last - first) * static_cast<double>(course) / (courses - 1);
        for (int k = 0; course * each + k < count && k < each; ++k)
            places.push_back(middle + width(course) / 2 - k * plan.strings.courseGap);
    }
    return places;
}

void layoutBridge(const Plan& plan, Layout& out)
{
    const Bridge& bridge = plan.bridge;
    const double angle = radians(bridge.angle);
    const Point centre{out.saddleX, out.neckY};
    const Point across{-std::sin(angle), std::cos(angle)};
    out.bridgeOutline = rectangleRing(centre, bridge.width, bridge.length, angle);
    out.saddleFrom = centre - (bridge.length / 2) * across;
    out.saddleTo = centre + (bridge.length / 2) * across;
    out.bridgeZ = {0, bridge.height};

    const auto atNut = stringPlaces(plan, plan.strings.spreadAtNut);
    const auto atSaddle = stringPlaces(plan, plan.strings.spreadAtSaddle);
    for (std::size_t i = 0; i < atNut.size(); ++i)
        out.strings.push_back({{out.nutEdgeX, out.neckY + atNut[i]},
                               {out.saddleX - std::tan(angle) * atSaddle[i], out.neckY + atSaddle[i]}});
}

/// The head, and the neck with it.
void layoutHead(const Plan& plan, Layout& out)
{
    out.head = headLayout(plan, out);
    out.neckNeeded = out.tailEndX - out.nutX + out.head.blankUsed;
    const Ring& head = out.head.outline;
    if (plan.head.width > 0 && plan.head.width != plan.neck.width)
        out.neckOutline = {head[0],
                           head[1],
                           {head[1].x, out.neckOutline[0].y},
                           out.neckOutline[1],
                           out.neckOutline[2],
                           {head[2].x, out.neckOutline[3].y},
                           head[2],
                           head[3]};
}

void layoutHoles(const Plan& plan, Layout& out)
{
    for (const SoundHole& hole : plan.holes) {
        const Point centre{hole.x, hole.y};
        if (hole.kind == HoleKind::Circle)
            out.holes.push_back(circleRing(centre, hole.width / 2));
        else
            out.holes.push_back(
                slotRing(centre, std::max(hole.length, hole.width), hole.width, radians(hole.turn)));
    }
}

void layoutFixings(const Plan& plan, Layout& out)
{
    for (const LidFixing& hole : plan.fixings)
        out.fixings.push_back(circleRing({hole.x, hole.y}, hole.diameter / 2));
}

/// A tie's rectangle without `by` mm of its length, half of it at each end. Its first and third edge run
/// along it.
Ring shortened(const Ring& tie, double by)
{
    const Point along = tie[1] - tie[0];
    const Point cut = (0.5 * by / std::max(length(along), 1e-9)) * along;
    return {tie[0] + cut, tie[1] - cut, tie[2] - cut, tie[3] + cut};
}

void layoutArt(const Plan& plan, PlacedArtCache& cache, Layout& out)
{
    out.ties.resize(plan.ties.size());
    for (std::size_t i = 0; i < plan.art.size(); ++i) {
        std::vector<TieSpot> picked;
        std::vector<std::size_t> which;
        for (std::size_t k = 0; k < plan.ties.size(); ++k)
            if (plan.ties[k].art == static_cast<int>(i) + 1) {
                picked.push_back(plan.ties[k]);
                which.push_back(k);
            }
        out.art.push_back(cache.place(plan.art[i], plan.cutter.tieWidth, picked));
        for (std::size_t k = 0; k < which.size(); ++k) {
            const TieSpot& spot = picked[k];
            const std::vector<Ring>& outlines = out.art.back()->ties;
            TieLayout& tie = out.ties[which[k]];
            tie.at = onLid(plan.art[i], {spot.x, spot.y});
            if (k >= outlines.size() || outlines[k].empty()) continue;
            tie.outline = outlines[k];
            // Without the ends that reach into the wood.
            tie.over = shortened(tie.outline, spot.width);
        }
    }
    out.art = mendedAcrossLid(plan, out);
}

Ring uprightRing(double x0, double x1, double y0, double y1)
{
    return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
}

Ring wallBlockRing(const WallBlock& block, const Layout& layout)
{
    const double half = block.length / 2;
    const bool endWall = block.wall == BoxWall::HeadEnd || block.wall == BoxWall::TailEnd;
    const auto wall =
        endWall ? crossingAtY(layout.boxInner, block.at) : crossingAtX(layout.boxInner, block.at);
    if (!wall) return {};
    switch (block.wall) {
        case BoxWall::HeadEnd:
            return uprightRing(wall->first, wall->first + block.depth, block.at - half, block.at + half);
        case BoxWall::TailEnd:
            return uprightRing(wall->last - block.depth, wall->last, block.at - half, block.at + half);
        case BoxWall::BassSide:
            return uprightRing(block.at - half, block.at + half, wall->first, wall->first + block.depth);
        case BoxWall::TrebleSide:
            return uprightRing(block.at - half, block.at + half, wall->last - block.depth, wall->last);
    }
    return {};
}

void layoutBlocks(const Plan& plan, Layout& out)
{
    const CornerBlocks& corner = plan.cornerBlocks;
    if (plan.box.shape == BoxShape::Rectangle && corner.present && !out.boxInner.empty()) {
        const Bounds in = bounds(out.boxInner);
        const double dx = corner.alongSide;
        const double dy = corner.alongEnd;
        const Span z{out.lid.low - corner.height, out.lid.low};
        for (const Ring& ring : {uprightRing(in.minX, in.minX + dx, in.minY, in.minY + dy),
                                 uprightRing(in.maxX - dx, in.maxX, in.minY, in.minY + dy),
                                 uprightRing(in.maxX - dx, in.maxX, in.maxY - dy, in.maxY),
                                 uprightRing(in.minX, in.minX + dx, in.maxY - dy, in.maxY)})
            out.blocks.push_back({"corner-blocks", ring, z});
    }
    for (std::size_t i = 0; i < plan.blocks.size(); ++i)
        out.blocks.push_back({"block." + std::to_string(i + 1),
                              wallBlockRing(plan.blocks[i], out),
                              {out.lid.low - plan.blocks[i].height, out.lid.low}});
}

void layoutStations(Layout& out)
{
    const Bounds bridge = bounds(out.bridgeOutline);
    out.stations = {{"head-end", "Head end", out.headEndX},
                    {"nut", "Nut", out.nutX},
                    {"head-wall", "Head-end wall, outside", out.headWall.outerX},
                    {"head-wall-inside", "Head-end wall, inside", out.headWall.innerX},
                    {"bridge-front", "Bridge, front edge", bridge.minX},
                    {"saddle", "Saddle", out.saddleX},
                    {"bridge-back", "Bridge, back edge", bridge.maxX},
                    {"tail-wall-inside", "Tail-end wall, inside", out.tailWall.innerX},
                    {"tail-wall", "Tail-end wall, outside", out.tailWall.outerX},
                    {"tail-end", "Tail end", out.tailEndX}};
    if (out.relief.pad) {
        out.stations.push_back({"pad-front", "Pad, front edge", out.relief.padFrom});
        out.stations.push_back({"pad-back", "Pad, back edge", out.relief.padTo});
    }
    for (const ReliefCut& cut : out.relief.cuts) {
        if (cut.part != "relief") continue;
        if (!out.relief.pad || cut.to <= out.relief.padFrom + kSameHeight)
            out.stations.push_back({"relief-head", "Relief, head end", cut.from});
        if (!out.relief.pad || cut.from >= out.relief.padTo - kSameHeight)
            out.stations.push_back({"relief-tail", "Relief, tail end", cut.to});
    }
    if (out.fretboardCut > 0) out.stations.push_back({"fretboard-end", "Fretboard end", out.fretboardEndX});
    std::stable_sort(out.stations.begin(), out.stations.end(),
                     [](const Station& a, const Station& b) { return a.x < b.x; });
}

}  // namespace

Layout derive(const Plan& plan, PlacedArtCache* cache)
{
    Layout out;
    layoutBody(plan, out);
    out.neckY = plan.neck.offset;
    out.neckZ.high = out.lid.low + plan.neck.top;
    out.neckZ.low = out.neckZ.high - plan.neck.thickness;
    out.neckSlope = std::tan(radians(plan.neck.tilt));
    layoutEndWalls(plan, out);
    layoutNeck(plan, out);
    layoutFretboard(plan, out);
    out.frets = fretLayout(plan, out);
    layoutBridge(plan, out);
    layoutHead(plan, out);
    layoutHoles(plan, out);
    layoutFixings(plan, out);
    layoutBlocks(plan, out);
    out.relief = reliefLayout(plan, out);
    out.bars = barLayout(plan, out);
    out.devices = deviceLayout(plan, out);
    PlacedArtCache own;
    out.memo = (cache != nullptr ? *cache : own).memo();
    out.quick = cache != nullptr && cache->quick();
    layoutArt(plan, cache != nullptr ? *cache : own, out);
    out.backing = backingLayout(plan, out);
    layoutStations(out);
    return out;
}

}  // namespace lidwright
