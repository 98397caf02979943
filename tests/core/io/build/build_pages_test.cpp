#include "core/io/build/build_pages.h"

#include "core/checks/check.h"
#include "core/io/build/bench_html.h"
#include "core/io/build/build_steps.h"
#include "core/io/plan/plan_file.h"
#include "core/solvers/lists/shop_lists.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <pugixml.hpp>

#include <fstream>
#include <regex>
#include <set>
#include <sstream>

namespace lidwright {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

BenchSheet sheetOf(const Plan& plan, BuildSheetInput input = {})
{
    const Layout l = derive(plan);
    input.version = "1.2.3";
    // Only the tests of fineness need more.
    if (input.fineness == Fineness::Usual) input.fineness = Fineness::Coarse;
    return buildSheet(plan, l, check(plan, l), input);
}
std::string pageOf(const Plan& plan, bool pictures = true)
{
    BuildSheetInput input;
    input.pictures = pictures;
    return benchHtml(sheetOf(plan, input));
}

const BenchSection* find(const BenchSheet& sheet, const std::string& id)
{
    for (const BenchSection& section : sheet.sections)
        if (section.id == id) return &section;
    return nullptr;
}
template <class Block>
std::vector<const Block*> blocksOf(const BenchSection& section)
{
    std::vector<const Block*> out;
    for (const BenchBlock& block : section.blocks)
        if (const auto* one = std::get_if<Block>(&block)) out.push_back(one);
    return out;
}

Plan sample(const std::string& name)
{
    const std::string path = std::string(LIDWRIGHT_SOURCE_DIR) + "/resources/samples/" + name;
    std::ifstream file(path);
    std::stringstream text;
    text << file.rdbuf();
    const auto read = readPlan(text.str(), path);
    EXPECT_TRUE(read) << path;
    return read ? read->plan : Plan{};
}

/// Something of everything, the base screwed on.
Plan fullPlan()
{
    Plan plan;
    plan.holes = {SoundHole{}};
    plan.blocks = {WallBlock{}};
    plan.bars = {LidBar{}};
    plan.wiring = {Device{}};
    plan.wiring[0].hole = 8;
    plan.box.baseFastening = BaseFastening::Screwed;
    plan.fittings.feet = true;
    return plan;
}

TEST(BuildPages, EveryStepOnceAndInOrder)
{
    const Plan plan;
    const std::string page = pageOf(plan);
    std::size_t last = 0;
    for (const BuildStep& step : buildSteps(plan, derive(plan))) {
        const std::string mark = "<section id=\"" + step.id + "\"";
        const auto at = page.find(mark);
        ASSERT_NE(at, std::string::npos) << step.id;
        EXPECT_GT(at, last);
        EXPECT_EQ(page.find(mark, at + 1), std::string::npos) << step.id;
        last = at;
    }
    EXPECT_THAT(page, HasSubstr(planFingerprint(plan)));
    EXPECT_THAT(page, HasSubstr("Lidwright 1.2.3"));
}

// One file that needs nothing else: no address of another is in it but the names of SVG's own spaces.
TEST(BuildPages, NeedNothingElse)
{
    std::string page = pageOf(fullPlan());
    EXPECT_THAT(page, HasSubstr("<svg"));
    page = std::regex_replace(page, std::regex("xmlns(:\\w+)?=\"[^\"]*\""), "");
    for (const char* outside : {"http:", "https:", "src=", "href=", "<script", "<link", "@import", "url("})
        EXPECT_THAT(page, Not(HasSubstr(outside)));
}

// Read by an XML parser, drawings and all.
TEST(BuildPages, AreWellFormedWhateverThePlanSays)
{
    Plan plan = fullPlan();
    plan.sheet.title = "A <b>\"wild\"</b> & long title";
    plan.sheet.maker = "M & <script>alert(1)</script>";
    plan.sheet.notes = "1 < 2 && 3 > 2";
    std::string page = pageOf(plan);
    EXPECT_THAT(page, Not(HasSubstr("<script")));
    EXPECT_THAT(page, HasSubstr("1 &lt; 2 &amp;&amp; 3 &gt; 2"));
    page = page.substr(page.find("<html"));
    page = std::regex_replace(page, std::regex("<meta[^>]*>"), "");
    page = std::regex_replace(page, std::regex("&nbsp;"), "-");
    pugi::xml_document document;
    const auto read = document.load_string(page.c_str());
    ASSERT_TRUE(read) << read.description() << " at "
                      << page.substr(static_cast<std::size_t>(read.offset), 80);
    const pugi::xml_node body = document.child("html").child("body");
    EXPECT_STREQ(body.child("h1").text().get(), plan.sheet.title.c_str());
    std::set<std::string> ids;
    for (const pugi::xpath_node& node : document.select_nodes("//@id"))
        EXPECT_TRUE(ids.insert(node.attribute().value()).second) << node.attribute().value();
    EXPECT_GT(ids.size(), 100U);
}

TEST(BuildPages, FindingsThatAreNotGoodAreAllThereAndGoodOnesAreCounted)
{
    Plan plan;
    plan.neck.blankLength = 500;
    plan.fretboard.blankLength = 100;
    plan.accepted = {{"neck.blank", "I scarf on another piece"}};
    const Layout l = derive(plan);
    const std::vector<Finding> all = check(plan, l);
    const BenchSheet sheet = sheetOf(plan);
    const BenchSection* section = find(sheet, "findings");
    ASSERT_NE(section, nullptr);
    const auto words = blocksOf<BenchWords>(*section);
    int wrong = 0, good = 0;
    for (const Finding& f : all) {
        const auto shown = std::count_if(words.begin(), words.end(), [&](const BenchWords* w) {
            return w->name == f.rule && w->lead == word(f.verdict) && w->words == f.sentence;
        });
        wrong += f.verdict == Verdict::Wrong;
        good += f.verdict == Verdict::Good;
        if (f.verdict == Verdict::Good)
            EXPECT_EQ(shown, 0) << f.rule;
        else
            EXPECT_GE(shown, 1) << f.rule;
    }
    EXPECT_GE(wrong, 2);
    const std::string page = benchHtml(sheet);
    EXPECT_THAT(page, HasSubstr("I scarf on another piece"));
    EXPECT_THAT(page, HasSubstr("Good: " + std::to_string(good) + " findings."));
    EXPECT_THAT(page, HasSubstr("Something is wrong with this plan"));
    // What is wrong and not lived with stands before everything else.
    EXPECT_EQ(words[1]->lead, "wrong");
    EXPECT_NE(words[1]->name, "neck.blank");
}

TEST(BuildPages, AWarningOnlyWhereSomethingIsWrong)
{
    const Plan plan;
    const Layout l = derive(plan);
    BuildSheetInput input;
    input.fineness = Fineness::Coarse;
    input.pictures = false;
    const auto warns = [&](Verdict verdict, const char* accepted) {
        Finding f;
        f.rule = "a.rule";
        f.verdict = verdict;
        f.sentence = {"It is so.", {}};
        f.accepted = accepted;
        return benchHtml(buildSheet(plan, l, {f}, input)).find("Something is wrong") != std::string::npos;
    };
    EXPECT_TRUE(warns(Verdict::Wrong, ""));
    EXPECT_FALSE(warns(Verdict::Wrong, "I know"));
    EXPECT_FALSE(warns(Verdict::Tight, ""));
    EXPECT_FALSE(warns(Verdict::Good, ""));
}

TEST(BuildPages, SpeakThePlansUnit)
{
    Plan plan;
    plan.sheet.unit = PlanUnit::InchFraction;
    EXPECT_THAT(pageOf(plan, false), HasSubstr(" in</td>"));
    EXPECT_THAT(pageOf({}, false), HasSubstr(" mm</td>"));
}

// A picture that does not fit, or whose words are too low, would not be read at the bench.
TEST(BuildPages, PicturesFitThePageAndCanBeRead)
{
    constexpr double kLeastLetter = 2.5;  // mm, ISO 3098
    constexpr double kHighest = 195;      // of a page, with room for a step's words
    for (const Plan& plan : {Plan{}, fullPlan(), sample("harbour-light.lidplan"),
                             sample("moon-kettle.lidplan"), sample("orchard-door.lidplan")}) {
        int pictures = 0;
        for (const BenchSection& section : sheetOf(plan).sections) {
            for (const BenchPicture* picture : blocksOf<BenchPicture>(section)) {
                ++pictures;
                SCOPED_TRACE(plan.sheet.title + " " + section.id);
                EXPECT_LE(picture->width(), kBenchWidth);
                EXPECT_LE(picture->height(), kHighest);
                EXPECT_GE(picture->sheet.paper, 1);
                EXPECT_FALSE(picture->caption.empty());
                for (const Element& e : picture->sheet.elements) {
                    if (const auto* text = std::get_if<Text>(&e.what))
                        EXPECT_GE(text->height, kLeastLetter) << text->words;
                    if (const auto* d = std::get_if<Dimension>(&e.what))
                        EXPECT_GE(d->height, kLeastLetter) << d->words;
                }
            }
        }
        EXPECT_GE(pictures, 10) << plan.sheet.title;
    }
}

TEST(BuildPages, PicturesStandWhereTheyHelp)
{
    const BenchSheet sheet = sheetOf(fullPlan());
    for (const char* with : {"plan", "artwork-check", "blank", "relief", "supports", "fretboard", "head",
                             "dry", "wiring", "set-up"}) {
        ASSERT_NE(find(sheet, with), nullptr) << with;
        EXPECT_FALSE(blocksOf<BenchPicture>(*find(sheet, with)).empty()) << with;
    }
    EXPECT_EQ(blocksOf<BenchPicture>(*find(sheet, "notches")).size(), 2U);
    EXPECT_EQ(blocksOf<BenchPicture>(*find(sheet, "nut-bridge")).size(), 2U);
    for (const char* without : {"general", "box", "finish", "strings", "findings", "limits"}) {
        ASSERT_NE(find(sheet, without), nullptr) << without;
        EXPECT_TRUE(blocksOf<BenchPicture>(*find(sheet, without)).empty()) << without;
    }
    BuildSheetInput none;
    none.pictures = false;
    for (const BenchSection& section : sheetOf(fullPlan(), none).sections)
        EXPECT_TRUE(blocksOf<BenchPicture>(section).empty()) << section.id;
}

TEST(BuildPages, TheSlowStudiesAreReckonedAsFinelyAsIsAskedFor)
{
    Plan plan;
    plan.holes = {SoundHole{}};
    const Layout l = derive(plan);
    for (const Fineness fineness : {Fineness::Coarse, Fineness::Usual}) {
        BuildSheetInput input;
        input.fineness = fineness;
        std::vector<double> told;
        input.watch.progress = [&](double share) { told.push_back(share); };
        const BenchSheet sheet = buildSheet(plan, l, {}, input);
        EXPECT_FALSE(sheet.stopped);
        EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
        ASSERT_FALSE(told.empty());
        EXPECT_LE(told.back(), 1 + 1e-12);
        const BenchSection* sound = find(sheet, "sound");
        ASSERT_NE(sound, nullptr);
        const auto tables = blocksOf<BenchTable>(*sound);
        std::size_t slow = 0;
        for (const StudyEntry& entry : studies()) {
            if (entry.slowly == nullptr) continue;
            // Row by row what the study itself says at that fineness.
            const Study study = entry.slowly(plan, l, fineness, {});
            ASSERT_FALSE(study.problem) << entry.id;
            ASSERT_LT(slow, tables.size());
            ASSERT_EQ(tables[slow]->rows.size(), study.table.rows.size()) << entry.id;
            for (std::size_t r = 0; r < study.table.rows.size(); ++r)
                for (std::size_t c = 0; c < study.table.columns.size(); ++c)
                    EXPECT_EQ(spoken(tables[slow]->rows[r][c].words, sheet.style),
                              spoken(study.table.rows[r][c], study.table.columns[c], sheet.style));
            // And the limits are of the same answer.
            const auto limits = blocksOf<BenchWords>(*find(sheet, "limits"));
            for (const Sentence& note : study.notes)
                EXPECT_TRUE(std::any_of(limits.begin(), limits.end(), [&](const BenchWords* w) {
                    return w->words == note;
                })) << note.pattern;
            ++slow;
        }
        EXPECT_EQ(slow, 2U);
        EXPECT_THAT(benchHtml(sheet), HasSubstr(word(fineness)));
    }
}

TEST(BuildPages, CanBeGivenUp)
{
    BuildSheetInput input;
    int asked = 0;
    input.watch.cancelled = [&] { return ++asked > 1; };
    EXPECT_TRUE(sheetOf({}, input).stopped);
    EXPECT_GT(asked, 1);
}

TEST(BuildPages, AListIsASheetOfItsOwn)
{
    Plan plan;
    plan.sheet.title = "The plan";
    const Layout l = derive(plan);
    for (const StudyEntry& entry : shopLists()) {
        const Study study = entry.reckon(plan, l);
        BuildSheetInput input;
        input.version = "1.2.3";
        input.date = "2026-01-02";
        const BenchSheet sheet = figureSheet(plan, study, input);
        EXPECT_EQ(sheet.title, study.title);
        EXPECT_EQ(sheet.lying, study.table.columns.size() > 7) << entry.id;
        EXPECT_THAT(sheet.footer, HasSubstr(planFingerprint(plan)));
        EXPECT_EQ(spoken(sheet.below, sheet.style),
                  "The plan, 2026-01-02. Plan " + planFingerprint(plan) + ".");
        ASSERT_EQ(sheet.sections.size(), 1U);
        if (study.problem) continue;
        const auto tables = blocksOf<BenchTable>(sheet.sections[0]);
        ASSERT_EQ(tables.size(), 1U);
        EXPECT_EQ(tables[0]->rows.size(), study.table.rows.size());
        EXPECT_EQ(tables[0]->head.size(), study.table.columns.size());
    }
    Study none{"x", "X", {}, {}, {}, {}, Error{"nothing", "here", "to do"}};
    EXPECT_THAT(benchHtml(figureSheet(plan, none)), HasSubstr("There are no figures: "));
}

}  // namespace
}  // namespace lidwright
