#pragma once

#include "core/plan/catalogue.h"

#include <QString>

namespace lidwright {

/// "Neck, width": which quantity of which part, for screen readers and tooltips.
QString parameterName(const Plan& plan, const ParameterRef& ref);

/// "Set neck width to 40 mm": how the undo list names the edit.
QString editText(const Plan& plan, const ParameterRef& ref, const ParameterValue& value);

/// Help, exact value, hard and customary range with its source, a line each.
QString parameterTip(const Plan& plan, const ParameterRef& ref);

/// "usual 32 mm to 45 mm", empty where no customary range is known.
QString customaryHint(const Parameter& parameter, const UnitStyle& style);
/// True when a customary range is known and the value lies outside it.
bool outsideCustomary(const Parameter& parameter, const ParameterValue& value);

/// Why the quantity is silenced now: names the choice that would make it count. Empty while it is active.
/// `follows`: true where it comes out of the rest, false where there is no such thing.
QString inactiveReason(const Plan& plan, const ParameterRef& ref, bool follows);

}  // namespace lidwright
