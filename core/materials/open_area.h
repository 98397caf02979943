#pragma once

#include "core/base/result.h"
#include "core/materials/backing_stock.h"

#include <variant>
#include <vector>

namespace lidwright {

/// A thin solid panel in the stack with an opening of its own that is larger than what it backs: within it,
/// all is open.
struct OpenPanel {
    double thickness = 0;      ///< mm, above 0
    double density_kg_m3 = 0;  ///< above 0

    bool operator==(const OpenPanel&) const = default;
};

using StackLayer = std::variant<WireCloth, PerforatedSheet, OpenPanel>;

/// The part of a cloth's area that is open, seen square to it: (1 - d/px)(1 - d/py), which for square
/// meshes is (w / (w + d))^2, w the opening and d the wire (ISO 9044 and ASTM E2016, from memory; 100 (w/p)^2
/// as read on a weaver's reference page). Between 0 and 1; exact for straight parallel wires.
/// Errors: sizes not above 0 or not finite, wires that leave no opening.
Result<double> openFraction(const WireCloth& cloth);

/// The same of a perforated sheet without its solid margins: pi / (2 sqrt 3) (d/p)^2 for round holes
/// staggered at 60 degrees (0.9069; the trade's 90.7 d^2/p^2 in percent), pi / 4 (d/p)^2 for round holes in
/// square rows (78.5), (s/p)^2 for square holes (formulas by the hole marks R T, R U and C U of ISO 7806).
/// Errors: sizes not above 0 or not finite, holes that touch.
Result<double> openFraction(const PerforatedSheet& sheet);

/// How thick a cloth lies, mm: two wires, woven or welded (common practice, no source; rolled cloth is
/// thinner, stiff wires may stand higher).
double clothThickness(const WireCloth& cloth);

/// Kilograms per square metre of cloth: wire length x wire section x density,
///
///     (1/px + 1/py) (pi/4) d^2 density c,   c = 1 + (pi d / p)^2 / 16 in a woven cloth, else 1,
///
/// where each wire's way over and under the others is taken for a sine of amplitude d/2 and length 2 p, p
/// the pitch of the wires that it crosses (first term of the arc length: within 0.4 % of it up to d/p =
/// 0.33). ISO 9044 has d^2 density / (618.1 p) for square meshes (d and p in mm; from memory), a fixed 3 %
/// for the crimp. Errors as for openFraction, and a density that is not above 0.
Result<double> areaWeight_kg_m2(const WireCloth& cloth);

/// Kilograms per square metre of perforated sheet: thickness x density x (1 - open fraction). Errors as for
/// openFraction, and a thickness or density that is not above 0.
Result<double> areaWeight_kg_m2(const PerforatedSheet& sheet);

/// What layers on top of each other leave open.
struct StackOpening {
    /// Product of the layers' fractions: what is left on the average over all positions of layers that do
    /// not know of one another. An estimate: two like cloths lying parallel may match or mask.
    double estimate = 1;
    double lowest = 1;     ///< max(0, sum - (n - 1)): no layers, however they lie, leave less
    double highest = 1;    ///< the least open layer's: nor more
    double thickness = 0;  ///< mm, all layers
    /// kg/m2 of all layers; that of a panel is of its solid part, beside its opening.
    double areaWeight_kg_m2 = 0;
};

/// Stacks layers; none leave all open. The bounds are those of Frechet for parts of one area (Frechet,
/// Generalisation du theoreme des probabilites totales, Fundamenta Mathematicae 25 (1935) 379-387, from
/// memory). Errors as above, with the layer's number from 1 in `where`.
Result<StackOpening> stackOpening(const std::vector<StackLayer>& layers);

/// Diameter in mm of the round hole with that area in mm2; 0 for an area that is not above 0.
double roundHoleDiameter(double area_mm2);

}  // namespace lidwright
