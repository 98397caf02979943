#pragma once

#include "core/geometry/region.h"
#include "core/plan/plan.h"

#include <string>
#include <vector>

namespace lidwright {

/// One place where the stick's top is lowered under the lid.
struct ReliefCut {
    std::string part;         ///< "relief" or "hollow.2"
    double from = 0, to = 0;  ///< x of its ends at the stick's top
    double depth = 0;         ///< at its deepest, below the lid's seat or the stick's top
    /// x and depth from one end to the other; 0 at both ends, or at once where the end is square.
    std::vector<Point> floor;

    double depthAt(double x) const;  ///< 0 outside
    double sectionArea() const;      ///< mm2 taken away, seen from the side
    bool operator==(const ReliefCut&) const = default;
};

/// The stick under the lid, all cuts from head to tail.
struct ReliefLayout {
    std::vector<ReliefCut> cuts;  ///< the relief's own, then the hollows; they may overlap
    double headLand = 0;          ///< full, from the head-end wall's inner face on
    double tailLand = 0;
    bool pad = false;
    double padFrom = 0, padTo = 0;  ///< x
    double padWidth = 0;            ///< across; of a narrow one the stick is lowered beside it too

    double depthAt(double x) const;  ///< of the deepest cut there, on the centre line
    bool operator==(const ReliefLayout&) const = default;
};

struct Layout;

/// Where the stick is lowered. Walls, neck and saddle must be laid out already.
ReliefLayout reliefLayout(const Plan& plan, const Layout& layout);

/// z of the stick's top at x as it will be cut, on the centre line: with the head's step, the lid's seat and
/// relief; the tilt counts.
double stickTop(const Plan& plan, const Layout& layout, double x);
/// z of its underside at x.
double stickUnderside(const Layout& layout, double x);

/// The profile of the top from `from` to `to`: every corner of it, so that straight lines between the points
/// are true (round ends within 0.02 mm).
std::vector<Point> stickTopProfile(const Plan& plan, const Layout& layout, double from, double to);

/// Most air between the lid's underside and the stick's top between the walls; 0 where it touches all along.
double airOverStick(const Plan& plan, const Layout& layout);

/// Plan view of the stick between the walls where there is less than `air` mm between it and the lid's
/// underside: lands, pad and what is not relieved enough.
std::vector<Ring> stickAgainst(const Plan& plan, const Layout& layout, double air);

}  // namespace lidwright
