#pragma once

namespace lidwright {

/// Whether the stick stays full under the bridge.
enum class ReliefPad {
    UnderBridge,  ///< full there: the lid lies on it and the bridge presses on the neck
    None,         ///< lowered all along: the lid carries the bridge alone and moves freely
};

/// How the floor of a relief rises to the full stick at its ends.
enum class ReliefEnd {
    Square,  ///< straight up, as sawn and chiselled
    Ramped,  ///< by a slope
    Round,   ///< by the round of the router's bit or of a drum, as deep as the relief goes
};

/// The stick's top lowered under the lid, so that the lid can move. mm along the neck.
struct Relief {
    bool cut = true;
    double depth = 4;      ///< below the lid's seat, or below the stick's top where there is none
    double headLand = 20;  ///< left full behind the head-end wall's inner face
    double tailLand = 20;  ///< left full before the tail-end wall's inner face
    ReliefPad pad = ReliefPad::UnderBridge;
    double padLength = 40;  ///< along the neck, its middle under the saddle
    double padWidth = 0;    ///< across; 0: as wide as the neck
    ReliefEnd end = ReliefEnd::Square;
    double ramp = 15;      ///< length of a slope, or radius of a round end
    double spare = 1;      ///< air wanted over the relief beside sag and backing
    double glueLand = 15;  ///< least land that is glued to

    bool operator==(const Relief&) const = default;
};

/// One more place where the stick's top is lowered.
struct Hollow {
    double from = 60;  ///< its beginning, from the head-end wall's outer face, mm
    double length = 30;
    double depth = 4;  ///< below the lid's seat, or below the stick's top where there is none

    bool operator==(const Hollow&) const = default;
};

}  // namespace lidwright
