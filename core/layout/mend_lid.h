#pragma once

#include "core/layout/layout.h"

namespace lidwright {

/// Strengthens what a drawing by itself does not know of: wood between its cuts and those of another drawing,
/// a plain hole, the lid's edge or a wall.
///
/// Where both sides belong to drawings that the plan wants strengthened, both cuts are pulled back alike,
/// about the middle line of the wood. Where one side has to stay (a hole, a wall, a drawing without
/// ArtPiece::strengthen) the other is pulled back alone, to the whole width from the side that stays.
/// Drawings that are clear of everything come back as they are, the same objects.
///
/// Like everything that large drawings take time for, it is left out at the steps of a drag (Layout::quick).
std::vector<PlacedArtPtr> mendedAcrossLid(const Plan& plan, const Layout& layout);

}  // namespace lidwright
