#pragma once

namespace lidwright {

/// What trials of the real lid gave, in its box with the bridge's place bare; 0: not done.
struct Trial {
    double tap_Hz = 0;     ///< its lowest note when it is tapped with the sound holes stopped
    double weight_kg = 0;  ///< laid on the bridge's place ...
    double sag = 0;        ///< ... and how far the lid sank under it there, mm

    bool operator==(const Trial&) const = default;
};

}  // namespace lidwright
