#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

/// Format number of .lidplan files written by this version.
inline constexpr int kPlanFormatVersion = 1;
inline constexpr std::size_t kPlanFileLimit = 256u << 20;  ///< bytes
inline constexpr int kPlanDepthLimit = 32;                 ///< nesting of arrays and objects
inline constexpr int kPlanPointLimit = 2'000'000;          ///< outline points in one file
inline constexpr int kPlanValueLimit = 4'000'000;          ///< values of any kind that are no points

struct PlanReading {
    Plan plan;
    std::vector<std::string> notes;  ///< what a maker should know: keys kept without being understood ...
};

/// Reads the text of a .lidplan file. Errors name file, key path and reason. A newer format is refused.
/// FORMAT.md beside this header describes the format.
Result<PlanReading> readPlan(std::string_view text, const std::string& fileName);

/// The text of a .lidplan file: UTF-8 JSON, format name and version first, fixed key order, shortest exact
/// numbers in millimetres and degrees. readPlan() of it gives the same plan, provided that its quantities
/// lie within the catalogue's hard ranges and beyondPlanLimits() has nothing to say. Bytes that are no
/// UTF-8 are written as "?".
std::string writePlan(const Plan& plan);

/// Why a file of this plan could not be read again: more outline points than kPlanPointLimit or more other
/// values than kPlanValueLimit. A drawing that several pieces share counts once. To be asked before a
/// drawing is taken into a plan.
std::optional<Error> beyondPlanLimits(const Plan& plan);

}  // namespace lidwright
