#include "core/plan/row_builders.h"

/// The stick under the lid.
namespace lidwright::rows {
namespace {

constexpr ChoiceWord kPads[] = {{"under-bridge", "full under the bridge"}, {"none", "none, the lid is free"}};
constexpr ChoiceWord kEnds[] = {{"square", "square"}, {"ramped", "sloped"}, {"round", "rounded"}};

bool relieved(const Plan& plan, int)
{
    return plan.relief.cut;
}
bool padded(const Plan& plan, int)
{
    return plan.relief.cut && plan.relief.pad == ReliefPad::UnderBridge;
}
bool shaped(const Plan& plan, int)
{
    return plan.relief.cut && plan.relief.end != ReliefEnd::Square;
}

}  // namespace

std::vector<Parameter> reliefRows()
{
    return {
        flag<&Plan::relief, &Relief::cut>(
            "relief.cut", "Relief", "The stick's top is lowered under the lid, so that the lid can move."),
        length<&Plan::relief, &Relief::depth>(
            "relief.depth", "Depth", {0.2, 60}, practice(3, 10),
            "Below the lid's seat, or below the stick's top where the lid lies on it.", relieved),
        length<&Plan::relief, &Relief::headLand>(
            "relief.head-land", "Land at the head-end wall", {0, 400}, practice(12, 40),
            "Left full behind the head-end wall's inner face.", relieved),
        length<&Plan::relief, &Relief::tailLand>(
            "relief.tail-land", "Land at the tail-end wall", {0, 400}, practice(12, 40),
            "Left full before the tail-end wall's inner face.", relieved),
        choice<&Plan::relief, &Relief::pad>(
            "relief.pad", "Pad", kPads,
            "Whether the stick stays full under the bridge, or the lid carries the bridge alone.", relieved),
        length<&Plan::relief, &Relief::padLength>(
            "relief.pad-length", "Pad length", {2, 400}, practice(25, 60),
            "Along the neck; its middle lies under the saddle.", padded),
        length<&Plan::relief, &Relief::padWidth>("relief.pad-width", "Pad width", {0, 150}, kNone,
                                                 "Across the neck; 0 leaves it as wide as the stick.",
                                                 padded),
        choice<&Plan::relief, &Relief::end>(
            "relief.end", "Ends", kEnds,
            "How the floor comes up at the ends: square, by a slope, or by the round of a bit or drum.",
            relieved),
        length<&Plan::relief, &Relief::ramp>("relief.ramp", "Slope or radius", {1, 200}, practice(5, 40),
                                             "Length of the slope, or radius of the round end.", shaped),
        length<&Plan::relief, &Relief::spare>(
            "relief.spare", "Air to spare", {0, 20}, practice(0.5, 2),
            "Air that shall be left between lid and stick beside the lid's sag and the backing.", relieved),
        length<&Plan::relief, &Relief::glueLand>("relief.glue-land", "Least land", {0, 100}, practice(10, 20),
                                                 "The shortest land that the lid is glued to.", relieved),
        count<&Plan::hollows>("hollow.count", "Hollows", "How many more hollows the stick's top has."),
        eachLength<&Plan::hollows, &Hollow::from>("hollow.#.from", "From head-end wall", {-1000, 2500}, kNone,
                                                  "Its beginning, from the head-end wall's outer face."),
        eachLength<&Plan::hollows, &Hollow::length>("hollow.#.length", "Length", {1, 1500}, practice(15, 120),
                                                    "Along the neck."),
        eachLength<&Plan::hollows, &Hollow::depth>(
            "hollow.#.depth", "Depth", {0.2, 90}, practice(3, 15),
            "Below the lid's seat, or below the stick's top where the lid lies on it."),
    };
}

}  // namespace lidwright::rows
