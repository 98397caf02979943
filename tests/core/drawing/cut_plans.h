#pragma once

#include "tests/support/plans.h"

#include "core/drawing/cut_drawing.h"

/// Lids with known openings, and what their cutter's files hold.
namespace lidwright::testing {

/// A box whose lid is 300 by 200 mm with sharp corners, from (0, -100) to (300, 100).
inline Plan squareLid()
{
    Plan plan;
    plan.box.length = 300;
    plan.box.width = 200;
    plan.box.cornerRadius = 0;
    plan.box.endWall = plan.box.sideWall = 3;
    return plan;
}

inline void addArt(Plan& plan, const Region& region, Point at = {})
{
    ArtPiece piece = pieceOf(region);
    piece.x = at.x;
    piece.y = at.y;
    plan.art.push_back(piece);
}

inline CutDrawing drawn(const Plan& plan, const CutJob& job = {})
{
    const auto drawing = composeCutDrawing(plan, derive(plan), job);
    if (!drawing) {
        ADD_FAILURE() << drawing.error().text();
        return {};
    }
    return *drawing;
}

inline std::vector<CutPath> pathsOf(const CutDrawing& drawing, CutOperation operation)
{
    std::vector<CutPath> out;
    for (const CutPath& path : drawing.paths)
        if (path.operation == operation) out.push_back(path);
    return out;
}

inline Bounds boundsOf(const CutDrawing& drawing, CutOperation operation)
{
    Bounds box;
    for (const CutPath& path : pathsOf(drawing, operation))
        box.include(bounds(path.points).grown(path.radius));
    return box;
}

inline bool tells(const CutDrawing& drawing, const std::string& words)
{
    for (const Sentence& sentence : drawing.messages)
        if (spoken(sentence, {}).find(words) != std::string::npos) return true;
    return false;
}

inline Region square(Point centre, double size)
{
    return Region{{rectangleRing(centre, size, size)}};
}

}  // namespace lidwright::testing
