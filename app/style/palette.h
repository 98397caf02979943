#pragma once

#include "core/drawing/sheet.h"

#include <QColor>
#include <QPalette>

namespace lidwright {

/// True for a palette with light text on a dark window.
bool isDark(const QPalette& palette);

/// The palette with a selection colour whose text keeps 4.5:1 on it and which keeps 3:1 against the base, so
/// that it also serves as the ring round what has the keyboard. Everything else stays as the desktop has it.
QPalette withReadableHighlight(QPalette palette);

/// Text that steps back behind the main text and still keeps 4.5:1 on window and base.
QColor quietText(const QPalette& palette);

/// The colours of the drawing sheet on screen, light or dark paper. Real paper is always light.
struct PaperTheme {
    QColor paper;
    QColor text;     ///< 4.5:1 on paper and on wood
    QColor visible;  ///< visible edges
    QColor narrow;   ///< dimension, extension and leader lines, hatching
    QColor hidden;
    QColor centre;
    QColor phantom;
    QColor cut;         ///< the line to saw or cut to
    QColor mark;        ///< registration marks and rulers
    QColor wood;        ///< lid, seen on the flat
    QColor woodAcross;  ///< wood whose grain runs across the view
    QColor woodEnd;     ///< end grain
    QColor grain;       ///< lines that show the grain's direction; decoration, below 3:1 on purpose
    QColor cutThrough;  ///< where nothing is left
    QColor engraved;
    QColor bridge;
    QColor fretboard;
    QColor backing;
    QColor block;
    QColor warning;    ///< what a finding points at
    QColor selection;  ///< outline of the selected part; 3:1 on paper and wood
    QColor handle;     ///< grips; 3:1 on paper and wood
};
const PaperTheme& paperTheme(bool dark);

QColor lineColour(const PaperTheme& theme, LineKind kind);
QColor fillColour(const PaperTheme& theme, FillKind kind);

}  // namespace lidwright
