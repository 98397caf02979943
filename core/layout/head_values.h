#pragma once

#include "core/layout/values.h"

namespace lidwright {

/// What values() says of the head, the tuners and the strings' ways to them.
std::vector<DerivedValue> headValues(const Plan& plan, const Layout& layout);

}  // namespace lidwright
