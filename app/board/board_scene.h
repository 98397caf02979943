#pragma once

#include "core/drawing/board_sheet.h"
#include "core/plan/catalogue.h"

#include <string>
#include <vector>

namespace lidwright {

/// What lies on the board: the composed sheet with each element's bounds, and where the views are.
class BoardScene {
public:
    BoardScene() = default;
    explicit BoardScene(BoardSheet board);

    const Sheet& sheet() const { return m_board.sheet; }
    const std::vector<PlacedView>& views() const { return m_board.views; }
    /// Bounds of sheet().elements[index]; of a dimension's two measured points.
    const Bounds& boundsOf(std::size_t index) const { return m_bounds[index]; }

    /// Null where the view is not on the board.
    const PlacedView* placed(View view) const;
    /// The view that lies under the sheet point, with `reach` mm around it; null on empty paper.
    const PlacedView* viewAt(Point sheet, double reach = 0) const;
    /// The view of the lid: from above or from below.
    const PlacedView* lidView() const;

    /// The parts that are drawn, in the catalogue's order.
    std::vector<std::string> partsInOrder() const;
    /// The first view in which the part is drawn by an area, otherwise by a line; null where it is not drawn.
    const PlacedView* viewOf(const std::string& part) const;
    /// What the part covers in that view, on the sheet; empty where it is not drawn there.
    Bounds extentOf(const std::string& part, const PlacedView& view) const;

private:
    BoardSheet m_board;
    std::vector<Bounds> m_bounds;
};

}  // namespace lidwright
