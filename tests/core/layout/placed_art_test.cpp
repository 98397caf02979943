#include "tests/support/random_plan.h"

#include "core/layout/layout.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

ArtPiece flag()
{
    auto art = std::make_shared<Artwork>();
    art->paints = {{"fill #000000", "#000000", false, 0}};
    // Three sides of different length, so that every turn and mirror shows.
    art->runs = {{0, Region{{{{-10, -5}, {10, -5}, {10, 5}}}}, {}}};
    ArtPiece piece;
    piece.art = art;
    piece.uses = {ArtUse::Cut};
    return piece;
}

Bounds placedBounds(const ArtPiece& piece)
{
    PlacedArtCache cache;
    return bounds(cache.place(piece)->cut);
}

bool holds(const ArtPiece& piece, Point p)
{
    PlacedArtCache cache;
    return contains(cache.place(piece)->cut, p);
}

TEST(PlacedArt, IsMirroredThenScaledThenTurnedThenMoved)
{
    ArtPiece piece = flag();
    piece.x = 100;
    piece.y = 20;
    EXPECT_TRUE(holds(piece, {108, 22}));  // near the corner (10, 5)
    EXPECT_FALSE(holds(piece, {92, 22}));
    piece.mirrored = true;
    EXPECT_TRUE(holds(piece, {92, 22}));
    EXPECT_FALSE(holds(piece, {108, 22}));
    piece.scale = 2;
    EXPECT_TRUE(holds(piece, {84, 24}));
    piece.turn = 90;  // counter-clockwise: (-16, 4) goes to (-4, -16)
    EXPECT_TRUE(holds(piece, {96, 4}));
    const Bounds b = placedBounds(piece);
    EXPECT_NEAR(b.minX, 90, 1e-4);
    EXPECT_NEAR(b.maxX, 110, 1e-4);
    EXPECT_NEAR(b.minY, 0, 1e-4);
    EXPECT_NEAR(b.maxY, 40, 1e-4);
}

TEST(PlacedArt, OutlinesStayInNormalFormWhenMirrored)
{
    ArtPiece piece = flag();
    piece.mirrored = true;
    PlacedArtCache cache;
    const PlacedArtPtr placed = cache.place(piece);
    ASSERT_EQ(placed->cut.rings.size(), 1u);
    EXPECT_GT(signedArea(placed->cut.rings[0]), 0);
    EXPECT_FALSE(placed->cutTree.empty());
    EXPECT_TRUE(placed->engravedTree.empty());
}

TEST(PlacedArt, IsKeptWhileNothingOfItChanges)
{
    PlacedArtCache cache;
    Plan plan;
    plan.art = {flag()};
    const Layout first = derive(plan, &cache);
    plan.bridge.width = 20;
    plan.art[0].name = "another name";
    EXPECT_EQ(derive(plan, &cache).art[0], first.art[0]);
    plan.art[0].x += 1;
    EXPECT_NE(derive(plan, &cache).art[0], first.art[0]);
    plan.art[0].x -= 1;
    plan.art[0].uses = {ArtUse::Engraved};
    const Layout engraved = derive(plan, &cache);
    EXPECT_TRUE(engraved.art[0]->cut.empty());
    EXPECT_FALSE(engraved.art[0]->engraved.empty());
}

TEST(PlacedArt, APieceWithoutDrawingIsEmpty)
{
    Plan plan;
    plan.art.resize(1);
    const Layout layout = derive(plan);
    ASSERT_EQ(layout.art.size(), 1u);
    EXPECT_TRUE(layout.art[0]->cut.empty());
    EXPECT_TRUE(layout.art[0]->bounds.empty());
}

// The cache changes how fast the answer comes, never the answer.
TEST(PlacedArt, WithAndWithoutCacheGiveTheSame)
{
    testing::RandomPlans plans(12);
    PlacedArtCache cache;
    Plan plan = plans.next();
    for (int round = 0; round < 400; ++round) {
        if (round % 20 == 0) {
            plan = plans.next();
        } else if (!plan.art.empty()) {
            ArtPiece& piece = plan.art[plans.below(plan.art.size())];
            if (plans.below(2) == 0)
                piece.x = static_cast<double>(plans.below(4));
            else
                piece.mirrored = !piece.mirrored;
        }
        const Layout with = derive(plan, &cache);
        const Layout without = derive(plan);
        ASSERT_EQ(with.art.size(), without.art.size());
        for (std::size_t i = 0; i < with.art.size(); ++i) {
            ASSERT_EQ(with.art[i]->cut, without.art[i]->cut) << round;
            ASSERT_EQ(with.art[i]->engraved, without.art[i]->engraved) << round;
        }
    }
}

}  // namespace
}  // namespace lidwright
