#include "core/drawing/board_views.h"
#include "core/drawing/inside_views.h"
#include "core/drawing/lettering.h"
#include "core/drawing/ring_split.h"
#include "core/solvers/height_chain.h"
#include "core/solvers/neck_bow.h"

#include <algorithm>

namespace lidwright {
namespace {

Ring upright(double x0, double x1, Span z)
{
    return {{x0, z.low}, {x1, z.low}, {x1, z.high}, {x0, z.high}};
}

/// An area cut by the plane, if it has any extent.
void drawCutArea(ViewPen& pen, const std::string& part, double x0, double x1, Span z, FillKind kind)
{
    if (x1 > x0 && z.high > z.low) pen.area(part, part, upright(x0, x1, z), kind, LineKind::Visible);
}

void drawEndWall(ViewPen& pen, const Layout& l, const EndWallLayout& wall)
{
    const double x0 = std::min(wall.outerX, wall.innerX);
    const double x1 = std::max(wall.outerX, wall.innerX);
    const bool through = wall.crossed && std::abs(l.neckY - wall.openingCentre) < wall.openingWidth / 2;
    if (!through) {
        drawCutArea(pen, "box", x0, x1, wall.wall, FillKind::WoodEnd);
        return;
    }
    drawCutArea(pen, "box", x0, x1, {wall.wall.low, std::max(wall.wall.low, wall.opening.low)},
                FillKind::WoodEnd);
    if (!wall.notch) drawCutArea(pen, "box", x0, x1, {wall.opening.high, wall.wall.high}, FillKind::WoodEnd);
}

/// The stretches in which the plane runs through open air in the lid.
std::vector<std::pair<double, double>> gapsInLid(const Layout& l)
{
    auto gaps = stretchesAtY(l.holes, l.neckY);
    for (const DeviceLayout& device : l.devices) {
        if (device.onWall || device.diameter <= 0) continue;
        const auto own = stretchesAtY({circleRing(device.hole, device.diameter / 2)}, l.neckY);
        gaps.insert(gaps.end(), own.begin(), own.end());
    }
    for (const PlacedArtPtr& art : l.art) {
        if (!art || l.neckY < art->bounds.minY || l.neckY > art->bounds.maxY) continue;
        std::vector<double> crossings;
        const Bounds line{art->bounds.minX, l.neckY, art->bounds.maxX, l.neckY};
        for (const SegmentTree::Segment& s : art->cutTree.touching(line))
            addCrossing(s.a, s.b, l.neckY, crossings);
        const auto own = pairedUp(std::move(crossings));
        gaps.insert(gaps.end(), own.begin(), own.end());
    }
    return gaps;
}

void drawLid(ViewPen& pen, const Layout& l)
{
    for (const auto& [from, to] : stretchesAtY({l.lidOutline}, l.neckY)) {
        drawCutArea(pen, "lid", from, to, l.lid, FillKind::Wood);
        for (const auto& [gapFrom, gapTo] : gapsInLid(l)) {
            const double a = std::max(from, gapFrom);
            const double b = std::min(to, gapTo);
            if (b > a) pen.area("lid", "lid", upright(a, b, l.lid), FillKind::CutThrough, LineKind::Visible);
        }
    }
}

/// The stick in one piece in its own heights: thinned or angled at the head, lower where the lid's seat and
/// the relief are cut into it.
Ring neckProfile(const ViewInput& in)
{
    const Layout& l = in.layout;
    Ring ring = l.head.lower;
    ring.push_back({l.tailEndX, l.neckZ.low});
    std::vector<Point> top = stickTopProfile(in.plan, l, l.nutX, l.tailEndX);
    for (auto p = top.rbegin(); p != top.rend(); ++p)
        ring.push_back({p->x, p->y - l.neckRise(p->x)});
    ring.insert(ring.end(), l.head.upper.begin(), l.head.upper.end());
    return ring;
}

void drawStringing(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    pen.lean(l.neckSlope, l.headWall.outerX);
    if (!l.fretboardOutline.empty())
        pen.area("fretboard", "fretboard", upright(l.nutEdgeX, l.fretboardEndX, l.fretboardZ),
                 FillKind::Fretboard, LineKind::Visible);
    if (in.plan.frets.kind == FretKind::Wire) {
        const double half = in.plan.frets.crownWidth / 2;
        for (const FretLine& fret : l.frets.lines)
            pen.area("frets", "frets",
                     upright(fret.bass.x - half, fret.bass.x + half,
                             {l.fretboardZ.high, l.fretboardZ.high + in.plan.frets.crownHeight}),
                     FillKind::Bridge, LineKind::Narrow);
    }
    pen.area("scale", "strings", upright(l.nutEdgeX - kNutDrawn, l.nutEdgeX, {l.neckZ.high, nutTop(l)}),
             FillKind::Bridge, LineKind::Visible);
    pen.lean(0, 0);
    // The cut through the bridge on the neck's centre line.
    for (const auto& [from, to] : stretchesAtY({l.bridgeOutline}, l.neckY))
        pen.area("bridge", "bridge", upright(from, to, l.bridgeZ), FillKind::Bridge, LineKind::Visible);
    pen.line("bridge", "bridge", {{l.saddleX, l.bridgeZ.low}, {l.saddleX, l.bridgeZ.high}}, LineKind::Centre);
    pen.line("strings", "strings",
             {{l.nutEdgeX, l.head.nutZ + l.neckRise(l.nutEdgeX)}, {l.saddleX, l.bridgeZ.high}},
             LineKind::Narrow);
    // Behind the saddle to where they are held; all of them in one line.
    const std::vector<Point3> way = stringWay(in.plan, l, 0).points;
    pen.line("anchor", "strings", {{l.saddleX, l.bridgeZ.high}, {way.back().x, way.back().z}},
             LineKind::Narrow);
}

void drawHeights(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    const Bounds now = pen.extent();
    DimensionRows right(Side::Right, now.maxX, pen.paper());
    const double tail = l.tailWall.outerX;
    pen.row(right, "box", {tail, l.walls.low}, {tail, l.walls.high}, "box.height");
    pen.row(right, "lid", {tail, l.lid.low}, {tail, l.lid.high}, "lid.thickness");
    pen.row(right, "box", {tail, l.base.low}, {tail, l.base.high}, "box.base");
    pen.row(right, "bridge", {bounds(l.bridgeOutline).maxX, 0},
            {bounds(l.bridgeOutline).maxX, l.bridgeZ.high}, "bridge.height");
    pen.add(right);

    DimensionRows left(Side::Left, now.minX, pen.paper());
    const double headRise = l.neckRise(l.headEndX), nutRise = l.neckRise(l.nutX);
    pen.row(left, "neck", {l.headEndX, l.neckZ.low + headRise}, {l.headEndX, l.neckZ.high + headRise},
            "neck.thickness");
    if (!l.fretboardOutline.empty())
        pen.row(left, "fretboard", {l.nutX - kNutDrawn, l.fretboardZ.low + nutRise},
                {l.nutX - kNutDrawn, l.fretboardZ.high + nutRise}, "fretboard.thickness");
    pen.add(left);

    if (in.plan.box.shape != BoxShape::Rectangle || !l.headWall.crossed) return;
    DimensionRows below(Side::Below, now.minY, pen.paper());
    pen.row(below, "box", {l.headWall.outerX, l.walls.low}, {l.headWall.innerX, l.walls.low}, "box.end-wall");
    pen.add(below);
}

/// The chain of heights where the set-up is selected: string over frets at the nut and at the octave, and
/// over the lid at the box's edge.
void drawHeightChain(ViewPen& pen, const ViewInput& in)
{
    if (in.options.selected != "setup") return;
    const Layout& l = in.layout;
    const HeightChain chain = heightChain(in.plan, l);
    const auto upright = [&](double x, double from, double height, const char* key) {
        if (height > 0) pen.dimension("setup", {x, from}, {x, from + height}, -pen.paper(5), key);
    };
    const double octave = l.nutX + in.plan.scale.length / 2;
    upright(l.nutEdgeX, chain.fretTops + l.neckRise(l.nutEdgeX), chain.nutOverFrets, "setup.nut-clearance");
    upright(octave, chain.fretTops + l.neckRise(octave), chain.atOctave, "");
    upright(l.headWall.outerX, l.lid.high, chain.overBoxEdge, "");
}

}  // namespace

void drawSectionView(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    for (const auto& [from, to] : stretchesAtY({l.boxInner}, l.neckY))
        drawCutArea(pen, "box", from, to, l.base, FillKind::Wood);
    drawEndWall(pen, l, l.headWall);
    drawEndWall(pen, l, l.tailWall);
    pen.lean(l.neckSlope, l.headWall.outerX);
    pen.area("neck", "neck", neckProfile(in), FillKind::Wood, LineKind::Visible);
    pen.lean(0, 0);
    drawLid(pen, l);
    for (const BlockLayout& block : l.blocks) {
        const Bounds b = bounds(block.outline);
        if (!b.empty()) pen.outline(block.part, "hidden", upright(b.minX, b.maxX, block.z), LineKind::Hidden);
    }
    drawInsideSection(pen, in);
    pen.lean(l.neckSlope, l.headWall.outerX);
    drawHeadSection(pen, in);
    pen.lean(0, 0);
    drawStringing(pen, in);
    drawHeights(pen, in);
    drawInsideDimensions(pen, in);
    drawHeightChain(pen, in);

    const std::string label = in.options.only ? "Long section"
                                              : "Long section A\xE2\x80\x93"
                                                "A";
    constexpr double kHeight = 3.5;
    double y = std::min(l.walls.low, l.neckZ.low + l.neckRise(l.headEndX) - pen.paper(12));
    // On little paper the words reach under the box, where the end wall's dimension stands.
    const double end = l.headEndX + pen.paper(textWidth(label, kHeight) + 12);
    if (end > l.headWall.outerX) y = std::min(y, l.walls.low - pen.paper(20));
    pen.text("", "words", {l.headEndX, y}, label, kHeight, Anchor::Left);
}

}  // namespace lidwright
