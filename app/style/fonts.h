#pragma once

#include <QFont>

namespace lidwright {

/// The font at `share` of its size, whether that was given in points or in pixels.
QFont scaledFont(QFont font, double share);
QFont boldFont(QFont font);

}  // namespace lidwright
