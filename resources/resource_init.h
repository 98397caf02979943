#pragma once

namespace lidwright {

/// Makes icons and samples known to Qt under ":/icons" and ":/samples". A static library's resources are not pulled
/// in by themselves, so every program calls this once at its start.
void initResources();

}  // namespace lidwright
