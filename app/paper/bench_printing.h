#pragma once

#include "core/io/build/bench_sheet.h"

#include <QString>

class QWidget;

namespace lidwright {

/// Shows the pages in the system's print preview, on the paper that is usual where the user is, and prints
/// them from there. Returns an empty string, or what went wrong.
QString previewBench(const BenchSheet& sheet, QWidget* parent);

}  // namespace lidwright
