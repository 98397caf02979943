#pragma once

#include "core/base/sentence.h"
#include "core/geometry/point.h"
#include "core/layout/layout.h"
#include "core/plan/catalogue.h"

#include <optional>
#include <string>
#include <vector>

namespace lidwright {

/// good; tight: works, no room for error; wrong: do not cut; unknown: data missing.
enum class Verdict { Good, Tight, Unknown, Wrong };

/// "good", "tight", "wrong", "unknown".
const char* word(Verdict verdict);

/// The views of the board.
enum class View { Top, Under, Section, HeadEnd, TailEnd };

/// Where on the drawing a finding is: a box in a view's own plane (top: x,y; section: x,z; ends: y,z).
struct Place {
    View view = View::Top;
    Bounds box;
};

/// A way out: an ordinary edit that can be undone, offered only when it was proven to help.
struct Remedy {
    Sentence label;  ///< "Move the bridge %1 toward the tail"
    std::vector<Edit> edits;
};

/// How a measured value relates to the required one.
enum class Bound { AtLeast, AtMost, Exactly };

/// "at least", "at most", "exactly".
const char* word(Bound bound);

/// One rule's answer about one thing.
struct Finding {
    std::string rule;  ///< id of the rule, e.g. "bridge.art"
    std::string part;  ///< part it is about: "bridge", "art.2"
    Verdict verdict = Verdict::Unknown;
    Sentence sentence;
    std::optional<Measure> measured;
    std::optional<Measure> required;
    Bound bound = Bound::AtLeast;  ///< of the required value
    /// The value that would be good, where one between it and the required one is tight.
    std::optional<Measure> comfortable;
    std::vector<Place> places;
    std::vector<Remedy> remedies;
    /// The reason for which the maker lives with it (Plan::accepted); empty where it is not accepted. Its
    /// verdict stays what it is.
    std::string accepted;
};

/// How a finding is named where it is lived with: its rule and its part.
std::string acceptanceName(const Finding& finding);
/// Whether this finding is meant: by that name, or by its rule alone, which means those of every part.
bool isMeant(const Acceptance& accepted, const Finding& finding);

}  // namespace lidwright
