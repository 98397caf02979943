#pragma once

#include "app/paper/paper_pages.h"

#include <QByteArray>

namespace lidwright {

/// The pages as one PDF, each on paper of its own size, true to scale, that asks viewers not to scale it.
Result<QByteArray> pdfOf(const std::vector<PaperPage>& pages, const QString& title,
                         const PaperGoOn& goOn = {});

/// The PDF with /ViewerPreferences << /PrintScaling /None >> in its catalogue (ISO 32000-1, 12.2), added as
/// an incremental update (7.5.6) because Qt cannot be told to write it. Refuses what is not a PDF with a
/// plain cross-reference table.
Result<QByteArray> withoutPrintScaling(const QByteArray& pdf);

inline constexpr int kPdfResolution = 1200;  ///< dots per inch in which coordinates are given to Qt

}  // namespace lidwright
