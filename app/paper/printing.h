#pragma once

#include "app/paper/paper_pages.h"

#include <QPrinter>
#include <QTransform>

namespace lidwright {

/// Sets the printer up for our pages: the whole paper is ours, no scaling, at the best resolution it names.
void prepare(QPrinter& printer, const PaperPage& first, const QString& title);

/// How a page on which nothing is measured is drawn smaller on other paper: about its middle, kFittedEdge
/// free all round, never larger than it is. `paper`: width and height, mm. In the painter's units,
/// `dotsPerMm` of them a mm.
QTransform fittedOn(const PaperPage& page, QSizeF paper, double dotsPerMm);
inline constexpr double kFittedEdge = 6;  ///< mm; what printers do not reach (common practice, no source)

/// Sends the pages to the printer (or into its file). A page on which nothing is measured, the overview, is
/// drawn smaller where the printer has no paper of its size. Returns an empty string, or what went wrong.
QString printPages(QPrinter& printer, const std::vector<PaperPage>& pages, const PaperGoOn& goOn = {});

}  // namespace lidwright
