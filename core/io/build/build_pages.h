#pragma once

#include "core/checks/finding.h"
#include "core/io/build/bench_sheet.h"
#include "core/layout/layout.h"
#include "core/solvers/fineness.h"
#include "core/solvers/plate/plate_problem.h"
#include "core/solvers/study.h"

#include <string>
#include <vector>

namespace lidwright {

/// What the build sheet is told beside the plan.
struct BuildSheetInput {
    std::string version;   ///< of the program
    std::string date;      ///< as it is to stand there; empty for none
    bool pictures = true;  ///< with the board's drawing and a picture at the steps that need one
    Fineness fineness = Fineness::Usual;  ///< of the studies of lid and air
    PlateWatch watch;  ///< of those studies, which take nearly all the time: 0 to 1 over all of them
};

/// The build sheet: what it is of, the board's drawing, general cautions, the steps with boxes to tick and to
/// write in, how it will sound, the findings with the reasons for which they are lived with, where the models
/// end, and the plan's fingerprint in the footer. `stopped` where input.watch was cancelled: it is not whole
/// then. From any thread.
BenchSheet buildSheet(const Plan& plan, const Layout& layout, const std::vector<Finding>& findings,
                      const BuildSheetInput& input = {});

/// A table of figures with its notes as pages for the bench: a list of the shop or a study. `input`: version
/// and date.
BenchSheet figureSheet(const Plan& plan, const Study& study, const BuildSheetInput& input = {});

}  // namespace lidwright
