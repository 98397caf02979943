#pragma once

#include "core/base/result.h"
#include "core/io/drawing_reading.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace lidwright {

/// Limits of the DXF reader. A drawing beyond one of them is refused with an Error that says which.
inline constexpr std::size_t kDxfFileLimit = std::size_t{64} << 20;  ///< bytes
inline constexpr std::size_t kDxfEntityLimit = 200'000;   ///< entities, those of inserted blocks counted anew
inline constexpr std::size_t kDxfPointLimit = 2'000'000;  ///< points once curves are divided
inline constexpr int kDxfDepthLimit = 16;                 ///< blocks within blocks
inline constexpr int kDxfDegreeLimit = 25;                ///< of splines
inline constexpr double kDxfFarthest = 1e9;               ///< coordinates beyond it are no drawing's

/// Ends of lines that meet within this, mm, are joined.
inline constexpr double kDxfMeeting = 0.01;
/// Width, mm, with which lines are painted: a hairline, since DXF gives lines no width that is cut.
inline constexpr double kDxfHairline = 0.1;

/// How a drawing is to be read.
struct DxfOptions {
    /// Millimetres per unit where the file names no unit: 1 (millimetres), 25.4 (inches), 10, 1000.
    std::optional<double> unit_mm;
    /// The drawing becomes this wide, mm, hairlines not counted; goes before everything that the file says.
    std::optional<double> width_mm;
    /// Curves are replaced by chords that stay within this many mm of them (0.0001 ... 1).
    double tolerance = 0.002;
};

/// Reads an ASCII DXF drawing given as text (DXF Reference, Release 12 to 2018): LINE, ARC, CIRCLE, ELLIPSE,
/// LWPOLYLINE, POLYLINE (2D and 3D, with bulges), SPLINE (by control points, rational or not) and INSERT of
/// blocks, as seen from above. In millimetres, y up, the origin in the middle of what is drawn.
///
/// Every layer is a paint, "layer NAME"; entities on it in another colour than the layer's are one of their
/// own. Layers that are off or frozen, and paper space, are left out. All paints are lines of kDxfHairline;
/// Artwork::width and height are the drawing's without it. The pieces of one paint are joined where their
/// ends meet (kDxfMeeting); ArtRun::enclosed is what the closed ones enclose, by the even-odd rule, a line
/// that is drawn twice counted once. Lines that stay open enclose nothing and are named in art.messages with
/// their number and the narrowest gap; so is everything that was left out.
///
/// $INSUNITS is honoured. Where it is missing or says "no unit", DxfOptions::unit_mm holds, 1 mm without it,
/// and hasPhysicalSize is false.
///
/// Errors: binary DXF, DWG, no DXF; a group code that is no number (with its line); a limit exceeded; nothing
/// drawn; too large for the lid (kCoordinateLimit); lines too tangled to be united; options out of range.
Result<DrawingReading> readDxf(std::string_view text, std::string fileName, const DxfOptions& options = {});

}  // namespace lidwright
