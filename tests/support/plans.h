#pragma once

#include "core/plan/catalogue.h"

#include <gtest/gtest.h>

#include <cmath>
#include <initializer_list>
#include <memory>
#include <random>

/// Plans for tests.
namespace lidwright::testing {

/// A drawing of one cut paint from rings, middle at the origin as the reader leaves it.
inline ArtPiece pieceOf(const Region& region, const std::string& name = "test drawing")
{
    auto art = std::make_shared<Artwork>();
    const Bounds b = bounds(region);
    art->fileName = "test.svg";
    art->width = b.width();
    art->height = b.height();
    art->paints = {{"fill #000000", "#000000", false, 0}};
    art->runs = {{0, region, {}}};
    ArtPiece piece;
    piece.name = name;
    piece.art = art;
    piece.uses = {ArtUse::Cut};
    return piece;
}

/// The plan with the edits applied; fails the test when one is refused.
inline Plan with(const Plan& plan, std::initializer_list<Edit> edits)
{
    const auto next = applyEdits(plan, std::vector<Edit>(edits));
    EXPECT_TRUE(next.ok()) << (next.ok() ? "" : next.error().text());
    return next.ok() ? *next : plan;
}

/// Every number of the catalogue drawn anew within its hard range (seeded by the generator); now and then the
/// very ends.
inline Plan randomPlan(std::mt19937& random)
{
    Plan plan;
    plan.holes.resize(random() % 3);
    plan.blocks.resize(random() % 3);
    for (const Parameter& p : catalogue()) {
        if (p.isText() || p.set == nullptr) continue;
        if (p.quantity == Quantity::Count && std::string_view(p.key).ends_with(".count") &&
            std::string_view(p.key) != "strings.count")
            continue;
        const int members = p.inList() ? p.size(plan) : 1;
        for (int i = 0; i < members; ++i) {
            const auto die = random() % 10;
            double value = std::uniform_real_distribution<double>(p.least, p.most)(random);
            if (die == 0) value = p.least;
            if (die == 1) value = p.most;
            if (p.quantity == Quantity::Count || p.quantity == Quantity::Choice ||
                p.quantity == Quantity::Flag)
                value = std::floor(value);
            p.set(plan, i, value);
        }
    }
    return plan;
}

}  // namespace lidwright::testing
