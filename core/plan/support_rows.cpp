#include "core/plan/row_builders.h"

/// Blocks, bars and what is screwed on outside.
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

template <auto Member>
Parameter foot(const char* key, const char* label, Range range, Customary customary, const char* help)
{
    return length<&Plan::fittings, Member>(key, label, range, customary, help,
                                           [](const Plan& plan, int) { return plan.fittings.feet; });
}

bool strap(const Plan& plan, int)
{
    return plan.fittings.strapAtTail || plan.fittings.strapAtNeck;
}

std::vector<Parameter> blockRows()
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
        idChoice<&Plan::cornerBlocks, &CornerBlocks::wood, woodWords>("corner-blocks.wood", "Wood",
                                                                      "Of the corner blocks.", hasCorners),
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
        eachIdChoice<&Plan::blocks, &WallBlock::wood, woodWords>("block.#.wood", "Wood", "Of the block."),
    };
}

std::vector<Parameter> barRows()
{
    return {
        count<&Plan::bars>("bar.count", "Bars", "How many bars are glued to the lid's underside."),
        eachLength<&Plan::bars, &LidBar::x>("bar.#.x", "From head-end wall", {-1000, 2500}, kNone,
                                            "Middle of the bar, from the head-end wall's outer face."),
        eachLength<&Plan::bars, &LidBar::y>("bar.#.y", "From centre line", {-1000, 1000}, kNone,
                                            "Middle of the bar, from the centre line to the treble side."),
        eachLength<&Plan::bars, &LidBar::length>("bar.#.length", "Length", {5, 1500}, practice(40, 280),
                                                 "Along the bar."),
        eachNumber<&Plan::bars, &LidBar::turn>(
            "bar.#.turn", "Turn", Quantity::Angle, {-180, 180}, kNone,
            "Turned counter-clockwise from the neck's direction, seen from the front; 90 lies across."),
        eachLength<&Plan::bars, &LidBar::width>("bar.#.width", "Width", {1, 100}, practice(5, 12),
                                                "Glued to the lid."),
        eachLength<&Plan::bars, &LidBar::height>("bar.#.height", "Height", {1, 100}, practice(5, 15),
                                                 "Down from the lid's underside."),
        eachIdChoice<&Plan::bars, &LidBar::wood, woodWords>("bar.#.wood", "Wood",
                                                            "Of the bar; its grain runs along it."),
    };
}

std::vector<Parameter> fittingRows()
{
    return {
        flag<&Plan::fittings, &Fittings::feet>("fittings.feet", "Feet", "Four feet under the base."),
        foot<&Fittings::footDiameter>("fittings.foot-diameter", "Foot's diameter", {3, 80}, practice(10, 25),
                                      "Of one foot."),
        foot<&Fittings::footHeight>("fittings.foot-height", "Foot's height", {1, 80}, practice(4, 15),
                                    "Of one foot."),
        foot<&Fittings::footInset>("fittings.foot-inset", "Feet from the edges", {2, 300}, practice(12, 30),
                                   "Middle of a foot to the two faces of the box next to it."),
        flag<&Plan::fittings, &Fittings::strapAtTail>("fittings.strap-at-tail", "Strap button at the tail",
                                                      "Screwed into the end of the stick."),
        flag<&Plan::fittings, &Fittings::strapAtNeck>("fittings.strap-at-neck", "Strap button at the neck",
                                                      "Screwed into the stick's underside before the box."),
        length<&Plan::fittings, &Fittings::strapBefore>(
            "fittings.strap-before", "Button before the box", {5, 400}, practice(20, 60),
            "Strap button at the neck to the head-end wall's outer face.",
            [](const Plan& plan, int) { return plan.fittings.strapAtNeck; }),
        length<&Plan::fittings, &Fittings::strapScrew>("fittings.strap-screw", "Button's screw", {1, 10},
                                                       practice(3, 5), "Diameter of the screw.", strap),
        length<&Plan::fittings, &Fittings::strapScrewLength>(
            "fittings.strap-screw-length", "Screw in the wood", {3, 100}, practice(16, 35),
            "How far the screw reaches into the stick.", strap),
    };
}

std::vector<Parameter> trialRows()
{
    return {
        number<&Plan::trial, &Trial::tap_Hz>(
            "trial.tap", "Tapped note", Quantity::Frequency, {0, 2000}, kNone,
            "Lowest note of the real lid in its box when it is tapped beside the bridge with the sound "
            "holes stopped; 0 where it was not tried."),
        zeroForNone(number<&Plan::trial, &Trial::weight_kg>(
            "trial.weight", "Weight laid on", Quantity::Mass, {0, 50}, practice(1, 5),
            "Laid on the bridge's place of the real lid to see how far it sinks; 0 where it was not tried.")),
        length<&Plan::trial, &Trial::sag>("trial.sag", "Lid sank by", {0, 30}, kNone,
                                          "How far the lid sank under that weight, at its middle."),
    };
}

}  // namespace

std::vector<Parameter> supportRows()
{
    std::vector<Parameter> all = blockRows();
    for (auto&& group : {barRows(), fittingRows(), trialRows()})
        all.insert(all.end(), group.begin(), group.end());
    return all;
}

}  // namespace lidwright::rows
