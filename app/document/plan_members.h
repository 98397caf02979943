#pragma once

#include "core/layout/layout.h"
#include "core/plan/plan.h"

#include <QString>

#include <optional>

namespace lidwright {

/// A member of one of the plan's lists: "art.2" is {"art", 1}.
struct PartMember {
    QString list;
    int index = 0;  ///< from 0
};

/// The member that a part key names, or nothing where it names no list member ("bridge").
std::optional<PartMember> partMember(const QString& partKey);
/// How many members the list of this word has ("art", "hole", "bar" ...); 0 for words that name no list.
int memberCount(const Plan& plan, const QString& list);
/// Whether the plan has this part: every part that is no list member, and members that exist.
bool hasPart(const Plan& plan, const QString& partKey);
/// The plan without that list member, or nothing where there is none.
std::optional<Plan> withoutMember(const Plan& plan, const QString& partKey);

/// The plan with one more hole of this kind, or one more block; nothing when the list is full.
std::optional<Plan> withHole(const Plan& plan, HoleKind kind);
std::optional<Plan> withBlock(const Plan& plan);
/// The plan with one more hole for a screw or pin in the lid; nothing when the list is full.
std::optional<Plan> withFixing(const Plan& plan);
/// The plan with one more string like the last; nothing when there are kMostStrings.
std::optional<Plan> withString(const Plan& plan);
/// The plan with one more tie, in the drawing that is selected (itself or by one of its ties) or else the
/// first, over the narrowest way to a piece that drops out; nothing when the list is full or there is no
/// drawing.
std::optional<Plan> withTie(const Plan& plan, const Layout& layout, const QString& selectedPart);
/// The plan with one more layer of backing under the others; nothing when the list is full.
std::optional<Plan> withBackingLayer(const Plan& plan);
/// The plan with one more hollow in the stick's top, one more bar under the lid, or one more part of the
/// wiring of this kind where such a part usually sits; nothing when the list is full.
std::optional<Plan> withHollow(const Plan& plan);
std::optional<Plan> withBar(const Plan& plan, const Layout& layout);
std::optional<Plan> withDevice(const Plan& plan, const Layout& layout, DeviceKind kind);
/// The plan with one more piece of stock, one more price, or one more finding that is lived with; nothing
/// when the list is full.
std::optional<Plan> withStock(const Plan& plan);
std::optional<Plan> withPrice(const Plan& plan);
std::optional<Plan> withAcceptance(const Plan& plan);
/// The plan with one more drawing; nothing when the list is full.
std::optional<Plan> withArtwork(const Plan& plan, ArtPiece piece);

}  // namespace lidwright
