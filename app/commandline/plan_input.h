#pragma once

#include "app/commandline/arguments.h"

#include "core/plan/plan.h"

#include <string>

namespace lidwright {

/// The options by which every command that takes a plan lets it be changed.
inline constexpr OptionSpec kSetOption{
    "--set", "KEY=VALUE", "change a quantity first; in order, a bare number is in the plan's unit", true};
inline constexpr OptionSpec kArtOption{
    "--art", "FILE.svg",
    "put a drawing on the lid first; more after commas: x= y= turn= scale= wide= per-inch=", true};

/// The plan that the commands work on.
struct PlanInput {
    Plan plan;
    std::string name;  ///< file it came from; "built-in plan" where none was named
};

/// Reads the plan that the plain word number `planWord` names (the built-in one where there is none), puts
/// every
/// --art on its lid, then does every --set in order. What is worth knowing (notes of the file, messages of
/// drawings) goes to the standard error.
Result<PlanInput> readPlanInput(const Arguments& arguments, std::size_t planWord = 0);

/// One "KEY=VALUE" done to the plan. The value is read as a person types it, in the plan's unit.
Result<Plan> applySetting(const Plan& plan, const std::string& setting);

}  // namespace lidwright
