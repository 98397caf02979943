#include "tests/support/sample_plans.h"

#include "core/checks/check.h"
#include "core/io/plan/plan_file.h"

#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <sstream>

namespace lidwright {
namespace {

const std::filesystem::path kFolder = std::filesystem::path(LIDWRIGHT_SOURCE_DIR) / "resources/samples";

std::string textOf(const std::filesystem::path& path)
{
    std::ifstream in(path, std::ios::binary);
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
}

Plan opened(const std::string& file)
{
    const auto reading = readPlan(textOf(kFolder / file), file);
    EXPECT_TRUE(reading.ok()) << (reading.ok() ? "" : reading.error().text());
    return reading.ok() ? reading->plan : Plan{};
}

std::map<Verdict, int> counts(const Plan& plan)
{
    std::map<Verdict, int> out;
    for (const Finding& f : check(plan, derive(plan)))
        ++out[f.verdict];
    return out;
}

TEST(Samples, AreWhatTheirDrawingsGive)
{
    for (const auto& sample : testing::samplePlans(kFolder)) {
        Plan stored = opened(sample.file);
        ASSERT_EQ(stored.art.size(), sample.plan.art.size());
        for (std::size_t i = 0; i < stored.art.size(); ++i) {
            // The reader may set other points on the same outlines: they agree within its tolerance.
            const ArtAreas kept = areas(*stored.art[i].art, stored.art[i].uses);
            const ArtAreas read = areas(*sample.plan.art[i].art, sample.plan.art[i].uses);
            EXPECT_NEAR(area(kept.cut), area(read.cut), 0.5) << sample.file << ": run make_samples again";
            EXPECT_NEAR(area(kept.engraved), area(read.engraved), 0.5) << sample.file;
            EXPECT_NEAR(stored.art[i].art->width, sample.plan.art[i].art->width, 0.01) << sample.file;
            EXPECT_NEAR(stored.art[i].art->height, sample.plan.art[i].art->height, 0.01) << sample.file;
            EXPECT_EQ(stored.art[i].art->paints, sample.plan.art[i].art->paints) << sample.file;
            stored.art[i].art = sample.plan.art[i].art;
        }
        EXPECT_EQ(stored, sample.plan) << sample.file << ": run make_samples again";
    }
}

TEST(Samples, HarbourLightIsAllGood)
{
    const Plan plan = opened("harbour-light.lidplan");
    for (const Finding& f : check(plan, derive(plan)))
        EXPECT_EQ(f.verdict, Verdict::Good) << f.rule << ": " << spoken(f.sentence, unitStyle(plan));
}

TEST(Samples, MoonKettleHasNothingWrong)
{
    const Plan plan = opened("moon-kettle.lidplan");
    for (const Finding& f : check(plan, derive(plan)))
        EXPECT_TRUE(f.verdict == Verdict::Good || f.verdict == Verdict::Tight)
            << f.rule << ": " << spoken(f.sentence, unitStyle(plan));
}

TEST(Samples, OrchardDoorIsMendedByItsOwnRemedies)
{
    Plan plan = opened("orchard-door.lidplan");
    auto wrong = counts(plan)[Verdict::Wrong];
    ASSERT_GE(wrong, 2) << "the bridge on the artwork and the short stick";
    // Press the first remedy of the gravest finding until nothing is wrong: a few presses must do.
    for (int presses = 0; wrong > 0; ++presses) {
        ASSERT_LT(presses, 6);
        bool pressed = false;
        for (const Finding& f : checkWithRemedies(plan)) {
            if (f.verdict != Verdict::Wrong || f.remedies.empty()) continue;
            const auto next = applyEdits(plan, f.remedies.front().edits);
            ASSERT_TRUE(next.ok());
            plan = *next;
            pressed = true;
            break;
        }
        ASSERT_TRUE(pressed) << "a wrong finding offers no way out";
        wrong = counts(plan)[Verdict::Wrong];
    }
}

}  // namespace
}  // namespace lidwright
