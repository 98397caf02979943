#pragma once

#include "core/checks/finding.h"
#include "core/io/build/step_pictures.h"
#include "core/layout/layout.h"
#include "core/solvers/study.h"

#include <string>
#include <vector>

namespace lidwright {

/// A measure that a step works to, with room beside it for what came out.
struct StepMeasure {
    std::string what;  ///< marked English
    Measure value;
    bool check = false;  ///< to be measured and written down when the step is done

    bool operator==(const StepMeasure&) const = default;
};

/// Measures of many alike: frets, strings, tuners.
struct StepTable {
    StudyTable table;
    bool check = false;  ///< with a column to write what came out

    bool operator==(const StepTable&) const = default;
};

/// One step of the work at the bench.
struct BuildStep {
    std::string id;     ///< stable word: "notches"
    std::string title;  ///< marked English
    std::string tools;
    std::vector<Sentence> work;
    std::vector<StepMeasure> measures;
    std::vector<StepTable> tables;
    std::vector<StepPicture> pictures;
    std::vector<Sentence> cautions;  ///< with their published basis where there is one

    bool operator==(const BuildStep&) const = default;
};

/// The steps of this plan in the order in which the work must go; none for what it does not have. Dimensions
/// come from plan and layout, cautions defer to makers' instructions, local rules and licensed practice.
std::vector<BuildStep> buildSteps(const Plan& plan, const Layout& layout);

/// Cautions that hold at every step of this plan.
std::vector<Sentence> generalCautions(const Plan& plan);

/// 16 hexadecimal digits by which two plans are told apart: FNV-1a (64 bits) of the plan file's text (G.
/// Fowler, L. C. Noll, K.-P. Vo, RFC draft "The FNV Non-Cryptographic Hash Algorithm", from memory). No proof
/// against forgery.
std::string planFingerprint(const Plan& plan);

}  // namespace lidwright
