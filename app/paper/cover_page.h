#pragma once

#include "app/paper/page_furniture.h"
#include "app/paper/paper_pages.h"

namespace lidwright {

/// Rulers of 100 mm and of 4 in, level and upright, with their corner at `lowerLeft`; they take 130 mm each
/// way.
void checkRulers(Furniture& furniture, Point lowerLeft);

/// The content of the first page: the plan, how to print, measure and join, the rulers, and a map of the
/// pages of every template.
Sheet coverSheet(const Plan& plan, const PaperJob& job, const PaperPages& pages);

}  // namespace lidwright
