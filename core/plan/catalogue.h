#pragma once

#include "core/plan/parameter.h"

#include <optional>

namespace lidwright {

/// Every quantity that a plan can carry, grouped by part in the order in which forms show them.
std::span<const Parameter> catalogue();

/// A part as forms and file know it: "box", "neck", "art" ...
struct PartInfo {
    const char* key;    ///< first word of its parameters' keys
    const char* label;  ///< marked English, singular
    bool list;          ///< several of them
};
std::span<const PartInfo> parts();

/// The parameter of a full key ("art.2.x"); the index must exist in `plan`. Errors name near spellings.
Result<ParameterRef> findParameter(const Plan& plan, std::string_view key);

/// Parameters of one part member in order: partKey "neck" or "art.2".
std::vector<ParameterRef> parametersOf(const Plan& plan, std::string_view partKey);

ParameterValue get(const Plan& plan, const ParameterRef& ref);
/// The value that a fresh plan (or a fresh list member) has.
ParameterValue defaultValue(const Parameter& parameter);
bool active(const Plan& plan, const ParameterRef& ref);

/// Sets the value after checking kind and hard range; the error names key, value and range.
Result<Plan> set(const Plan& plan, const ParameterRef& ref, const ParameterValue& value);

/// Reads what a person typed for this parameter (length grammar, number, choice word, yes/no, text).
Result<ParameterValue> parseValue(const Parameter& parameter, std::string_view text, const UnitStyle& style);
/// The value as a person reads it, with unit.
std::string formatValue(const Parameter& parameter, const ParameterValue& value, const UnitStyle& style);

/// One change of a plan, by key.
struct Edit {
    std::string key;
    ParameterValue value;

    bool operator==(const Edit&) const = default;
};

/// All edits in order, or the first error; lists are resized through their count ("hole.count",
/// "block.count").
Result<Plan> applyEdits(const Plan& plan, std::span<const Edit> edits);

}  // namespace lidwright
