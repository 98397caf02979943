#pragma once

#include "core/base/sentence.h"
#include "core/drawing/cut_preset.h"
#include "core/layout/layout.h"

namespace lidwright {

inline constexpr double kWidestKerf = 5;         ///< mm; more is refused
inline constexpr double kSameCutLine = 0.001;    ///< mm: lines whose ends lie nearer lie on one another
inline constexpr double kKerfTolerance = 0.001;  ///< mm: how far chords stray where the kerf rounds a corner

/// A round hole for a pin or a screw.
struct AlignmentHole {
    Point at;             ///< in the lid's frame, mm
    double diameter = 0;  ///< mm, finished

    bool operator==(const AlignmentHole&) const = default;
};

/// What the cutter is asked for.
struct CutJob {
    CutPreset preset = cutPresets().front();
    double kerf = 0;          ///< width that the beam or blade takes away, mm, 0 to kWidestKerf
    bool compensate = false;  ///< lines are moved by half the kerf, so that cutting on them gives the size
    bool mirrored = false;    ///< seen from below, for cutting with the lid's underside up
    bool engraving = true;
    bool lidOutline = true;
    bool marks = true;      ///< centre line, bridge, neck edges and words, on the layer that is not cut
    bool checkLine = true;  ///< 100 mm to measure, on the layer that is not cut
    std::vector<AlignmentHole> alignment;  ///< besides the plan's own holes for screws and pins

    bool operator==(const CutJob&) const = default;
};

/// One line of the cutter's file.
struct CutPath {
    CutOperation operation = CutOperation::CutInside;
    std::vector<Point> points;  ///< a circle's centre alone
    bool closed = false;
    double radius = 0;  ///< mm; above 0: a whole circle
    int depth = 0;      ///< how many other outlines of the same operation lie around it

    bool operator==(const CutPath&) const = default;
};

/// Everything that a cutter's file says, spelled by the writers of core/io/cut and by painters alike.
/// Millimetres, y up, full size, nothing left of or below (0, 0).
struct CutDrawing {
    std::string title;
    Bounds extent;                 ///< from (0, 0); holds all lines with some air around them
    Point lidOrigin;               ///< where the lid's frame has its (0, 0)
    bool mirrored = false;         ///< the lid's y runs down
    std::vector<CutLayer> layers;  ///< of the operations that occur, in cutting order
    /// In cutting order: by layer, in a layer what lies deepest inside others first.
    std::vector<CutPath> paths;
    /// What the file is, for its comments: scale, side, kerf.
    std::vector<std::string> notes;
    int duplicates = 0;              ///< lines that lay on others and are written once
    std::vector<Sentence> messages;  ///< what the maker ought to know: see composeCutDrawing
};

/// The cutter's file for the lid of a plan.
///
/// All openings are united, so that no line is cut twice; an opening that reaches the lid's edge becomes part
/// of the outline where that is cut too, one beside the lid is left out. Outlines that are cut are closed.
/// Plain round holes that stand alone stay true circles. With `compensate`, openings shrink and the lid grows
/// by half the kerf, exactly along straight edges and within kKerfTolerance around corners; islands in
/// openings grow likewise. Engraving stays as it is, less what is cut.
///
/// Messages name openings that the kerf closes or divides, openings at or beside the lid's edge, engraving
/// beyond it, lines drawn twice, alignment holes that meet an opening or the edge, and a preset that cuts the
/// outline before what lies inside it.
///
/// Errors: a kerf or an alignment hole out of range; a plan that leaves no lid; nothing to draw.
Result<CutDrawing> composeCutDrawing(const Plan& plan, const Layout& layout, const CutJob& job);

/// "lid-mm-kerf-0.2mm-compensated", "lid-mm-no-kerf-taken-off": a file name without ending that says so.
/// Characters that file systems refuse become hyphens.
std::string cutFileName(const std::string& base, const CutJob& job);

/// How much there is to cut.
struct CutTotals {
    int closed = 0;     ///< closed outlines
    int open = 0;       ///< open lines
    double length = 0;  ///< mm
    double area = 0;    ///< mm2 between closed outlines, even-odd
};
CutTotals totalsOf(const CutDrawing& drawing, CutOperation operation);

}  // namespace lidwright
