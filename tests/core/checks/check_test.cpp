#include "core/checks/check.h"

#include "tests/support/plans.h"
#include "tests/support/random_plan.h"

#include "core/io/plan/plan_file.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

namespace lidwright {
namespace {

const std::filesystem::path kPlans = std::filesystem::path(LIDWRIGHT_SOURCE_DIR) / "tests/data/plans/checks";

Plan readFile(const std::filesystem::path& path)
{
    std::ifstream in(path, std::ios::binary);
    std::stringstream text;
    text << in.rdbuf();
    const auto reading = readPlan(text.str(), path.filename().string());
    EXPECT_TRUE(reading.ok()) << path << (reading.ok() ? "" : reading.error().text());
    return reading.ok() ? reading->plan : Plan{};
}

TEST(Checks, RegistryIsComplete)
{
    std::set<std::string> ids;
    for (const Check* c : allChecks()) {
        EXPECT_TRUE(ids.insert(c->id).second) << c->id;
        EXPECT_FALSE(std::string(c->title).empty()) << c->id;
        EXPECT_FALSE(std::string(c->source).empty()) << c->id;
        EXPECT_NE(c->judge, nullptr) << c->id;
    }
}

TEST(Checks, DefaultPlanIsSilent)
{
    const Plan plan;
    std::set<std::string> identities;
    for (const Finding& f : check(plan, derive(plan))) {
        // Only the missing artwork may be asked for, and the setback that the strings decide.
        if (f.rule == "bridge.art")
            EXPECT_EQ(f.verdict, Verdict::Unknown);
        else if (f.rule == "strings.intonation")
            EXPECT_EQ(f.verdict, Verdict::Tight);
        else
            EXPECT_EQ(f.verdict, Verdict::Good) << f.rule << ": " << f.sentence.pattern;
        EXPECT_TRUE(identities.insert(f.rule + f.part).second)
            << "two findings with one identity: " << f.rule << " " << f.part;
        if (f.verdict != Verdict::Unknown) EXPECT_FALSE(f.places.empty()) << f.rule;
    }
}

/// What a card says about the numbers must agree with its verdict, in every plan at hand.
TEST(Checks, TightLiesBetweenRequiredAndComfortable)
{
    int tight = 0, good = 0;
    for (const auto& entry : std::filesystem::directory_iterator(kPlans)) {
        if (entry.path().extension() != ".lidplan") continue;
        const Plan read = readFile(entry.path());
        for (int step = 0; step < 12; step += 5) {
            Plan plan = read;
            plan.neck.width += step;
            plan.box.height += 0.7 * step;
            plan.bridge.artMargin = 0.5 * step;
            plan.neck.blankLength -= 2.5 * step;
            for (const Finding& f : check(plan, derive(plan))) {
                if (!f.comfortable || !f.measured) continue;
                const double sign = f.bound == Bound::AtMost ? -1 : 1;
                const double off = sign * (f.measured->value - f.comfortable->value);
                if (f.verdict == Verdict::Good) {
                    EXPECT_GE(off, -1e-5) << f.rule << " in " << entry.path();
                    ++good;
                }
                if (f.verdict == Verdict::Tight) {
                    EXPECT_LT(off, 0) << f.rule << " in " << entry.path();
                    EXPECT_GE(sign * (f.measured->value - f.required->value), -1e-5) << f.rule;
                    ++tight;
                }
            }
        }
    }
    EXPECT_GT(tight, 30);
    EXPECT_GT(good, 50);
}

/// Rules that never complain: they only tell.
const std::set<std::string> kTellers{"fretboard.offcut", "art.over-neck", "art.kerf", "lid.material",
                                     "relief.touch"};

TEST(Checks, EveryCheckHasAPlanThatMakesItSpeak)
{
    for (const Check* c : allChecks()) {
        if (kTellers.contains(c->id)) continue;
        const auto path = kPlans / (std::string(c->id) + ".lidplan");
        ASSERT_TRUE(std::filesystem::exists(path)) << path;
        const Plan plan = readFile(path);
        bool spoke = false;
        for (const Finding& f : check(plan, derive(plan)))
            if (f.rule == c->id && f.verdict == Verdict::Wrong) {
                spoke = true;
                ASSERT_TRUE(f.measured && f.required) << c->id;
                // The numbers shown must carry the verdict: a wrong value lies on the wrong side of its
                // bound.
                if (f.bound == Bound::AtLeast) EXPECT_LT(f.measured->value, f.required->value) << c->id;
                if (f.bound == Bound::AtMost) EXPECT_GT(f.measured->value, f.required->value) << c->id;
                if (f.bound == Bound::Exactly) EXPECT_NE(f.measured->value, f.required->value) << c->id;
                EXPECT_FALSE(f.places.empty()) << c->id;
            }
        EXPECT_TRUE(spoke) << c->id << " says nothing is wrong";
    }
}

TEST(Checks, RemediesProveThemselves)
{
    for (const Check* c : allChecks()) {
        if (kTellers.contains(c->id)) continue;
        const Plan plan = readFile(kPlans / (std::string(c->id) + ".lidplan"));
        const auto before = checkWithRemedies(plan);
        std::map<std::string, Verdict> was;
        for (const Finding& f : before)
            was[f.rule + "|" + f.part] = f.verdict;
        std::size_t offered = 0;
        for (const Finding& f : before) {
            if (f.rule != c->id || f.verdict != Verdict::Wrong) continue;
            offered += f.remedies.size();
            EXPECT_LE(f.remedies.size(), 4u);
            for (const Remedy& r : f.remedies) {
                const auto mended = applyEdits(plan, r.edits);
                ASSERT_TRUE(mended.ok()) << c->id;
                for (const Finding& g : check(*mended, derive(*mended))) {
                    if (g.rule == f.rule && g.part == f.part)
                        EXPECT_NE(g.verdict, Verdict::Wrong) << c->id << ": " << r.label.pattern;
                    const auto old = was.find(g.rule + "|" + g.part);
                    if (old != was.end() && g.verdict == Verdict::Wrong)
                        EXPECT_EQ(old->second, Verdict::Wrong)
                            << c->id << ": " << r.label.pattern << " spoils " << g.rule;
                }
            }
        }
        EXPECT_GT(offered, 0u) << c->id << " has no way out to offer";
    }
}

TEST(Checks, ArtworkMostlyOverTheNeckIsTold)
{
    Plan plan;
    ArtPiece piece = testing::pieceOf({{rectangleRing({0, 0}, 80, 30)}});
    piece.x = 100;
    plan.art = {piece};
    Finding told;
    for (const Finding& f : checkWithRemedies(plan))
        if (f.rule == "art.over-neck") told = f;
    EXPECT_EQ(told.verdict, Verdict::Wrong);
    EXPECT_NEAR(told.measured->value, 80 * 30, 1e-3);
    ASSERT_FALSE(told.remedies.empty());
    plan.art[0].y = 40;
    for (const Finding& f : check(plan, derive(plan)))
        if (f.rule == "art.over-neck") EXPECT_EQ(f.verdict, Verdict::Good);
}

TEST(Checks, OffcutIsToldEitherWay)
{
    Plan plan;
    const auto sentence = [&] {
        for (const Finding& f : check(plan, derive(plan)))
            if (f.rule == "fretboard.offcut") return f.sentence.pattern;
        return std::string();
    };
    EXPECT_NE(sentence().find("can cover"), std::string::npos);
    plan.fretboard.blankLength = 410;
    EXPECT_NE(sentence().find("cannot cover"), std::string::npos);
}

TEST(Checks, GravestComeFirst)
{
    Plan plan = readFile(kPlans / "neck.blank.lidplan");
    plan.strings.spreadAtNut = 33.5;
    const auto all = check(plan, derive(plan));
    for (std::size_t i = 1; i < all.size(); ++i)
        EXPECT_GE(static_cast<int>(all[i - 1].verdict), static_cast<int>(all[i].verdict));
    EXPECT_EQ(all.front().rule, "neck.blank");
}

TEST(Checks, AnyPlanWithinTheRangesIsJudged)
{
    testing::RandomPlans random(4711);
    for (int i = 0; i < 60; ++i) {
        const Plan plan = random.next();
        const auto all = i % 20 == 0 ? checkWithRemedies(plan) : check(plan, derive(plan));
        EXPECT_FALSE(all.empty());
        for (const Finding& f : all) {
            if (f.measured) EXPECT_TRUE(std::isfinite(f.measured->value)) << f.rule << " in plan " << i;
            const std::string said = spoken(f.sentence, {});
            EXPECT_EQ(said.find('%' + std::string("1")), std::string::npos) << said;
        }
    }
}

}  // namespace
}  // namespace lidwright
