#pragma once

namespace lidwright {

/// How the lid's artwork is cut, and what its thin places must stand.
struct Cutter {
    double kerf = 0.2;        ///< width that the beam or blade takes away, mm
    bool compensate = false;  ///< the cutter's file takes half the kerf off every line
    double leastWeb = 3;      ///< wood left between two cuts is asked to be this wide, mm
    double press = 30;        ///< a finger on a thin place, N
    double safety = 2;        ///< how many times that press a thin place must stand
    double tieWidth = 4;      ///< of the ties that hold drop-outs, mm

    bool operator==(const Cutter&) const = default;
};

}  // namespace lidwright
