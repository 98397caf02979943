#pragma once

#include "core/checks/finding.h"

#include <QIcon>
#include <QPainter>
#include <QPalette>

namespace lidwright {

/// Paints a verdict's mark: open ring = good, half-filled ring = tight, filled square with a bar = wrong,
/// dotted ring = unknown. Shape first, colour second.
void paintMark(QPainter& painter, const QRectF& box, Verdict verdict, const QPalette& palette);
QIcon markIcon(Verdict verdict, const QPalette& palette, int size = 16);
/// Colour of a verdict against the palette's base, at least 3:1.
QColor markColour(Verdict verdict, const QPalette& palette);

/// An icon of ours by name (resources/icons/<name>.svg), tinted with the palette's text colour.
QIcon tintedIcon(const QString& name, const QPalette& palette);

}  // namespace lidwright
