#pragma once

#include "app/commandline/arguments.h"
#include "app/paper/paper_job.h"

#include "core/base/result.h"

namespace lidwright {

/// What --size asks of pages that are read; by the locale where nothing is asked. A roll has no pages:
/// refused.
Result<PaperSize> pagePaperOf(const Arguments& arguments);

}  // namespace lidwright
