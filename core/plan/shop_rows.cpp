#include "core/plan/row_builders.h"

namespace lidwright::rows {
namespace {

constexpr ChoiceWord kWalls[] = {{"head-end", "head-end wall"},
                                 {"tail-end", "tail-end wall"},
                                 {"bass-side", "bass side wall"},
                                 {"treble-side", "treble side wall"}};

bool hasCorners(const Plan& plan, int)
{
    return plan.box.shape == BoxShape::Rectangle && plan.cornerBlocks.present;
}

}  // namespace

std::vector<Parameter> shopRows()
{
    return {
        flag<&Plan::cornerBlocks, &CornerBlocks::present>(
            "corner-blocks.present", "Corner blocks",
            "Four blocks in the inside corners; a rectangular box only."),
        length<&Plan::cornerBlocks, &CornerBlocks::alongEnd>(
            "corner-blocks.along-end", "Along the end walls", {2, 300}, practice(12, 40),
            "Size of a corner block across the box.", hasCorners),
        length<&Plan::cornerBlocks, &CornerBlocks::alongSide>(
            "corner-blocks.along-side", "Along the side walls", {2, 300}, practice(12, 40),
            "Size of a corner block along the box.", hasCorners),
        length<&Plan::cornerBlocks, &CornerBlocks::height>("corner-blocks.height", "Height", {2, 400}, kNone,
                                                           "Down from the lid's underside.", hasCorners),
        count<&Plan::blocks>("block.count", "Wall blocks", "How many blocks stand along the walls."),
        eachChoice<&Plan::blocks, &WallBlock::wall>("block.#.wall", "Wall", kWalls,
                                                    "The wall that the block is glued to."),
        eachLength<&Plan::blocks, &WallBlock::at>(
            "block.#.at", "Place", {-1000, 2500}, kNone,
            "Middle of the block: from the head-end wall's outer face on a side wall, from the "
            "centre line on an end wall."),
        eachLength<&Plan::blocks, &WallBlock::length>("block.#.length", "Length", {2, 1500},
                                                      practice(20, 200), "Along the wall."),
        eachLength<&Plan::blocks, &WallBlock::depth>("block.#.depth", "Depth", {2, 300}, practice(6, 25),
                                                     "Into the box."),
        eachLength<&Plan::blocks, &WallBlock::height>("block.#.height", "Height", {2, 400}, practice(6, 60),
                                                      "Down from the lid's underside."),
        length<&Plan::shop, &Shop::kerf>("shop.kerf", "Saw kerf", {0, 10}, practice(0.5, 3.2),
                                         "Width that one saw cut takes away."),
        length<&Plan::shop, &Shop::fit>("shop.fit", "Fit", {0, 5}, practice(0.05, 0.5),
                                        "Air left on each side of the neck in its openings."),
    };
}

}  // namespace lidwright::rows
