#pragma once

#include "tests/core/drawing/cut_plans.h"

#include "core/io/cut/cut_dxf.h"

namespace lidwright::testing {

/// A lid with a square opening with an island, a round hole, an engraved square and a pin's hole.
inline CutDrawing filedLid(bool filledEngraving = false)
{
    Plan plan = squareLid();
    addArt(plan, fill({rectangleRing({0, 0}, 30, 30), rectangleRing({0, 0}, 10, 10)}, FillRule::EvenOdd),
           {100, 0});
    addArt(plan, square({0, 0}, 12), {200, -50});
    plan.art.back().uses = {ArtUse::Engraved};
    plan.holes = {{HoleKind::Circle, 80, 60, 25}};
    CutJob job;
    job.alignment = {{{20, 0}, 3}};
    for (CutLayer& layer : job.preset.layers)
        if (layer.operation == CutOperation::Engrave) layer.filled = filledEngraving;
    return drawn(plan, job);
}

inline int countOf(const std::string& text, const std::string& piece)
{
    int count = 0;
    for (std::size_t at = text.find(piece); at != std::string::npos; at = text.find(piece, at + 1))
        ++count;
    return count;
}

}  // namespace lidwright::testing
