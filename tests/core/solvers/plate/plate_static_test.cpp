#include "tests/core/solvers/plate/square_plate.h"
#include "tests/support/reference_table.h"

namespace lidwright {
namespace {

using namespace testing;

PlateProblem loaded(PlateProblem plate, double force)
{
    plate.loads = {{plate.material, {}, force}};
    return plate;
}

TEST(PlateStatic, TablesOfTimoshenkoAndWoinowskyKrieger)
{
    // S. P. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells (1959), tables 8, 23, 35, 37, as
    // computed anew from series.
    const ReferenceTable table("plate_static_coefficients.csv");
    const double a = 300, P = 10, q = 0.001;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const std::string name = table.text(row, "case");
        const double b = a * table.number(row, "b_over_a");
        const bool point = name.find("point") != std::string::npos, clamped = name.find("clamped") == 0;
        PlateProblem plate = rectanglePlate(a, b, clamped ? "CCCC" : "SSSS");
        if (point)
            plate.loads = {{{}, {a / 2, b / 2}, P}};
        else
            plate = loaded(plate, q * a * b);
        const PlateModel model = built(plate, 48);
        const PlateAnswer answer = *model.rest();
        const double w = -answer.deflection.value * kD / (point ? P * a * a : q * std::pow(a, 4));
        EXPECT_NEAR(w / table.number(row, "w"), 1, point ? 1.2e-3 : 2e-5) << name << " " << b / a;
        EXPECT_NEAR(answer.deflection.at.x, a / 2, a / 40);
        EXPECT_NEAR(answer.reactions_N, answer.load_N, 1e-6 * answer.load_N) << name;
        // Moments from the stress at the top: m = -sigma h^2 / 6.
        const auto moments = [&](Point p) {
            const PlateStress s = *model.stressAt(answer.field, p);
            const double unit = point ? P : q * a * a;
            return Point{-s.along / 6 / unit, -s.across / 6 / unit};
        };
        const Point middle = moments({a / 2, b / 2}), left = moments({0, b / 2}), low = moments({a / 2, 0});
        const auto column = [&](const char* name2) {
            return table.text(row, name2).empty() ? 0 : table.number(row, name2);
        };
        if (!clamped && !point) {
            EXPECT_NEAR(middle.x, column("M1"), 4e-4) << b / a;
            EXPECT_NEAR(middle.y, column("M2"), 2e-4) << b / a;
        } else if (clamped) {
            EXPECT_NEAR(left.x, column("M1"), point ? 2e-3 : 5e-4) << name << b / a;
            if (!point) {
                EXPECT_NEAR(low.y, column("M2"), 5e-4) << b / a;
                EXPECT_NEAR(middle.x, column("M3"), 2e-4) << b / a;
                EXPECT_NEAR(middle.y, column("M4"), 2e-4) << b / a;
                // The largest stress stands at the middle of the clamped sides.
                EXPECT_NEAR(answer.stressAlong.value, -6 * q * a * a * column("M1"),
                            0.01 * answer.stressAlong.value);
                EXPECT_GT(answer.stressAlong.value, 0);
            }
        }
    }
}

TEST(PlateStatic, EdgeOfARoundHole)
{
    const ReferenceTable table("plate_static_hole.csv");
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (table.number(row, "n") != 40) continue;
        const double R = 1000 * table.number(row, "R_over_a"), q = 1e-4;
        PlateProblem plate = squarePlate(table.text(row, "sides"));
        plate.material = subtract(plate.material, {{circleRing({500, 500}, R, 1e-3)}});
        plate = loaded(plate, q * area(plate.material));
        const PlateModel model = built(plate, 40);
        const auto w = model.at(model.rest()->field, {500 + R + 1e-3, 500});
        ASSERT_TRUE(w.has_value());
        EXPECT_NEAR(-*w * kD / (q * 1e12), table.number(row, "w"), 1.5e-7) << R;
    }
}

TEST(PlateStatic, StiffBedIsAClamp)
{
    // A square 600 in the clear whose rim of 100 rests on a bed: the stiffer the bed, the nearer to clamped
    // sides.
    const double exact = 0.00126532 * 1e-3 * std::pow(600, 4) / kD;
    double before = 1e9;
    for (double bed : {1e-4, 1e-1, 1e2, 1e5}) {
        PlateProblem plate = rectanglePlate(800, 800, "FFFF");
        const Region inside{{rectangleRing({400, 400}, 600, 600)}};
        plate.supports = {{subtract(plate.material, inside), {}, bed}};
        plate.loads = {{inside, {}, 1e-3 * 360000}};
        const PlateAnswer answer = answerOf(plate, 64);
        const double error = -answer.deflection.value / exact - 1;
        EXPECT_GT(error, -2e-3) << bed;
        EXPECT_LT(error, before) << bed;
        EXPECT_NEAR(answer.supportReaction_N[0], 360, 1e-4) << bed;
        before = error;
    }
    EXPECT_LT(before, 2e-3);
}

TEST(PlateStatic, BedAlone)
{
    // A free plate on a bed sinks by pressure / stiffness, and bears its load where it lies.
    PlateProblem plate = spruceLid(PlateSide::Free);
    plate.supports = {{plate.material, {}, 0.02}};
    plate = loaded(plate, 100);
    const PlateAnswer answer = answerOf(plate, 24);
    EXPECT_NEAR(answer.deflection.value, -100 / (240.0 * 160) / 0.02, 1e-9);
    EXPECT_NEAR(answer.supportReaction_N[0], 100, 1e-8);
    EXPECT_NEAR(answer.stressAlong.value, 0, 1e-6);
}

TEST(PlateStatic, StiffHingeIsASimpleSide)
{
    PlateProblem plate = squarePlate("FFFF");
    plate.supports = {{{}, {{0, 0}, {1000, 0}, {1000, 1000}, {0, 1000}, {0, 0}}, 1e6}};
    plate = loaded(plate, 1000);
    const PlateAnswer answer = answerOf(plate, 32);
    EXPECT_NEAR(-answer.deflection.value, 0.00406235 * 1e-3 * 1e12 / kD, 1e-2);
    EXPECT_NEAR(answer.supportReaction_N[0], 1000, 1e-4);
    // One line is a hinge that the plate turns about; so is a point short of three.
    plate.supports[0].line = {{0, 300}, {1000, 300}};
    const auto turning = built(plate, 16).rest();
    ASSERT_FALSE(turning.ok());
    EXPECT_NE(turning.error().what.find("turn"), std::string::npos);
    plate.supports[0].line = {{0, 300}, {1000, 300}, {1000, 310}};
    EXPECT_TRUE(built(plate, 16).rest().ok());
}

TEST(PlateStatic, ReciprocalAndInProportion)
{
    // E. Betti (1872): a load at A moves B as one at B moves A; supports, cuts, ribs and patches as they are.
    PlateProblem plate = spruceLid(PlateSide::Free);
    plate.material = subtract(plate.material, {{circleRing({90, 60}, 22)}});
    plate.sides.left = PlateSide::Simple;
    plate.supports = {{{{rectangleRing({225, 80}, 20, 120)}}, {}, 5}, {{}, {{40, 150}, {200, 140}}, 20}};
    plate.ribs = {{{20, 30}, {220, 120}, 5, 8, 9000, 600, 400, {}}};
    plate.patches = {{{{circleRing({150, 90}, 25)}}, sheetStiffness({9000, 700, 0.4, 600}, 2, 0.5), 1}};
    const Point A{133, 41}, B{61, 99};
    plate.loads = {{{}, A, 10}};
    const PlateModel first = built(plate, 32);
    plate.loads = {{{}, B, 10}};
    const PlateModel second = built(plate, 32);
    const PlateAnswer atA = *first.rest(), atB = *second.rest();
    EXPECT_NEAR(*first.at(atA.field, B), *second.at(atB.field, A), 1e-9);
    EXPECT_NEAR(atA.reactions_N, 10, 1e-6);
    EXPECT_NEAR(atA.sideReaction_N + atA.supportReaction_N[0] + atA.supportReaction_N[1], 10, 1e-6);
    plate.loads = {{{}, A, -20}, {{}, B, 20}};
    const PlateModel both = built(plate, 32);
    EXPECT_NEAR(*both.at(both.rest()->field, A), 2 * (*second.at(atB.field, A) - *first.at(atA.field, A)),
                1e-8);
}

TEST(PlateStatic, GrainTurnsTheStresses)
{
    // The same lid with grain along x and, turned by a quarter, along y.
    PlateProblem lid = spruceLid(PlateSide::Simple);
    lid.loads = {{{{rectangleRing({150, 60}, 30, 20)}}, {}, 40}};
    const PlateAnswer straight = answerOf(lid, 48);
    PlateProblem other = lid;
    other.material = {{rectangleRing({80, 120}, 160, 240)}};
    other.loads = {{{{rectangleRing({100, 150}, 20, 30)}}, {}, 40}};
    other.grainAngle = kPi / 2;
    other.stiffness = turned(lid.stiffness, kPi / 2);
    const PlateAnswer upright = answerOf(other, 48);
    EXPECT_NEAR(upright.deflection.value, straight.deflection.value, 1e-9);
    EXPECT_NEAR(upright.stressAlong.value, straight.stressAlong.value, 1e-6);
    EXPECT_NEAR(upright.stressAcross.value, straight.stressAcross.value, 1e-6);
    EXPECT_LT(straight.stressAlong.value, 0);  // pressed at the top
    EXPECT_GT(std::abs(straight.stressAlong.value), 3 * std::abs(straight.stressAcross.value));
}

}  // namespace
}  // namespace lidwright
