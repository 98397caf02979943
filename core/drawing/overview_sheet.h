#pragma once

#include "core/drawing/board_sheet.h"

namespace lidwright {

/// Paper that an overview is composed for, lying on its side.
enum class OverviewPaper {
    A3,      ///< 420 x 297 mm (ISO 216)
    Tabloid  ///< 17 x 11 in (ANSI/ASME Y14.1 size B)
};

/// Width and height of the paper, mm.
Point overviewSize(OverviewPaper paper);

/// The drawing that hangs over the bench: all views to the largest scale of ISO 5455 that fits, with the
/// dimensions that matter, within the border and with the title block of ISO 5457 and ISO 7200. Composed in
/// millimetres of paper, (0, 0) the paper's lower left corner; the extent is the whole paper.
Sheet overviewSheet(const Plan& plan, const Layout& layout, const UnitStyle& style, OverviewPaper paper);

}  // namespace lidwright
