#include "core/materials/wood.h"
#include "core/plan/row_builders.h"

/// What decides whether it holds: woods of neck and fretboard, and where the strings are held.
namespace lidwright::rows {
namespace {

constexpr ChoiceWord kAnchors[] = {{"tail-end", "through the tail end"},
                                   {"wall-pins", "pins on the tail-end wall"},
                                   {"tailpiece", "tailpiece on the lid"}};

bool tailpiece(const Plan& plan, int)
{
    return plan.anchor.kind == AnchorKind::Tailpiece;
}

}  // namespace

std::span<const ChoiceWord> woodWords()
{
    static const std::vector<ChoiceWord> words = wordsOf(woods());
    return words;
}

std::vector<Parameter> holdingRows()
{
    return {
        idChoice<&Plan::neck, &Neck::wood, woodWords>("neck.wood", "Wood",
                                                      "Of the stick; its bow and strength go by it."),
        idChoice<&Plan::fretboard, &Fretboard::wood, woodWords>(
            "fretboard.wood", "Wood", "Of the fretboard, which is glued on and stiffens the neck."),
        idChoice<&Plan::bridge, &Bridge::wood, woodWords>("bridge.wood", "Wood",
                                                          "Of the bridge; its weight goes by it."),
        choice<&Plan::anchor, &StringAnchor::kind>("anchor.kind", "Strings held", kAnchors,
                                                   "Where the strings are held behind the bridge."),
        length<&Plan::anchor, &StringAnchor::depth>(
            "anchor.depth", "Depth", {0, 120}, practice(3, 30),
            "How far below the lid's top the strings are held; of a tailpiece how far above it."),
        length<&Plan::anchor, &StringAnchor::behind>(
            "anchor.behind", "Behind the saddle", {5, 400}, practice(30, 90),
            "From the saddle line to where a tailpiece holds the strings.", tailpiece),
    };
}

}  // namespace lidwright::rows
