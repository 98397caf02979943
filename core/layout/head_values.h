#pragma once

#include "core/layout/values.h"

namespace lidwright {

/// From where the nut's front edge really stands to the middle of a post, along the head's face, mm.
double fromNutEdge(const Layout& layout, const HeadPost& post);

/// What values() says of the head, the tuners and the strings' ways to them.
std::vector<DerivedValue> headValues(const Plan& plan, const Layout& layout);

}  // namespace lidwright
