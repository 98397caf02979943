#pragma once

namespace lidwright {

enum class FixingKind { Screw, Pin };

/// A small round hole through the lid that is no sound hole: a screw's clearance hole, or one for a pin that
/// holds the lid in place while it is cut or glued.
struct LidFixing {
    FixingKind kind = FixingKind::Screw;
    double x = 5;         ///< centre, from the head-end wall's outer face, mm
    double y = 40;        ///< centre, from the centre line, mm
    double diameter = 3;  ///< mm

    bool operator==(const LidFixing&) const = default;
};

}  // namespace lidwright
