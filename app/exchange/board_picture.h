#pragma once

#include "core/layout/layout.h"

#include <QString>

namespace lidwright {

/// Writes the board as a picture, by the path's ending: PNG at half size and 200 dots per inch, or SVG in
/// millimetres at full size. Returns what went wrong, or an empty text; an existing file is
/// replaced only by a whole one.
QString writeBoardPicture(const Plan& plan, const Layout& layout, bool under, const QString& path);

}  // namespace lidwright
