#include "tests/core/solvers/plate/square_plate.h"

#include <functional>
#include <limits>
#include <random>

namespace lidwright {
namespace {

using namespace testing;

const double kNan = std::nan(""), kInf = std::numeric_limits<double>::infinity();

PlateProblem fullProblem()
{
    PlateProblem plate = spruceLid(PlateSide::Simple);
    plate.supports = {{{{rectangleRing({20, 20}, 30, 30)}}, {}, 10}, {{}, {{100, 10}, {100, 150}}, 10}};
    plate.ribs = {{{50, 20}, {50, 140}, 5, 8, 10000, 700, 400, {}}};
    plate.patches = {{{{rectangleRing({150, 80}, 30, 60)}}, {1000, 1000, 300, 350, 0, 0}, 1}};
    plate.masses = {{{180, 50}, 0.01}};
    plate.loads = {{{{rectangleRing({150, 80}, 10, 60)}}, {}, 50}, {{}, {30, 70}, 5}};
    return plate;
}

TEST(PlateModel, EverythingAtOnce)
{
    const PlateModel model = built(fullProblem(), 32);
    const PlateAnswer answer = *model.rest();
    EXPECT_EQ(answer.load_N, 55);
    EXPECT_NEAR(answer.reactions_N, 55, 1e-6);
    EXPECT_LT(answer.deflection.value, 0);
    EXPECT_EQ(model.modes(4)->size(), 4U);
    EXPECT_NEAR(model.area_mm2(), 240 * 160, 1e-6);
}

TEST(PlateModel, WrongNumbersAreNamed)
{
    struct Case {
        const char* where;
        std::function<void(PlateProblem&)> spoil;
    };
    const std::vector<Case> cases = {
        {"plate", [](PlateProblem& p) { p.material = {}; }},
        {"plate", [](PlateProblem& p) { p.material.rings[0][1].x = kNan; }},
        {"plate", [](PlateProblem& p) { p.material.rings[0][1].x = 1e9; }},
        {"plate",
         [](PlateProblem& p) {
             p.material = {{{{0, 0}, {1, 1}, {2, 2}}}};
         }},
        {"plate",
         [](PlateProblem& p) {
             p.material = {{rectangleRing({0, 0}, 100, 0.01)}};
         }},
        {"plate",
         [](PlateProblem& p) {
             p.material.rings[0].assign(300000, {1, 1});
         }},
        {"plate", [](PlateProblem& p) { p.thickness = 0; }},
        {"plate", [](PlateProblem& p) { p.thickness = kNan; }},
        {"plate", [](PlateProblem& p) { p.stiffness = {}; }},
        {"plate", [](PlateProblem& p) { p.stiffness.D12 = 1e9; }},
        {"plate", [](PlateProblem& p) { p.stiffness.D66 = -1; }},
        {"plate", [](PlateProblem& p) { p.stiffness.D11 = kInf; }},
        {"plate", [](PlateProblem& p) { p.density_kg_m3 = 0; }},
        {"plate", [](PlateProblem& p) { p.grainAngle = kInf; }},
        {"plate support 2", [](PlateProblem& p) { p.supports[1].stiffness = kNan; }},
        {"plate support 1", [](PlateProblem& p) { p.supports[0].area = {}; }},
        {"plate support 2", [](PlateProblem& p) { p.supports[1].area = p.material; }},
        {"plate support 2", [](PlateProblem& p) { p.supports[1].line[1].y = kInf; }},
        {"plate rib 1", [](PlateProblem& p) { p.ribs[0].to = p.ribs[0].from; }},
        {"plate rib 1", [](PlateProblem& p) { p.ribs[0].height = -1; }},
        {"plate rib 1", [](PlateProblem& p) { p.ribs[0].plateStrip = kNan; }},
        {"plate patch 1", [](PlateProblem& p) { p.patches[0].extra.D11 = -5; }},
        {"plate patch 1", [](PlateProblem& p) { p.patches[0].extraMass_kg_m2 = -5; }},
        {"plate mass 1", [](PlateProblem& p) { p.masses[0].mass_kg = kNan; }},
        {"plate mass 1",
         [](PlateProblem& p) {
             p.masses[0].at = {500, 500};
         }},
        {"plate load 2", [](PlateProblem& p) { p.loads[1].force_N = kInf; }},
        {"plate load 1", [](PlateProblem& p) { p.loads[0].area.rings[0][0].x = kNan; }},
        {"plate load", [](PlateProblem& p) { p.loads.resize(5000); }},
    };
    for (const Case& c : cases) {
        PlateProblem plate = fullProblem();
        c.spoil(plate);
        const auto model = buildPlate(plate, 16);
        ASSERT_FALSE(model.ok()) << &c - cases.data();
        EXPECT_EQ(model.error().where, c.where) << &c - cases.data();
        EXPECT_FALSE(model.error().what.empty());
        EXPECT_FALSE(model.error().mend.empty());
    }
    for (int cells : {-1, 0, 1, 161, 1000000})
        EXPECT_FALSE(buildPlate(fullProblem(), cells).ok()) << cells;
    const PlateModel model = built(fullProblem(), 8);
    for (int count : {-1, 0, 41})
        EXPECT_FALSE(model.modes(count).ok()) << count;
    EXPECT_FALSE(model.modes(1, {}, 1).ok());
    EXPECT_FALSE(model.at({}, {50, 50}).has_value());
    EXPECT_FALSE(model.stressAt({{1, 2, 3}}, {50, 50}).has_value());
}

TEST(PlateModel, NothingHoldsIt)
{
    PlateProblem plate = spruceLid(PlateSide::Free);
    plate.loads = {{{}, {50, 50}, 10}};
    const PlateModel model = built(plate, 16);
    const auto answer = model.rest();
    ASSERT_FALSE(answer.ok());
    EXPECT_EQ(answer.error().where, "plate");
    EXPECT_NE(answer.error().what.find("nothing holds it"), std::string::npos);
    EXPECT_TRUE(model.modes(3).ok());
    EXPECT_TRUE(model.loosePieces().empty());
    // In two pieces, the smaller one is named and both ring.
    plate.material = subtract(plate.material, {{rectangleRing({150, 80}, 2, 300)}});
    const PlateModel two = built(plate, 16);
    ASSERT_EQ(two.loosePieces().size(), 1U);
    EXPECT_GT(two.loosePieces()[0].inside.x, 151);
    // Hinged on one side: it swings, which is no mode.
    plate = spruceLid(PlateSide::Free);
    plate.sides.left = PlateSide::Simple;
    EXPECT_FALSE(built(plate, 16).rest().ok());
    EXPECT_GT(modesOf(plate, 16, 1)[0].frequency_Hz, 20);
}

TEST(PlateModel, LoadsWhereNoWoodIs)
{
    PlateProblem plate = spruceLid(PlateSide::Simple);
    plate.material = subtract(plate.material, {{circleRing({100, 80}, 30)}});
    plate.loads = {{{}, {20, 20}, 1}, {{}, {100, 80}, 1}};
    const PlateModel model = built(plate, 16);
    ASSERT_FALSE(model.rest().ok());
    EXPECT_EQ(model.rest().error().where, "plate load 2");
    EXPECT_TRUE(model.modes(1).ok());
    // A spread load takes the wood below it, all of its force.
    plate.loads = {{{{rectangleRing({130, 80}, 40, 40)}}, {}, 7}};
    EXPECT_NEAR(answerOf(plate, 16).reactions_N, 7, 1e-7);
}

TEST(PlateModel, StopsWhenAsked)
{
    int asked = 0;
    const PlateWatch counting{[&] { return ++asked < 0; }, {}};
    const auto model = buildPlate(fullProblem(), 16, counting);
    ASSERT_TRUE(model.ok());
    const int building = asked;
    EXPECT_GE(building, 3);
    for (int when = 1; when <= building; ++when) {
        int left = when;
        const auto stopped = buildPlate(fullProblem(), 16, {[&] { return --left <= 0; }, {}});
        ASSERT_FALSE(stopped.ok()) << when;
        EXPECT_EQ(stopped.error().what, "stopped");
    }
    const PlateWatch now{[] { return true; }, {}};
    EXPECT_EQ(model->rest(now).error().what, "stopped");
    EXPECT_EQ(model->modes(2, now).error().what, "stopped");
}

TEST(PlateModel, TellsHowFarItIs)
{
    std::vector<double> told;
    const PlateWatch watch{{}, [&](double share) { told.push_back(share); }};
    const auto model = buildPlate(fullProblem(), 16, watch);
    EXPECT_EQ(told.back(), 1);
    EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
    told.clear();
    ASSERT_TRUE(model->modes(3, watch).ok());
    EXPECT_EQ(told.back(), 1);
    EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
}

TEST(PlateModel, SamplesShowWhereWoodIs)
{
    PlateProblem plate = spruceLid(PlateSide::Clamped);
    plate.material = subtract(plate.material, {{circleRing({100, 80}, 30)}});
    const PlateModel model = built(plate, 24);
    const PlateMode mode = model.modes(1, {}, 61)->front();
    const PlateSamples grid = model.sampleGrid(61);
    EXPECT_EQ(grid.countX, 61);
    EXPECT_EQ(grid.countY, 41);
    ASSERT_EQ(mode.samples.size(), 61U * 41U);
    double most = 0;
    for (int j = 0; j < grid.countY; ++j)
        for (int i = 0; i < grid.countX; ++i) {
            const double value = mode.samples[static_cast<std::size_t>(j * grid.countX + i)];
            const double off = distance(grid.at(i, j), {100, 80}) - 30;
            if (std::abs(off) > 0.02) EXPECT_EQ(std::isnan(value), off < 0) << i << " " << j;
            if (std::isnan(value)) continue;
            most = std::max(most, value);
            EXPECT_NEAR(value, model.at(mode.field, grid.at(i, j)).value_or(2), 1e-12);
            if (i == 0 || j == 0 || i == 60 || j == 40) EXPECT_NEAR(value, 0, 1e-12);
        }
    EXPECT_NEAR(most, 1, 1e-12);
}

TEST(PlateModel, AnyCutsAreSurvived)
{
    // Heaps of random rings, crossing, doubled, degenerate: an answer or an error, and the loads borne.
    std::mt19937 engine(11);
    const auto dice = [&](double most) { return most * (static_cast<double>(engine()) / 4294967296.0); };
    int answers = 0;
    for (int round = 0; round < 60; ++round) {
        PlateProblem plate = spruceLid(PlateSide::Clamped);
        std::vector<Ring> cuts;
        for (int k = 0; k < 1 + round % 12; ++k) {
            Ring ring;
            for (int i = 0; i < 3 + static_cast<int>(engine() % 12); ++i) {
                Point p{dice(260) - 10, dice(180) - 10};
                if (engine() % 3 == 0) p = {10 * std::round(p.x / 10), 10 * std::round(p.y / 10)};
                ring.push_back(p);
            }
            cuts.push_back(ring);
        }
        if (round % 5 == 0)
            plate.material.rings.insert(plate.material.rings.end(), cuts.begin(), cuts.end());
        else
            plate.material = subtract(plate.material, fill(cuts, FillRule::EvenOdd));
        plate.supports = {{{{rectangleRing({dice(240), dice(160)}, dice(50), dice(50))}}, {}, 3}};
        plate.ribs = {{{dice(240), dice(160)}, {dice(240), dice(160)}, 5, 8, 10000, 700, 400, {}}};
        plate.loads = {{{{rectangleRing({120, 80}, 200, 130)}}, {}, 10}};
        const auto model = buildPlate(plate, 24);
        if (!model) continue;
        const auto answer = model->rest();
        const auto modes = model->modes(2);
        EXPECT_TRUE(modes.ok()) << round << modes.error().text();
        if (!answer) continue;
        EXPECT_NEAR(answer->reactions_N, 10, 1e-4) << round << " " << answer->deflection.value;
        ++answers;
    }
    EXPECT_GT(answers, 30);
}

TEST(PlateModel, OneThousandSlotsHaveALimit)
{
    std::vector<Ring> slots;
    for (int k = 0; k < 3000; ++k)
        slots.push_back(rectangleRing({5 + 0.077 * k, 80}, 0.03, 150));
    PlateProblem plate = spruceLid(PlateSide::Clamped);
    plate.material = subtract(plate.material, fill(slots, FillRule::NonZero));
    const auto model = buildPlate(plate, 96);
    ASSERT_FALSE(model.ok());
    EXPECT_NE(model.error().what.find("unknowns"), std::string::npos);
}

}  // namespace
}  // namespace lidwright
