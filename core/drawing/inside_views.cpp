#include "core/drawing/inside_views.h"

#include "core/drawing/ring_split.h"
#include "core/layout/fittings_layout.h"

#include <algorithm>

namespace lidwright {
namespace {

/// How far the two lines of a hole's centre cross run beyond it, mm on paper (common practice).
constexpr double kCrossOverrun = 1.5;
/// A strap button is drawn this wide and high: mm, common practice; nothing is measured from it.
constexpr double kButtonDrawn = 14;
constexpr double kButtonHigh = 11;

Ring upright(double a0, double a1, double b0, double b1)
{
    return {{a0, b0}, {a1, b0}, {a1, b1}, {a0, b1}};
}

void drawCross(ViewPen& pen, const std::string& part, Point middle, double radius)
{
    const double arm = radius + pen.paper(kCrossOverrun);
    pen.line(part, "centre", {{middle.x - arm, middle.y}, {middle.x + arm, middle.y}}, LineKind::Centre);
    pen.line(part, "centre", {{middle.x, middle.y - arm}, {middle.x, middle.y + arm}}, LineKind::Centre);
}

Ring holeRing(const DeviceLayout& device)
{
    return device.diameter > 0 ? circleRing(device.hole, device.diameter / 2) : Ring{};
}

bool onEndWall(DevicePlace place)
{
    return place == DevicePlace::HeadWall || place == DevicePlace::TailWall;
}

/// The sides of a hole through a wall with its centre line, seen across the hole: `at` along the wall, from
/// one face of the wall to the other.
void drawBore(ViewPen& pen, const DeviceLayout& device, double at, double from, double to, bool alongY)
{
    const auto place = [&](double along, double across) {
        return alongY ? Point{across, along} : Point{along, across};
    };
    const double r = device.diameter / 2, over = pen.paper(kCrossOverrun);
    if (r > 0)
        for (const double side : {at - r, at + r})
            pen.line(device.part, "hidden", {place(side, from), place(side, to)}, LineKind::Hidden);
    pen.line(device.part, "centre",
             {place(at, std::min(from, to) - over), place(at, std::max(from, to) + over)}, LineKind::Centre);
}

/// Where the hole of a part on a wall meets the wall's two faces, seen from above.
struct WallFaces {
    double outer = 0, inner = 0;
};
WallFaces facesOf(const DeviceLayout& device, DevicePlace place)
{
    const Bounds body = bounds(device.body);
    switch (place) {
        case DevicePlace::HeadWall:
            return {body.minX - device.through, body.minX};
        case DevicePlace::TailWall:
            return {body.maxX + device.through, body.maxX};
        case DevicePlace::BassWall:
            return {body.minY - device.through, body.minY};
        case DevicePlace::TrebleWall:
            return {body.maxY + device.through, body.maxY};
        case DevicePlace::Lid:
        case DevicePlace::Neck:
            break;
    }
    return {};
}

/// Seen from above or below: what lies on a wall.
void drawOnWallFromAbove(ViewPen& pen, const DeviceLayout& device, DevicePlace place, bool visible)
{
    if (visible)
        pen.area(device.part, "wiring", device.body, FillKind::Bridge, LineKind::Visible);
    else
        pen.outline(device.part, "hidden", device.body, LineKind::Hidden);
    const WallFaces faces = facesOf(device, place);
    drawBore(pen, device, device.hole.x, faces.outer, faces.inner, onEndWall(place));
}

void drawHoleFromAbove(ViewPen& pen, const DeviceLayout& device)
{
    const Ring hole = holeRing(device);
    if (!hole.empty()) pen.area(device.part, "wiring", hole, FillKind::CutThrough, LineKind::Visible);
    drawCross(pen, device.part, device.hole, device.diameter / 2);
}

void drawReliefHidden(ViewPen& pen, const ViewInput& in)
{
    for (const ReliefOutline& outline : reliefOutlines(in.plan, in.layout))
        for (const Ring& ring : outline.rings)
            pen.outline(outline.part, "hidden", ring, LineKind::Hidden);
}

void drawButton(ViewPen& pen, const StrapLayout& strap, bool fromBelow)
{
    const double half = kButtonDrawn / 2;
    if (strap.atTail) {
        pen.outline("fittings", "fittings",
                    upright(strap.x, strap.x + kButtonHigh, strap.y - half, strap.y + half),
                    LineKind::Phantom);
    } else if (fromBelow) {
        pen.outline("fittings", "fittings", circleRing({strap.x, strap.y}, half), LineKind::Phantom);
        drawCross(pen, "fittings", {strap.x, strap.y}, half);
    } else {
        pen.outline("fittings", "hidden", circleRing({strap.x, strap.y}, half), LineKind::Hidden);
    }
}

/// The layout with a stick whose top is nowhere lowered.
Layout untouched(const Layout& layout)
{
    Layout bare = layout;
    bare.relief = {};
    return bare;
}

/// The stick's top as it was where it is lowered.
void drawUntouchedTop(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    if (l.relief.cuts.empty()) return;
    const Layout bare = untouched(l);
    std::vector<const ReliefCut*> cuts;
    for (const ReliefCut& cut : l.relief.cuts)
        cuts.push_back(&cut);
    std::sort(cuts.begin(), cuts.end(),
              [](const ReliefCut* a, const ReliefCut* b) { return a->from < b->from; });
    // Where cuts overlap the line is drawn once.
    double done = cuts.front()->from;
    for (const ReliefCut* cut : cuts) {
        const double from = std::max(done, cut->from);
        if (cut->to <= from) continue;
        pen.line(cut->part, "untouched", stickTopProfile(in.plan, bare, from, cut->to), LineKind::Phantom);
        done = cut->to;
    }
}

/// Beside a pad that is narrower than the stick its top is lowered too.
void drawBesidePad(ViewPen& pen, const ViewInput& in)
{
    const ReliefLayout& relief = in.layout.relief;
    if (!relief.pad || relief.padWidth >= in.plan.neck.width) return;
    Polyline floor = stickTopProfile(in.plan, untouched(in.layout), relief.padFrom, relief.padTo);
    for (Point& p : floor)
        p.y -= in.plan.relief.depth;
    pen.line("relief", "hidden", floor, LineKind::Hidden);
}

void drawBarSection(ViewPen& pen, const BarLayout& bar, double neckY)
{
    const auto cut = stretchesAtY({bar.outline}, neckY);
    for (const auto& [from, to] : cut)
        pen.area(bar.part, "bars", upright(from, to, bar.low, bar.high), FillKind::WoodEnd,
                 LineKind::Visible);
    const Bounds b = bounds(bar.outline);
    if (cut.empty())
        pen.outline(bar.part, "hidden", upright(b.minX, b.maxX, bar.low, bar.high), LineKind::Hidden);
}

void drawDeviceSection(ViewPen& pen, const ViewInput& in, std::size_t i)
{
    const Layout& l = in.layout;
    const DeviceLayout& device = l.devices[i];
    const DevicePlace place = in.plan.wiring[i].place;
    if (!device.reaches) return;
    if (device.onWall && !onEndWall(place)) {
        // Seen square on, behind what is cut.
        pen.outline(device.part, "hidden", device.face, LineKind::Hidden);
        pen.outline(device.part, "hidden", holeRing(device), LineKind::Hidden);
        drawCross(pen, device.part, device.hole, device.diameter / 2);
        return;
    }
    const Bounds b = bounds(device.body);
    const auto cut = stretchesAtY({device.body}, l.neckY);
    for (const auto& [from, to] : cut)
        pen.area(device.part, "wiring", upright(from, to, device.low, device.high), FillKind::Bridge,
                 LineKind::Visible);
    if (cut.empty())
        pen.outline(device.part, "hidden", upright(b.minX, b.maxX, device.low, device.high),
                    LineKind::Hidden);
    if (onEndWall(place)) {
        const WallFaces faces = facesOf(device, place);
        drawBore(pen, device, device.hole.y, faces.outer, faces.inner, true);
    } else if (place == DevicePlace::Lid) {
        drawBore(pen, device, device.hole.x, l.lid.low, l.lid.high, false);
    }
}

void drawButtonSection(ViewPen& pen, const ViewInput& in, const StrapLayout& strap)
{
    const double half = kButtonDrawn / 2, screw = in.plan.fittings.strapScrew / 2;
    const double deep = in.plan.fittings.strapScrewLength;
    if (strap.atTail) {
        pen.outline("fittings", "fittings",
                    upright(strap.x, strap.x + kButtonHigh, strap.z - half, strap.z + half),
                    LineKind::Phantom);
        pen.outline("fittings", "hidden", upright(strap.x - deep, strap.x, strap.z - screw, strap.z + screw),
                    LineKind::Hidden);
    } else {
        pen.outline("fittings", "fittings",
                    upright(strap.x - half, strap.x + half, strap.z - kButtonHigh, strap.z),
                    LineKind::Phantom);
        pen.outline("fittings", "hidden", upright(strap.x - screw, strap.x + screw, strap.z, strap.z + deep),
                    LineKind::Hidden);
    }
}

}  // namespace

std::vector<ReliefOutline> reliefOutlines(const Plan& plan, const Layout& l)
{
    const double half = plan.neck.width / 2;
    const auto strip = [&](double from, double to, double low, double high) {
        return upright(from, to, l.neckY + low, l.neckY + high);
    };
    std::vector<ReliefOutline> out;
    std::vector<Ring> relief;
    for (const ReliefCut& cut : l.relief.cuts) {
        const Ring ring = strip(cut.from, cut.to, -half, half);
        if (cut.part == "relief")
            relief.push_back(ring);
        else
            out.push_back({cut.part, {ring}});
    }
    const double pad = l.relief.padWidth / 2;
    if (l.relief.pad && pad < half) {
        const double from = std::max(l.relief.padFrom, l.headWall.innerMaxX + plan.relief.headLand);
        const double to = std::min(l.relief.padTo, l.tailWall.innerMinX - plan.relief.tailLand);
        if (to > from) {
            relief.push_back(strip(from, to, -half, -pad));
            relief.push_back(strip(from, to, pad, half));
        }
    }
    if (!relief.empty()) out.insert(out.begin(), {"relief", fill(relief, FillRule::NonZero).rings});
    return out;
}

void drawInsideTop(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    drawReliefHidden(pen, in);
    for (const BarLayout& bar : l.bars)
        pen.outline(bar.part, "hidden", bar.outline, LineKind::Hidden);
    for (std::size_t i = 0; i < l.devices.size(); ++i) {
        const DeviceLayout& device = l.devices[i];
        const DevicePlace place = in.plan.wiring[i].place;
        if (!device.reaches) continue;
        if (device.onWall) {
            drawOnWallFromAbove(pen, device, place, false);
            continue;
        }
        if (place == DevicePlace::Lid && in.plan.wiring[i].kind == DeviceKind::MagneticPickup)
            // It comes up through the lid.
            pen.area(device.part, "wiring", device.face, FillKind::Bridge, LineKind::Visible);
        else
            pen.outline(device.part, "hidden", device.body, LineKind::Hidden);
        if (place == DevicePlace::Lid)
            drawHoleFromAbove(pen, device);
        else
            drawCross(pen, device.part, device.hole, 0);
    }
    for (const StrapLayout& strap : fittingsLayout(in.plan, l).straps)
        drawButton(pen, strap, false);
}

void drawInsideUnder(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    for (const BarLayout& bar : l.bars)
        pen.area(bar.part, "bars", bar.outline, FillKind::Block, LineKind::Visible);
    for (std::size_t i = 0; i < l.devices.size(); ++i) {
        const DeviceLayout& device = l.devices[i];
        const DevicePlace place = in.plan.wiring[i].place;
        if (!device.reaches || place == DevicePlace::Neck) continue;
        if (device.onWall) {
            drawOnWallFromAbove(pen, device, place, true);
            continue;
        }
        pen.area(device.part, "wiring", device.body, FillKind::Bridge, LineKind::Visible);
        pen.outline(device.part, "hidden", holeRing(device), LineKind::Hidden);
        drawCross(pen, device.part, device.hole, device.diameter / 2);
    }
}

void drawInsideOverNeck(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    drawReliefHidden(pen, in);
    const auto covered = [&](const std::string& part, const Ring& ring) {
        for (const Polyline& line : splitByRing(ring, l.neckOutline).inside)
            pen.line(part, "hidden", line, LineKind::Hidden);
    };
    for (const BarLayout& bar : l.bars)
        covered(bar.part, bar.outline);
    for (std::size_t i = 0; i < l.devices.size(); ++i) {
        const DeviceLayout& device = l.devices[i];
        if (!device.reaches) continue;
        if (in.plan.wiring[i].place == DevicePlace::Neck) {
            pen.outline(device.part, "hidden", device.body, LineKind::Hidden);
            drawCross(pen, device.part, device.hole, 0);
        } else {
            covered(device.part, device.body);
        }
    }
    for (const StrapLayout& strap : fittingsLayout(in.plan, l).straps)
        drawButton(pen, strap, true);
}

void drawInsideSection(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    drawUntouchedTop(pen, in);
    drawBesidePad(pen, in);
    for (const BarLayout& bar : l.bars)
        drawBarSection(pen, bar, l.neckY);
    for (std::size_t i = 0; i < l.devices.size(); ++i)
        drawDeviceSection(pen, in, i);
    const FittingsLayout fittings = fittingsLayout(in.plan, l);
    for (const Ring& foot : fittings.feet) {
        const Bounds b = bounds(foot);
        // The two rows stand behind one another.
        if (b.centre().y > l.body.centre().y)
            pen.area("fittings", "fittings", upright(b.minX, b.maxX, fittings.footZ.low, fittings.footZ.high),
                     FillKind::Block, LineKind::Visible);
    }
    for (const StrapLayout& strap : fittings.straps)
        drawButtonSection(pen, in, strap);
}

void drawInsideEnd(ViewPen& pen, const ViewInput& in, bool head)
{
    const Layout& l = in.layout;
    const DevicePlace shown = head ? DevicePlace::HeadWall : DevicePlace::TailWall;
    // Only what stands in this half of the box; the other end view shows the rest.
    const auto here = [&](const Bounds& b) {
        return !b.empty() && (b.centre().x < l.body.centre().x) == head;
    };
    const auto hidden = [&](const std::string& part, const Ring& outline, double low, double high) {
        const Bounds b = bounds(outline);
        if (here(b)) pen.outline(part, "hidden", upright(b.minY, b.maxY, low, high), LineKind::Hidden);
    };
    for (const BarLayout& bar : l.bars)
        hidden(bar.part, bar.outline, bar.low, bar.high);
    for (std::size_t i = 0; i < l.devices.size(); ++i) {
        const DeviceLayout& device = l.devices[i];
        if (!device.reaches) continue;
        if (in.plan.wiring[i].place != shown) {
            hidden(device.part, device.body, device.low, device.high);
            continue;
        }
        pen.outline(device.part, "hidden", device.face, LineKind::Hidden);
        drawHoleFromAbove(pen, device);
    }
    const FittingsLayout fittings = fittingsLayout(in.plan, l);
    for (const Ring& foot : fittings.feet) {
        const Bounds b = bounds(foot);
        if (here(b))
            pen.area("fittings", "fittings", upright(b.minY, b.maxY, fittings.footZ.low, fittings.footZ.high),
                     FillKind::Block, LineKind::Visible);
    }
    for (const StrapLayout& strap : fittings.straps) {
        if (strap.atTail == head) continue;
        if (strap.atTail) {
            pen.outline("fittings", "fittings", circleRing({strap.y, strap.z}, kButtonDrawn / 2),
                        LineKind::Phantom);
            drawCross(pen, "fittings", {strap.y, strap.z}, kButtonDrawn / 2);
        } else {
            const double half = kButtonDrawn / 2;
            pen.outline("fittings", "fittings",
                        upright(strap.y - half, strap.y + half, strap.z - kButtonHigh, strap.z),
                        LineKind::Phantom);
        }
    }
}

}  // namespace lidwright
