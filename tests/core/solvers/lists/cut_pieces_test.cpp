#include "core/solvers/lists/cut_pieces.h"

#include "core/solvers/piece_weights.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace lidwright {
namespace {

std::vector<CutPiece> of(const Plan& plan)
{
    return cutPieces(plan, derive(plan));
}

CutPiece named(const std::vector<CutPiece>& pieces, const std::string& name)
{
    const auto found =
        std::find_if(pieces.begin(), pieces.end(), [&](const auto& p) { return p.name == name; });
    EXPECT_NE(found, pieces.end()) << name;
    EXPECT_EQ(std::count_if(pieces.begin(), pieces.end(), [&](const auto& p) { return p.name == name; }), 1)
        << name;
    return found == pieces.end() ? CutPiece{} : *found;
}

void expectSize(const CutPiece& piece, double length, double width, double thickness, int count)
{
    SCOPED_TRACE(piece.name);
    EXPECT_NEAR(piece.length, length, 1e-9);
    EXPECT_NEAR(piece.width, width, 1e-9);
    EXPECT_NEAR(piece.thickness, thickness, 1e-9);
    EXPECT_EQ(piece.count, count);
}

TEST(CutPieces, OfTheFreshPlanByHand)
{
    const Plan plan;
    const auto pieces = of(plan);
    ASSERT_EQ(pieces.size(), 9U);
    expectSize(named(pieces, "End wall"), 230, 64, 8, 2);
    expectSize(named(pieces, "Side wall"), 330 - 16, 64, 8, 2);
    expectSize(named(pieces, "Base"), 314, 214, 4, 1);
    expectSize(named(pieces, "Lid"), 330, 230, 3, 1);
    expectSize(named(pieces, "Stick"), 130 + 400 + 330 + 25, 38, 25, 1);
    expectSize(named(pieces, "Fretboard"), 400, 38, 6, 1);
    expectSize(named(pieces, "Bridge"), 90, 18, 7, 1);
    expectSize(named(pieces, "Corner block"), 48, 25, 25, 4);
    const CutPiece nut = named(pieces, "Nut");
    EXPECT_EQ(nut.length, 36);
    EXPECT_EQ(nut.thickness, kNutWidth);
    // Over the stick: the board, the frets, the string over them, half the thickest string.
    EXPECT_NEAR(nut.width, 6 + 1.1 + derive(plan).frets.nutOverFrets + 1.0668 / 2, 1e-9);
    for (const CutPiece& piece : pieces) {
        EXPECT_DOUBLE_EQ(piece.roughLength, piece.length + 10) << piece.name;
        EXPECT_DOUBLE_EQ(piece.roughWidth, piece.width + 3) << piece.name;
        EXPECT_EQ(piece.ofBox, piece.part == "box");
    }
    EXPECT_EQ(named(pieces, "Lid").grain, GrainRun::FaceAlong);
    EXPECT_EQ(named(pieces, "Stick").grain, GrainRun::AlongLength);
}

TEST(CutPieces, TheBoxIsAllThere)
{
    // What the pieces' weights have as walls and base, from outlines.
    Plan plan;
    plan.box.cornerRadius = 0;
    plan.box.endWall = 11;
    plan.box.sideWall = 6.5;
    const Layout layout = derive(plan);
    double reckoned = 0, listed = 0;
    for (const PieceWeight& piece : pieceWeights(plan, layout).pieces)
        if (piece.part == "box") reckoned += piece.volume_mm3;
    for (const CutPiece& piece : cutPieces(plan, layout))
        if (piece.ofBox) listed += piece.count * piece.length * piece.width * piece.thickness;
    // The base lies within the walls' height: between them, so nothing counts twice.
    EXPECT_NEAR(listed, reckoned, 1e-3 * reckoned * 1e-3);
    EXPECT_GT(listed, 0);
}

TEST(CutPieces, GrainAcrossTurnsTheLid)
{
    Plan plan;
    plan.lid.grain = LidGrain::Across;
    const auto pieces = of(plan);
    expectSize(named(pieces, "Lid"), 230, 330, 3, 1);
    plan.lid.seat = LidSeat::LetIn;
    expectSize(named(of(plan), "Lid"), 214, 314, 3, 1);
}

TEST(CutPieces, TheScarfedHeadComesFromTheStick)
{
    Plan plan;
    plan.head.shape = HeadShape::Scarfed;
    const Layout layout = derive(plan);
    const CutPiece stick = named(of(plan), "Stick, with the head's piece");
    EXPECT_DOUBLE_EQ(stick.length, layout.neckNeeded);
    EXPECT_NE(stick.length, layout.tailEndX - layout.headEndX);
    plan.head.width = 50;
    EXPECT_EQ(named(of(plan), "Stick, with the head's piece").width, 50);
}

TEST(CutPieces, EveryMemberOfThePlansListsOnce)
{
    Plan plan;
    plan.cornerBlocks.present = false;
    plan.blocks.resize(3);
    plan.blocks[1].wall = BoxWall::HeadEnd;
    plan.bars.resize(4);
    plan.holes = {SoundHole{}};
    const auto pieces = of(plan);
    for (int i = 1; i <= 3; ++i)
        EXPECT_EQ(std::count_if(pieces.begin(), pieces.end(),
                                [&](const auto& p) { return p.part == "block." + std::to_string(i); }),
                  1);
    for (int i = 1; i <= 4; ++i)
        EXPECT_EQ(std::count_if(pieces.begin(), pieces.end(),
                                [&](const auto& p) { return p.part == "bar." + std::to_string(i); }),
                  1);
    EXPECT_EQ(pieces.size(), 8U + 7U);
    for (const CutPiece& piece : pieces)
        EXPECT_NE(piece.name, "Corner block");
}

TEST(CutPieces, TheBentWallIsAsLongAsItsOutline)
{
    Plan plan;
    plan.box.shape = BoxShape::Outline;
    plan.box.outline =
        std::make_shared<FreeOutline>(FreeOutline{circleRing({0, 0}, 100, 0.0001), "round.svg"});
    plan.box.length = plan.box.width = 300;
    const auto pieces = of(plan);
    const CutPiece wall = named(pieces, "Wall, bent");
    EXPECT_NEAR(wall.length, 300 * kPi, 0.01);
    EXPECT_EQ(wall.count, 1);
    expectSize(named(pieces, "Wall, bent"), wall.length, 64, 8, 1);
    EXPECT_NEAR(named(pieces, "Base").length, 284, 0.05);
    plan.box.outline.reset();
    for (const CutPiece& piece : of(plan))
        EXPECT_FALSE(piece.ofBox) << "no outline, no box";
}

}  // namespace
}  // namespace lidwright
