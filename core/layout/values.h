#pragma once

#include "core/base/sentence.h"
#include "core/layout/layout.h"

#include <string>
#include <vector>

namespace lidwright {

/// A derived quantity under a stable key.
struct DerivedValue {
    std::string key;    ///< "saddle.x", "neck.left-over" ...
    std::string label;  ///< marked English
    Measure measure;
};

/// Every derived quantity, in the order of the parts.
std::vector<DerivedValue> values(const Plan& plan, const Layout& layout);

}  // namespace lidwright
