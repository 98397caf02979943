#pragma once

#include "app/board/board_scene.h"
#include "app/board/sheet_painter.h"

#include "core/checks/handles.h"

#include <optional>
#include <string>

namespace lidwright {

/// A handle as it stands on the board.
struct PlacedHandle {
    Handle handle;
    Point sheet;
};

/// What lies under the pointer.
struct Picked {
    std::string part;  ///< empty for paper and furniture
    std::optional<View> view;
    std::optional<Handle> handle;        ///< what a press takes hold of
    std::optional<Dimension> dimension;  ///< a dimension whose words lie under the pointer
};

/// Half the side of a handle's target: targets are 24 px wide (WCAG 2.2, success criterion 2.5.8).
inline constexpr double kHandleReach = 12;
/// Half the side of a mark as it is seen, px: nearer than this it always wins.
inline constexpr double kMarkReach = 7;
/// How near a line counts as pointed at, px.
inline constexpr double kLineReach = 4;

/// All handles of the views on the board, where they stand on the sheet.
std::vector<PlacedHandle> placedHandles(const BoardScene& scene, const Plan& plan, const Layout& layout);

/// Finds what lies at the sheet point: marks of handles first (the selected part's before others), then the
/// words of dimensions, then the parts. An area that can be taken hold of wins over lines that cross it and
/// over the rim of a mark's target, so that a small part is not swallowed by its own marks.
Picked pick(const BoardScene& scene, const std::vector<PlacedHandle>& handles, Point sheet,
            const PaintLook& look, const std::string& selected);

/// Where the dimension's words lie, in painter units; empty where it has none.
QPolygonF wordsOutline(const Dimension& dimension, const PaintLook& look);

}  // namespace lidwright
