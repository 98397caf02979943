#pragma once

#include <string>

namespace lidwright {

enum class LidSeat { OnWalls, LetIn };

/// Which way the lid's grain runs; of plywood that of the face ply.
enum class LidGrain { Along, Across };

/// What holds the lid to the walls; screws can be taken out again.
enum class LidFastening { Glued, Screwed };

/// How a lid of solid wood was sawn out of the log.
enum class LidSawn {
    Quarter,  ///< growth rings upright in the board
    Flat,     ///< growth rings lying
};

/// The lid, which is the soundboard.
struct Lid {
    double thickness = 3;
    LidSeat seat =
        LidSeat::OnWalls;  ///< laid on the walls' top edges, or let in between them, flush with them
    LidFastening fastening = LidFastening::Glued;
    double edgeMargin = 10;  ///< no artwork nearer to the lid's edge than this, mm

    std::string material = "birch-plywood-3mm";  ///< id of a wood or panel in core/materials
    LidSawn sawn = LidSawn::Quarter;
    LidGrain grain = LidGrain::Along;  ///< along the neck or across it

    bool operator==(const Lid&) const = default;
};

}  // namespace lidwright
