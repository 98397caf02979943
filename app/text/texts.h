#pragma once

#include "core/base/result.h"
#include "core/base/sentence.h"
#include "core/checks/finding.h"
#include "core/plan/parameter.h"

#include <QString>

namespace lidwright {

/// Core's marked English in the user's language and unit.
QString shown(const Sentence& sentence, const UnitStyle& style);
QString shown(const Measure& measure, const UnitStyle& style);
QString shown(const char* marked);  ///< a label or help text of core
QString shown(const std::string& marked);
QString shown(Verdict verdict);  ///< "good", "tight", "wrong", "unknown"
QString shown(const Error& error);
/// Label of a part key: "bridge" -> "Bridge", "art.2" -> "Artwork 2" (or the piece's own name).
QString partLabel(const Plan& plan, const QString& partKey);

}  // namespace lidwright
