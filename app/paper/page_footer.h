#pragma once

#include "app/paper/page_furniture.h"
#include "app/paper/paper_job.h"
#include "app/paper/tiling.h"

namespace lidwright {

/// A small map of a template's pages; the one named `here` is filled. Fits into the box, from its right side.
void pageMap(Furniture& furniture, const Tiling& tiling, const Bounds& box, const std::string& here);

/// What the foot of a page says.
struct FooterWords {
    QString what;   ///< "Lid, page B2": in large letters
    QString title;  ///< of the plan
    qsizetype page = 1;
    qsizetype pages = 1;
    QString advice; ///< how to print
    QString note;   ///< of the correction; may be empty
};
/// Writes them at the lower left of the content.
void pageFooter(Furniture& furniture, const FooterWords& words);

/// "Corrected for NAME, DATE: X 1.003, Y 0.998", or nothing where nothing is corrected.
QString correctionNote(const PaperJob& job);

}  // namespace lidwright
