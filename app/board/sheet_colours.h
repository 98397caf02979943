#pragma once

#include "app/style/palette.h"

namespace lidwright {

/// The colours in which a sheet is drawn: the theme of light or dark paper on the screen, or black and greys
/// for the printer, and what only the board needs.
struct SheetColours {
    PaperTheme theme;
    QColor table;  ///< what the paper lies on
    QColor paperEdge;
    QColor endGrain;  ///< hatch of end grain; decoration
    QColor hatch;     ///< lines of the engraving's hatch, 3:1 on engraved ground
    QColor hairline;  ///< the station pointed at, 3:1 on paper and wood
};

/// Light or dark paper, whichever the palette asks for.
SheetColours boardColours(const QPalette& palette);
/// Black and greys; areas stay white so that the line to cut is what is seen.
SheetColours printColours();

}  // namespace lidwright
