#pragma once

namespace lidwright {

enum class HoleKind { Circle, Slot };

/// A plain hole through the lid.
struct SoundHole {
    HoleKind kind = HoleKind::Circle;
    double x = 80;       ///< centre, from the head-end wall's outer face, mm
    double y = 60;       ///< centre, from the centre line, mm
    double width = 25;   ///< diameter of a circle, width of a slot
    double length = 60;  ///< over all, slot only
    double turn = 0;     ///< degrees, of a slot's length against the centre line

    bool operator==(const SoundHole&) const = default;
};

}  // namespace lidwright
