#include "core/layout/fret_layout.h"

#include "tests/support/plans.h"

#include "core/layout/layout.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

// Frets 1 and 2 of a 25.5 in scale, 1.431 and 2.782 in from the nut: "Fret distance" table of a
// guitar-building course page (read; reference/fret_published_examples.csv, S-BYG).
TEST(FretLayout, LiesWherePublishedTablesHaveIt)
{
    Plan plan;
    plan.scale.length = 25.5 * kMillimetresPerInch;
    const Layout layout = derive(plan);
    ASSERT_FALSE(layout.frets.problem);
    ASSERT_GE(layout.frets.lines.size(), 12U);
    const auto fromNut = [&](std::size_t i) {
        return (layout.frets.lines[i].bass.x - layout.nutX) / kMillimetresPerInch;
    };
    EXPECT_NEAR(fromNut(0), 1.431, 5e-4);
    EXPECT_NEAR(fromNut(1), 2.782, 5e-4);
    // The octave halves the string (closed form).
    EXPECT_NEAR(fromNut(11), 25.5 / 2, 1e-9);
}

TEST(FretLayout, EndsAtTheBoardsEdges)
{
    Plan plan;
    plan.fretboard.widthAtNut = 36;
    plan.fretboard.widthAtEnd = 46;
    plan.neck.offset = 5;
    const Layout layout = derive(plan);
    const Bounds board = bounds(layout.fretboardOutline);
    for (const FretLine& line : layout.frets.lines) {
        const double share = (line.bass.x - layout.nutX) / (layout.fretboardEndX - layout.nutX);
        EXPECT_NEAR(line.treble.y - line.bass.y, 36 + 10 * share, 1e-9);
        EXPECT_NEAR((line.treble.y + line.bass.y) / 2, 5, 1e-9);
        EXPECT_LE(line.bass.x, board.maxX);
    }
    // Frets beyond the board's end are known and not drawn.
    plan.frets.number = 30;
    const Layout more = derive(plan);
    EXPECT_EQ(more.frets.scale.frets.size(), 30U);
    EXPECT_LT(more.frets.lines.size(), 30U);
    EXPECT_GT(more.frets.scale.frets[more.frets.lines.size()].fromNut, more.fretboardCut);
}

TEST(FretLayout, FollowsTheTemperamentAndThePattern)
{
    Plan plan;
    plan.frets.pattern = "dulcimer-6plus";
    const Layout diatonic = derive(plan);
    ASSERT_GT(diatonic.frets.scale.frets.size(), 8U);
    // The seventh fret of the traditional pattern with 6+ is the eighth to stand there, the octave.
    EXPECT_EQ(diatonic.frets.scale.frets[7].label, "7");
    EXPECT_NEAR(diatonic.frets.scale.frets[7].fromNut, plan.scale.length / 2, 1e-9);
    plan.frets.division = FretDivision::Just;
    plan.frets.pattern = "chromatic";
    // A just fifth leaves two thirds of the string.
    EXPECT_NEAR(derive(plan).frets.scale.frets[6].fromNut, plan.scale.length / 3, 1e-9);
    plan.frets.division = FretDivision::OwnList;
    plan.frets.list = "3/2 2/1";
    plan.frets.number = 2;
    EXPECT_NEAR(derive(plan).frets.scale.frets[0].fromNut, plan.scale.length / 3, 1e-9);
    plan.frets.list = "3/2 apple";
    const Layout broken = derive(plan);
    ASSERT_TRUE(broken.frets.problem);
    EXPECT_EQ(broken.frets.problem->where, "frets.list");
    EXPECT_TRUE(broken.frets.lines.empty());
    plan.frets.division = FretDivision::Equal;
    plan.frets.perOctave = 19;
    plan.frets.number = 19;
    EXPECT_NEAR(derive(plan).frets.scale.frets[18].fromNut, plan.scale.length / 2, 1e-9);
}

TEST(FretLayout, DotsStandBetweenTheirFrets)
{
    Plan plan;
    plan.frets.markers = "3 12 12 99";
    const Layout layout = derive(plan);
    ASSERT_EQ(layout.frets.markers.size(), 3U);
    const auto& frets = layout.frets.scale.frets;
    EXPECT_NEAR(layout.frets.markers[0].x, layout.nutX + (frets[1].fromNut + frets[2].fromNut) / 2, 1e-9);
    EXPECT_NEAR(layout.frets.markers[1].y, -layout.frets.markers[2].y, 1e-9);
    EXPECT_GT(layout.frets.markerDiameter, 1);
}

TEST(FretLayout, AZeroFretStandsAtTheNut)
{
    Plan plan;
    plan.frets.zeroFret = true;
    const Layout layout = derive(plan);
    EXPECT_EQ(layout.frets.scale.frets[0].label, "0");
    EXPECT_EQ(layout.frets.lines[0].bass.x, layout.nutX);
}

}  // namespace
}  // namespace lidwright
