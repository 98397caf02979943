#pragma once

#include "core/layout/layout.h"

namespace lidwright {

/// Where a wire goes.
enum class WireEnd { Device, Strings };

/// A pair of wires (hot and ground) from one part of the wiring to the next, or a single ground wire to the
/// strings.
struct WireRun {
    std::size_t from = 0;  ///< index in Plan::wiring
    WireEnd end = WireEnd::Device;
    std::size_t to = 0;  ///< index in Plan::wiring; of no meaning for WireEnd::Strings
    double length = 0;   ///< of each wire, about: parallel to the walls, with kWireSpare
};

/// More than the way itself, to strip, bend and lift the part out: mm (common practice, no source).
inline constexpr double kWireSpare = 60;

/// The plan's wiring: pickups to pots, pots to sockets; without a pot straight to the sockets. The first
/// pickup goes to the first pot, the second to the second, and all beyond to the last pot; every pot goes to
/// the first socket and further sockets lie beside it. A magnetic pickup has the strings grounded, from the
/// first socket or, where there is none, from the pickup itself. Empty of what the plan has no parts for.
std::vector<WireRun> wireRuns(const Plan& plan, const Layout& layout);

}  // namespace lidwright
