#pragma once

namespace lidwright {

/// What stands where the maker put it; the rest follows by the scale length.
enum class ScaleHold {
    NutToBox,        ///< the nut is held, the saddle follows
    SaddleToTail,    ///< the saddle is held, the nut follows
    BothAsMeasured,  ///< both stand already; whether the scale length agrees is judged
};

struct Scale {
    double length = 635;  ///< nut's front edge to saddle line, without setback: what the frets are placed by
    ScaleHold hold = ScaleHold::NutToBox;
    double nutToBox = 400;  ///< nut's front edge to the head-end wall's outer face
    double setback = 0;     ///< how far beyond the scale length the saddle stands, on the neck's centre line
    /// How much nearer to the first fret the nut's front edge stands than the scale length has it.
    double nutForward = 0;
    double saddleToTail = 95;  ///< saddle line to the tail-end wall's outer face

    bool operator==(const Scale&) const = default;
};

}  // namespace lidwright
