#include "core/io/build/build_steps.h"

#include "core/solvers/height_chain.h"
#include "core/solvers/neck_bow.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace lidwright {
namespace {

std::vector<std::string> idsOf(const Plan& plan)
{
    std::vector<std::string> ids;
    for (const BuildStep& step : buildSteps(plan, derive(plan)))
        ids.push_back(step.id);
    return ids;
}

const BuildStep* find(const std::vector<BuildStep>& steps, const std::string& id)
{
    const auto it = std::find_if(steps.begin(), steps.end(), [&](const BuildStep& s) { return s.id == id; });
    return it == steps.end() ? nullptr : &*it;
}

double valueOf(const BuildStep& step, const std::string& what)
{
    for (const StepMeasure& m : step.measures)
        if (m.what == what) return m.value.value;
    ADD_FAILURE() << step.id << " has no " << what;
    return 0;
}

/// Something of everything.
Plan fullPlan()
{
    Plan plan;
    plan.holes = {SoundHole{}};
    plan.blocks = {WallBlock{}};
    plan.bars = {LidBar{}};
    plan.wiring = {Device{}};
    return plan;
}

TEST(BuildSteps, GoInTheOrderOfTheWork)
{
    EXPECT_THAT(idsOf(fullPlan()),
                ::testing::ElementsAre("box", "artwork", "artwork-check", "blank", "notches", "relief",
                                       "supports", "fretboard", "frets", "head", "dry", "glue", "finish",
                                       "wiring", "strings", "set-up"));
}

TEST(BuildSteps, NoneForWhatThePlanDoesNotHave)
{
    Plan plan;
    plan.cornerBlocks.present = false;
    plan.relief.cut = false;
    plan.frets.kind = FretKind::Lines;
    const auto ids = idsOf(plan);
    for (const char* gone : {"artwork", "artwork-check", "backing", "relief", "supports", "frets", "wiring"})
        EXPECT_EQ(std::find(ids.begin(), ids.end(), gone), ids.end()) << gone;
}

// Every dimension is the layout's or the plan's own.
TEST(BuildSteps, DimensionsAreThoseOfThePlan)
{
    const Plan plan = fullPlan();
    const Layout l = derive(plan);
    const auto steps = buildSteps(plan, l);
    EXPECT_EQ(valueOf(*find(steps, "blank"), "Length"), l.neckNeeded);
    EXPECT_EQ(valueOf(*find(steps, "notches"), "Head-end opening, width"), l.headWall.openingWidth);
    EXPECT_DOUBLE_EQ(valueOf(*find(steps, "notches"), "Tail-end opening, floor below the top edge"),
                     l.tailWall.wall.high - l.tailWall.opening.low);
    EXPECT_EQ(valueOf(*find(steps, "relief"), "Most air between lid and stick"), plan.relief.depth);
    EXPECT_EQ(valueOf(*find(steps, "fretboard"), "Finished length"), l.fretboardCut);
    EXPECT_EQ(valueOf(*find(steps, "fretboard"), "Slots"), static_cast<double>(l.frets.lines.size()));
    // ISO-like octave: half the scale length.
    EXPECT_NEAR(valueOf(*find(steps, "fretboard"), "Nut's front edge to the octave fret"),
                plan.scale.length / 2, 1e-9);
    const HeightChain heights = strungHeights(plan, l, neckBow(plan, l));
    EXPECT_EQ(valueOf(*find(steps, "set-up"), "Bridge's height for it, lid's top to saddle"),
              heights.bridgeNeeded);
}

// The guide's demand: the usual caution at that very step.
TEST(BuildSteps, CautionsStandWhereTheHarmIs)
{
    const auto steps = buildSteps(fullPlan(), derive(fullPlan()));
    const auto warns = [&](const char* id, const char* of) {
        const BuildStep* step = find(steps, id);
        ASSERT_NE(step, nullptr) << id;
        std::string all;
        for (const Sentence& s : step->cautions)
            all += s.pattern;
        EXPECT_THAT(all, ::testing::HasSubstr(of)) << id;
    };
    warns("box", "lead");
    warns("artwork", "Laser");
    warns("blank", "Saws");
    warns("relief", "Router");
    warns("head", "Drill");
    warns("finish", "Rags");
    warns("wiring", "licensed practice");
    warns("strings", "break");
    EXPECT_GE(generalCautions().size(), 4U);
}

TEST(BuildSteps, TheFingerprintTellsPlansApart)
{
    Plan plan;
    const std::string first = planFingerprint(plan);
    EXPECT_EQ(first.size(), 16U);
    EXPECT_EQ(planFingerprint(Plan{}), first);
    plan.bridge.height += 0.1;
    EXPECT_NE(planFingerprint(plan), first);
}

}  // namespace
}  // namespace lidwright
