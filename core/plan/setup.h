#pragma once

namespace lidwright {

/// How it shall play when it is set up. mm.
struct Setup {
    double nutClearance = 0.4;  ///< string's underside over the frets' tops at the nut; 0 with a zero fret
    double action = 2.2;        ///< wanted: string's underside over the octave fret
    double relief = 0.1;        ///< how much the neck is hollow there under the strings' pull
    double behindFret = 5;      ///< where the finger presses, behind the fret
    double adjustment = 2;      ///< room kept each way to move a bridge that is not glued

    bool operator==(const Setup&) const = default;
};

}  // namespace lidwright
