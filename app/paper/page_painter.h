#pragma once

#include "app/board/sheet_painter.h"
#include "app/paper/paper_pages.h"

#include <QPageLayout>

namespace lidwright {

/// Paints a page with its upper left corner at the painter's origin, `dotsPerMm` painter units to the
/// millimetre of paper. The same for printer, PDF and preview; the preview's lines are never thinner than a
/// pixel.
void paintPage(QPainter& painter, const PaperPage& page, double dotsPerMm, Surface surface);

/// The page's paper without margins: we keep our own.
QPageLayout pageLayoutOf(const PaperPage& page);

}  // namespace lidwright
