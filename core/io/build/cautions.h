#pragma once

#include "core/base/sentence.h"
#include "core/plan/plan.h"

#include <string>
#include <string_view>
#include <vector>

/// Cautions that come more than once, each with its basis. Private to core/io/build.
namespace lidwright::steps {

inline constexpr const char* kSawCaution =
    "Saws: guards on, eyes and ears covered, small pieces in a clamp or sled, never in the hand; the makers' "
    "instructions decide. Eyes need side protection where things fly (29 CFR 1910.133(a), read).";
inline constexpr const char* kChiselCaution =
    "Chisels and knives: sharp, both hands behind the edge, the work clamped (common practice, no source).";
inline constexpr const char* kDrillCaution =
    "Drill: the work clamped, no gloves or loose sleeves, hair tied back, eyes covered (common practice, no "
    "source; eyes: 29 CFR 1910.133(a), read).";
inline constexpr const char* kGlueCaution =
    "Glue: air the room, keep it off skin and eyes, and do what its sheet says (common practice, no source).";

/// What the dust of those woods and panels does, by their ids.
std::vector<Sentence> dustCautions(const std::vector<std::string>& materials);

/// Ids of the woods and panels that the plan is made of, each once.
std::vector<std::string> materialsOf(const Plan& plan);
/// Whether a wood of that kind may be in it: "oak", "rosewood".
bool isOfKind(std::string_view material, std::string_view kind);

}  // namespace lidwright::steps
