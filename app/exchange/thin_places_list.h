#pragma once

#include "core/checks/finding.h"
#include "core/solvers/weak_places.h"

#include <string>
#include <vector>

namespace lidwright {

/// One line of the table of thin places, for the window, CSV and JSON alike.
struct ThinRow {
    int number = 0;              ///< as on the drawing, from 1, the weakest first; 0 for places of a cut
    std::string kind;            ///< "web", "tongue", "drop-out", "kerf-closing"
    std::string drawing;         ///< name of the drawing; "the lid" between drawings, holes and the edge
    Point at;                    ///< mm, in the lid's frame
    double width = 0;            ///< mm, narrowest, as drawn
    std::optional<double> left;  ///< mm that are left of it once cut, the kerf gone
    double run = 0;              ///< mm
    double direction = 0;        ///< degrees from the centre line, counter-clockwise
    double grainAngle = 0;       ///< degrees
    int outlineA = -1, outlineB = -1;  ///< rings of the searched region
    double freed = 0;                  ///< mm2
    bool backed = false;
    std::optional<double> breaksAt_N;
    std::optional<double> factorOfSafety;
    Verdict verdict = Verdict::Unknown;
};

/// All thin places of the plan, then the parts of the cuts that the kerf closes.
struct ThinList {
    std::vector<ThinRow> rows;
    double searchedTo = 0;  ///< mm
    std::optional<Error> problem;
};
ThinList thinList(const Plan& plan, const Layout& layout);

/// RFC 4180: comma, CRLF, a head line that names quantity and unit; numbers with a point, to 0.001.
std::string thinCsv(const ThinList& list);

}  // namespace lidwright
