#pragma once

#include "core/base/result.h"
#include "core/io/drawing_reading.h"
#include "core/io/svg/svg_text_run.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace lidwright {

/// Limits of the SVG reader. A drawing beyond one of them is refused with an Error that says which;
/// nothing is dropped without a word.
inline constexpr std::size_t kSvgFileLimit = std::size_t{64} << 20;          ///< bytes
inline constexpr std::size_t kSvgEntityGrowthLimit = std::size_t{16} << 20;  ///< bytes gained by entities
inline constexpr std::size_t kSvgElementLimit = 200'000;      ///< elements, each use of one counted anew
inline constexpr int kSvgDepthLimit = 512;                    ///< elements inside one another, uses included
inline constexpr std::size_t kSvgPointLimit = 2'000'000;      ///< points of all outlines
inline constexpr std::size_t kSvgFlatPointLimit = 6'000'000;  ///< points once curves and lines are divided
inline constexpr std::size_t kSvgStyleTestLimit = 5'000'000;  ///< style rules tried on elements
inline constexpr std::size_t kSvgTextLimit = 20'000;          ///< different words that fonts are asked for
inline constexpr double kSvgWorkLimit = 2e9;                  ///< steps of a sweep line, see svg_tangle.h
inline constexpr double kSvgCrossingLimit = 3e6;              ///< crossings of the outlines of one paint

/// How a drawing is to be read.
struct SvgOptions {
    /// User units per inch where the file states no physical size: 96 (CSS), 90 and 72 are customary.
    /// Files that state their size in mm, cm, in, pt or pc are not touched by it.
    std::optional<double> unitsPerInch;
    /// What is painted becomes this wide, mm; goes before everything that the file says.
    std::optional<double> width_mm;
    /// Curves are replaced by chords that stay within this many mm of them (0.0001 ... 1).
    double tolerance = 0.002;
    /// Supplies the letters of text; where empty, or where it has no answer, text is left out and named.
    TextOutliner outlineText;
};

using SvgReading = DrawingReading;

/// Reads an SVG drawing given as text: areas that are painted, by paint, in painting order, in
/// millimetres, y up, the origin in the middle of what is painted. Outlines are exact to 0.01 mm at the
/// default tolerance. What cannot be taken over is named in art.messages.
///
/// Text is drawn by options.outlineText, without what runs along a path, upright or from right to left, with
/// turned letters, or in a font of the drawing's own; that is left out and named like all else.
///
/// Opens no file and no connection. Lines are taken as the areas that they paint. What lies beyond the
/// page is cut off, as a viewer shows it. Follows SVG 1.1 (Second Edition) and the parts of SVG 2 that
/// are drawn by common programs.
///
/// Errors: no SVG, not well formed, a limit exceeded, nothing painted, too large for the lid
/// (kCoordinateLimit), options out of range.
Result<SvgReading> readSvg(std::string_view text, std::string fileName, const SvgOptions& options = {});

}  // namespace lidwright
