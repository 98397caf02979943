#pragma once

#include "core/base/result.h"
#include "core/base/units.h"
#include "core/plan/plan.h"

#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace lidwright {

/// One word of a choice: how files and the command line spell it, and how it is shown.
struct ChoiceWord {
    const char* word;   ///< stable, lower case with hyphens
    const char* label;  ///< marked English
};

/// A quantity that a plan can carry: the one place where it is described.
///
/// Keys of list members carry "#" where the number of the member stands: "art.#.x" is art.1.x, art.2.x ...
struct Parameter {
    const char* key;
    const char* label;
    Quantity quantity;
    double least;  ///< hard range: refused outside, inside units
    double most;
    double customaryLeast;  ///< customary range; both 0 where none is known
    double customaryMost;
    const char* source;                   ///< of the customary range
    const char* help;                     ///< one sentence
    std::span<const ChoiceWord> choices;  ///< of a Choice, in the order of its values 0, 1, 2 ...

    double (*get)(const Plan&, int index) = nullptr;  ///< numbers; index from 0, ignored outside lists
    void (*set)(Plan&, int index, double value) = nullptr;
    const std::string& (*getText)(const Plan&, int index) = nullptr;  ///< texts
    void (*setText)(Plan&, int index, const std::string& value) = nullptr;
    int (*size)(const Plan&) = nullptr;  ///< of the list that it belongs to; null outside lists
    /// False while another choice makes the quantity meaningless; null means always active.
    bool (*active)(const Plan&, int index) = nullptr;
    /// 0 stands for "none" or "not known", whatever the customary range is.
    bool zeroIsNone = false;

    bool isText() const { return quantity == Quantity::Text; }
    bool inList() const { return size != nullptr; }
};

/// A value for a parameter: a number in inside units (choices and flags by their index), or a text.
using ParameterValue = std::variant<double, std::string>;

/// A parameter and, in a list, which member.
struct ParameterRef {
    const Parameter* parameter = nullptr;
    int index = 0;

    /// The key with the member's number: "art.2.x".
    std::string key() const;
    bool operator==(const ParameterRef&) const = default;
};

/// "neck.width" from a parameter's key pattern and member index (0-based).
std::string keyOf(const Parameter& parameter, int index);

}  // namespace lidwright
