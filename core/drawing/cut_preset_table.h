#pragma once

#include <string>

namespace lidwright {

/// resources/data/cutter_presets.csv as it stood when the program was built, byte for byte.
std::string cutterPresetsTable();

}  // namespace lidwright
