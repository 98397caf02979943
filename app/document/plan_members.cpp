#include "app/document/plan_members.h"

#include "core/layout/art_place.h"
#include "core/layout/inside_suggestions.h"

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
    if (list == QLatin1String("art")) return static_cast<int>(plan.art.size());
    if (list == QLatin1String("hole")) return static_cast<int>(plan.holes.size());
    if (list == QLatin1String("tie")) return static_cast<int>(plan.ties.size());
    if (list == QLatin1String("fixing")) return static_cast<int>(plan.fixings.size());
    if (list == QLatin1String("string")) return static_cast<int>(plan.stringSet.size());
    if (list == QLatin1String("block")) return static_cast<int>(plan.blocks.size());
    if (list == QLatin1String("hollow")) return static_cast<int>(plan.hollows.size());
    if (list == QLatin1String("bar")) return static_cast<int>(plan.bars.size());
    if (list == QLatin1String("wiring")) return static_cast<int>(plan.wiring.size());
    if (list == QLatin1String("backing")) return static_cast<int>(plan.backingLayers.size());
    if (list == QLatin1String("stock")) return static_cast<int>(plan.stock.size());
    if (list == QLatin1String("accepted")) return static_cast<int>(plan.accepted.size());
    return 0;
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
    if (member->list == QLatin1String("art"))
        takeDrawing(next, member->index);
    else if (member->list == QLatin1String("tie"))
        next.ties.erase(next.ties.begin() + member->index);
    else if (member->list == QLatin1String("string"))
        next.stringSet.erase(next.stringSet.begin() + member->index);
    else if (member->list == QLatin1String("fixing"))
        next.fixings.erase(next.fixings.begin() + member->index);
    else if (member->list == QLatin1String("hole"))
        next.holes.erase(next.holes.begin() + member->index);
    else if (member->list == QLatin1String("backing"))
        next.backingLayers.erase(next.backingLayers.begin() + member->index);
    else if (member->list == QLatin1String("hollow"))
        next.hollows.erase(next.hollows.begin() + member->index);
    else if (member->list == QLatin1String("bar"))
        next.bars.erase(next.bars.begin() + member->index);
    else if (member->list == QLatin1String("stock"))
        next.stock.erase(next.stock.begin() + member->index);
    else if (member->list == QLatin1String("accepted"))
        next.accepted.erase(next.accepted.begin() + member->index);
    else if (member->list == QLatin1String("wiring"))
        next.wiring.erase(next.wiring.begin() + member->index);
    else
        next.blocks.erase(next.blocks.begin() + member->index);
    return next;
}

std::optional<Plan> withHole(const Plan& plan, HoleKind kind)
{
    if (static_cast<int>(plan.holes.size()) >= kMostPieces) return std::nullopt;
    Plan next = plan;
    next.holes.emplace_back();
    next.holes.back().kind = kind;
    return next;
}

std::optional<Plan> withBlock(const Plan& plan)
{
    if (static_cast<int>(plan.blocks.size()) >= kMostPieces) return std::nullopt;
    Plan next = plan;
    next.blocks.emplace_back();
    return next;
}

std::optional<Plan> withFixing(const Plan& plan)
{
    if (static_cast<int>(plan.fixings.size()) >= kMostPieces) return std::nullopt;
    Plan next = plan;
    next.fixings.emplace_back();
    return next;
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
    if (static_cast<int>(plan.backingLayers.size()) >= kMostPieces) return std::nullopt;
    Plan next = plan;
    next.backingLayers.emplace_back();
    return next;
}

std::optional<Plan> withHollow(const Plan& plan)
{
    if (static_cast<int>(plan.hollows.size()) >= kMostPieces) return std::nullopt;
    Plan next = plan;
    next.hollows.emplace_back();
    return next;
}

std::optional<Plan> withBar(const Plan& plan, const Layout& layout)
{
    if (static_cast<int>(plan.bars.size()) >= kMostPieces) return std::nullopt;
    Plan next = plan;
    next.bars.push_back(suggestedBar(plan, layout));
    return next;
}

std::optional<Plan> withDevice(const Plan& plan, const Layout& layout, DeviceKind kind)
{
    if (static_cast<int>(plan.wiring.size()) >= kMostPieces) return std::nullopt;
    Plan next = plan;
    next.wiring.push_back(suggestedDevice(plan, layout, kind));
    return next;
}

std::optional<Plan> withStock(const Plan& plan)
{
    if (static_cast<int>(plan.stock.size()) >= kMostPieces) return std::nullopt;
    Plan next = plan;
    next.stock.emplace_back();
    return next;
}

std::optional<Plan> withAcceptance(const Plan& plan)
{
    if (static_cast<int>(plan.accepted.size()) >= kMostPieces) return std::nullopt;
    Plan next = plan;
    next.accepted.emplace_back();
    return next;
}

std::optional<Plan> withArtwork(const Plan& plan, ArtPiece piece)
{
    if (static_cast<int>(plan.art.size()) >= kMostPieces) return std::nullopt;
    Plan next = plan;
    next.art.push_back(std::move(piece));
    return next;
}

}  // namespace lidwright
