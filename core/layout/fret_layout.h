#pragma once

#include "core/geometry/point.h"
#include "core/layout/fret_scale.h"
#include "core/plan/plan.h"

#include <optional>
#include <vector>

namespace lidwright {

/// One fret, or line, on the board.
struct FretLine {
    Point bass, treble;  ///< its ends at the board's edges, plan view
};

/// All frets of the plan.
struct FretLayout {
    double boardTop = 0;           ///< z of the fretboard's top or, without one, of the neck's
    double fretTops = 0;           ///< z of the frets' tops; of a board with lines its top
    double nutOverFrets = 0;       ///< string's underside over them at the nut
    std::optional<Error> problem;  ///< why there are none: the notes cannot be read
    FretScale scale;               ///< all that the plan asks for
    std::vector<FretLine> lines;   ///< of the first ones: those that lie on the board
    std::vector<Point> markers;    ///< middles of the dots
    double markerDiameter = 0;     ///< mm
};

struct Layout;

/// Where the plan's frets lie. The board and the nut must be laid out already.
FretLayout fretLayout(const Plan& plan, const Layout& layout);

/// Notes of the frets that the plan asks for. Errors as of fretNotes() and readNoteList(); `where` is the
/// key.
Result<std::vector<FretNote>> fretNotesOf(const Frets& frets);

/// The fretboard's width at x; beyond its ends that of the end.
double boardWidth(const Plan& plan, const Layout& layout, double x);

/// The frets as they are measured from the nut's front edge where it really stands, moved forward or not.
/// Distances to the saddle stay.
FretScale scaleFromEdge(const Layout& layout);

/// mm of the step to which the shop marks.
double markStep(MarkStep step);

}  // namespace lidwright
