#include "core/io/build/cautions.h"

#include "core/materials/material.h"

#include <algorithm>
#include <initializer_list>

namespace lidwright::steps {
namespace {

/// The names of the materials that are of one of those kinds, with commas between them.
std::string namesOf(const std::vector<std::string>& materials, std::initializer_list<const char*> kinds)
{
    std::string out;
    for (const std::string& id : materials) {
        if (std::none_of(kinds.begin(), kinds.end(), [&](const char* kind) { return isOfKind(id, kind); }))
            continue;
        out += (out.empty() ? "" : ", ") + materialName(id);
    }
    return out;
}

}  // namespace

std::vector<std::string> materialsOf(const Plan& plan)
{
    std::vector<std::string> all{plan.box.material, plan.lid.material, plan.neck.wood, plan.fretboard.wood,
                                 plan.bridge.wood};
    if (plan.cornerBlocks.present) all.push_back(plan.cornerBlocks.wood);
    for (const WallBlock& block : plan.blocks)
        all.push_back(block.wood);
    for (const LidBar& bar : plan.bars)
        all.push_back(bar.wood);
    std::vector<std::string> once;
    for (std::string& id : all)
        if (!id.empty() && std::find(once.begin(), once.end(), id) == once.end())
            once.push_back(std::move(id));
    return once;
}

bool isOfKind(std::string_view material, std::string_view kind)
{
    const auto at = material.find(kind);
    // A word of it: "white-oak" is an oak.
    return at != std::string_view::npos && (at == 0 || material[at - 1] == '-') &&
           (at + kind.size() == material.size() || material[at + kind.size()] == '-');
}

std::vector<Sentence> dustCautions(const std::vector<std::string>& materials)
{
    std::vector<Sentence> out{
        {"Dust of wood irritates and may cause cancer: extract it at the tool and wear a mask. The "
         "recommended limit is 1 mg/m\xC2\xB3 (NIOSH Pocket Guide, read).",
         {}}};
    if (const std::string names = namesOf(materials, {"oak", "beech"}); !names.empty())
        out.push_back(
            {"Here: %1. Dust of oak and beech is a confirmed cause of cancer in people (ACGIH "
             "A1, as OSHA's sampling pages give it, read).",
             {names}});
    if (const std::string names = namesOf(materials, {"birch", "mahogany", "teak", "walnut"}); !names.empty())
        out.push_back(
            {"Here: %1. Dust of birch, mahogany, teak and walnut is a suspected cause of "
             "cancer in people (ACGIH A2, as OSHA's sampling pages give it, read).",
             {names}});
    if (const std::string names = namesOf(materials, {"redcedar"}); !names.empty())
        out.push_back(
            {"Here: %1. Its dust causes asthma; ACGIH's limit is 0.5 mg/m\xC2\xB3 (OSHA's "
             "pages on wood dust, read).",
             {names}});
    return out;
}

}  // namespace lidwright::steps
