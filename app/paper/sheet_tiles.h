#pragma once

#include "app/paper/tiling.h"

#include "core/base/length_text.h"

#include <memory>
#include <optional>

namespace lidwright {

/// A drawing's tiling together with its total-length lines.
struct TiledSheet {
    Tiling tiling;
    std::shared_ptr<const Sheet> checks;  ///< null on a lone page
};

/// Lays a drawing on pages; where it takes several, with lines over all of them to measure when they are
/// joined. Nothing where the paper leaves no room or too many pages would be needed.
std::optional<TiledSheet> tiled(const Sheet& sheet, const TilePaper& paper, const UnitStyle& style);

/// What must lie on paper: the ink with its lines' widths, without the bare paper that the sheet has about
/// it.
Bounds areaOf(const SheetInk& ink);

/// Adds the elements of `what`, moved.
void append(Sheet& to, const Sheet& what, Point by);

}  // namespace lidwright
