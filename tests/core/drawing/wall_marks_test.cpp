#include "tests/core/drawing/drawn_plans.h"
#include "tests/support/inside_plans.h"

#include "core/base/length_text.h"
#include "core/drawing/opening_detail.h"
#include "core/drawing/template_sheets.h"

namespace lidwright {
namespace {

using testing::all;
using testing::furnishedPlan;

Sheet sheetOf(const Plan& plan, TemplateKind kind)
{
    return templateSheet(plan, derive(plan), kind, unitStyle(plan));
}

std::vector<Stroke> strokes(const Sheet& sheet, const std::string& layer)
{
    std::vector<Stroke> out;
    for (const Element& e : sheet.elements)
        if (const auto* s = std::get_if<Stroke>(&e.what); s && e.layer == layer) out.push_back(*s);
    return out;
}

bool says(const Sheet& sheet, const std::string& words)
{
    // Notes are broken into lines.
    std::string all;
    for (const Text& t : testing::allWords(sheet))
        all += t.words + " ";
    return all.find(words) != std::string::npos;
}

bool measures(const Sheet& sheet, double mm, const UnitStyle& style)
{
    for (const Dimension& d : all<Dimension>(sheet))
        if (d.words == formatLength(mm, style, false).text && std::abs(distance(d.a, d.b) - mm) < 1e-9)
            return true;
    return false;
}

TEST(WallMarks, TheSawStaysInsideTheLineByTheSandingAllowance)
{
    for (const double top : {0.0, -12.0})  // a notch and a mortise
        for (const double sanding : {0.3, 1.0}) {
            Plan plan;
            plan.neck.top = top;
            plan.shop.sanding = sanding;
            const Sheet sheet = sheetOf(plan, TemplateKind::HeadWall);
            const auto opening = strokes(sheet, "opening"), saw = strokes(sheet, "saw");
            ASSERT_EQ(opening.size(), 1U);
            ASSERT_EQ(saw.size(), 1U);
            EXPECT_EQ(saw[0].kind, LineKind::Mark);
            EXPECT_EQ(saw[0].closed, top < 0);
            const Bounds line = bounds(opening[0].points), inside = bounds(saw[0].points);
            EXPECT_NEAR(inside.minX - line.minX, sanding, 1e-9);
            EXPECT_NEAR(line.maxX - inside.maxX, sanding, 1e-9);
            EXPECT_NEAR(inside.minY - line.minY, sanding, 1e-9);
            EXPECT_NEAR(line.maxY - inside.maxY, top < 0 ? sanding : 0, 1e-9);
            for (const char* words :
                 {"waste", "inside the inner line, leave the line", "of air on each side"})
                EXPECT_TRUE(says(sheet, words)) << words;
            EXPECT_TRUE(says(sheet, formatLength(sanding, unitStyle(plan)).text + " left to the outer one"));
        }
}

TEST(WallMarks, WithoutSandingTheLineItselfIsSawnTo)
{
    Plan plan;
    plan.shop.sanding = 0;
    const Sheet sheet = sheetOf(plan, TemplateKind::HeadWall);
    EXPECT_TRUE(strokes(sheet, "saw").empty());
    EXPECT_TRUE(strokes(sheet, "detail").empty());
    EXPECT_TRUE(says(sheet, "saw inside the line, leave the line"));
    plan.shop.sanding = 0.3;
    plan.headOpening.cut = true;
    const Sheet standing = sheetOf(plan, TemplateKind::HeadWall);
    EXPECT_TRUE(strokes(standing, "saw").empty());
    EXPECT_FALSE(says(standing, "waste"));
}

TEST(WallMarks, ATiltedNeckHasItsOwnDepthAtEachWall)
{
    Plan plan;
    plan.neck.tilt = 2;
    const Layout l = derive(plan);
    const UnitStyle style = unitStyle(plan);
    // The floor is the stick's underside where it is lowest in the wall: at the head wall's outer face it
    // lies where the plan says, and over the box's length (less one wall) it rises by the tilt.
    const double head = plan.neck.thickness;
    const double rise = std::tan(radians(2.0)) * (l.tailWall.innerX - l.headWall.outerX);
    EXPECT_TRUE(measures(sheetOf(plan, TemplateKind::HeadWall), head, style));
    EXPECT_TRUE(measures(sheetOf(plan, TemplateKind::TailWall), head - rise, style));
    EXPECT_TRUE(says(sheetOf(plan, TemplateKind::TailWall), "each end wall has its own depth"));
}

TEST(WallMarks, TheDetailIsLargeEnoughToTellTheLinesApart)
{
    EXPECT_EQ(detailScale(1), 2);
    EXPECT_EQ(detailScale(0.3), 10);
    EXPECT_EQ(detailScale(0.05), 50);
    const auto detail = openingDetail({100, 50}, 0.3, 0.2, UnitStyle{});
    // Finished line and saw are ten times 0.3 apart, the neck stands ten times 0.2 off the line.
    double cut = -1, saw = -1, neck = -1;
    for (const Element& e : detail)
        if (const auto* s = std::get_if<Stroke>(&e.what)) {
            if (s->kind == LineKind::Cut) cut = s->points[0].x;
            if (s->kind == LineKind::Mark) saw = s->points[0].x;
            if (s->kind == LineKind::Phantom) neck = s->points[0].x;
        }
    EXPECT_NEAR(saw - cut, 3, 1e-9);
    EXPECT_NEAR(neck - cut, 2, 1e-9);
    for (const Element& e : detail)
        EXPECT_GE(elementBounds(e, 1).minX, 100 - 1e-9);
}

TEST(WallMarks, HolesForWiringStandOnTheirOwnWallWithTheirMiddles)
{
    const Plan plan = furnishedPlan();
    const UnitStyle style = unitStyle(plan);
    const Layout l = derive(plan);
    struct Case {
        TemplateKind kind;
        std::size_t device;
        double x;  ///< on the sheet
    };
    // Outside faces seen: head-end and treble wall run backwards.
    for (const Case& c : {Case{TemplateKind::HeadWall, 5, 60}, Case{TemplateKind::TailWall, 6, 70},
                          Case{TemplateKind::TrebleWall, 4, -270}}) {
        const Sheet sheet = sheetOf(plan, c.kind);
        const auto holes = strokes(sheet, "wiring");
        ASSERT_EQ(holes.size(), 1U) << word(c.kind);
        EXPECT_EQ(holes[0].kind, LineKind::Cut);
        const Bounds hole = bounds(holes[0].points);
        EXPECT_NEAR(hole.centre().x, c.x, 1e-9);
        EXPECT_NEAR(hole.centre().y, l.walls.high - plan.wiring[c.device].down, 1e-9);
        EXPECT_TRUE(measures(sheet, std::abs(plan.wiring[c.device].along), style)) << word(c.kind);
        EXPECT_TRUE(measures(sheet, plan.wiring[c.device].down, style)) << word(c.kind);
        EXPECT_TRUE(says(sheet, "\xE2\x8C\x80 10"));
        // The centre mark crosses in the hole's middle.
        int marks = 0;
        for (const Element& e : sheet.elements)
            if (const auto* s = std::get_if<Stroke>(&e.what);
                s && e.layer == "centre" && e.part == l.devices[c.device].part) {
                ++marks;
                EXPECT_NEAR(distance(bounds(s->points).centre(), hole.centre()), 0, 1e-9);
            }
        EXPECT_EQ(marks, 2);
    }
    EXPECT_TRUE(strokes(sheetOf(plan, TemplateKind::BassWall), "wiring").empty());
    EXPECT_TRUE(says(sheetOf(plan, TemplateKind::BassWall), "nothing to drill"));
}

TEST(WallMarks, TemplatesAreOfferedForWhatThePlanHas)
{
    const auto offered = [](const Plan& plan, TemplateKind kind) {
        const auto kinds = templatesOf(plan);
        return std::count(kinds.begin(), kinds.end(), kind) == 1;
    };
    const Plan bare, full = furnishedPlan();
    for (const TemplateKind kind : {TemplateKind::BassWall, TemplateKind::TrebleWall, TemplateKind::Wiring})
        EXPECT_FALSE(offered(bare, kind));
    EXPECT_TRUE(offered(full, TemplateKind::TrebleWall));
    EXPECT_FALSE(offered(full, TemplateKind::BassWall));
    EXPECT_TRUE(offered(full, TemplateKind::Wiring));
    std::vector<std::string> words;
    for (const TemplateKind kind : kTemplateKinds)
        words.emplace_back(word(kind));
    EXPECT_EQ(words, (std::vector<std::string>{"overview", "lid", "lid-below", "head-wall", "tail-wall",
                                               "bass-wall", "treble-wall", "base", "blocks", "backing",
                                               "neck", "head", "fretboard", "nut", "bridge", "gauges",
                                               "story-stick", "cutting-plan", "wiring"}));
}

TEST(WallMarks, TheLidsTemplateHasItsHolesForWiring)
{
    const Plan plan = furnishedPlan();
    const auto cuts = strokes(sheetOf(plan, TemplateKind::Lid), "wiring");
    // The pot's hole and the magnetic pickup's opening.
    ASSERT_EQ(cuts.size(), 2U);
    EXPECT_NEAR(std::abs(signedArea(cuts[0].points)), 22 * 70, 1e-6);
    EXPECT_NEAR(bounds(cuts[1].points).width(), 10, 0.03);
    EXPECT_NEAR(bounds(cuts[1].points).centre().x, 290, 1e-9);
}

TEST(WallMarks, NoWordsLieOverOthers)
{
    for (const PlanUnit unit : {PlanUnit::Millimetre, PlanUnit::InchFraction})
        for (const TemplateKind kind : kTemplateKinds) {
            Plan plan = furnishedPlan();
            plan.sheet.unit = unit;
            EXPECT_THAT(testing::wordsOverWords(sheetOf(plan, kind)), ::testing::IsEmpty()) << word(kind);
        }
}

}  // namespace
}  // namespace lidwright
