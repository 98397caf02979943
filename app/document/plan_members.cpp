#include "app/document/plan_members.h"

#include <utility>

namespace lidwright {

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
    if (list == QLatin1String("block")) return static_cast<int>(plan.blocks.size());
    if (list == QLatin1String("backing")) return static_cast<int>(plan.backingLayers.size());
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
    Plan next = plan;
    if (member->list == QLatin1String("art"))
        next.art.erase(next.art.begin() + member->index);
    else if (member->list == QLatin1String("hole"))
        next.holes.erase(next.holes.begin() + member->index);
    else if (member->list == QLatin1String("backing"))
        next.backingLayers.erase(next.backingLayers.begin() + member->index);
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

std::optional<Plan> withBackingLayer(const Plan& plan)
{
    if (static_cast<int>(plan.backingLayers.size()) >= kMostPieces) return std::nullopt;
    Plan next = plan;
    next.backingLayers.emplace_back();
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
