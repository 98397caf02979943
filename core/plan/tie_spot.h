#pragma once

namespace lidwright {

/// A tie at a picked place of a drawing: wood is left across the cut there.
struct TieSpot {
    int art = 1;  ///< number of the drawing, from 1
    double x =
        0;  ///< of the place, in the drawing's own frame at the size that the file gave, mm from its middle
    double y = 0;
    double width = 4;  ///< mm

    bool operator==(const TieSpot&) const = default;
};

}  // namespace lidwright
