#pragma once

namespace lidwright {

enum class LidSeat { OnWalls, LetIn };

/// The lid, which is the soundboard.
struct Lid {
    double thickness = 3;
    LidSeat seat =
        LidSeat::OnWalls;    ///< laid on the walls' top edges, or let in between them, flush with them
    double edgeMargin = 10;  ///< no artwork nearer to the lid's edge than this, mm

    bool operator==(const Lid&) const = default;
};

}  // namespace lidwright
