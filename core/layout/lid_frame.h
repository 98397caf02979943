#pragma once

#include "core/layout/layout.h"

/// What the searches of a whole lid share. Private to core/layout.
namespace lidwright {

/// A foot nearer than this to a line stands on it, mm.
inline constexpr double kOnOutline = 1e-3;

/// What carries the artwork: the walls' inner faces or, without a cavity, the lid's edge.
const Ring& lidFrame(const Layout& layout);

/// True when nothing but itself is within `width` of any drawing or hole, so that each can be judged alone.
/// Boxes are compared: a needless search of the whole lid is only slower.
bool standApart(const Layout& layout, double width);

/// The frame less these cuts and the plain holes.
Region solidLid(const Layout& layout, std::vector<Region> cuts);

}  // namespace lidwright
