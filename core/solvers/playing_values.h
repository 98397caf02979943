#pragma once

#include "core/layout/values.h"

namespace lidwright {

/// Everything that values() gives, and what strings, frets, heights and the neck's beam come to:
/// "strings.2.tension", "frets.12.from-nut", "neck.bow".
std::vector<DerivedValue> allValues(const Plan& plan, const Layout& layout);

}  // namespace lidwright
