#include "core/drawing/template_sheets.h"

#include "tests/core/drawing/drawn_plans.h"
#include "tests/support/random_plan.h"

#include "core/base/length_text.h"

#include <set>

namespace lidwright {
namespace {

using testing::all;

constexpr TemplateKind kKinds[] = {TemplateKind::Lid, TemplateKind::HeadWall, TemplateKind::TailWall};

std::vector<Stroke> strokes(const Sheet& sheet, const std::string& layer)
{
    std::vector<Stroke> out;
    for (const Element& e : sheet.elements)
        if (const auto* s = std::get_if<Stroke>(&e.what); s && e.layer == layer) out.push_back(*s);
    return out;
}

bool says(const Sheet& sheet, const std::string& words)
{
    for (const Text& t : testing::allWords(sheet))
        if (t.words.find(words) != std::string::npos) return true;
    return false;
}

/// True when a dimension of that measure stands on the sheet.
bool measures(const Sheet& sheet, double mm, const UnitStyle& style)
{
    for (const Dimension& d : all<Dimension>(sheet))
        if (d.words == formatLength(mm, style, false).text && std::abs(distance(d.a, d.b) - mm) < 1e-9)
            return true;
    return false;
}

TEST(TemplateSheets, TheLidIsTheLayoutsLidAtFullSize)
{
    for (auto& [name, plan] : testing::drawnPlans()) {
        const Layout l = derive(plan);
        const Sheet sheet = templateSheet(plan, l, TemplateKind::Lid, unitStyle(plan));
        EXPECT_DOUBLE_EQ(sheet.paper, 1);
        const auto outline = strokes(sheet, "outline");
        ASSERT_EQ(outline.size(), 1U) << name;
        EXPECT_EQ(outline.front().kind, LineKind::Cut);
        EXPECT_TRUE(outline.front().closed);
        EXPECT_DOUBLE_EQ(signedArea(outline.front().points), signedArea(l.lidOutline)) << name;
        EXPECT_EQ(bounds(outline.front().points), bounds(l.lidOutline)) << name;
        // Signed areas of all cut rings are the cut area, holes taken off.
        double cut = 0;
        for (const Stroke& s : strokes(sheet, "artwork")) {
            EXPECT_EQ(s.kind, LineKind::Cut);
            cut += signedArea(s.points);
        }
        double expected = 0;
        for (const PlacedArtPtr& art : l.art)
            expected += area(art->cut);
        EXPECT_NEAR(cut, expected, 1e-9 * std::max(1.0, expected)) << name;
        EXPECT_EQ(strokes(sheet, "holes").size(), l.holes.size()) << name;
        EXPECT_EQ(strokes(sheet, "bridge").front().points, l.bridgeOutline) << name;
    }
}

TEST(TemplateSheets, TheLidCarriesWhatABenchNeeds)
{
    Plan plan;
    plan.sheet.title = "Porch";
    plan.art.push_back(testing::roundel());
    const Layout l = derive(plan);
    const UnitStyle style = unitStyle(plan);
    const Sheet sheet = templateSheet(plan, l, TemplateKind::Lid, style);
    EXPECT_TRUE(measures(sheet, l.saddleX - l.lidOutline.front().x, style) || measures(sheet, 235, style));
    EXPECT_TRUE(measures(sheet, 95, style));
    EXPECT_TRUE(measures(sheet, 330, style));
    EXPECT_TRUE(measures(sheet, 230, style));
    for (const char* words : {"Porch", "Lid, top face seen", "Full size", "Thickness 3 mm", "grain",
                              "saw outside the line", "saw inside the line", "Hatched",
                              "nut 400 from this edge", "Tail end", "ventilation, eye protection", "100 mm"})
        EXPECT_TRUE(says(sheet, words)) << words;
    // Only what is cut is drawn with the cut line.
    for (const Element& e : sheet.elements)
        if (const auto* s = std::get_if<Stroke>(&e.what)) {
            EXPECT_EQ(s->kind == LineKind::Cut,
                      e.layer == "outline" || e.layer == "artwork" || e.layer == "holes");
        }
    const auto check = strokes(sheet, "check");
    ASSERT_FALSE(check.empty());
    EXPECT_DOUBLE_EQ(distance(check[0].points[0], check[0].points[1]), 100);
}

TEST(TemplateSheets, ANotchIsOpenAtTheTopAndMeasuredFromThere)
{
    Plan plan;
    plan.neck.offset = 9;  // so that left and right differ
    const Layout l = derive(plan);
    const UnitStyle style = unitStyle(plan);
    for (const bool head : {true, false}) {
        const Sheet sheet =
            templateSheet(plan, l, head ? TemplateKind::HeadWall : TemplateKind::TailWall, style);
        const EndWallLayout& wall = head ? l.headWall : l.tailWall;
        const auto opening = strokes(sheet, "opening");
        ASSERT_EQ(opening.size(), 1U);
        EXPECT_EQ(opening.front().kind, LineKind::Cut);
        EXPECT_FALSE(opening.front().closed);
        const Bounds cut = bounds(opening.front().points);
        EXPECT_NEAR(cut.width(), plan.neck.width + 2 * plan.shop.fit, 1e-9);
        EXPECT_NEAR(cut.height(), plan.neck.thickness, 1e-9);  // 25 under the lid
        // Outside face seen: from the head the treble side lies left.
        EXPECT_NEAR(cut.centre().x, head ? -9 : 9, 1e-9);
        for (const double mm :
             {wall.openingWidth, plan.neck.thickness, wall.leftUnder, wall.leftBass, wall.leftTreble})
            EXPECT_TRUE(measures(sheet, mm, style)) << mm;
        // Wall and cut together close the wall's outline.
        const auto outline = strokes(sheet, "outline");
        ASSERT_EQ(outline.size(), 1U);
        EXPECT_EQ(outline.front().points.front(), opening.front().points.front());
        EXPECT_EQ(outline.front().points.back(), opening.front().points.back());
        EXPECT_TRUE(
            says(sheet, head ? "Head-end wall, outside face seen" : "Tail-end wall, outside face seen"));
        EXPECT_TRUE(says(sheet, "Notch: saw inside the inner line, leave the line"));
        EXPECT_TRUE(says(sheet, "eye protection"));
    }
}

TEST(TemplateSheets, AMortiseIsClosedAndNamedSo)
{
    Plan plan;
    plan.neck.top = -12;
    const Layout l = derive(plan);
    const Sheet sheet = templateSheet(plan, l, TemplateKind::TailWall, unitStyle(plan));
    const auto opening = strokes(sheet, "opening");
    ASSERT_EQ(opening.size(), 1U);
    EXPECT_TRUE(opening.front().closed);
    EXPECT_TRUE(says(sheet, "Mortise"));
    EXPECT_TRUE(measures(sheet, 12, unitStyle(plan)));  // the strip above
    EXPECT_TRUE(measures(sheet, 37, unitStyle(plan)));  // its floor from the top edge
}

TEST(TemplateSheets, AnOpeningThatStandsIsNotToBeCutAgain)
{
    Plan plan;
    plan.headOpening.cut = true;
    const Sheet sheet = templateSheet(plan, derive(plan), TemplateKind::HeadWall, unitStyle(plan));
    EXPECT_TRUE(says(sheet, "cut already"));
    EXPECT_FALSE(says(sheet, "saw inside"));
}

TEST(TemplateSheets, AWallThatTheNeckMissesHasNothingToCut)
{
    Plan plan;
    plan.neck.offset = 390;
    const Layout l = derive(plan);
    ASSERT_FALSE(l.headWall.crossed);
    const Sheet sheet = templateSheet(plan, l, TemplateKind::HeadWall, unitStyle(plan));
    EXPECT_TRUE(strokes(sheet, "opening").empty());
    EXPECT_TRUE(says(sheet, "nothing to cut"));
}

TEST(TemplateSheets, NoWordsLieOverOthersAndAllCanBeRead)
{
    const std::set<double> series{2.5, 3.5, 5, 7};
    for (auto& [name, plan] : testing::drawnPlans())
        for (const PlanUnit unit : {PlanUnit::Millimetre, PlanUnit::InchDecimal, PlanUnit::InchFraction})
            for (const TemplateKind kind : kKinds) {
                Plan own = plan;
                own.sheet.unit = unit;
                const Sheet sheet = templateSheet(own, derive(own), kind, unitStyle(own));
                EXPECT_THAT(testing::wordsOverWords(sheet), ::testing::IsEmpty())
                    << name << ", " << word(kind);
                for (const Text& t : testing::allWords(sheet)) {
                    EXPECT_TRUE(series.count(t.height)) << t.words;
                    const Bounds b = bounds(textOutline(t, 1));
                    EXPECT_TRUE(sheet.extent.contains({b.minX, b.minY}) &&
                                sheet.extent.contains({b.maxX, b.maxY}))
                        << t.words;
                }
            }
}

TEST(TemplateSheets, AnyPlanWithinTheHardRangesGivesTemplates)
{
    testing::RandomPlans random(4711);
    for (int i = 0; i < 120; ++i) {
        const Plan plan = random.next();
        const Layout layout = derive(plan);
        for (const TemplateKind kind : kKinds) {
            const Sheet sheet = templateSheet(plan, layout, kind, unitStyle(plan));
            ASSERT_FALSE(sheet.extent.empty());
            EXPECT_TRUE(std::isfinite(sheet.extent.width()) && std::isfinite(sheet.extent.height()))
                << "plan " << i;
        }
    }
}

TEST(TemplateSheets, WordsNameThem)
{
    EXPECT_STREQ(word(TemplateKind::Lid), "lid");
    EXPECT_STREQ(word(TemplateKind::HeadWall), "head-wall");
    EXPECT_STREQ(word(TemplateKind::TailWall), "tail-wall");
}

}  // namespace
}  // namespace lidwright
