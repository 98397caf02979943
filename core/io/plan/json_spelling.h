#pragma once

#include "core/io/plan/json_tree.h"

#include <string>
#include <string_view>

namespace lidwright::json {

/// Appends the shortest decimal that reads back to the same double, the sign of zero included. What is not
/// finite becomes null, since JSON has no word for it.
void appendNumber(std::string& out, double value);

/// Appends the text in quotation marks; control characters are escaped, bytes that are no UTF-8 become "?",
/// so that no text grows.
void appendString(std::string& out, std::string_view text);

/// Appends a value on one line without blanks.
void appendValue(std::string& out, const Value& value);

}  // namespace lidwright::json
