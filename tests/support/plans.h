#pragma once

#include "core/plan/catalogue.h"

#include <gtest/gtest.h>

#include <initializer_list>
#include <memory>

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

}  // namespace lidwright::testing
