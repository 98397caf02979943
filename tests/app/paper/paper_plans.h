#pragma once

#include "tests/support/plans.h"

#include "core/plan/plan.h"

/// Plans whose templates are worth printing.
namespace lidwright::testing {

/// A box so large that its lid takes several pages of any paper, with a star cut into the lid.
inline Plan largePlan()
{
    Plan plan;
    plan.box.length = 420;
    plan.box.width = 300;
    plan.sheet.title = "Large box";
    Ring star;
    for (int i = 0; i < 10; ++i) {
        const double angle = kPi * i / 5, radius = i % 2 == 0 ? 55 : 22;
        star.push_back({radius * std::cos(angle), radius * std::sin(angle)});
    }
    plan.art.push_back(pieceOf(fill({star}, FillRule::NonZero)));
    plan.art.back().x = 110;
    plan.art.back().y = 60;
    return plan;
}

}  // namespace lidwright::testing
