#include "tests/support/random_plan.h"

#include "core/checks/check.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

/// Straight heads, where the plan view shows everything true.
Plan straight(testing::RandomPlans& dice)
{
    Plan plan;
    plan.stringSet.resize(1 + dice.below(6), plan.stringSet.front());
    plan.neck.headLength = dice.between(70, 200);
    plan.head.width = dice.below(2) == 0 ? 0 : dice.between(20, 70);
    plan.tuners.side = static_cast<TunerSide>(dice.below(4));
    plan.tuners.first = dice.between(25, 60);
    plan.tuners.spacing = dice.between(6, 45);
    plan.tuners.edge = dice.between(3, 16);
    plan.tuners.hole = dice.between(5, 11);
    plan.tuners.plateLength = dice.between(15, 40);
    plan.tuners.plateWidth = dice.between(8, 20);
    plan.tuners.plateBefore = dice.between(2, 12);
    return plan;
}

const Finding* of(const std::vector<Finding>& all, const std::string& rule, const std::string& part)
{
    for (const Finding& f : all)
        if (f.rule == rule && f.part == part) return &f;
    return nullptr;
}

/// The whole head up to the nut: plates behind it may lie there.
Region wood(const Plan& plan, const Layout& l)
{
    const double half = l.head.width / 2;
    return {{{{l.headEndX, -half},
              {l.headEndX + plan.neck.headLength, -half},
              {l.headEndX + plan.neck.headLength, half},
              {l.headEndX, half}}}};
}

/// Nearest points of two rings, or of a ring and the straight edges of another, by going round the first.
double apart(const Ring& ring, const Ring& other)
{
    double least = 1e300;
    for (const Point p : ring)
        for (std::size_t i = 0, j = other.size() - 1; i < other.size(); j = i++) {
            const Point along = other[i] - other[j];
            const double t =
                std::clamp(dot(p - other[j], along) / std::max(dot(along, along), 1e-12), 0.0, 1.0);
            least = std::min(least, distance(p, other[j] + t * along));
        }
    return least;
}

TEST(HeadChecks, PlatesAreWrongJustWhereTheyOverlapOrStandOut)
{
    testing::RandomPlans dice(21);
    int wrong = 0, fine = 0;
    for (int round = 0; round < 400; ++round) {
        const Plan plan = straight(dice);
        const Layout l = derive(plan);
        const std::vector<Finding> all = check(plan, l);
        const Finding* f = of(all, "head.plates", "tuners");
        ASSERT_NE(f, nullptr);
        double bad = 0;
        for (std::size_t i = 0; i < l.head.posts.size(); ++i) {
            const Region plate{{l.head.posts[i].plate}};
            bad += area(subtract(plate, wood(plan, l)));
            for (std::size_t k = i + 1; k < l.head.posts.size(); ++k)
                bad += area(intersect(plate, {{l.head.posts[k].plate}}));
        }
        EXPECT_EQ(f->verdict == Verdict::Wrong, bad > 1e-3) << "round " << round;
        ++(bad > 1e-3 ? wrong : fine);
    }
    EXPECT_GT(wrong, 50);
    EXPECT_GT(fine, 50);
}

TEST(HeadChecks, WoodAboutTheHolesIsWhatIsMeasuredOnTheDrawing)
{
    testing::RandomPlans dice(22);
    int judged = 0;
    for (int round = 0; round < 400; ++round) {
        const Plan plan = straight(dice);
        const Layout l = derive(plan);
        const std::vector<Finding> all = check(plan, l);
        const Finding* f = of(all, "head.holes", "tuners");
        ASSERT_NE(f, nullptr);
        if (f->measured->value <= 0) continue;
        const Region head = wood(plan, l);
        // The nut's side is no edge of the head.
        Ring edges = head.rings[0];
        for (Point& p : edges)
            if (p.x > l.headEndX + 1) p.x += 1000;
        double least = 1e300;
        for (std::size_t i = 0; i < l.head.posts.size(); ++i) {
            least = std::min(least, apart(l.head.posts[i].hole, edges));
            for (std::size_t k = i + 1; k < l.head.posts.size(); ++k)
                least = std::min({least, apart(l.head.posts[i].hole, l.head.posts[k].hole),
                                  apart(l.head.posts[k].hole, l.head.posts[i].hole)});
        }
        // Circles are drawn within 0.01 mm.
        EXPECT_NEAR(f->measured->value, least, 0.025) << "round " << round;
        ++judged;
    }
    EXPECT_GT(judged, 100);
}

TEST(HeadChecks, TheThreeKindsOfHeadCanAllBeMadeGood)
{
    Plan plan;
    plan.head.width = 46;
    plan.neck.headLength = 140;
    plan.neck.blankLength = 940;
    for (const HeadShape shape : {HeadShape::Thinned, HeadShape::Tree, HeadShape::Scarfed}) {
        plan.head.shape = shape;
        if (shape == HeadShape::Scarfed) plan.tuners.first = 64;
        for (const Finding& f : check(plan, derive(plan)))
            if (f.rule.starts_with("head.")) {
                EXPECT_EQ(f.verdict, Verdict::Good)
                    << static_cast<int>(shape) << ": " << spoken(f.sentence, {});
            }
    }
}

TEST(HeadChecks, PlatesBehindAScarfKeepOffItsHeel)
{
    Plan plan;
    plan.head.shape = HeadShape::Scarfed;
    const Layout l = derive(plan);
    const auto all = checkWithRemedies(plan);
    const Finding* f = of(all, "head.step", "head");
    ASSERT_NE(f, nullptr);
    EXPECT_EQ(f->verdict, Verdict::Wrong);
    // From the start of the angle down to the heel, along the face: ((T - t / cos a) / tan a) cos a + T sin
    // a.
    const double a = radians(plan.head.angle), thick = plan.neck.thickness;
    const double heel =
        plan.head.step + (thick - 15 / std::cos(a)) / std::tan(a) * std::cos(a) + thick * std::sin(a);
    EXPECT_NEAR(l.head.backThinFrom, heel, 1e-9);
    EXPECT_NEAR(f->measured->value, plan.tuners.first - plan.tuners.plateBefore - heel, 1e-9);
    EXPECT_FALSE(f->remedies.empty());
}

}  // namespace
}  // namespace lidwright
