#pragma once

#include "core/drawing/template_parts.h"

namespace lidwright {

/// The wiring's diagram with plain symbols, the list of its parts with where they sit, holes and wires, and
/// the cautions of the work. Fits A4 between ordinary margins for an ordinary instrument. The joints are
/// those of wireRuns().
Sheet wiringSheet(const Plan& plan, const Layout& layout, const UnitStyle& style);

/// More of one kind than this are listed but not drawn.
inline constexpr std::size_t kMostDrawn = 4;

}  // namespace lidwright
