#include "core/solvers/height_chain.h"

#include "core/solvers/neck_bow.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace lidwright {
namespace {

double share(const Layout& layout, double x)
{
    const double run = layout.saddleX - layout.nutEdgeX;
    return run > 0 ? (x - layout.nutEdgeX) / run : 0;
}

/// The hollow is deepest midway between the nut and where the neck is held by the box.
double hollow(const Plan& plan, const Layout& layout, double x)
{
    const double from = layout.nutX, to = layout.headWall.outerX;
    if (to <= from || x <= from || x >= to) return 0;
    const double t = (x - from) / (to - from);
    return plan.setup.relief * 4 * t * (1 - t);
}

/// The straight string over the frets' plane at x.
double stringLine(const Layout& layout, const HeightChain& chain, double x)
{
    return chain.nutOverFrets + share(layout, x) * (chain.saddleOverFrets - chain.nutOverFrets);
}

}  // namespace

double stringOverFrets(const Plan& plan, const Layout& layout, const HeightChain& chain, double x)
{
    return stringLine(layout, chain, x) + hollow(plan, layout, x);
}

namespace {

/// Fills in what follows from how far the frets sink away under the string: `drop` at the first fret and at
/// the octave.
void addActions(const Plan& plan, const Layout& layout, const std::function<double(double)>& drop,
                HeightChain& out)
{
    const auto over = [&](double x) { return stringLine(layout, out, x) + drop(x); };
    const double octave = layout.nutX + plan.scale.length / 2;
    out.atOctave = over(octave);
    const auto& frets = layout.frets.scale.frets;
    const auto first = std::find_if(frets.begin(), frets.end(), [](const Fret& f) { return f.fromNut > 0; });
    if (first != frets.end()) out.atFirst = over(layout.nutX + first->fromNut);
    const double way = share(layout, octave), arm = layout.saddleX - layout.headWall.outerX;
    if (way <= 0) return;
    const double rise = (plan.setup.action - drop(octave) - out.nutOverFrets) / way;
    out.bridgeNeeded = out.fretTops + out.nutOverFrets + rise + layout.neckRise(layout.saddleX);
    // Tilting by a carries the frets' plane up by a (x - wall) and the nut with it, but not the bridge.
    if (arm > 0)
        out.tiltNeeded =
            degrees(std::atan(layout.neckSlope + (out.atOctave - plan.setup.action) / (way * arm)));
}

}  // namespace

HeightChain heightChain(const Plan& plan, const Layout& layout)
{
    HeightChain out;
    out.boardTop = layout.frets.boardTop;
    out.fretTops = layout.frets.fretTops;
    out.nutOverFrets = layout.frets.nutOverFrets;
    out.saddleOverFrets = layout.bridgeZ.high - out.fretTops - layout.neckRise(layout.saddleX);
    addActions(
        plan, layout, [&](double x) { return hollow(plan, layout, x); }, out);
    const auto overLid = [&](double x) {
        return out.fretTops + layout.neckRise(x) + stringOverFrets(plan, layout, out, x);
    };
    out.overBoxEdge = overLid(layout.headWall.outerX);
    const double front = std::max(layout.headWall.outerX, bounds(layout.bridgeOutline).minX);
    out.overLid = std::min(out.overBoxEdge, overLid(front));
    return out;
}

namespace {

/// How far the frets sink away under the string at x where it is at pitch.
double strungDrop(const Layout& layout, const NeckBow& bow, double x)
{
    const double saddle = bow.bridgeOnNeck ? bow.liftAt(layout.saddleX) : 0;
    const double s = share(layout, x);
    return (1 - s) * bow.liftAt(layout.nutEdgeX) + s * saddle - bow.liftAt(x);
}

}  // namespace

double strungOverFrets(const Plan& plan, const Layout& layout, const NeckBow& bow, double x, double times)
{
    const HeightChain chain = heightChain(plan, layout);
    if (bow.problem || bow.line.empty()) return stringOverFrets(plan, layout, chain, x);
    return stringLine(layout, chain, x) + times * strungDrop(layout, bow, x);
}

HeightChain strungHeights(const Plan& plan, const Layout& layout, const NeckBow& bow, double times)
{
    HeightChain out = heightChain(plan, layout);
    if (bow.problem || bow.line.empty()) return out;
    addActions(
        plan, layout, [&](double x) { return times * strungDrop(layout, bow, x); }, out);
    return out;
}

}  // namespace lidwright
