#include "core/materials/wood.h"
#include "core/plan/row_builders.h"

#include <algorithm>

/// What decides whether it holds: woods of neck and fretboard, and where the strings are held.
namespace lidwright::rows {
namespace {

constexpr ChoiceWord kAnchors[] = {{"tail-end", "through the tail end"},
                                   {"wall-pins", "pins on the tail-end wall"},
                                   {"tailpiece", "tailpiece on the lid"}};

std::span<const ChoiceWord> woodWords()
{
    static const std::vector<ChoiceWord> words = [] {
        std::vector<ChoiceWord> all;
        for (const Wood& wood : woods())
            all.push_back({wood.id.c_str(), wood.name.c_str()});
        return all;
    }();
    return words;
}

double placeOf(const std::string& id)
{
    const auto all = woodWords();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const ChoiceWord& w) { return id == w.word; });
    return found == all.end() ? 0 : static_cast<double>(found - all.begin());
}

/// A choice of wood whose id the plan keeps.
template <auto Part, auto Member>
Parameter woodRow(const char* key, const char* help)
{
    Parameter p{key, "Wood", Quantity::Choice, 0, static_cast<double>(woodWords().size()) - 1, 0, 0,
                "",  help,   woodWords()};
    p.get = [](const Plan& plan, int) { return placeOf((plan.*Part).*Member); };
    p.set = [](Plan& plan, int, double value) {
        (plan.*Part).*Member = woodWords()[static_cast<std::size_t>(value)].word;
    };
    return p;
}

bool tailpiece(const Plan& plan, int)
{
    return plan.anchor.kind == AnchorKind::Tailpiece;
}

}  // namespace

std::vector<Parameter> holdingRows()
{
    return {
        woodRow<&Plan::neck, &Neck::wood>("neck.wood", "Of the stick; its bow and strength go by it."),
        woodRow<&Plan::fretboard, &Fretboard::wood>(
            "fretboard.wood", "Of the fretboard, which is glued on and stiffens the neck."),
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
