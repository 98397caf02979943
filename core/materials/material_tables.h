#pragma once

#include <string>

namespace lidwright {

/// The tables of resources/data as they stood when the program was built, byte for byte.
std::string woodsTable();
std::string woodRatiosTable();
std::string panelsTable();
std::string wireClothTable();
std::string perforatedSheetTable();
std::string musicWireTable();
std::string stringKindsTable();
std::string stringUnitWeightsTable();
std::string tuningsTable();
std::string temperamentsTable();
std::string fretPatternsTable();

}  // namespace lidwright
