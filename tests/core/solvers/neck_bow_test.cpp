#include "core/solvers/neck_bow.h"

#include "core/materials/wood.h"
#include "core/solvers/playing_studies.h"
#include "core/solvers/playing_values.h"
#include "core/solvers/string_loads.h"
#include "core/solvers/study.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace lidwright {
namespace {

/// A stick without fretboard stiffness, with its strings held at the tail end.
Plan bareStick()
{
    Plan plan;
    plan.scale.setback = 3.2;
    plan.fretboard.thickness = 2.1;  // slots of 2 mm leave next to nothing of it
    plan.bridge.height = 4.1;
    return plan;
}

TEST(NeckBow, TheStringsForcesAreInBalance)
{
    for (const AnchorKind kind : {AnchorKind::TailEnd, AnchorKind::WallPins, AnchorKind::Tailpiece}) {
        Plan plan;
        plan.anchor.kind = kind;
        if (kind == AnchorKind::Tailpiece) plan.anchor.depth = 2;
        const NeckBow bow = neckBow(plan, derive(plan));
        ASSERT_FALSE(bow.problem) << bow.problem->text();
        // At the saddle the string bends by a1 + a2: V = T (sin a1 + sin a2), see reference/break_angle.csv.
        EXPECT_LT(bow.saddle.up, 0);
        EXPECT_GT(bow.anchor.up, kind == AnchorKind::Tailpiece ? -1e9 : 0);
        EXPECT_NEAR(-bow.anchor.along, bow.pull_N, 0.1 * bow.pull_N);
        EXPECT_LT(-bow.saddle.up, bow.pull_N * std::sin(radians(bow.saddleBreak)) * 1.2);
    }
}

// Between nut and wall an even stick bears a moment that grows from T e at the nut to T e' at the wall: the
// closed form of a cantilever's chord deflection, hollow = M L^2 / (8 EI) for an even M (Roark's Formulas for
// Stress and Strain, Table 8.1, end moments, from memory), bounds it from both ends.
TEST(NeckBow, TheHollowLiesBetweenTheClosedFormsOfItsSmallestAndLargestMoment)
{
    Plan plan = bareStick();
    const Layout layout = derive(plan);
    const NeckBow bow = neckBow(plan, layout);
    ASSERT_FALSE(bow.problem) << bow.problem->text();
    const Wood& maple = *findWood("sugar-maple");
    const double inertia = plan.neck.width * std::pow(plan.neck.thickness, 3) / 12;
    const double stiffness = maple.youngsModulus_MPa() * inertia;
    const double length = layout.headWall.outerX - layout.nutX;
    const double axis = layout.neckZ.low + plan.neck.thickness / 2;
    const double atNut = layout.fretboardZ.high + plan.frets.crownHeight + plan.setup.nutClearance - axis;
    const double share = length / (layout.saddleX - layout.nutX);
    const double atWall = atNut + share * (layout.bridgeZ.high - axis - atNut);
    const double least = bow.pull_N * std::min(atNut, atWall) * length * length / (8 * stiffness);
    const double most = bow.pull_N * std::max(atNut, atWall) * length * length / (8 * stiffness);
    EXPECT_GT(bow.hollow, 0.95 * least);
    EXPECT_LT(bow.hollow, 1.05 * most);
}

TEST(NeckBow, GoesTheWayThatWoodAndThicknessSay)
{
    Plan plan;
    const double first = neckBow(plan, derive(plan)).hollow;
    Plan thick = plan;
    thick.neck.thickness += 5;
    EXPECT_LT(neckBow(thick, derive(thick)).hollow, first);
    Plan soft = plan;
    soft.neck.wood = "western-redcedar";
    const NeckBow weak = neckBow(soft, derive(soft));
    EXPECT_GT(weak.hollow, first);
    EXPECT_LT(weak.factorOfSafety, neckBow(plan, derive(plan)).factorOfSafety);
    Plan heavy = plan;
    for (GuitarString& s : heavy.stringSet)
        s.pitch += 1;
    const NeckBow taut = neckBow(heavy, derive(heavy));
    // A semitone more is 2^(1/6) times the pull; the bow goes with it but for the little that the pull itself
    // adds.
    EXPECT_NEAR(taut.pull_N / neckBow(plan, derive(plan)).pull_N, std::exp2(1.0 / 6), 1e-9);
    EXPECT_NEAR(taut.hollow / first, std::exp2(1.0 / 6), 0.01);
}

TEST(NeckBow, AMirroredNeckIsBowedAlike)
{
    Plan plan;
    plan.stringSet[0].gauge = 0.3;
    Plan mirrored = plan;
    std::reverse(mirrored.stringSet.begin(), mirrored.stringSet.end());
    mirrored.tuners.side = TunerSide::BothOddTreble;
    const NeckBow a = neckBow(plan, derive(plan)), b = neckBow(mirrored, derive(mirrored));
    EXPECT_NEAR(a.hollow, b.hollow, 0.02 * a.hollow);
    EXPECT_NEAR(a.pull_N, b.pull_N, 1e-9);
}

TEST(NeckBow, SaysWhatIsMissing)
{
    Plan plan;
    plan.neck.wood = "balsa-of-the-moon";
    ASSERT_TRUE(neckBow(plan, derive(plan)).problem);
    EXPECT_EQ(neckBow(plan, derive(plan)).problem->where, "neck.wood");
    plan = {};
    plan.neck.offset = 200;
    EXPECT_TRUE(neckBow(plan, derive(plan)).problem);
    plan = {};
    plan.scale.nutToBox = 0;
    EXPECT_TRUE(neckBow(plan, derive(plan)).problem);
}

TEST(PlayingValues, AreKeyedOnceAndFinite)
{
    const Plan plan;
    std::set<std::string> keys;
    for (const DerivedValue& v : allValues(plan, derive(plan))) {
        EXPECT_TRUE(keys.insert(v.key).second) << v.key;
        EXPECT_TRUE(std::isfinite(v.measure.value)) << v.key;
    }
    for (const char* key :
         {"strings.2.tension", "frets.12.from-nut", "neck.bow", "action.octave", "saddle.best-setback"})
        EXPECT_TRUE(keys.contains(key)) << key;
}

// 25.5 in, D4 on .014 in plain steel pulls with 25.2 lb: R. Turner, Acoustic Guitar, December 2000 (read as
// quoted).
TEST(PlayingValues, ATensionIsThePublishedOne)
{
    Plan plan;
    plan.scale.length = 25.5 * kMillimetresPerInch;
    plan.stringSet = {{"plain-steel", 62, 0.014 * kMillimetresPerInch, 0}};
    const auto strings = playedStrings(plan, derive(plan));
    ASSERT_TRUE(strings.at(0).ok());
    constexpr double kNewtonsPerPound = 4.4482216152605;
    EXPECT_NEAR(strings[0].load.tension_N / kNewtonsPerPound, 25.2, 0.05 + 0.011 * 25.2);
}

// The deeper the relief, the softer the stick: more bow, more lift, less strength.
TEST(Studies, TheReliefsDepthIsShownAsACurve)
{
    const Plan plan;
    const Study study = neckStudy(plan, derive(plan));
    ASSERT_EQ(study.plots.size(), 3U);
    const auto& lift = study.plots[1].series[1].points;
    const auto& strength = study.plots[2].series[0].points;
    ASSERT_EQ(lift.size(), 11U);
    for (std::size_t i = 1; i < lift.size(); ++i) {
        EXPECT_GT(lift[i].x, lift[i - 1].x);
        EXPECT_GT(lift[i].y, lift[i - 1].y);
        EXPECT_LE(strength[i].y, strength[i - 1].y + 1e-9);
    }
    // As planned it is the curve's own value there.
    const NeckBow bow = neckBow(plan, derive(plan));
    EXPECT_GT(bow.nutRise, lift.front().y);
    EXPECT_LT(bow.nutRise, lift.back().y);
}

TEST(Studies, EveryOneHasRowsAsLongAsItsColumnsAndReadableCsv)
{
    Plan plan;
    plan.holes = {SoundHole{}};  // air wants a way out
    const Layout layout = derive(plan);
    for (const StudyEntry& entry : studies()) {
        const Study study = entry.reckon(plan, layout);
        EXPECT_EQ(study.id, entry.id);
        EXPECT_FALSE(study.problem) << entry.id;
        EXPECT_FALSE(study.table.rows.empty()) << entry.id;
        EXPECT_FALSE(study.notes.empty()) << entry.id << " says nothing of its model's limits";
        for (const auto& row : study.table.rows)
            EXPECT_EQ(row.size(), study.table.columns.size()) << entry.id;
        const std::string csv = csvOf(study.table);
        EXPECT_EQ(static_cast<std::size_t>(std::count(csv.begin(), csv.end(), '\n')),
                  study.table.rows.size() + 1);
        for (const StudyPlot& plot : study.plots)
            for (const StudySeries& series : plot.series)
                EXPECT_FALSE(series.points.empty()) << entry.id << " " << series.name;
    }
}

TEST(Studies, CsvQuotesAndDefusesWords)
{
    StudyTable table;
    table.columns = {{"Name, all", Quantity::Text}, {"Width", Quantity::Length}};
    table.rows = {{std::string("=1+1"), 2.5}, {std::string("a \"b\""), StudyCell{}}};
    EXPECT_EQ(csvOf(table), "\"Name, all\",Width (mm)\r\n'=1+1,2.5\r\n\"a \"\"b\"\"\",\r\n");
}

}  // namespace
}  // namespace lidwright
