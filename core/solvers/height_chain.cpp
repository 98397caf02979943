#include "core/solvers/height_chain.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

double share(const Layout& layout, double x)
{
    const double run = layout.saddleX - layout.nutX;
    return run > 0 ? (x - layout.nutX) / run : 0;
}

/// The hollow is deepest midway between the nut and where the neck is held by the box.
double hollow(const Plan& plan, const Layout& layout, double x)
{
    const double from = layout.nutX, to = layout.headWall.outerX;
    if (to <= from || x <= from || x >= to) return 0;
    const double t = (x - from) / (to - from);
    return plan.setup.relief * 4 * t * (1 - t);
}

}  // namespace

double stringOverFrets(const Plan& plan, const Layout& layout, const HeightChain& chain, double x)
{
    return chain.nutOverFrets + share(layout, x) * (chain.saddleOverFrets - chain.nutOverFrets) +
           hollow(plan, layout, x);
}

HeightChain heightChain(const Plan& plan, const Layout& layout)
{
    HeightChain out;
    out.boardTop = layout.frets.boardTop;
    out.fretTops = layout.frets.fretTops;
    out.nutOverFrets = layout.frets.nutOverFrets;
    out.saddleOverFrets = layout.bridgeZ.high - out.fretTops;
    const double octave = layout.nutX + plan.scale.length / 2;
    out.atOctave = stringOverFrets(plan, layout, out, octave);
    const auto& frets = layout.frets.scale.frets;
    const auto first = std::find_if(frets.begin(), frets.end(), [](const Fret& f) { return f.fromNut > 0; });
    if (first != frets.end()) out.atFirst = stringOverFrets(plan, layout, out, layout.nutX + first->fromNut);
    const double way = share(layout, octave);
    if (way > 0) {
        const double rise = (plan.setup.action - hollow(plan, layout, octave) - out.nutOverFrets) / way;
        out.bridgeNeeded = out.fretTops + out.nutOverFrets + rise;
    }
    out.overBoxEdge = out.fretTops + stringOverFrets(plan, layout, out, layout.headWall.outerX);
    const double front = std::max(layout.headWall.outerX, bounds(layout.bridgeOutline).minX);
    out.overLid = std::min(out.overBoxEdge, out.fretTops + stringOverFrets(plan, layout, out, front));
    return out;
}

}  // namespace lidwright
