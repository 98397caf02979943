#pragma once

#include "core/base/result.h"
#include "core/solvers/neck_beam.h"

#include <optional>
#include <vector>

namespace lidwright {

inline constexpr std::size_t kMostLayers = 50;  ///< of a section

/// A rectangle of one wood in a section that is glued up of layers, flat on one another: neck, fretboard.
struct SectionLayer {
    double width = 0;                    ///< mm, 1e-3 to 1e4
    double thickness = 0;                ///< mm, 1e-3 to 1e4
    double modulus_MPa = 0;              ///< Young's modulus along the beam, 1 to 1e7
    double density_kg_m3 = 0;            ///< 0 to 3e4
    std::optional<double> strength_MPa;  ///< of its fibres, above 0; nothing where it is not known

    bool operator==(const SectionLayer&) const = default;
};

/// The section as a whole. Heights in mm from the underside of the lowest layer.
struct LaminatedSection {
    std::vector<SectionLayer> layers;  ///< from the bottom up
    double thickness = 0;              ///< of all layers
    double neutralAxis = 0;            ///< height of the neutral axis
    double bending_Nmm2 = 0;           ///< E I about it
    double axial_N = 0;                ///< E A
    double mass_kg_m = 0;

    /// The same for a beam, with fibre distances and moduli of the outermost layers; `underside` is the
    /// lowest layer's height (mm) over the line that BeamSection::axis counts from.
    BeamSection beamSection(double underside = 0) const;

    bool operator==(const LaminatedSection&) const = default;
};

/// What a layer's faces bear. Tension is positive.
struct LayerStress {
    double bottom_MPa = 0, top_MPa = 0;
    /// Strength over the larger of the two, either way; nothing without strength. Above 1 it holds; without
    /// stress it is infinite.
    std::optional<double> factorOfSafety;

    bool operator==(const LayerStress&) const = default;
};

/// Puts layers together, `layers` from the bottom up, all centred and glued without slip: plane sections stay
/// plane, each layer counts by its modulus (transformed section: J. M. Gere and S. P. Timoshenko, Mechanics
/// of Materials, composite beams, from memory). Fretboard and neck of different width each keep their own.
/// Slots across the upper layer are not in it; take their depth off where they count.
///
/// Errors name the layer: none, more than kMostLayers, sizes out of the ranges above.
Result<LaminatedSection> laminatedSection(const std::vector<SectionLayer>& layers);

/// What each layer bears, in the order of LaminatedSection::layers, under a moment that sags (stretches the
/// bottom) and a force along the beam at the neutral axis, tension positive. At height z the stress is
/// E (N / EA - M (z - neutral axis) / EI).
std::vector<LayerStress> layerStresses(const LaminatedSection& section, double moment_Nmm, double axial_N);

/// A section at one end of a tapered stretch.
struct SectionAt {
    std::vector<SectionLayer> layers;  ///< from the bottom up
    double underside = 0;              ///< mm, height of the lowest layer's underside, as BeamSection::axis

    bool operator==(const SectionAt&) const = default;
};

/// A stretch of a beam whose layers go linearly from `start` to `end` in width and thickness, as `parts`
/// pieces (1 to kMostBeamParts): a stiffness that goes with the cube of the thickness is linear in each piece
/// only, and with 16 parts no more than 0.3 % too much where the thickness halves. Each layer keeps the
/// modulus and density that it has at the start.
///
/// Errors: as laminatedSection(); a length not above 0; other numbers of layers at the two ends.
Result<std::vector<BeamPiece>> taperedPieces(double length, const SectionAt& start, const SectionAt& end,
                                             int parts = 16);

}  // namespace lidwright
