#include "core/io/build/build_sheet_html.h"

#include "core/checks/check.h"
#include "core/io/build/build_steps.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <pugixml.hpp>

#include <regex>

namespace lidwright {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

std::string pageOf(const Plan& plan, bool drawing = true)
{
    const Layout l = derive(plan);
    BuildSheetInput input;
    input.version = "1.2.3";
    input.drawing = drawing;
    return buildSheetHtml(plan, l, check(plan, l), input);
}

TEST(BuildSheetHtml, HasEveryStepOnceAndInOrder)
{
    const Plan plan;
    const std::string page = pageOf(plan);
    std::size_t last = 0;
    for (const BuildStep& step : buildSteps(plan, derive(plan))) {
        const std::string mark = "<section id=\"" + step.id + "\">";
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
TEST(BuildSheetHtml, NeedsNothingElse)
{
    std::string page = pageOf({});
    EXPECT_THAT(page, HasSubstr("<svg"));
    page = std::regex_replace(page, std::regex("xmlns(:\\w+)?=\"[^\"]*\""), "");
    for (const char* outside : {"http:", "https:", "src=", "href=", "<script", "<link", "@import"})
        EXPECT_THAT(page, Not(HasSubstr(outside)));
}

// Read by an XML parser (the named entities of HTML put in by hand): tags are closed, the plan's words
// escaped.
TEST(BuildSheetHtml, IsWellFormedWhateverThePlanSays)
{
    Plan plan;
    plan.sheet.title = "A <b>\"wild\"</b> & long title";
    plan.sheet.maker = "M & <script>alert(1)</script>";
    plan.sheet.notes = "1 < 2 && 3 > 2";
    std::string page = pageOf(plan);
    EXPECT_THAT(page, Not(HasSubstr("<script")));
    EXPECT_THAT(page, HasSubstr("1 &lt; 2 &amp;&amp; 3 &gt; 2"));
    page = page.substr(page.find("<html"));
    page = std::regex_replace(page, std::regex("<meta[^>]*>"), "");
    page = std::regex_replace(page, std::regex("&nbsp;|&ndash;"), "-");
    pugi::xml_document document;
    const auto read = document.load_string(page.c_str());
    EXPECT_TRUE(read) << read.description() << " at "
                      << page.substr(static_cast<std::size_t>(read.offset), 80);
    EXPECT_STREQ(document.child("html").child("body").child("h1").text().get(), plan.sheet.title.c_str());
}

TEST(BuildSheetHtml, EveryFindingThatIsNotGoodIsOnIt)
{
    Plan plan;
    plan.neck.blankLength = 500;
    plan.accepted = {{"neck.blank", "I scarf on another piece"}};
    const Layout l = derive(plan);
    const std::string page = pageOf(plan, false);
    std::size_t wrong = 0;
    for (const Finding& f : check(plan, l)) {
        if (f.verdict == Verdict::Good) continue;
        wrong += f.verdict == Verdict::Wrong ? 1 : 0;
        EXPECT_THAT(page, HasSubstr(", " + f.rule + ": "));
    }
    EXPECT_GT(wrong, 0U);
    EXPECT_THAT(page, HasSubstr("I scarf on another piece"));
    EXPECT_THAT(page, Not(HasSubstr("<svg")));
}

TEST(BuildSheetHtml, SpeaksThePlansUnit)
{
    Plan plan;
    plan.sheet.unit = PlanUnit::InchFraction;
    EXPECT_THAT(pageOf(plan, false), HasSubstr(" in</td>"));
    EXPECT_THAT(pageOf({}, false), HasSubstr(" mm</td>"));
}

}  // namespace
}  // namespace lidwright
