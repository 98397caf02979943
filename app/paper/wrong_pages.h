#pragma once

#include "app/paper/paper_pages.h"

namespace lidwright {

/// Adds the pages that say what is wrong with the plan; none where nothing is. Nobody cuts to a template
/// without having turned them over.
void addWrongPages(PaperPages& all, const Plan& plan, const PaperJob& job);

}  // namespace lidwright
