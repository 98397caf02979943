#pragma once

#include "core/geometry/region.h"
#include "core/solvers/plate/plate_stiffness.h"

#include <functional>
#include <optional>
#include <vector>

namespace lidwright {

inline constexpr int kLeastPlateCells = 2;
inline constexpr int kMostPlateCells = 160;                ///< along the longer side
inline constexpr std::size_t kMostPlateParts = 500;        ///< supports, ribs, patches, masses, loads, each
inline constexpr std::size_t kMostPlateCorners = 200'000;  ///< of all outlines of one region
inline constexpr int kMostPlateUnknowns = 200'000;

/// How a side of the rectangle around the plate is held, where wood reaches that side.
enum class PlateSide {
    Free,
    Simple,   ///< does not move up or down, turns freely
    Clamped,  ///< neither moves nor turns
    Mirror,   ///< the plate goes on as in a mirror: half or a quarter of one that is symmetrical
};

struct PlateSides {
    PlateSide left = PlateSide::Free, right = PlateSide::Free;  ///< least and largest x
    PlateSide bottom = PlateSide::Free, top = PlateSide::Free;  ///< least and largest y

    bool operator==(const PlateSides&) const = default;
};

/// What bears the plate from below, and holds it down as well: an area on an elastic bed or a line on which
/// it is hinged. Only what lies at wood counts.
struct PlateSupport {
    Region area;    ///< either this
    Polyline line;  ///< or this
    /// Of an area N/mm3, of a line N/mm2; 1e-9 to 1e12. A glued joint is about E across the grain / depth of
    /// what is below it.
    double stiffness = 0;

    bool operator==(const PlateSupport&) const = default;
};

/// A bar glued under the plate, its middle along from - to. It goes on across cuts.
struct PlateRib {
    Point from, to;
    double width = 0, height = 0;  ///< mm, height down from the plate; above 0 to 1000
    double modulus_MPa = 0;        ///< along the bar, 1e-3 to 1e7
    double shear_MPa = 0;          ///< 0 to 1e7; 0: no torsion
    double density_kg_m3 = 0;      ///< 0 to 3e4
    /// Width of plate that takes part in its pull, mm, 0 to 1e4; nothing: coactingWidth() over its length.
    /// 0: the bar bends about its own middle.
    std::optional<double> plateStrip;

    bool operator==(const PlateRib&) const = default;
};

/// Where the plate is stiffer and heavier: a panel or bridge plate glued on. `extra` is what comes to the
/// plate's own stiffness: laminateStiffness() of both less the plate's.
struct PlatePatch {
    Region area;
    PlateStiffness extra;
    double extraMass_kg_m2 = 0;  ///< 0 to 1e4

    bool operator==(const PlatePatch&) const = default;
};

struct PlateMass {
    Point at;
    double mass_kg = 0;  ///< 0 to 100

    bool operator==(const PlateMass&) const = default;
};

/// A force spread evenly over what wood lies in `area`, or where that is empty, at one point.
struct PlateLoad {
    Region area;
    Point at;
    double force_N = 0;  ///< positive pushes down, -1e6 to 1e6

    bool operator==(const PlateLoad&) const = default;
};

/// A thin plate of even thickness with everything cut out of it. mm.
struct PlateProblem {
    Region material;
    double thickness = 0;  ///< above 0 to 1000 mm; for stress and ribs
    PlateStiffness stiffness;
    double grainAngle = 0;     ///< radians from x; which stresses are along and across
    double density_kg_m3 = 0;  ///< above 0 to 3e4
    PlateSides sides;
    std::vector<PlateSupport> supports;
    std::vector<PlateRib> ribs;
    std::vector<PlatePatch> patches;
    std::vector<PlateMass> masses;
    std::vector<PlateLoad> loads;

    bool operator==(const PlateProblem&) const = default;
};

/// How somebody looks on: both may be empty. Asked and told between stages, from the calling thread.
struct PlateWatch {
    std::function<bool()> cancelled;
    std::function<void(double)> progress;  ///< 0 to 1, of the function called
};

/// The watch of one stage that takes the share `from` - `to` (0 to 1) of a whole.
PlateWatch stageOf(const PlateWatch& watch, double from, double to);

}  // namespace lidwright
