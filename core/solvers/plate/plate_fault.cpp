#include "core/solvers/plate/plate_fault.h"

#include "core/base/length_text.h"

#include <cmath>
#include <string>

namespace lidwright {
namespace {

bool within(double value, double low, double high)
{
    return value >= low && value <= high;  // false for what is no number
}

bool placed(Point p)
{
    return within(p.x, -kCoordinateLimit, kCoordinateLimit) &&
           within(p.y, -kCoordinateLimit, kCoordinateLimit);
}

std::string numbered(const char* part, std::size_t i)
{
    return std::string(part) + " " + std::to_string(i + 1);
}

std::optional<Error> rangeFault(const char* name, double value, double low, double high,
                                const std::string& where)
{
    if (within(value, low, high)) return std::nullopt;
    return Error{std::string("its ") + name + " is out of range or no number", where,
                 "give from " + exactNumber(low) + " to " + exactNumber(high)};
}

std::optional<Error> pointsFault(const std::vector<Point>& points, const std::string& where)
{
    for (Point p : points)
        if (!placed(p))
            return Error{"a point lies too far off or is no number", where,
                         "keep within " + exactNumber(kCoordinateLimit) + " mm of the origin"};
    return std::nullopt;
}

std::optional<Error> regionFault(const Region& region, const std::string& where)
{
    std::size_t corners = 0;
    for (const Ring& ring : region.rings) {
        corners += ring.size();
        if (auto fault = pointsFault(ring, where)) return fault;
    }
    if (corners > kMostPlateCorners)
        return Error{"its outline has " + std::to_string(corners) + " corners", where,
                     "simplify it to " + std::to_string(kMostPlateCorners) + " at most"};
    return std::nullopt;
}

std::optional<Error> stiffnessFault(const PlateStiffness& d, bool whole, const std::string& where)
{
    for (double value : {d.D11, d.D22, d.D12, d.D66, d.D16, d.D26})
        if (auto fault = rangeFault("stiffness (N mm)", value, -1e13, 1e13, where)) return fault;
    if (whole ? isStiff(d) && std::min({d.D11, d.D22, d.D66}) >= 1e-6 : isNowhereNegative(d))
        return std::nullopt;
    return Error{"its stiffnesses contradict each other", where,
                 "check the moduli, the thickness and Poisson's ratio"};
}

std::optional<Error> supportFault(const PlateSupport& support, const std::string& where)
{
    if (auto fault = regionFault(support.area, where)) return fault;
    if (auto fault = pointsFault(support.line, where)) return fault;
    if (support.line.size() > kMostPlateCorners)
        return Error{"its line has too many points", where, "simplify it"};
    if (support.area.empty() == (support.line.size() < 2))
        return Error{"it needs an area or a line, and not both", where, "draw one of them"};
    return rangeFault("stiffness", support.stiffness, 1e-9, 1e12, where);
}

std::optional<Error> ribFault(const PlateRib& rib, const std::string& where)
{
    if (auto fault = pointsFault({rib.from, rib.to}, where)) return fault;
    if (distance(rib.from, rib.to) < 0.01)
        return Error{"it has no length", where, "give it two ends apart from each other"};
    if (auto fault = rangeFault("width (mm)", rib.width, 1e-3, 1000, where)) return fault;
    if (auto fault = rangeFault("height (mm)", rib.height, 1e-3, 1000, where)) return fault;
    if (auto fault = rangeFault("modulus (MPa)", rib.modulus_MPa, 1e-3, 1e7, where)) return fault;
    if (auto fault = rangeFault("shear modulus (MPa)", rib.shear_MPa, 0, 1e7, where)) return fault;
    if (auto fault = rangeFault("density (kg/m3)", rib.density_kg_m3, 0, 3e4, where)) return fault;
    return rangeFault("strip of plate (mm)", rib.plateStrip.value_or(0), 0, 1e4, where);
}

std::optional<Error> patchFault(const PlatePatch& patch, const std::string& where)
{
    if (auto fault = regionFault(patch.area, where)) return fault;
    if (auto fault = stiffnessFault(patch.extra, false, where)) return fault;
    return rangeFault("mass (kg/m2)", patch.extraMass_kg_m2, 0, 1e4, where);
}

std::optional<Error> massFault(const PlateMass& mass, const std::string& where)
{
    if (auto fault = pointsFault({mass.at}, where)) return fault;
    return rangeFault("mass (kg)", mass.mass_kg, 0, 100, where);
}

std::optional<Error> loadFault(const PlateLoad& load, const std::string& where)
{
    if (auto fault = regionFault(load.area, where)) return fault;
    if (auto fault = pointsFault({load.at}, where)) return fault;
    return rangeFault("force (N)", load.force_N, -1e6, 1e6, where);
}

template <typename Part, typename Fault>
std::optional<Error> partsFault(const std::vector<Part>& parts, const char* name, Fault faultOf)
{
    if (parts.size() > kMostPlateParts)
        return Error{std::string("there are more than ") + std::to_string(kMostPlateParts) + " of them", name,
                     "leave some out"};
    for (std::size_t i = 0; i < parts.size(); ++i)
        if (auto fault = faultOf(parts[i], numbered(name, i))) return fault;
    return std::nullopt;
}

}  // namespace

std::optional<Error> plateFault(const PlateProblem& problem, int cells)
{
    if (cells < kLeastPlateCells || cells > kMostPlateCells)
        return Error{
            "the number of cells is out of range", "plate grid",
            "give from " + std::to_string(kLeastPlateCells) + " to " + std::to_string(kMostPlateCells)};
    if (auto fault = regionFault(problem.material, "plate")) return fault;
    if (auto fault = rangeFault("thickness (mm)", problem.thickness, 1e-3, 1000, "plate")) return fault;
    if (auto fault = stiffnessFault(problem.stiffness, true, "plate")) return fault;
    if (auto fault = rangeFault("grain angle (radians)", problem.grainAngle, -100, 100, "plate"))
        return fault;
    if (auto fault = rangeFault("density (kg/m3)", problem.density_kg_m3, 1e-3, 3e4, "plate")) return fault;
    if (auto fault = partsFault(problem.supports, "plate support", supportFault)) return fault;
    if (auto fault = partsFault(problem.ribs, "plate rib", ribFault)) return fault;
    if (auto fault = partsFault(problem.patches, "plate patch", patchFault)) return fault;
    if (auto fault = partsFault(problem.masses, "plate mass", massFault)) return fault;
    return partsFault(problem.loads, "plate load", loadFault);
}

}  // namespace lidwright
