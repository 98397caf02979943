#pragma once

#include <QString>

namespace lidwright {

/// The text with no line break inside a measure: "1 11/16 in" and "≈ 3 mm" stay together where text wraps.
QString unbroken(QString text);

}  // namespace lidwright
