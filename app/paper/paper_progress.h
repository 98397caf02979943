#pragma once

#include "app/paper/paper_job.h"

class QWidget;

namespace lidwright {

/// Shows over `window` how far a long piece of work is, with a button to stop it. The dialog goes with the
/// last copy of what is returned.
PaperGoOn shownProgress(QWidget& window, const QString& what);

}  // namespace lidwright
