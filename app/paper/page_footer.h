#pragma once

#include "app/paper/page_furniture.h"
#include "app/paper/paper_job.h"
#include "app/paper/tiling.h"

namespace lidwright {

/// A small map of a template's pages in the upper left or upper right of the box; the page named `here` is
/// filled.
void pageMap(Furniture& furniture, const Tiling& tiling, const Bounds& box, Anchor side,
             const std::string& here = {});

/// What the foot of a page says.
struct FooterWords {
    QString what;   ///< "Lid, page B2": in large letters
    QString title;  ///< of the plan
    qsizetype page = 1;
    qsizetype pages = 1;
    QString advice;  ///< how to print
    QString note;    ///< of the correction, in place of the advice; may be empty
};
/// Writes them at the lower left of the content.
void pageFooter(Furniture& furniture, const FooterWords& words);

/// "Print at 100 %. Corrected for NAME: X 1.0030, Y 0.9980, measured DATE.", or nothing where nothing is
/// corrected.
QString correctionNote(const PaperJob& job);

}  // namespace lidwright
