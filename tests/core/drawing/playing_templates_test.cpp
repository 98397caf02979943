// Templates of what decides whether it plays: head, nut, bridge, gauges.
#include "tests/core/drawing/drawn_plans.h"
#include "tests/support/random_plan.h"

#include "core/drawing/template_sheets.h"
#include "core/drawing/template_views.h"
#include "core/solvers/fret_wire.h"

#include <set>

namespace lidwright {
namespace {

constexpr TemplateKind kKinds[] = {TemplateKind::Head, TemplateKind::Nut, TemplateKind::Bridge,
                                   TemplateKind::Gauges};

Sheet sheetOf(const Plan& plan, TemplateKind kind)
{
    return templateSheet(plan, derive(plan), kind, unitStyle(plan));
}

std::vector<Stroke> strokes(const Sheet& sheet, const std::string& layer, const std::string& part = "")
{
    std::vector<Stroke> out;
    for (const Element& e : sheet.elements)
        if (const auto* s = std::get_if<Stroke>(&e.what);
            s != nullptr && e.layer == layer && (part.empty() || e.part == part))
            out.push_back(*s);
    return out;
}

/// Whether the words stand on the sheet, over the ends of broken lines too.
bool says(const Sheet& sheet, const std::string& words)
{
    std::string all;
    for (const Text& t : testing::allWords(sheet))
        all += t.words + " ";
    const std::string noBreak = "\xC2\xA0";
    for (std::size_t at = all.find(noBreak); at != std::string::npos; at = all.find(noBreak, at))
        all.replace(at, noBreak.size(), " ");
    return all.find(words) != std::string::npos;
}

/// Twelve strings in courses on a scarfed head, in fractions of an inch.
Plan twelveStrings()
{
    Plan plan;
    plan.sheet.title = "Twelve";
    plan.sheet.unit = PlanUnit::InchFraction;
    plan.stringSet.resize(kMostStrings);
    for (std::size_t i = 0; i < plan.stringSet.size(); ++i) {
        plan.stringSet[i].gauge = 0.25 + 0.08 * static_cast<double>(i);
        plan.stringSet[i].pitch = 64 - 2 * static_cast<double>(i);
    }
    plan.strings.perCourse = 2;
    plan.strings.spreadAtNut = 44;
    plan.strings.spreadAtSaddle = 60;
    plan.fretboard.widthAtNut = 50;
    plan.neck.width = 54;
    plan.neck.tilt = 2;
    plan.neck.headLength = 250;
    plan.head.shape = HeadShape::Scarfed;
    plan.head.width = 64;
    return plan;
}

/// One string over a slanted bridge, with lines for frets and a string tree.
Plan oneString()
{
    Plan plan;
    plan.sheet.title = "One";
    plan.stringSet.resize(1);
    plan.bridge.angle = 12;
    plan.frets.kind = FretKind::Lines;
    plan.head.shape = HeadShape::Tree;
    plan.scale.nutForward = 1;
    return plan;
}

/// A stick without fretboard, six tuners in line, a zero fret.
Plan bareStick()
{
    Plan plan;
    plan.sheet.title = "Bare";
    plan.sheet.unit = PlanUnit::InchDecimal;
    plan.stringSet.resize(6);
    plan.frets.zeroFret = true;
    plan.tuners.side = TunerSide::Bass;
    plan.tuners.spacing = 28;
    plan.neck.headLength = 260;
    plan.strings.spacing = StringSpacing::EqualGaps;
    plan.strings.spreadAtNut = 32;
    plan.scale.nutToBox = 0;
    return plan;
}

std::vector<testing::NamedPlan> plans()
{
    std::vector<testing::NamedPlan> out = testing::drawnPlans();
    out.push_back({"twelve strings", twelveStrings()});
    out.push_back({"one string", oneString()});
    out.push_back({"bare stick", bareStick()});
    return out;
}

TEST(HeadTemplate, HolesLieWhereTheMakerMeasuresThem)
{
    const Sheet sheet = sheetOf({}, TemplateKind::Head);
    // By hand, from the plan's 42, 38 and 10.5 at a head 38 wide: two on each side.
    std::set<std::pair<long, long>> found;
    const double nut = strokes(sheet, "nut-line").front().points.front().x;
    const double middle = strokes(sheet, "centre", "head").front().points.front().y;
    for (const Stroke& hole : strokes(sheet, "tuners")) {
        EXPECT_EQ(hole.kind, LineKind::Cut);
        EXPECT_NEAR(bounds(hole.points).width(), 7, 1e-9);
        const Point c = bounds(hole.points).centre() - Point{nut, middle};
        found.insert({std::lround(100 * c.x), std::lround(100 * c.y)});
    }
    const std::set<std::pair<long, long>> asked{{-4200, 850}, {-4200, -850}, {-8000, 850}, {-8000, -850}};
    EXPECT_EQ(found, asked);
    for (const char* words : {"1: 42", "2: 80", "3: 80", "4: 42", "Drill 4 holes", "punch", "pilot hole",
                              "scrap", "eye and ear protection", "sugar maple", "100 mm"})
        EXPECT_TRUE(says(sheet, words)) << words;
}

TEST(HeadTemplate, HolesAreTheLayoutsOnWhateverFace)
{
    for (const auto& [name, plan] : plans()) {
        const Layout l = derive(plan);
        const Sheet sheet = sheetOf(plan, TemplateKind::Head);
        const auto holes = strokes(sheet, "tuners");
        ASSERT_EQ(holes.size(), plan.stringSet.size()) << name;
        const double nut = strokes(sheet, "nut-line").front().points.front().x;
        // Along the face: level over the step, then by the angle's own measure in plan view.
        const bool leans = plan.head.shape == HeadShape::Scarfed;
        const double step = plan.head.step, cosine = std::cos(radians(plan.head.angle));
        const auto punches = strokes(sheet, "punch");
        ASSERT_EQ(punches.size(), 2 * holes.size()) << name;
        for (std::size_t i = 0; i < holes.size(); ++i) {
            const Point c = bounds(holes[i].points).centre();
            const double level = l.nutX - l.head.posts[i].middle.x;
            EXPECT_NEAR(nut - c.x, leans ? step + (level - step) / cosine : level, 1e-6) << name;
            EXPECT_NEAR(c.y, l.head.posts[i].middle.y - l.neckY, 1e-9) << name;
            for (const Stroke& arm : {punches[2 * i], punches[2 * i + 1]})
                EXPECT_LT(distance(bounds(arm.points).centre(), c), 1e-9) << name;
        }
    }
}

TEST(HeadTemplate, TheOutlineIsAsLongAndAsWideAsTheHead)
{
    for (const auto& [name, plan] : plans()) {
        const Layout l = derive(plan);
        const Sheet sheet = sheetOf(plan, TemplateKind::Head);
        const auto outline = strokes(sheet, "outline");
        ASSERT_EQ(outline.size(), 1U) << name;
        const double nut = strokes(sheet, "nut-line").front().points.front().x;
        const Bounds b = bounds(outline.front().points);
        EXPECT_NEAR(nut - b.minX, l.head.faceLength, 1e-9) << name;
        EXPECT_NEAR(b.height(), std::max(l.head.width, plan.neck.width), 1e-9) << name;
        EXPECT_EQ(strokes(sheet, "side").size(), 1U) << name;
    }
    const Sheet wide = sheetOf(twelveStrings(), TemplateKind::Head);
    EXPECT_EQ(strokes(wide, "outline").front().points.size(), 8U) << "shoulders where the ears begin";
    for (const char* words : {"14°", "ears are glued on", "laid flat", "Drill 12 holes"})
        EXPECT_TRUE(says(wide, words)) << words;
    EXPECT_TRUE(says(sheetOf(oneString(), TemplateKind::Head), "string tree"));
    EXPECT_TRUE(says(sheetOf(oneString(), TemplateKind::Head), "Drill one hole"));
}

/// The slots of the view at full size: they come first.
std::vector<Bounds> slotsAtFullSize(const Sheet& sheet, std::size_t count)
{
    std::vector<Bounds> out;
    const auto all = strokes(sheet, "slots", "scale");
    EXPECT_EQ(all.size(), 2 * count) << "once at full size, once enlarged";
    for (std::size_t i = 0; i < std::min(count, all.size()); ++i)
        out.push_back(bounds(all[i].points));
    return out;
}

TEST(NutTemplate, SlotsOfAFreshPlanByHand)
{
    const Plan plan;
    const Sheet sheet = sheetOf(plan, TemplateKind::Nut);
    const Bounds nut = bounds(strokes(sheet, "outline", "scale").front().points);
    // 36 wide; fretboard 6, crown 1.1, clearance 0.4 and half of the thickest string, 1.0668.
    EXPECT_NEAR(nut.width(), 36, 1e-9);
    EXPECT_NEAR(nut.height(), 7.5 + 0.5334, 1e-9);
    const auto slots = slotsAtFullSize(sheet, 4);
    ASSERT_EQ(slots.size(), 4U);
    const double gauges[] = {1.0668, 0.8128, 0.635, 0.4064};  // from the bass side
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(slots[i].centre().x - nut.minX, 5 + 26.0 / 3 * static_cast<double>(i), 1e-9);
        EXPECT_NEAR(slots[i].width(), gauges[i], 1e-9);
        EXPECT_NEAR(slots[i].minY - nut.minY, 7.5, 0.01);
        EXPECT_NEAR(slots[i].maxY, nut.maxY, 1e-9);
    }
    for (const char* words : {"4: 5", "1: 31", "8.7", "1.067", "0.406", "common practice, no source",
                              "from the fretboard", "half the thickest string", "Lower at back"})
        EXPECT_TRUE(says(sheet, words)) << words;
}

TEST(NutTemplate, SlotsAreWhereTheStringsAre)
{
    for (const auto& [name, plan] : plans()) {
        const Layout l = derive(plan);
        const Sheet sheet = sheetOf(plan, TemplateKind::Nut);
        const std::size_t count = plan.stringSet.size();
        const auto slots = slotsAtFullSize(sheet, count);
        ASSERT_EQ(slots.size(), count) << name;
        const Bounds nut = bounds(strokes(sheet, "outline", "scale").front().points);
        double top = 0, mouths = 0;
        for (std::size_t i = 0; i < count; ++i) {
            const std::size_t string = count - 1 - i;
            EXPECT_NEAR(slots[i].centre().x - nut.centre().x, l.strings[string].first.y - l.neckY, 1e-6)
                << name;
            EXPECT_NEAR(slots[i].minY - nut.minY, l.head.nutZ - l.neckZ.high, 0.01) << name;
            mouths += slots[i].width();
        }
        // Top edge and slots make up the whole length, at full size and enlarged.
        const auto edges = strokes(sheet, "top", "scale");
        for (std::size_t i = 0; i < edges.size() / 2; ++i)
            top += bounds(edges[i].points).width();
        EXPECT_NEAR(top + mouths, nut.width(), 1e-6) << name;
    }
}

TEST(NutTemplate, SaysWhatCannotBe)
{
    EXPECT_TRUE(says(sheetOf(bareStick(), TemplateKind::Nut), "zero fret carries the strings"));
    EXPECT_TRUE(says(sheetOf(bareStick(), TemplateKind::Nut), "no fretboard"));
    Plan plan;
    EXPECT_FALSE(says(sheetOf(plan, TemplateKind::Nut), "change the plan"));
    plan.strings.spreadAtNut = 60;
    EXPECT_TRUE(says(sheetOf(plan, TemplateKind::Nut), "Not every string lies on the nut"));
    plan.strings.spreadAtNut = 0;
    EXPECT_TRUE(says(sheetOf(plan, TemplateKind::Nut), "run into one another"));
}

TEST(BridgeTemplate, ItIsDrawnStraightAtItsOwnSize)
{
    for (const auto& [name, plan] : plans()) {
        const Sheet sheet = sheetOf(plan, TemplateKind::Bridge);
        const auto outline = strokes(sheet, "outline", "bridge");
        ASSERT_EQ(outline.size(), 1U) << name;
        const Bounds b = bounds(outline.front().points);
        EXPECT_NEAR(b.width(), plan.bridge.length, 1e-9) << name;
        EXPECT_NEAR(b.height(), plan.bridge.width, 1e-9) << name;
        EXPECT_NEAR(std::abs(signedArea(outline.front().points)), plan.bridge.length * plan.bridge.width,
                    1e-6)
            << name << ": square in its own frame";
        EXPECT_NEAR(bounds(strokes(sheet, "front").front().points).height(), plan.bridge.height, 1e-9)
            << name;
        const auto slots = strokes(sheet, "slots", "bridge");
        ASSERT_EQ(slots.size(), plan.stringSet.size()) << name;
        EXPECT_EQ(strokes(sheet, "grooves").size(), plan.stringSet.size()) << name;
        // Along a slanted saddle line strings lie farther apart by its slant.
        if (plan.strings.spacing != StringSpacing::EqualCentres || plan.strings.perCourse > 1) continue;
        for (std::size_t i = 1; i < slots.size(); ++i)
            EXPECT_NEAR(bounds(slots[i].points).centre().x - bounds(slots[i - 1].points).centre().x,
                        plan.strings.spreadAtSaddle / static_cast<double>(slots.size() - 1) /
                            std::cos(radians(plan.bridge.angle)),
                        1e-6)
                << name;
    }
    const Sheet fresh = sheetOf({}, TemplateKind::Bridge);
    for (const char* words : {"not an edge of the bridge", "4: 28", "Height 7", "sugar maple", "grain"})
        EXPECT_TRUE(says(fresh, words)) << words;
    EXPECT_FALSE(says(fresh, "turned by"));
    EXPECT_TRUE(says(sheetOf(oneString(), TemplateKind::Bridge), "turned by 12°, its treble end nearer"));
}

TEST(GaugeTemplates, TabsAreAsLongAsTheSlotIsDeep)
{
    for (const auto& [name, plan] : plans()) {
        const auto tabs = strokes(sheetOf(plan, TemplateKind::Gauges), "depth");
        if (plan.frets.kind != FretKind::Wire || derive(plan).frets.lines.empty()) {
            EXPECT_TRUE(tabs.empty()) << name;
            EXPECT_TRUE(says(sheetOf(plan, TemplateKind::Gauges), "no gauge for their depth")) << name;
            continue;
        }
        const auto slot = plannedSlot(plan);
        ASSERT_TRUE(slot.ok()) << name;
        ASSERT_EQ(tabs.size(), 1U) << name;
        EXPECT_NEAR(slot->depth, plan.frets.tang + plan.frets.slotSpare, 1e-12) << name;
        // The four heights of its corners: tab, shoulders, shoulders, tab.
        std::set<double> heights;
        for (const Point p : tabs.front().points)
            heights.insert(std::round(1e6 * p.y) / 1e6);
        ASSERT_EQ(heights.size(), 4U) << name;
        auto at = heights.begin();
        const double tab = *at++, shoulder = *at++, other = *at++, blade = *at;
        EXPECT_NEAR(shoulder - tab, slot->depth, 2e-6) << name;
        EXPECT_NEAR(blade - other, slot->bladeProjection, 2e-6) << name;
    }
}

TEST(GaugeTemplates, StripsCarryEveryString)
{
    for (const auto& [name, plan] : plans()) {
        const Layout l = derive(plan);
        const Sheet sheet = sheetOf(plan, TemplateKind::Gauges);
        for (const bool nut : {true, false}) {
            const std::string part = nut ? "scale" : "bridge";
            const auto ends = strokes(sheet, "ends", part);
            const auto ticks = strokes(sheet, "ticks", part);
            ASSERT_EQ(ends.size(), 2U) << name;
            ASSERT_EQ(ticks.size(), plan.stringSet.size()) << name;
            const double from = ends[0].points[0].x;
            EXPECT_NEAR(ends[1].points[0].x - from, nut ? plan.fretboard.widthAtNut : plan.bridge.length,
                        1e-9)
                << name;
            for (std::size_t i = 0; i < ticks.size(); ++i) {
                const auto& string = l.strings[ticks.size() - 1 - i];
                const double at = nut ? string.first.y - l.neckY + plan.fretboard.widthAtNut / 2
                                      : distance(string.second, l.saddleFrom);
                EXPECT_NEAR(ticks[i].points[0].x - from, at, 1e-6) << name;
            }
            const Bounds strip = bounds(strokes(sheet, "strip", part).front().points);
            for (const Stroke& tick : ticks)
                EXPECT_TRUE(strip.contains(tick.points[1])) << name;
        }
    }
}

TEST(GaugeTemplates, TheWedgeIsAsHighAsItSays)
{
    for (const PlanUnit unit : {PlanUnit::Millimetre, PlanUnit::InchDecimal, PlanUnit::InchFraction}) {
        Plan plan;
        plan.sheet.unit = unit;
        const Sheet sheet = sheetOf(plan, TemplateKind::Gauges);
        const double step = unit == PlanUnit::Millimetre    ? 0.5
                            : unit == PlanUnit::InchDecimal ? 0.02 * 25.4
                                                            : 25.4 / 64;
        const auto ticks = strokes(sheet, "ticks", "setup");
        const auto wanted = strokes(sheet, "wanted");
        ASSERT_EQ(wanted.size(), 1U);
        ASSERT_GT(ticks.size(), 5U);
        EXPECT_NEAR(bounds(wanted[0].points).height(), plan.setup.action, 1e-9);
        const Point low = ticks[0].points[0];
        const double run = ticks[1].points[0].x - low.x;
        for (std::size_t i = 0; i < ticks.size(); ++i) {
            EXPECT_NEAR(bounds(ticks[i].points).height(), step * static_cast<double>(i + 1), 1e-9);
            EXPECT_NEAR(ticks[i].points[0].x - low.x, run * static_cast<double>(i), 1e-9);
        }
        // The mark of the action wanted lies on the same slope.
        EXPECT_NEAR((wanted[0].points[0].x - low.x) / run, plan.setup.action / step - 1, 1e-9);
        EXPECT_TRUE(says(sheet, "only as exact as it is printed and cut"));
    }
}

TEST(PlayingTemplates, NoWordsLieOverOthersAndAllLieOnTheSheet)
{
    for (const auto& [name, plan] : plans())
        for (const PlanUnit unit : {PlanUnit::Millimetre, PlanUnit::InchDecimal, PlanUnit::InchFraction})
            for (const TemplateKind kind : kKinds) {
                Plan own = plan;
                own.sheet.unit = unit;
                const Sheet sheet = sheetOf(own, kind);
                EXPECT_THAT(testing::wordsOverWords(sheet), ::testing::IsEmpty()) << name << word(kind);
                EXPECT_TRUE(says(sheet, own.sheet.title.substr(0, 5))) << name << word(kind);
                for (const Element& e : sheet.elements) {
                    const Bounds b = elementBounds(e, 1);
                    EXPECT_TRUE(sheet.extent.contains({b.minX, b.minY}) &&
                                sheet.extent.contains({b.maxX, b.maxY}))
                        << name << word(kind) << e.layer;
                }
            }
}

TEST(PlayingTemplates, AnyPlanWithinTheHardRangesGivesThem)
{
    testing::RandomPlans random(20260311);
    for (int i = 0; i < 80; ++i) {
        const Plan plan = random.next();
        const Layout layout = derive(plan);
        for (const TemplateKind kind : kKinds) {
            const Sheet sheet = templateSheet(plan, layout, kind, unitStyle(plan));
            ASSERT_FALSE(sheet.extent.empty());
            EXPECT_THAT(testing::wordsOverWords(sheet), ::testing::IsEmpty()) << i << word(kind);
            for (const Element& e : sheet.elements) {
                const Bounds b = elementBounds(e, 1);
                ASSERT_TRUE(std::isfinite(b.minX + b.minY + b.maxX + b.maxY)) << i << word(kind) << e.layer;
                EXPECT_TRUE(sheet.extent.contains({b.minX, b.minY}) &&
                            sheet.extent.contains({b.maxX, b.maxY}))
                    << i << word(kind) << e.layer;
            }
        }
    }
}

}  // namespace
}  // namespace lidwright
