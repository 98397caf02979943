#pragma once

#include "core/plan/plan.h"

#include <QString>

namespace lidwright {

/// First word of a part key: "art.2" -> "art".
QString partWord(const QString& partKey);
/// Key of a list's member: ("art", 1) -> "art.2".
QString memberKey(const QString& word, int index);
/// True for the parts of which there are several.
bool isListPart(const QString& word);
/// What all parts of this word together are called: "Plain holes"; for single parts their own label.
QString listLabel(const Plan& plan, const QString& word);
/// Name of the part's icon: "art.2" -> "part_art".
QString partIconName(const QString& partKey);
/// The part in whose form a derived quantity stands: "saddle.x" -> "bridge"; empty for those that stand
/// nowhere.
QString partOfDerived(const std::string& derivedKey);
/// True when this derived quantity is what becomes of the parameter while it does not count:
/// "saddle.to-tail" of "scale.saddle-to-tail".
bool standsFor(const std::string& derivedKey, const std::string& parameterKey);

}  // namespace lidwright
