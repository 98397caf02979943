#pragma once

#include "core/solvers/plate/plate_parts.h"
#include "core/solvers/plate/plate_system.h"

namespace lidwright {

/// Share of its stiffness that void keeps, so that unknowns with hardly any wood have an equation. It has no
/// mass: with any, shapes of the void come in among those of the wood.
inline constexpr double kVoidStiffness = 1e-8;

/// Which motions without bending of each component nothing resists: see ComponentHold.
std::vector<ComponentHold> findHolds(const PlateProblem& problem, const PlateGrid& grid,
                                     const PlateElement& element, const PlateParts& parts, Point origin,
                                     double unit);

/// True for the unknowns 0 to 3 of a node that the sides hold.
std::array<bool, 4> heldUnknowns(const PlateNode& node, const PlateSides& sides);

/// Gives each unknown that is neither held nor left out its equation, in an order that leaves little fill.
void numberEquations(PlateSystem& system);

/// A straight line's direction and length.
struct LineFrame {
    Point along;
    double length = 0;
};
LineFrame lineFrame(Point from, Point to);

/// Integral over a stretch of line within a piece of the products of the functions with themselves, weighted
/// by `stiffness` per length.
Matrix16 lineProducts(const PlateElement& element, const CellFrame& frame, const LineBit& bit,
                      double stiffness);

/// Fills in everything of the equations that comes from the parts, for the components and equations as
/// system has them.
void assemble(PlateSystem& system, const PlateParts& parts);

}  // namespace lidwright
