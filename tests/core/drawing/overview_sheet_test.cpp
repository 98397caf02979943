#include "core/drawing/overview_sheet.h"

#include "tests/core/drawing/drawn_plans.h"
#include "tests/support/inside_plans.h"
#include "tests/support/random_plan.h"

#include "core/base/length_text.h"
#include "core/drawing/free_paper.h"
#include "core/drawing/sheet_frame.h"

#include <set>

namespace lidwright {
namespace {

using testing::all;

constexpr OverviewPaper kPapers[] = {OverviewPaper::A3, OverviewPaper::Tabloid};

Sheet overviewOf(const Plan& plan, OverviewPaper paper = OverviewPaper::A3)
{
    return overviewSheet(plan, derive(plan), unitStyle(plan), paper);
}

/// The number behind "1:" in the title block; 0 where there is none.
double scaleOf(const Sheet& sheet)
{
    for (const Text& t : all<Text>(sheet))
        if (t.words.starts_with("1:")) return std::stod(t.words.substr(2));
    return 0;
}

bool says(const Sheet& sheet, const std::string& words)
{
    for (const Text& t : all<Text>(sheet))
        if (t.words.find(words) != std::string::npos) return true;
    return false;
}

std::vector<Stroke> strokes(const Sheet& sheet, const std::string& part, const std::string& layer)
{
    std::vector<Stroke> out;
    for (const Element& e : sheet.elements)
        if (const auto* s = std::get_if<Stroke>(&e.what); s && e.part == part && e.layer == layer)
            out.push_back(*s);
    return out;
}

/// What should hold of any overview; false where it does not.
void expectOnPaper(const Sheet& sheet, OverviewPaper paper, const std::string& name)
{
    const Point size = overviewSize(paper);
    EXPECT_EQ(sheet.extent, (Bounds{0, 0, size.x, size.y})) << name;
    EXPECT_DOUBLE_EQ(sheet.paper, 1) << name;
    const Bounds frame = frameOf(size).grown(1e-6);
    const Bounds title{frame.maxX - kTitleBlockWidth, frame.minY, frame.maxX, frame.minY + kTitleBlockHeight};
    const std::set<double> series{2.5, 3.5, 5, 7};
    for (const Element& e : sheet.elements) {
        const Bounds b = elementBounds(e, 1);
        ASSERT_TRUE(std::isfinite(b.minX + b.minY + b.maxX + b.maxY)) << name << " " << e.layer;
        const bool furniture = e.layer == "frame" || e.layer == "furniture";
        // Centring marks stand across the frame.
        const Bounds room = e.layer == "frame" ? frame.grown(5) : frame;
        EXPECT_TRUE(room.contains({b.minX, b.minY}) && room.contains({b.maxX, b.maxY}))
            << name << " " << e.layer << " " << e.part;
        if (!furniture && e.layer != "table")
            EXPECT_FALSE(title.grown(-0.01).touches(b)) << name << " " << e.layer << " " << e.part;
        if (const auto* t = std::get_if<Text>(&e.what)) EXPECT_TRUE(series.count(t->height)) << t->words;
    }
}

TEST(OverviewSheet, PapersAreOnTheirSide)
{
    EXPECT_EQ(overviewSize(OverviewPaper::A3), (Point{420, 297}));
    EXPECT_NEAR(overviewSize(OverviewPaper::Tabloid).x, 431.8, 1e-9);
    EXPECT_NEAR(overviewSize(OverviewPaper::Tabloid).y, 279.4, 1e-9);
}

TEST(OverviewSheet, TheFrameIsThatOfIso5457)
{
    EXPECT_EQ(frameOf({420, 297}), (Bounds{20, 10, 410, 287}));
    const auto frame = sheetFrame({420, 297});
    ASSERT_EQ(frame.size(), 5U);
    EXPECT_EQ(bounds(std::get<Stroke>(frame[0].what).points), (Bounds{20, 10, 410, 287}));
    // Centring marks halve the sheet and are 10 mm long, half of it inside the frame.
    for (std::size_t i = 1; i < 5; ++i) {
        const auto& mark = std::get<Stroke>(frame[i].what).points;
        EXPECT_DOUBLE_EQ(distance(mark[0], mark[1]), 10);
        EXPECT_TRUE((mark[0].x == 210 && mark[1].x == 210) || (mark[0].y == 148.5 && mark[1].y == 148.5));
    }
}

TEST(OverviewSheet, EverythingStaysInsideTheFrameAndOffTheTitleBlock)
{
    for (auto& [name, plan] : testing::drawnPlans())
        for (const OverviewPaper paper : kPapers)
            for (const PlanUnit unit : {PlanUnit::Millimetre, PlanUnit::InchFraction}) {
                Plan own = plan;
                own.sheet.unit = unit;
                const Sheet sheet = overviewOf(own, paper);
                expectOnPaper(sheet, paper, name);
                EXPECT_THAT(testing::wordsOverWords(sheet), ::testing::IsEmpty()) << name;
                for (const char* view : {"Top view",
                                         "Long section A\xE2\x80\x93"
                                         "A",
                                         "Head end", "Tail end", "Lid from below, mirrored"})
                    EXPECT_TRUE(says(sheet, view)) << name << ": " << view;
            }
}

TEST(OverviewSheet, TheScaleIsOfIso5455AndTheLargestThatFits)
{
    const std::set<double> series{1, 2, 5, 10};
    for (auto& [name, plan] : testing::drawnPlans())
        for (const OverviewPaper paper : kPapers) {
            const double scale = scaleOf(overviewOf(plan, paper));
            EXPECT_TRUE(series.count(scale)) << name << " " << scale;
            // The stick alone needs 885 mm / 2 on the next larger one, more than either paper has.
            EXPECT_EQ(scale, 5) << name;
        }
    // A small one comes out twice as large as those, a very small one whole.
    Plan small;
    small.neck.headLength = 40;
    small.scale.length = 160;
    small.scale.nutToBox = 90;
    small.box.length = 110;
    small.box.width = 70;
    small.bridge.length = 30;
    EXPECT_EQ(scaleOf(overviewOf(small)), 2);
}

TEST(OverviewSheet, LengthsTimesTheScaleAreThePlans)
{
    for (auto& [name, plan] : testing::drawnPlans()) {
        const Layout l = derive(plan);
        const Sheet sheet = overviewOf(plan);
        const double scale = scaleOf(sheet);
        ASSERT_GT(scale, 0) << name;
        // The dimension from nut to saddle, by its words and by its ends.
        const std::string words = formatLength(l.saddleX - l.nutX, unitStyle(plan), false).text;
        bool found = false;
        for (const Dimension& d : all<Dimension>(sheet))
            if (d.words == words && std::abs(distance(d.a, d.b) * scale - (l.saddleX - l.nutX)) < 1e-6)
                found = true;
        EXPECT_TRUE(found) << name;
        // Top view and long section: the box's outline by its own size and the saddle in line in both.
        std::vector<double> saddles;
        for (const Stroke& s : strokes(sheet, "bridge", "bridge"))
            if (!s.closed && s.kind != LineKind::Phantom) saddles.push_back(bounds(s.points).centre().x);
        ASSERT_EQ(saddles.size(), 2U) << name;
        EXPECT_NEAR(saddles[0], saddles[1], 1e-6) << name;
        const auto lid = strokes(sheet, "lid", "lid");
        ASSERT_FALSE(lid.empty()) << name;
        EXPECT_NEAR(bounds(lid[0].points).width() * scale, bounds(l.lidOutline).width(), 1e-6) << name;
        EXPECT_NEAR(std::abs(signedArea(lid[0].points)) * scale * scale, std::abs(signedArea(l.lidOutline)),
                    1e-3)
            << name;
    }
}

TEST(OverviewSheet, ViewsStandByTheProjection)
{
    for (const bool first : {true, false}) {
        Plan plan;
        plan.sheet.projection = first ? Projection::FirstAngle : Projection::ThirdAngle;
        const Sheet sheet = overviewOf(plan);
        const auto at = [&](const std::string& words) {
            for (const Text& t : all<Text>(sheet))
                if (t.words.starts_with(words)) return t.at;
            ADD_FAILURE() << words;
            return Point{};
        };
        EXPECT_EQ(at("Long section").y > at("Top view").y, first);
        EXPECT_EQ(at("Head end").x > at("Tail end").x, first);
        EXPECT_NEAR(at("Head end").y, at("Tail end").y, 1e-6);
    }
}

TEST(OverviewSheet, TheTitleBlockSaysWhatItIs)
{
    Plan plan;
    plan.sheet.title = "Porch";
    plan.sheet.maker = "A shop";
    const Sheet sheet = overviewOf(plan, OverviewPaper::Tabloid);
    for (const char* words : {"Porch", "A shop", "1:5", "Tabloid", "Millimetres", "Overview", "635",
                              "330 \xC3\x97 230 \xC3\x97 64"})
        EXPECT_TRUE(says(sheet, words)) << words;
    plan.sheet.unit = PlanUnit::InchDecimal;
    EXPECT_TRUE(says(overviewOf(plan), "Inches"));
    // The check line is 100 mm long.
    bool checked = false;
    for (const Stroke& s : strokes(sheet, "", "frame"))
        if (s.kind == LineKind::Mark && std::abs(distance(s.points[0], s.points[1]) - 100) < 1e-9)
            checked = true;
    EXPECT_TRUE(checked);
    // Words end with an ellipsis where they are too long for their field.
    plan.sheet.title = std::string(100, 'W');
    const Sheet longer = overviewOf(plan);
    expectOnPaper(longer, OverviewPaper::A3, "long title");
    EXPECT_TRUE(says(longer, "WWW\xE2\x80\xA6"));
    EXPECT_LE(textWidth(fitted(plan.sheet.title, 5, 50), 5), 50);
    EXPECT_EQ(fitted("short", 5, 50), "short");
}

TEST(OverviewSheet, AFurnishedBoxIsShown)
{
    const Plan plan = testing::furnishedPlan();
    for (const OverviewPaper paper : kPapers) {
        const Sheet sheet = overviewOf(plan, paper);
        expectOnPaper(sheet, paper, "furnished");
        EXPECT_FALSE(strokes(sheet, "bar.1", "bars").empty());
    }
}

TEST(OverviewSheet, AnyPlanWithinTheHardRangesStaysOnThePaper)
{
    testing::RandomPlans random(815);
    for (int i = 0; i < 150; ++i) {
        const Plan plan = random.next();
        const OverviewPaper paper = kPapers[i % 2];
        const Sheet sheet = overviewOf(plan, paper);
        expectOnPaper(sheet, paper, "plan " + std::to_string(i));
        EXPECT_GT(scaleOf(sheet), 0) << "plan " << i;
    }
}

TEST(FreePaper, ThingsKeepApartAndInside)
{
    FreePaper free({0, 0, 100, 50});
    free.take({0, 0, 40, 20}, 5);
    EXPECT_FALSE(free.isFree({44, 0, 60, 10}));
    EXPECT_TRUE(free.isFree({45, 0, 60, 10}));
    EXPECT_FALSE(free.isFree({90, 0, 101, 10}));
    const auto corner = free.placeFor({30, 20}, FreePaper::Toward::LowerLeft);
    ASSERT_TRUE(corner);
    EXPECT_EQ(*corner, (Point{0, 25}));
    const auto right = free.placeFor({30, 20}, FreePaper::Toward::LowerRight);
    ASSERT_TRUE(right);
    EXPECT_EQ(*right, (Point{70, 0}));
    EXPECT_FALSE(free.placeFor({101, 1}, FreePaper::Toward::Top));
    // Free from x = 45 on: in the middle of that, and of the height.
    const Point by = free.toTheMiddle({70, 0, 100, 20});
    EXPECT_NEAR(70 + by.x, 45 + (55 - 30) / 2.0, 1e-9);
    EXPECT_NEAR(by.y, 15, 1e-9);
    const auto group = free.placeForAll({{0, 0, 20, 10}, {30, 0, 50, 10}});
    ASSERT_TRUE(group);
    EXPECT_EQ(*group, (Point{25, 40}));
}

}  // namespace
}  // namespace lidwright
