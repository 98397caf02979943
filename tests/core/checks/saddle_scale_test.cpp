#include "tests/support/plans.h"

#include "core/base/length_text.h"
#include "core/checks/check.h"

#include <gtest/gtest.h>

#include <cmath>

namespace lidwright {
namespace {

using testing::with;

const Finding* findingOf(const std::vector<Finding>& all, const std::string& rule)
{
    for (const Finding& f : all)
        if (f.rule == rule) return &f;
    return nullptr;
}

TEST(SaddleScale, OctaveErrorAgreesWithEqualTemperament)
{
    // Equal temperament puts fret 12 at L (1 - 2^(-12/12)) = L/2 from the nut (published e.g. with 25.5 in
    // and 650 mm examples in the project's reference table of fret positions). With the saddle d beyond L the
    // string sounds over L + d, fretted over L/2 + d: an octave is 1200 cents, so the error is 1200 log2((L +
    // d) / (L/2 + d)) - 1200.
    for (const double d : {-5.0, -0.8, 0.8, 4.0}) {
        Plan plan = with({}, {{"scale.hold", 2.0}, {"scale.length", 650.0}, {"scale.nut-to-box", 415.0}});
        plan = with(plan, {{"scale.saddle-to-tail", plan.box.length + 415.0 - 650.0 - d}});
        const Layout layout = derive(plan);
        ASSERT_NEAR(layout.saddleX - layout.nutX, 650 + d, 1e-9);
        const auto all = check(plan, layout);
        const Finding* f = findingOf(all, "saddle.scale");
        ASSERT_NE(f, nullptr);
        const double cents = 1200 * std::log2((650 + d) / (325 + d)) - 1200;
        const std::string shown = std::get<std::string>(f->sentence.arguments.at(2));
        EXPECT_EQ(shown, decimalNumber(std::abs(cents), 1)) << d;
        EXPECT_NE(f->sentence.pattern.find(cents < 0 ? "flat" : "sharp"), std::string::npos) << d;
        EXPECT_EQ(f->verdict, std::abs(d) <= 1 ? Verdict::Tight : Verdict::Wrong);
    }
}

TEST(SaddleScale, HeldNutAlwaysAgrees)
{
    for (const double nut : {310.0, 400.0, 455.5}) {
        const Plan plan = with({}, {{"scale.nut-to-box", nut}});
        const auto all = check(plan, derive(plan));
        EXPECT_EQ(findingOf(all, "saddle.scale")->verdict, Verdict::Good) << nut;
    }
}

TEST(SaddleScale, NutInsideTheBoxIsWrongAndMended)
{
    const Plan plan = with({}, {{"scale.hold", 1.0}, {"scale.length", 200.0}});
    const auto all = checkWithRemedies(plan);
    const Finding* f = findingOf(all, "saddle.scale");
    ASSERT_EQ(f->verdict, Verdict::Wrong);
    EXPECT_NE(f->sentence.pattern.find("inside the box"), std::string::npos);
}

}  // namespace
}  // namespace lidwright
