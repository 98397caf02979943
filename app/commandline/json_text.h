#pragma once

#include "core/base/sentence.h"
#include "core/checks/finding.h"

#include <nlohmann/json_fwd.hpp>

#include <string>

namespace lidwright {

/// The inside unit of a quantity as JSON names it: "mm", "deg", "mm2", "mm3"; empty for numbers without one.
std::string_view unitName(Quantity quantity);
/// "length", "angle", "area", "volume", "count", "ratio", "choice", "flag", "text".
const char* kindName(Quantity quantity);

/// {"value": 12.5, "unit": "mm"}; "unit" is left out for numbers without one.
nlohmann::ordered_json toJson(const Measure& measure);
/// A parameter's value as JSON has it: a number, true or false, the choice's word, or a text.
nlohmann::ordered_json toJson(const Parameter& parameter, const ParameterValue& value);

/// The value as --set takes it whatever the plan's unit is: "635 mm", "yes", "slot".
std::string settingText(const Parameter& parameter, const ParameterValue& value);

}  // namespace lidwright
