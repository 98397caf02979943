#pragma once

#include <string>

namespace lidwright {

/// Four blocks in the inside corners of a rectangular box, under the lid.
struct CornerBlocks {
    bool present = true;
    double alongEnd = 25;                ///< size along the end walls (y), mm
    double alongSide = 25;               ///< size along the side walls (x), mm
    double height = 48;                  ///< down from the lid's underside
    std::string wood = "yellow-poplar";  ///< id of a wood in core/materials

    bool operator==(const CornerBlocks&) const = default;
};

enum class BoxWall { HeadEnd, TailEnd, BassSide, TrebleSide };

/// One block along a wall, under the lid.
struct WallBlock {
    BoxWall wall = BoxWall::BassSide;
    double at = 150;  ///< middle of the block: from the head-end wall on a side wall, from the centre line on
                      ///< an end wall
    double length = 60;                  ///< along the wall
    double depth = 12;                   ///< into the box
    double height = 12;                  ///< down from the lid's underside
    std::string wood = "yellow-poplar";  ///< id of a wood in core/materials

    bool operator==(const WallBlock&) const = default;
};

}  // namespace lidwright
