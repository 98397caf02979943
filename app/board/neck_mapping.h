#pragma once

namespace lidwright {

/// Where a station x (mm along the neck) lies in a widget that runs beside the board, in its pixels.
struct NeckMapping {
    double origin = 0;  ///< pixel of x = 0
    double scale = 1;   ///< pixels per mm, positive
    bool mirrored = false;

    double toWidget(double x) const { return origin + (mirrored ? -x : x) * scale; }
    double toNeck(double pixel) const { return (mirrored ? origin - pixel : pixel - origin) / scale; }
    bool operator==(const NeckMapping&) const = default;
};

}  // namespace lidwright
