#pragma once

#include "core/layout/layout.h"

namespace lidwright {

/// Where a new piece of artwork is put when nobody says where: the middle of the widest free part of the lid,
/// the point farthest from the edge of what artwork may use, from the bridge with its margin, the fretboard,
/// other artwork and holes (to about 2 mm; of equally free points the one nearest to the middle of the free
/// part). The middle of the body where nothing is free.
Point freePlace(const Plan& plan, const Layout& layout);

}  // namespace lidwright
