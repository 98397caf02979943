#pragma once

#include "core/plan/artwork.h"

#include <string>
#include <vector>

namespace lidwright {

/// One drawing placed on the lid.
struct ArtPiece {
    std::string name = "Artwork";
    ArtworkPtr art;            ///< never null in a valid plan
    std::vector<ArtUse> uses;  ///< per paint of the drawing
    double x = 0;              ///< place of the drawing's middle: from the head-end wall's outer face, mm
    double y = 0;              ///< from the centre line, mm, positive to the treble side
    double turn = 0;           ///< degrees, counter-clockwise seen from the front
    double scale = 1;          ///< 1 = the size that the file gave
    bool mirrored = false;     ///< left and right changed before it is turned
    /// Wood between its cuts is made at least this wide by pulling the cuts' edges back, mm; 0 leaves it.
    double strengthen = 0;
    int ties = 0;  ///< how many ties hold each piece that would drop out

    bool operator==(const ArtPiece& o) const
    {
        return name == o.name && uses == o.uses && x == o.x && y == o.y && turn == o.turn &&
               scale == o.scale && mirrored == o.mirrored && strengthen == o.strengthen && ties == o.ties &&
               (art == o.art || (art && o.art && *art == *o.art));
    }
};

}  // namespace lidwright
