#pragma once

#include <optional>

namespace lidwright {

/// Runs one of the commands that need no window; empty when the arguments ask for the window.
/// Exit code: 0 nothing wrong, 1 something is wrong with the plan, 2 input unusable.
std::optional<int> runCommandLine(int argc, char** argv);

}  // namespace lidwright
