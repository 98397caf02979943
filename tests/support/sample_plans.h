#pragma once

#include "core/plan/plan.h"

#include <filesystem>
#include <string>
#include <vector>

namespace lidwright::testing {

/// One of the sample plans, made anew from its drawing in resources/samples. All builds are invented.
struct Sample {
    std::string file;  ///< "harbour-light.lidplan"
    Plan plan;
};

/// The three samples; `folder` holds their drawings. Aborts with a message when a drawing cannot be read.
std::vector<Sample> samplePlans(const std::filesystem::path& folder);

}  // namespace lidwright::testing
