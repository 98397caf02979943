#pragma once

#include "core/solvers/neck_beam.h"

namespace lidwright {

/// A beam cut into elements, with everything that acts on it brought to their ends. Node i begins element i;
/// it has unknowns 2 i, deflection, and 2 i + 1, slope.
struct BeamMesh {
    struct Tie {
        std::size_t from = 0, to = 0;  ///< nodes
        double force_N = 0;            ///< along the beam between them, positive: tension of the beam
    };

    std::vector<BeamElement> elements;      ///< not moved yet
    std::vector<double> pointLoads;         ///< one per unknown: N, N mm
    std::vector<std::size_t> supportNodes;  ///< in the order of NeckBeam::supports
    std::vector<Tie> ties;

    std::size_t nodes() const { return elements.size() + 1; }
};

/// What is wrong with a beam, or nothing: see solveBeam().
std::optional<Error> beamFault(const NeckBeam& beam);

/// Cuts a beam without fault.
BeamMesh beamMesh(const NeckBeam& beam, int fineness);

}  // namespace lidwright
