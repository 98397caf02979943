#pragma once

#include "core/base/result.h"

#include <nlohmann/json_fwd.hpp>

#include <string>

namespace lidwright {

inline constexpr int kExitFine = 0;       ///< nothing wrong
inline constexpr int kExitPlanWrong = 1;  ///< something is wrong with the plan
inline constexpr int kExitUnusable = 2;   ///< input unusable, or output not written

/// Writes text to the standard output; false when it could not be written (full disk, closed pipe).
bool print(const std::string& text);

/// The same for JSON, with line breaks: full precision, keys in the order in which they were set.
bool print(const nlohmann::ordered_json& json);

/// JSON as it is printed and written into files.
std::string jsonText(const nlohmann::ordered_json& json);

/// Writes "lidwright: where: what (mend)" to the standard error and gives the exit code for unusable input.
int refuse(const Error& error);

/// A remark on the standard error that does not change the exit code.
void remark(const std::string& text);

/// `code`, or the exit code for unusable input with a message when printing had failed.
int finish(bool printed, int code);

/// How many characters the text has (UTF-8).
std::size_t characters(const std::string& text);

/// `text` followed by spaces up to `width` characters (UTF-8), and at least one space.
std::string padded(const std::string& text, std::size_t width);

}  // namespace lidwright
