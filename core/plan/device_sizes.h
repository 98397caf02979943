#pragma once

#include "core/plan/wiring.h"

namespace lidwright {

/// A part of the wiring with the sizes that are ordinary for its kind, for a start: common practice, no
/// source. Parts differ; the one in hand is measured and typed over. Where it sits is left as it is by
/// default.
Device ordinaryDevice(DeviceKind kind);

}  // namespace lidwright
