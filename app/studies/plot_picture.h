#pragma once

#include "core/base/result.h"
#include "core/solvers/study.h"

#include <QFont>
#include <QString>

#include <optional>

namespace lidwright {

/// Writes a plot as a picture on light ground, by the path's ending: SVG of 200 x 125 mm, or PNG of the same
/// size at 254 dots per inch. Returns what went wrong; an existing file is replaced only by a whole one.
std::optional<Error> writePlotPicture(const StudyPlot& plot, const UnitStyle& style, const QFont& font,
                                      const QString& path);

}  // namespace lidwright
