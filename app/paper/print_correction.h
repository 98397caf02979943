#pragma once

#include "app/paper/paper_job.h"
#include "app/settings/setting.h"

#include "core/base/result.h"

#include <QString>

namespace lidwright {

/// What was found for one printer with one size of paper. Kept with the settings, never in a plan.
struct PrintCorrection {
    double x = 1;  ///< nominal / measured
    double y = 1;
    QString date;  ///< when it was measured, as ISO 8601 writes days; empty where nothing was measured

    bool operator==(const PrintCorrection&) const = default;
    bool none() const { return x == 1 && y == 1; }
};

/// nominal / measured, both in mm. Refused outside kLeastCorrection to kMostCorrection: then it is no error
/// of the printer's feed, but the page was fitted, or another line was measured.
Result<double> correctionFrom(double nominal, double measured);

/// A warning when the factor (nominal / measured) is what fitting a page to paper gives: A4 on letter 94.07
/// %, letter on A4 97.27 %, A4 within margins of 3 mm 97.14 %, either way round, to within 0.2 %. Empty
/// otherwise. From the sizes of ISO 216 and ANSI/ASME Y14.1.
QString fittedPageWarning(double factor);

/// The stored correction of a printer and paper; no correction where there is none or it is out of range.
PrintCorrection loadCorrection(const Settings& settings, const QString& printer, PaperSize size);
void saveCorrection(Settings& settings, const QString& printer, PaperSize size,
                    const PrintCorrection& correction);

}  // namespace lidwright
