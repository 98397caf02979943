#pragma once

#include "core/materials/tunings.h"
#include "core/plan/strings.h"

#include <vector>

namespace lidwright {

/// What a string without a printed gauge is chosen to pull with, N: about as much as the strings of ordinary
/// sets (common practice, no source).
inline constexpr double kUsualPull_N = 100;

/// The strings of a tuning for a speaking length (mm), from the treble side. Gauges are those of the tuning;
/// where it has none, the ordinary one that comes nearest to kUsualPull_N: plain steel as long as that is to
/// be had and below 0.024 in (thicker plain strings are seldom used: common practice, no source), phosphor
/// bronze above. `number` strings of it are taken from the treble side; 0: all.
std::vector<GuitarString> stringsFor(const Tuning& tuning, double length, double concertPitch_Hz,
                                     int number = 0);

}  // namespace lidwright
