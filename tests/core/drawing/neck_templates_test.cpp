#include "core/drawing/template_sheets.h"
#include "core/layout/layout.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace lidwright {
namespace {

std::vector<Stroke> strokes(const Sheet& sheet, const std::string& layer)
{
    std::vector<Stroke> out;
    for (const Element& e : sheet.elements)
        if (const auto* stroke = std::get_if<Stroke>(&e.what); stroke != nullptr && e.layer == layer)
            out.push_back(*stroke);
    return out;
}

bool says(const Sheet& sheet, const std::string& words)
{
    return std::any_of(sheet.elements.begin(), sheet.elements.end(), [&](const Element& e) {
        const auto* text = std::get_if<Text>(&e.what);
        return text != nullptr && text->words.find(words) != std::string::npos;
    });
}

Sheet sheetOf(const Plan& plan, TemplateKind kind)
{
    return templateSheet(plan, derive(plan), kind, unitStyle(plan));
}

TEST(NeckTemplates, SlotsLieWhereTheFretsAre)
{
    Plan plan;
    plan.scale.nutForward = 0.5;
    const Layout l = derive(plan);
    const auto slots = strokes(sheetOf(plan, TemplateKind::Fretboard), "slots");
    ASSERT_EQ(slots.size(), l.frets.lines.size());
    for (std::size_t i = 1; i < slots.size(); ++i)
        EXPECT_NEAR(slots[i].points[0].x - slots[0].points[0].x,
                    l.frets.lines[i].bass.x - l.frets.lines[0].bass.x, 1e-9);
    const auto outline = strokes(sheetOf(plan, TemplateKind::Fretboard), "outline");
    ASSERT_EQ(outline.size(), 1U);
    double least = 1e9, most = -1e9;
    for (const Point p : outline[0].points) {
        least = std::min(least, p.x);
        most = std::max(most, p.x);
    }
    EXPECT_NEAR(most - least, l.fretboardCut, 1e-9) << "full size";
    EXPECT_TRUE(says(sheetOf(plan, TemplateKind::Fretboard), "depth stop"));
}

TEST(NeckTemplates, TheSideHasTheAreaOfTheStick)
{
    const Plan plan;
    const Layout l = derive(plan);
    const auto side = strokes(sheetOf(plan, TemplateKind::Neck), "side");
    ASSERT_EQ(side.size(), 1U);
    // By hand: stick 25 thick from nut to tail less two reliefs, and the head stepped down to 15.
    const double by = 25 * (l.tailEndX - l.nutX) - 4.0 * (l.relief.cuts[0].to - l.relief.cuts[0].from) -
                      4.0 * (l.relief.cuts[1].to - l.relief.cuts[1].from) + (8 * 25 + 10 * 20 + 112 * 15);
    EXPECT_NEAR(std::abs(signedArea(side[0].points)), by, 0.5);
    EXPECT_EQ(strokes(sheetOf(plan, TemplateKind::Neck), "tuners").size(), plan.stringSet.size());
    EXPECT_TRUE(says(sheetOf(plan, TemplateKind::Neck), "4 deep")) << "each relief says how deep it is";
}

TEST(NeckTemplates, TheStoryStickCarriesEveryStation)
{
    const Plan plan;
    const Layout l = derive(plan);
    const Sheet sheet = sheetOf(plan, TemplateKind::StoryStick);
    const auto marks = strokes(sheet, "stations");
    EXPECT_EQ(marks.size(), l.stations.size());
    std::set<long> seen;
    for (const Stroke& mark : marks)
        seen.insert(std::lround(1000 * (mark.points[0].x - marks[0].points[0].x)));
    for (const Station& station : l.stations) {
        EXPECT_TRUE(seen.contains(std::lround(1000 * (station.x - l.stations.front().x)))) << station.id;
        EXPECT_TRUE(says(sheet, station.label)) << station.id;
    }
}

// Upright labels keep 3.6 mm from one another: their letters are 2.5 mm high.
TEST(NeckTemplates, LabelsDoNotLieOverOneAnother)
{
    for (const TemplateKind kind : {TemplateKind::Neck, TemplateKind::StoryStick, TemplateKind::Fretboard}) {
        std::vector<double> at;
        for (const Element& e : sheetOf({}, kind).elements)
            if (const auto* text = std::get_if<Text>(&e.what); text != nullptr && text->angle == 90)
                at.push_back(text->at.x);
        std::sort(at.begin(), at.end());
        ASSERT_GT(at.size(), 5U);
        for (std::size_t i = 1; i < at.size(); ++i)
            EXPECT_GE(at[i] - at[i - 1], 3.5) << word(kind);
    }
}

TEST(NeckTemplates, AnyPlanGivesThem)
{
    Plan plan;
    plan.scale.nutToBox = 0;  // no fretboard
    EXPECT_TRUE(says(sheetOf(plan, TemplateKind::Fretboard), "no fretboard"));
    plan = {};
    plan.head.shape = HeadShape::Scarfed;
    plan.neck.tilt = 2;
    EXPECT_EQ(strokes(sheetOf(plan, TemplateKind::Neck), "side").size(), 1U);
}

}  // namespace
}  // namespace lidwright
