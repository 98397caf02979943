#pragma once

#include "core/geometry/region.h"

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace lidwright {

/// What the cutter does where a paint of the drawing is seen.
enum class ArtUse {
    Cut,        ///< goes through the lid
    CutInside,  ///< only for lines: the area that the closed lines enclose goes through the lid
    Engraved,   ///< surface only
    Wood,       ///< wood stays, also where an earlier paint was cut (white painted on black)
    Ignored,    ///< as though it were not there
};

/// One paint found in a drawing.
struct ArtPaint {
    std::string name;     ///< "fill #1a2b3c", "line #ff0000", "fill gradient"; the key of the use table
    std::string colour;   ///< "#rrggbb" for the swatch; the middle colour of a gradient
    bool line = false;    ///< painted by a stroke
    double thinnest = 0;  ///< narrowest stroke width, mm; 0 for fills

    bool operator==(const ArtPaint&) const = default;
};

/// What one paint covers before another paint comes over it. Runs stand in painting order.
struct ArtRun {
    int paint = 0;    ///< index into Artwork::paints
    Region painted;   ///< the area covered, mm, in the artwork's own frame
    Region enclosed;  ///< for lines: the area inside their closed lines (even-odd), otherwise empty

    bool operator==(const ArtRun&) const = default;
};

/// A drawing as read: outlines in millimetres, immutable and shared by the plans that hold it.
/// Own frame: x right, y up as the drawing is seen, origin in the middle of what is painted.
struct Artwork {
    std::string fileName;        ///< name without folder
    std::uint64_t fileSize = 0;  ///< bytes
    double width = 0;            ///< of what is painted, mm
    double height = 0;
    std::vector<ArtPaint> paints;
    std::vector<ArtRun> runs;
    std::vector<std::string> messages;  ///< what the reader could not take over, in words

    bool operator==(const Artwork&) const = default;
};

using ArtworkPtr = std::shared_ptr<const Artwork>;

/// A sensible first use for every paint: a lone paint is cut; otherwise dark fills are cut, near-white ones
/// leave wood, hairlines cut what they enclose, the rest is engraved (common practice, no source: shops
/// differ).
std::vector<ArtUse> firstGuess(const Artwork& art);

/// The areas that go through and those that are engraved, by the uses of the paints in painting order.
/// `uses` shorter than the paints is filled up with Ignored. Engraving never covers a cut.
struct ArtAreas {
    Region cut;
    Region engraved;
};
ArtAreas areas(const Artwork& art, const std::vector<ArtUse>& uses);

}  // namespace lidwright
