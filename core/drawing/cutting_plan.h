#pragma once

#include "core/drawing/template_parts.h"

namespace lidwright {

/// How the pieces are laid on the stock, drawn small to a scale of ISO 5455: each piece of stock that is cut
/// up with its pieces by number, the saw cuts between them and what is left; below it the list of the
/// numbers. Fits A4 between ordinary margins in width. One sheet mm is one mm of paper.
Sheet cuttingPlanSheet(const Plan& plan, const Layout& layout, const UnitStyle& style);

}  // namespace lidwright
