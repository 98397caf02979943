#pragma once

#include "core/geometry/narrow_path.h"

#include <optional>

namespace lidwright {

/// A dead end that is more than a plain corner.
struct NarrowFinger {
    AxisSpot place;    ///< the section that counts
    double start = 0;  ///< along the path, mm: where the finger begins
    double run = 0;    ///< mm from there to its free end
};

/// Judges a dead end by the rule of findNarrow; nothing where it is a plain corner.
std::optional<NarrowFinger> judgeDeadEnd(const NarrowProfile& profile, const NarrowGraph::DeadEnd& end,
                                         bool hangsOnExit, double width);

/// The place that counts on the longest path through a part that no exit leads out of: its narrowest neck,
/// with wider places on both sides. Where it has none: the narrowest of its inner half, or nothing where
/// `roomy` says that it is not narrower than asked throughout.
std::optional<AxisSpot> loneSpot(const NarrowProfile& profile, bool roomy);

}  // namespace lidwright
