#pragma once

#include "app/paper/paper_job.h"

#include "core/base/result.h"
#include "core/io/build/bench_sheet.h"
#include "core/layout/layout.h"

#include <QString>
#include <QStringList>

namespace lidwright {

/// All that the bench needs of one plan.
struct BenchFolder {
    Plan plan;
    Layout layout;
    PaperJob paper;             ///< of the templates; its size is that of the build sheet too
    BenchSheet sheet;           ///< the build sheet, composed
    bool decimalComma = false;  ///< in the lists, for spreadsheets of such a locale
};

/// Writes into the folder, which is made where it is not there: templates.pdf, build-sheet.pdf and .html, the
/// lid for the cutter as lid.svg and lid.dxf, and every list as CSV. Returns the files in the order in which
/// they were written, or the first problem; what was written before it stays, each file whole. Needs a
/// QGuiApplication.
Result<QStringList> writeBenchFolder(const BenchFolder& bench, const QString& folder,
                                     const PaperGoOn& goOn = {});

}  // namespace lidwright
