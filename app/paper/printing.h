#pragma once

#include "app/paper/paper_pages.h"

#include <QPrinter>

namespace lidwright {

/// Sets the printer up for our pages: the whole paper is ours, no scaling, at the best resolution it names.
void prepare(QPrinter& printer, const PaperPage& first, const QString& title);

/// Sends the pages to the printer (or into its file). Returns an empty string, or what went wrong.
QString printPages(QPrinter& printer, const std::vector<PaperPage>& pages, const PaperGoOn& goOn = {});

}  // namespace lidwright
