#pragma once

#include "core/base/units.h"

#include <QString>

namespace lidwright {

/// The length at which the pointer stands, as it is read. A pointer is never exact, so that the sign of a
/// rounded number is left out here.
QString pointerLength(double millimetres, const UnitStyle& style);

}  // namespace lidwright
