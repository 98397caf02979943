#pragma once

#include "core/base/result.h"
#include "core/solvers/air/opening_raster.h"

#include <functional>
#include <utility>
#include <vector>

namespace lidwright {

inline constexpr int kFewestAirCells = 8;
inline constexpr int kMostAirCells = 1024;
inline constexpr int kDraggedAirCells = 64;    ///< while something is dragged: a few milliseconds
inline constexpr int kUsualAirCells = 128;     ///< some tens of milliseconds
inline constexpr int kReportedAirCells = 256;  ///< with refinedConductivity(), a few tenths of a second
/// By what share of itself a conductivity is off, at most, for cells as wide as the holes, whose width counts
/// as 4 area / outline (a round hole's diameter, a slit's double width); in proportion for smaller ones: 0.2
/// % for a round hole and kUsualAirCells. Against closed forms and spectral values.
inline constexpr double kAirCellError = 0.25;
/// The same for refinedConductivity().
inline constexpr double kRefinedAirError = kAirCellError / 2;
inline constexpr double kMostAirError = 0.5;  ///< no more is claimed of cells that do not resolve the holes

/// A hole in a flat screen, or several that work together.
struct AirOpening {
    Region opening;        ///< normal form, mm
    double thickness = 0;  ///< mm, of the screen: 0 to kMostAirThickness
    /// Parts of the opening in which the air has a longer way, and by how much, mm (0 to kMostAirThickness):
    /// a backing behind it, or the length that a gauze is worth. Where parts overlap the lengths add up.
    std::vector<std::pair<Region, double>> extra;
};

inline constexpr double kMostAirThickness = 1000;

/// How the air goes through the opening: one number per cell of the grid, row after row.
struct FluxField {
    OpeningGrid grid;
    std::vector<double>
        thin;  ///< share of the flow through the cell of a screen without thickness; sums to 1
    std::vector<double> thick;  ///< the same for straight flow through the thickness
};

/// Rayleigh's conductivity of an opening, mm: the flow (mm3/s) through it over the difference of velocity
/// potential (mm2/s) that drives it; f = c / (2 pi) sqrt(K / V).
struct Conductivity {
    double thin = 0;      ///< as if the screen had no thickness
    double lower = 0;     ///< with thickness: no less than this
    double upper = 0;     ///< with thickness: no more than this
    double estimate = 0;  ///< with thickness: most likely
    double openArea = 0;  ///< mm2
    double outline = 0;   ///< mm, length of all edges
    double accuracy = 0;  ///< share of itself by which each may be off for the cells' size
    FluxField flux;
    int steps = 0;  ///< of the iteration
};

/// The conductivity of an opening in a rigid screen between two half spaces: Rayleigh, The Theory of Sound,
/// vol. 2, sections 304 to 306 (from memory).
///
/// The flow w over the opening fulfils `int w / (2 pi r) dA = 1/2` in it and K = int w dA. It is sought
/// on square cells, with the share of each that is open exact, the potential of a full cell at the middle of
/// another exact, and for part-covered ones that of a smaller square; by conjugate gradients. Bounds with
/// thickness t: straight flow through the channel, which adds t w / 2 to the left side (less than K: Kelvin's
/// principle of least energy), and channel ends of constant potential, 1/K = 1/thin + 1 / int dA / t (more
/// than K: Dirichlet's; a bound where t is the same all over). The estimate lies between them in 1/K by a
/// share fitted to mode matching of a round hole and a slit (computed, not published): within 0.2 % for
/// a round hole, never beyond the bounds.
///
/// `cells` is the number across the longer side, kFewestAirCells to kMostAirCells; `shift` moves the grid
/// (see openingGrid), which is for tests of accuracy. Holes narrower than two cells are found too small or
/// too large. Accuracy: see Conductivity::accuracy. Errors: no opening, no area, coordinates that are no
/// number or beyond kCoordinateLimit, rings that overlap, lengths or cells out of range, stopped by
/// `cancelled`, which is asked once for each step.
Result<Conductivity> conductivity(const AirOpening& opening, int cells,
                                  const std::function<bool()>& cancelled = {}, Point shift = {0.5, 0.5});

/// The same from two grids, of `cells` (at least twice kFewestAirCells) and half as many: the error goes with
/// the size of a cell, so that 2 K(cells) - K(cells / 2) is nearer by several times. The flux is the finer
/// grid's.
Result<Conductivity> refinedConductivity(const AirOpening& opening, int cells,
                                         const std::function<bool()>& cancelled = {},
                                         Point shift = {0.5, 0.5});

}  // namespace lidwright
