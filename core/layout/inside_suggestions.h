#pragma once

#include "core/layout/layout.h"

namespace lidwright {

/// A bar across the lid's treble half where nobody said where: midway between the head-end wall and the
/// bridge, from beside the stick to before the wall. One like the default where the box leaves no room.
LidBar suggestedBar(const Plan& plan, const Layout& layout);

/// A part of the wiring with its kind's ordinary sizes where such a part usually sits: a disc under the
/// bridge's treble wing, a rod in the stick under the saddle, a magnetic pickup before the bridge, a pot on
/// the lid near its tail end's treble corner, a socket in the treble side wall. What sits on the lid then
/// moves to the nearest place that is clear of artwork, holes, bridge and what is under the lid, if there is
/// one.
Device suggestedDevice(const Plan& plan, const Layout& layout, DeviceKind kind);

}  // namespace lidwright
