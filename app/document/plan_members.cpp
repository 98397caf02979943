#include "app/document/plan_members.h"

#include "core/layout/art_place.h"
#include "core/layout/inside_suggestions.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace lidwright {

namespace {

/// Takes a drawing out with its ties; the ties of later drawings follow their drawings' numbers.
void takeDrawing(Plan& plan, int index)
{
    plan.art.erase(plan.art.begin() + index);
    std::erase_if(plan.ties, [index](const TieSpot& tie) { return tie.art == index + 1; });
    for (TieSpot& tie : plan.ties)
        if (tie.art > index + 1) --tie.art;
}

template <auto List>
int countOf(const Plan& plan)
{
    return static_cast<int>((plan.*List).size());
}

template <auto List>
void takeFrom(Plan& plan, int index)
{
    (plan.*List).erase((plan.*List).begin() + index);
}

/// A list of the plan by the word of its part.
struct MemberList {
    const char* word;
    int (*count)(const Plan&);
    void (*take)(Plan&, int index);
};

template <auto List>
constexpr MemberList listOf(const char* word, void (*take)(Plan&, int) = takeFrom<List>)
{
    return {word, countOf<List>, take};
}

constexpr MemberList kLists[] = {listOf<&Plan::art>("art", takeDrawing),
                                 listOf<&Plan::ties>("tie"),
                                 listOf<&Plan::holes>("hole"),
                                 listOf<&Plan::fixings>("fixing"),
                                 listOf<&Plan::backingLayers>("backing"),
                                 listOf<&Plan::hollows>("hollow"),
                                 listOf<&Plan::stringSet>("string"),
                                 listOf<&Plan::blocks>("block"),
                                 listOf<&Plan::bars>("bar"),
                                 listOf<&Plan::wiring>("wiring"),
                                 listOf<&Plan::stock>("stock"),
                                 listOf<&Plan::prices>("price"),
                                 listOf<&Plan::accepted>("accepted")};

const MemberList* findList(const QString& word)
{
    const auto found = std::find_if(std::begin(kLists), std::end(kLists),
                                    [&](const MemberList& list) { return word == QLatin1String(list.word); });
    return found == std::end(kLists) ? nullptr : &*found;
}

/// The plan with one more member at the end of the list; nothing when the list is full.
template <auto List, typename Member>
std::optional<Plan> withOneMore(const Plan& plan, Member member)
{
    if ((plan.*List).size() >= static_cast<std::size_t>(kMostPieces)) return std::nullopt;
    Plan next = plan;
    (next.*List).push_back(std::move(member));
    return next;
}

}  // namespace

std::optional<PartMember> partMember(const QString& partKey)
{
    const qsizetype dot = partKey.indexOf(QLatin1Char('.'));
    if (dot < 0) return std::nullopt;
    bool ok = false;
    const int number = partKey.mid(dot + 1).toInt(&ok);
    if (!ok || number < 1) return std::nullopt;
    return PartMember{partKey.left(dot), number - 1};
}

int memberCount(const Plan& plan, const QString& list)
{
    const MemberList* found = findList(list);
    return found != nullptr ? found->count(plan) : 0;
}

bool hasPart(const Plan& plan, const QString& partKey)
{
    if (!partKey.contains(QLatin1Char('.'))) return true;
    const auto member = partMember(partKey);
    return member && member->index < memberCount(plan, member->list);
}

std::optional<Plan> withoutMember(const Plan& plan, const QString& partKey)
{
    const auto member = partMember(partKey);
    if (!member || member->index >= memberCount(plan, member->list)) return std::nullopt;
    if (member->list == QLatin1String("string") && plan.stringSet.size() < 2) return std::nullopt;
    Plan next = plan;
    findList(member->list)->take(next, member->index);
    return next;
}

std::optional<Plan> withHole(const Plan& plan, HoleKind kind)
{
    SoundHole hole;
    hole.kind = kind;
    return withOneMore<&Plan::holes>(plan, hole);
}

std::optional<Plan> withBlock(const Plan& plan)
{
    return withOneMore<&Plan::blocks>(plan, WallBlock{});
}

std::optional<Plan> withFixing(const Plan& plan)
{
    return withOneMore<&Plan::fixings>(plan, LidFixing{});
}

std::optional<Plan> withString(const Plan& plan)
{
    if (static_cast<int>(plan.stringSet.size()) >= kMostStrings) return std::nullopt;
    Plan next = plan;
    next.stringSet.push_back(next.stringSet.back());
    return next;
}

std::optional<Plan> withTie(const Plan& plan, const Layout& layout, const QString& selectedPart)
{
    if (static_cast<int>(plan.ties.size()) >= kMostPieces || plan.art.empty()) return std::nullopt;
    const auto member = partMember(selectedPart);
    int art = 0;
    if (member && member->list == QLatin1String("art")) art = member->index;
    if (member && member->list == QLatin1String("tie") && member->index < memberCount(plan, member->list))
        art = plan.ties[static_cast<std::size_t>(member->index)].art - 1;
    if (art < 0 || art >= static_cast<int>(plan.art.size())) art = 0;
    Plan next = plan;
    next.ties.push_back(suggestedTie(plan, layout, static_cast<std::size_t>(art)));
    return next;
}

std::optional<Plan> withBackingLayer(const Plan& plan)
{
    return withOneMore<&Plan::backingLayers>(plan, BackingLayer{});
}

std::optional<Plan> withHollow(const Plan& plan)
{
    return withOneMore<&Plan::hollows>(plan, Hollow{});
}

std::optional<Plan> withBar(const Plan& plan, const Layout& layout)
{
    return withOneMore<&Plan::bars>(plan, suggestedBar(plan, layout));
}

std::optional<Plan> withDevice(const Plan& plan, const Layout& layout, DeviceKind kind)
{
    return withOneMore<&Plan::wiring>(plan, suggestedDevice(plan, layout, kind));
}

std::optional<Plan> withStock(const Plan& plan)
{
    return withOneMore<&Plan::stock>(plan, StockPiece{});
}

std::optional<Plan> withPrice(const Plan& plan)
{
    return withOneMore<&Plan::prices>(plan, Price{});
}

std::optional<Plan> withAcceptance(const Plan& plan)
{
    return withOneMore<&Plan::accepted>(plan, Acceptance{});
}

std::optional<Plan> withArtwork(const Plan& plan, ArtPiece piece)
{
    return withOneMore<&Plan::art>(plan, std::move(piece));
}

}  // namespace lidwright
