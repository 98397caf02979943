#pragma once

#include "core/layout/layout.h"
#include "core/materials/open_area.h"

namespace lidwright {

/// The plan's backing layers as a stack. Wires and sheets are taken as steel, a panel as of the lid's wood.
/// Errors: a layer whose sizes leave no opening, or no metal; `where` is its key.
Result<StackOpening> backingStack(const Plan& plan);

/// All artwork that is cut through the lid and all plain holes, as one.
Region lidCutOuts(const Layout& layout);

/// What is left of the lid's openings, mm2.
struct SoundOpening {
    double openings = 0;      ///< all artwork cut through and all plain holes
    double behindNeck = 0;    ///< of that, over the neck: closed as far as air goes, and seen there
    double behindBlocks = 0;  ///< over blocks, beside the neck
    double freeArea = 0;      ///< openings less both: what is open, and to be looked through, without backing
    double backed = 0;        ///< of the free area, what backing lies under
    double fraction = 1;      ///< of the backing that is open, its estimate
    double net = 0;           ///< free area with the backed part at that fraction
    double netLeast = 0;      ///< the same by the stack's bounds: however the layers lie on one another
    double netMost = 0;
    std::optional<Error> problem;  ///< of the stack; its fraction then counts as 1
};

/// Areas are measured square to the lid; that thick wood and fine cloth hold air back more than their open
/// area says is not in them.
SoundOpening soundOpening(const Plan& plan, const Layout& layout);

}  // namespace lidwright
