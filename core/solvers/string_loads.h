#pragma once

#include "core/layout/layout.h"
#include "core/solvers/height_chain.h"
#include "core/solvers/saddle_line.h"
#include "core/solvers/string_tension.h"

#include <optional>
#include <vector>

namespace lidwright {

/// One string of the plan as it is tuned.
struct PlayedString {
    double frequency_Hz = 0;
    double length = 0;  ///< mm, nut to saddle line where the string crosses it
    StringBody body;
    StringLoad load;
    std::optional<Error> problem;  ///< why there are no figures

    bool ok() const { return !problem; }
};

/// The strings of the plan, one for each of Plan::stringSet.
std::vector<PlayedString> playedStrings(const Plan& plan, const Layout& layout);

/// Pull of all strings, N; of those that could be reckoned.
double wholePull_N(const std::vector<PlayedString>& strings);

/// The bridge's own saddle line as the plan has it: setback where the neck's centre line crosses it, and
/// slant.
SaddleLine plannedSaddle(const Plan& plan);

/// The nut's setback of each of `strings` strings, as the plan has it: negative where it is moved forward.
std::vector<double> plannedNut(const Layout& layout, std::size_t strings);

/// The strings over their frets, for fitSaddle() and residuesOf(); y from the neck's centre line. The heights
/// are those of `heights` at the nut and the octave, as of strungHeights(): relief and bow are in the latter.
/// The frets are those that lie on the board. Strings without figures are left out.
std::vector<StringAtSaddle> stringsAtSaddle(const Plan& plan, const Layout& layout,
                                            const std::vector<PlayedString>& strings,
                                            const HeightChain& heights);

}  // namespace lidwright
