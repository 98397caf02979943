#pragma once

#include "core/checks/finding.h"
#include "core/layout/layout.h"

#include <string>
#include <vector>

namespace lidwright {

/// What the build sheet is told beside the plan.
struct BuildSheetInput {
    std::string version;  ///< of the program
    std::string date;     ///< as it is to stand there; empty for none
    bool drawing = true;  ///< with the board's drawing, as SVG in the page
};

/// The build sheet as one HTML 5 page that needs nothing else: steps with boxes to tick and to write in,
/// measures in the plan's unit, cautions at the step, findings that are not good with the reasons for which
/// they are lived with, where the models end, the plan's fingerprint. Black on white, made to be printed.
/// Words from the plan are escaped.
std::string buildSheetHtml(const Plan& plan, const Layout& layout, const std::vector<Finding>& findings,
                           const BuildSheetInput& input = {});

}  // namespace lidwright
