#pragma once

#include "core/layout/layout.h"

namespace lidwright {

/// Where a new piece of artwork is put when nobody says where: the middle of the widest free part of the lid,
/// the point farthest from the edge of what artwork may use, from the bridge with its margin, the fretboard,
/// other artwork and holes (to about 2 mm; of equally free points the one nearest to the middle of the free
/// part). The middle of the body where nothing is free.
Point freePlace(const Plan& plan, const Layout& layout);

/// From a drawing at its true size (scaled already) to the lid.
Transform placementOf(const ArtPiece& piece);
/// A place of a drawing, at the size that the file gave, on the lid; and back.
Point onLid(const ArtPiece& piece, Point onDrawing);
Point onDrawing(const ArtPiece& piece, Point onLid);

/// A tie for the drawing with this index: over the narrowest way to its largest piece that drops out or,
/// where none does, in the drawing's middle.
TieSpot suggestedTie(const Plan& plan, const Layout& layout, std::size_t art);

}  // namespace lidwright
