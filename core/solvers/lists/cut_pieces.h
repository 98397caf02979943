#pragma once

#include "core/layout/layout.h"

#include <optional>
#include <string>
#include <vector>

namespace lidwright {

/// How the grain lies in a piece.
enum class GrainRun {
    AlongLength,  ///< solid wood: along the piece's length
    FaceAlong,    ///< plywood: the face ply's, along the piece's length
    None,         ///< fibreboard: may lie either way
};

/// One piece that is cut from wood or panel, or several alike. mm.
struct CutPiece {
    std::string part;      ///< "neck", "box", "block.2"
    std::string name;      ///< marked English
    std::string material;  ///< id of a wood or panel in core/materials
    int count = 1;
    double length = 0;  ///< finished, along the grain
    double width = 0;   ///< finished
    double thickness = 0;
    double roughLength = 0;  ///< with Shop::overLength
    double roughWidth = 0;   ///< with Shop::overWidth
    double overWidth = 0;    ///< allowance across the grain
    GrainRun grain = GrainRun::AlongLength;
    std::string direction;    ///< where its length lies on the finished instrument, marked English
    bool ofBox = false;       ///< comes with a box that was found
    bool turnedToo = false;   ///< width and thickness may be exchanged when it is sawn out
    bool planed = false;      ///< solid wood: may be planed down from thicker stock
    std::optional<Point> at;  ///< in plan view

    bool operator==(const CutPiece&) const = default;
};

/// Every piece of wood or panel of the plan exactly once, in the order box, lid, stick and what is on it,
/// inside. What has no size (a fretboard behind the nut, a box that leaves no room) is left out.
///
/// The box is taken as butt joined: its end walls as long as it is wide, its side walls between them, the
/// base between all four. The wall of a free outline is one strip, bent, as long as the outline; its base is
/// the rectangle around the inside. The head is of the stick's wood, a scarfed one too:
/// Layout::neckNeeded has it, with the joint's saw cut; a head wider than the stick makes the whole piece
/// wider. The nut is of the bridge's wood, kNutWidth along the strings, and stands half the thickest string
/// over the strings' undersides. Corner blocks stand with their grain upright (common practice, no source).
std::vector<CutPiece> cutPieces(const Plan& plan, const Layout& layout);

/// The nut's top over the strings' undersides, mm: half the thickest string.
double nutOverStrings(const Plan& plan);

/// The outer outlines of the backing as rectangles around them: each layer is cut so.
std::vector<Bounds> backingSheets(const Layout& layout);

}  // namespace lidwright
