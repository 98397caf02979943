#include "core/io/build/build_steps.h"

#include "core/layout/base_fastening.h"
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
                                       "supports", "fretboard", "frets", "fret-finish", "head", "tuners",
                                       "nut-bridge", "board-glue", "dry", "glue", "finish", "wiring",
                                       "lid-on", "strings", "set-up"));
}

TEST(BuildSteps, TheBoxIsClosedWhenWhatIsInsideIsDone)
{
    const auto order = [](const Plan& plan) {
        std::vector<std::string> out;
        for (const std::string& id : idsOf(plan))
            if (id == "glue" || id == "finish" || id == "wiring" || id == "lid-on" || id == "base")
                out.push_back(id);
        return out;
    };
    using ::testing::ElementsAre;
    Plan plan;
    EXPECT_THAT(order(plan), ElementsAre("glue", "finish"));
    plan.lid.fastening = LidFastening::Screwed;
    EXPECT_THAT(order(plan), ElementsAre("glue", "finish", "lid-on"));
    plan.wiring = {Device{}};
    EXPECT_THAT(order(plan), ElementsAre("glue", "finish", "wiring", "lid-on"));
    // The base goes on last: then the lid need not wait.
    plan.lid.fastening = LidFastening::Glued;
    plan.box.baseFastening = BaseFastening::Nailed;
    EXPECT_THAT(order(plan), ElementsAre("glue", "finish", "wiring", "base"));
}

TEST(BuildSteps, NoneForWhatThePlanDoesNotHave)
{
    Plan plan;
    plan.cornerBlocks.present = false;
    plan.relief.cut = false;
    plan.frets.kind = FretKind::Lines;
    const auto ids = idsOf(plan);
    for (const char* gone : {"artwork", "backing", "relief", "supports", "frets", "fret-finish", "wiring",
                             "wiring-holes", "lid-on", "base", "fittings"})
        EXPECT_EQ(std::find(ids.begin(), ids.end(), gone), ids.end()) << gone;
    // A lid without openings is cut all the same.
    EXPECT_NE(std::find(ids.begin(), ids.end(), "lid"), ids.end());
}

TEST(BuildSteps, WhatIsScrewedOnOutsideAndIntoTheBase)
{
    Plan plan;
    plan.box.baseFastening = BaseFastening::Screwed;
    plan.fittings.feet = plan.fittings.strapAtTail = plan.fittings.strapAtNeck = true;
    plan.fixings = {LidFixing{}};
    const Layout l = derive(plan);
    const auto steps = buildSteps(plan, l);
    const BuildStep* base = find(steps, "base");
    ASSERT_NE(base, nullptr);
    EXPECT_EQ(valueOf(*base, "Screws"), static_cast<double>(baseFixings(plan, l).size()));
    EXPECT_EQ(valueOf(*base, "Above the base's underside"), plan.box.base / 2);
    const BuildStep* fittings = find(steps, "fittings");
    ASSERT_NE(fittings, nullptr);
    EXPECT_EQ(valueOf(*fittings, "Middle of a foot to the box's two faces"), plan.fittings.footInset);
    EXPECT_EQ(fittings->work.size(), 4U);  // feet, both buttons, how to drill
    EXPECT_EQ(valueOf(*find(steps, "lid"), "Holes for screws and pins, drilled by the template"), 1);
}

TEST(BuildSteps, TablesHoldOneRowForEachOfMany)
{
    Plan plan = fullPlan();
    plan.wiring[0].hole = 9;
    const Layout l = derive(plan);
    const auto steps = buildSteps(plan, l);
    const auto rows = [&](const char* id) {
        const BuildStep* step = find(steps, id);
        if (step == nullptr || step->tables.size() != 1) return std::size_t{0};
        for (const auto& row : step->tables[0].table.rows)
            EXPECT_EQ(row.size(), step->tables[0].table.columns.size()) << id;
        return step->tables[0].table.rows.size();
    };
    EXPECT_EQ(rows("fretboard"), l.frets.lines.size());
    EXPECT_EQ(rows("head"), plan.stringSet.size());
    EXPECT_EQ(rows("nut-bridge"), plan.stringSet.size());
    EXPECT_EQ(rows("strings"), plan.stringSet.size());
    EXPECT_EQ(rows("set-up"), plan.stringSet.size());
    EXPECT_EQ(rows("wiring-holes"), 1U);
    // Equal spacing: the strings lie evenly about the middle, at nut and bridge alike.
    const auto& table = find(steps, "nut-bridge")->tables[0].table.rows;
    const auto at = [&](std::size_t row, std::size_t column) { return std::get<double>(table[row][column]); };
    EXPECT_NEAR((at(0, 1) + at(3, 1)) / 2, plan.fretboard.widthAtNut / 2, 1e-9);
    EXPECT_NEAR(std::abs(at(0, 1) - at(3, 1)), plan.strings.spreadAtNut, 1e-9);
    EXPECT_NEAR(std::abs(at(0, 2) - at(3, 2)), plan.strings.spreadAtSaddle, 1e-9);
    // The octave of A4 is 880 Hz, whatever the string: ISO 16.
    plan.stringSet[0].pitch = 69;
    const auto retuned = buildSteps(plan, derive(plan));
    EXPECT_NEAR(std::get<double>(find(retuned, "set-up")->tables[0].table.rows[0][2]), 880, 1e-9);
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
    warns("blank", "NIOSH");
    warns("notches", "Chisels");
    warns("relief", "Router");
    warns("frets", "fly");
    warns("head", "Drill");
    warns("glue", "Glue");
    warns("finish", "Rags");
    warns("wiring", "licensed practice");
    warns("wiring", "asthma");
    warns("strings", "break");
    // None without saying what it stands on, or to whom it defers.
    for (const BuildStep& step : steps)
        for (const Sentence& s : step.cautions)
            EXPECT_TRUE(s.pattern.find("read") != std::string::npos ||
                        s.pattern.find("no source") != std::string::npos ||
                        s.pattern.find("from memory") != std::string::npos ||
                        s.pattern.find("licensed practice") != std::string::npos)
                << step.id << ": " << s.pattern;
}

TEST(BuildSteps, DustIsNamedByThisPlansWoods)
{
    const auto told = [](const Plan& plan) {
        std::string all;
        for (const Sentence& s : generalCautions(plan))
            all += spoken(s, {}) + "\n";
        return all;
    };
    using ::testing::HasSubstr;
    using ::testing::Not;
    Plan plan;
    plan.box.material = plan.bridge.wood = plan.neck.wood = "sugar-maple";
    plan.lid.material = "sitka-spruce";
    plan.fretboard.wood = "black-cherry";
    EXPECT_THAT(told(plan), HasSubstr("1 mg/m"));
    EXPECT_THAT(told(plan), HasSubstr("go first"));
    for (const char* of : {"A1", "A2", "asthma"})
        EXPECT_THAT(told(plan), Not(HasSubstr(of)));
    plan.neck.wood = "white-oak";
    EXPECT_THAT(told(plan), HasSubstr("white oak. Dust of oak and beech"));
    plan.fretboard.wood = "black-walnut";
    EXPECT_THAT(told(plan), HasSubstr("A2"));
    plan.lid.material = "western-redcedar";
    EXPECT_THAT(told(plan), HasSubstr("0.5 mg/m"));
    // Its name alone makes spanish-cedar no redcedar.
    plan.lid.material = "spanish-cedar";
    EXPECT_THAT(told(plan), Not(HasSubstr("0.5 mg/m")));
    plan.fretboard.wood = "indian-rosewood";
    const auto steps = buildSteps(plan, derive(plan));
    const auto& cautions = find(steps, "fretboard")->cautions;
    EXPECT_TRUE(std::any_of(cautions.begin(), cautions.end(),
                            [](const Sentence& s) { return s.pattern.find("CITES") != std::string::npos; }));
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
