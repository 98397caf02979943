#include "tests/core/drawing/drawn_plans.h"
#include "tests/support/inside_plans.h"
#include "tests/support/random_plan.h"

#include "core/base/length_text.h"
#include "core/drawing/base_marks.h"
#include "core/drawing/template_sheets.h"
#include "core/layout/fittings_layout.h"
#include "core/solvers/lists/cut_pieces.h"

#include <set>

namespace lidwright {
namespace {

using testing::all;
using testing::furnishedPlan;

constexpr TemplateKind kBody[] = {TemplateKind::LidBelow,   TemplateKind::Base,     TemplateKind::Blocks,
                                  TemplateKind::HeadWall,   TemplateKind::TailWall, TemplateKind::BassWall,
                                  TemplateKind::TrebleWall, TemplateKind::Lid,      TemplateKind::Backing};

Sheet sheetOf(const Plan& plan, TemplateKind kind)
{
    return templateSheet(plan, derive(plan), kind, unitStyle(plan));
}

std::vector<Stroke> strokes(const Sheet& sheet, const std::string& layer, const std::string& part = {})
{
    std::vector<Stroke> out;
    for (const Element& e : sheet.elements)
        if (const auto* s = std::get_if<Stroke>(&e.what);
            s && e.layer == layer && (part.empty() || e.part == part))
            out.push_back(*s);
    return out;
}

bool says(const Sheet& sheet, const std::string& words)
{
    // Notes are broken into lines.
    std::string said;
    for (const Text& t : testing::allWords(sheet))
        said += t.words + " ";
    return said.find(words) != std::string::npos;
}

bool measures(const Sheet& sheet, double mm, const UnitStyle& style)
{
    for (const Dimension& d : all<Dimension>(sheet))
        if (d.words == formatLength(mm, style, false).text && std::abs(distance(d.a, d.b) - mm) < 1e-9)
            return true;
    return false;
}

/// The rings as they would be seen from the other face, for comparing without regard to order.
std::multiset<std::vector<std::pair<double, double>>> turnedOver(const std::vector<Stroke>& lines)
{
    std::multiset<std::vector<std::pair<double, double>>> out;
    for (const Stroke& line : lines) {
        std::vector<std::pair<double, double>> points;
        for (const Point p : line.points)
            points.emplace_back(p.x, -p.y);
        out.insert(points);
    }
    return out;
}
std::multiset<std::vector<std::pair<double, double>>> asTheyAre(std::vector<Stroke> lines)
{
    for (Stroke& line : lines)
        for (Point& p : line.points)
            p.y = -p.y;
    return turnedOver(lines);
}

Plan screwedPlan()
{
    Plan plan = furnishedPlan();
    plan.box.baseFastening = BaseFastening::Screwed;
    return plan;
}

TEST(LidBelowTemplate, EveryCutIsTheLidsSeenFromTheOtherFace)
{
    auto plans = testing::drawnPlans();
    plans.push_back({"furnished", furnishedPlan()});
    Plan screws;
    screws.fixings = {{FixingKind::Screw, 12, 100, 3}, {FixingKind::Pin, 300, -90, 4}};
    plans.push_back({"screws", screws});
    for (const auto& [name, plan] : plans) {
        const Sheet above = sheetOf(plan, TemplateKind::Lid), below = sheetOf(plan, TemplateKind::LidBelow);
        std::size_t cuts = 0;
        for (const char* layer : {"artwork", "holes", "fixings", "wiring", "outline"}) {
            const auto from = strokes(above, layer);
            cuts += from.size();
            EXPECT_EQ(asTheyAre(from), turnedOver(strokes(below, layer))) << name << " " << layer;
            for (const Stroke& s : strokes(below, layer))
                EXPECT_EQ(s.kind, LineKind::Cut) << name << " " << layer;
        }
        EXPECT_GE(cuts, 1U) << name;
        EXPECT_TRUE(says(below, "seen from below, mirrored")) << name;
        EXPECT_DOUBLE_EQ(below.paper, 1) << name;
    }
}

TEST(LidBelowTemplate, GlueFacesAndStationsAreThePlans)
{
    const Plan plan = furnishedPlan();
    const Layout l = derive(plan);
    const UnitStyle style = unitStyle(plan);
    const Sheet sheet = sheetOf(plan, TemplateKind::LidBelow);
    for (std::size_t i = 0; i < plan.bars.size(); ++i) {
        const auto bar = strokes(sheet, "bars", l.bars[i].part);
        ASSERT_EQ(bar.size(), 1U);
        const Bounds b = bounds(bar[0].points);
        EXPECT_NEAR(b.centre().x, plan.bars[i].x, 1e-9);
        EXPECT_NEAR(b.centre().y, -plan.bars[i].y, 1e-9);
        EXPECT_NEAR(std::abs(signedArea(bar[0].points)), plan.bars[i].length * plan.bars[i].width, 1e-6);
        EXPECT_TRUE(measures(sheet, plan.bars[i].x, style)) << i;
        EXPECT_TRUE(measures(sheet, std::abs(plan.bars[i].y), style)) << i;
    }
    EXPECT_EQ(strokes(sheet, "blocks").size(), 4U);
    EXPECT_TRUE(measures(sheet, l.saddleX, style));
    // The walls' inner faces bound the glue land: 8 mm all round.
    const auto walls = strokes(sheet, "walls");
    ASSERT_EQ(walls.size(), 1U);
    EXPECT_NEAR(bounds(walls[0].points).width(), 330 - 16, 1e-9);
    // Where the stick is full: 20 mm of land at each end, 38 wide, and the pad, 40 by 20.
    double against = 0;
    for (const Stroke& s : strokes(sheet, "stick"))
        against += std::abs(signedArea(s.points));
    EXPECT_NEAR(against, 2 * 20 * 38 + 40 * 20, 0.01);
    EXPECT_TRUE(says(sheet, "walls' top edges all round, blocks, bars, where the stick is full"));
}

TEST(LidBelowTemplate, TheBackingIsShownAndMeasured)
{
    Plan plan;
    plan.art.push_back(testing::roundel());
    plan.backingLayers.resize(1);
    const Layout l = derive(plan);
    ASSERT_EQ(l.backing.outline.rings.size(), 1U);
    const Sheet sheet = sheetOf(plan, TemplateKind::LidBelow);
    const auto backing = strokes(sheet, "backing");
    ASSERT_EQ(backing.size(), 1U);
    const Bounds b = bounds(l.backing.outline);
    EXPECT_NEAR(bounds(backing[0].points).minY, -b.maxY, 1e-9);
    for (const double mm : {b.minX, b.maxX, b.minY, b.maxY})
        EXPECT_TRUE(measures(sheet, std::abs(mm), unitStyle(plan))) << mm;
    EXPECT_TRUE(says(sheet, "Backing"));
}

TEST(BaseTemplate, TheBaseIsTheCutListsBase)
{
    for (const auto& [name, plan] : testing::drawnPlans()) {
        const Layout l = derive(plan);
        const Sheet sheet = sheetOf(plan, TemplateKind::Base);
        const auto pieces = cutPieces(plan, l);
        const auto base =
            std::find_if(pieces.begin(), pieces.end(), [](const CutPiece& p) { return p.name == "Base"; });
        ASSERT_NE(base, pieces.end()) << name;
        const auto outline = strokes(sheet, "outline");
        ASSERT_EQ(outline.size(), 1U) << name;
        EXPECT_EQ(outline[0].kind, LineKind::Cut) << name;
        EXPECT_NEAR(bounds(outline[0].points).width(), base->length, 1e-9) << name;
        EXPECT_NEAR(bounds(outline[0].points).height(), base->width, 1e-9) << name;
        EXPECT_TRUE(measures(sheet, base->length, unitStyle(plan))) << name;
        EXPECT_TRUE(measures(sheet, base->width, unitStyle(plan))) << name;
        for (const char* words : {"underside seen, mirrored", "grain along the neck", "leave the line"})
            EXPECT_TRUE(says(sheet, words)) << name << ": " << words;
        EXPECT_TRUE(strokes(sheet, "base-fixings").empty()) << name;
    }
}

TEST(BaseTemplate, FeetAndFixingsLieWhereTheyGo)
{
    const Plan plan = screwedPlan();
    const Layout l = derive(plan);
    const Sheet sheet = sheetOf(plan, TemplateKind::Base);
    const auto feet = strokes(sheet, "feet");
    ASSERT_EQ(feet.size(), 4U);
    for (std::size_t i = 0; i < 4; ++i) {
        const Point foot = bounds(fittingsLayout(plan, l).feet[i]).centre();
        EXPECT_NEAR(bounds(feet[i].points).centre().x, foot.x, 1e-6);
        EXPECT_NEAR(bounds(feet[i].points).centre().y, -foot.y, 1e-6);
    }
    // From the base's edge: 20 mm to the box's face less the wall's 8.
    EXPECT_TRUE(measures(sheet, 12, unitStyle(plan)));
    const auto all18 = baseFixings(plan, l);
    std::vector<Stroke> centres, arrows;
    for (const Stroke& s : strokes(sheet, "base-fixings"))
        (s.kind == LineKind::Centre ? centres : arrows).push_back(s);
    ASSERT_EQ(centres.size(), all18.size());
    ASSERT_EQ(arrows.size(), all18.size());
    for (std::size_t i = 0; i < all18.size(); ++i) {
        const Point at{all18[i].at.x, -all18[i].at.y}, inward{all18[i].inward.x, -all18[i].inward.y};
        // The arrow's tip is on the wall's outer face and points inward; the line goes on into the base.
        EXPECT_NEAR(distance(arrows[i].points[1], at), 0, 1e-9);
        EXPECT_GT(dot(at - arrows[i].points[0], inward), 0);
        EXPECT_NEAR(dot(centres[i].points[1] - at, inward), 12, 1e-9);
    }
    for (const double mm : {20.0, 92.5, 165.0, 237.5, 310.0, 20 + 190 / 3.0, 20 + 380 / 3.0, 210.0})
        EXPECT_TRUE(measures(sheet, mm, unitStyle(plan))) << mm;
    EXPECT_TRUE(says(sheet, "18 screws"));
}

TEST(BaseTemplate, AFreeOutlineHasItsFixingsOnTheBaseAlone)
{
    for (auto [name, plan] : testing::drawnPlans()) {
        if (plan.box.shape != BoxShape::Outline) continue;
        plan.box.baseFastening = BaseFastening::Nailed;
        const Layout l = derive(plan);
        EXPECT_EQ(strokes(sheetOf(plan, TemplateKind::Base), "base-fixings").size(),
                  2 * baseFixings(plan, l).size());
        EXPECT_TRUE(says(sheetOf(plan, TemplateKind::Base), "nails"));
        for (const TemplateKind kind :
             {TemplateKind::HeadWall, TemplateKind::TailWall, TemplateKind::BassWall})
            EXPECT_TRUE(strokes(sheetOf(plan, kind), "base-fixings").empty()) << name;
    }
}

TEST(BaseMarks, StandOnTheOutsideOfEachWall)
{
    const Plan plan = screwedPlan();
    const Layout l = derive(plan);
    struct Case {
        TemplateKind kind;
        BoxWall wall;
        double sign;  ///< outside faces seen: head-end and treble wall run backwards
    };
    for (const Case& c : {Case{TemplateKind::HeadWall, BoxWall::HeadEnd, -1},
                          Case{TemplateKind::TailWall, BoxWall::TailEnd, 1},
                          Case{TemplateKind::BassWall, BoxWall::BassSide, 1},
                          Case{TemplateKind::TrebleWall, BoxWall::TrebleSide, -1}}) {
        const Sheet sheet = sheetOf(plan, c.kind);
        std::set<long> marks;
        for (const Stroke& s : strokes(sheet, "base-fixings")) {
            const Point at = bounds(s.points).centre();
            EXPECT_NEAR(at.y, baseFixingZ(l), 1e-9) << word(c.kind);
            marks.insert(std::lround(c.sign * at.x * 1000));
        }
        std::set<long> expected;
        for (const double at : baseFixingsAlong(plan, l, c.wall))
            expected.insert(std::lround(at * 1000));
        EXPECT_EQ(marks, expected) << word(c.kind);
        // From the corner at the sheet's left.
        EXPECT_TRUE(measures(sheet, 20, unitStyle(plan))) << word(c.kind);
        EXPECT_TRUE(measures(sheet, 2, unitStyle(plan))) << word(c.kind);
        EXPECT_TRUE(says(sheet, "level through this wall")) << word(c.kind);
        Plan glued = plan;
        glued.box.baseFastening = BaseFastening::Glued;
        EXPECT_TRUE(strokes(sheetOf(glued, c.kind), "base-fixings").empty()) << word(c.kind);
    }
    // The end views have small crosses.
    BoardOptions options = testing::optionsOf(plan);
    options.only = View::TailEnd;
    EXPECT_EQ(strokes(boardSheet(plan, l, options).sheet, "base-fixings").size(), 8U);
}

TEST(BaseMarks, ManyAreMeasuredByTheFirstTwoAndTheLast)
{
    const std::vector<double> few{1, 2, 3, 4, 5, 6}, many{1, 2, 3, 4, 5, 6, 7};
    EXPECT_EQ(measuredFixings(few, false), few);
    EXPECT_EQ(measuredFixings(many, false), (std::vector<double>{1, 2, 7}));
    EXPECT_EQ(measuredFixings(many, true), (std::vector<double>{1, 6, 7}));
    Plan plan = screwedPlan();
    plan.box.baseSpacing = 25;
    const Sheet sheet = sheetOf(plan, TemplateKind::BassWall);
    EXPECT_TRUE(says(sheet, "13 screws"));  // 290 / 25 is 11.6: twelve gaps
    EXPECT_TRUE(says(sheet, "from the next"));
}

TEST(BlockTemplates, EachKindIsThereOnceWithItsNumberAndSizes)
{
    Plan plan = furnishedPlan();
    plan.blocks = {{BoxWall::BassSide, 150, 60, 12, 14}, {BoxWall::TailEnd, 60, 40, 10, 11}};
    const UnitStyle style = unitStyle(plan);
    const Sheet sheet = sheetOf(plan, TemplateKind::Blocks);
    EXPECT_EQ(strokes(sheet, "face").size(), 1 + plan.blocks.size() + plan.bars.size());
    EXPECT_EQ(strokes(sheet, "side").size(), strokes(sheet, "face").size());
    // The same pieces, numbers and sizes as in the cut list.
    int made = 0;
    for (const CutPiece& piece : cutPieces(plan, derive(plan))) {
        const bool inside = piece.part == "corner-blocks" || piece.part.starts_with("block.") ||
                            piece.part.starts_with("bar.");
        if (!inside) continue;
        ++made;
        const auto face = strokes(sheet, "face", piece.part), side = strokes(sheet, "side", piece.part);
        ASSERT_EQ(face.size(), 1U) << piece.part;
        ASSERT_EQ(side.size(), 1U) << piece.part;
        const Bounds f = bounds(face[0].points), s = bounds(side[0].points);
        const std::multiset<long> drawn{std::lround(1000 * f.width()), std::lround(1000 * f.height()),
                                        std::lround(1000 * s.height())};
        const std::multiset<long> listed{std::lround(1000 * piece.length), std::lround(1000 * piece.width),
                                         std::lround(1000 * piece.thickness)};
        EXPECT_EQ(drawn, listed) << piece.part;
        EXPECT_NEAR(f.width(), s.width(), 1e-9) << piece.part;
        for (const double mm : {f.width(), f.height(), s.height()})
            EXPECT_TRUE(measures(sheet, mm, style)) << piece.part << " " << mm;
    }
    EXPECT_EQ(made, 5);
    for (const char* words :
         {"Corner block: make 4", "Block 1: make 1", "Block 2: make 1", "Bar 1: make 1", "Bar 2: make 1",
          "On the bass side wall, its middle 150 mm from the head-end wall's outer face",
          "On the tail-end wall, its middle 60 mm to the treble side of the box's centre line",
          "its middle 70 mm from the head-end wall's outer face, 60 mm to the bass side of the box's centre "
          "line; across the neck",
          "turned 70\xC2\xB0", "Full size"})
        EXPECT_TRUE(says(sheet, words)) << words;
    EXPECT_TRUE(says(sheetOf(
                         [] {
                             Plan bare;
                             bare.cornerBlocks.present = false;
                             return bare;
                         }(),
                         TemplateKind::Blocks),
                     "no blocks and no bars"));
}

TEST(BlockTemplates, TheyLieBesideOneAnotherWithinAPage)
{
    Plan plan;
    plan.bars.resize(6);
    plan.bars[3].length = 250;
    const Sheet sheet = sheetOf(plan, TemplateKind::Blocks);
    std::vector<Bounds> pieces;
    for (const char* part : {"corner-blocks", "bar.1", "bar.2", "bar.3", "bar.4", "bar.5", "bar.6"}) {
        Bounds all;
        for (const Element& e : sheet.elements)
            if (e.part == part) all.include(elementBounds(e, 1));
        if (std::string(part) != "bar.4") EXPECT_LE(all.maxX, 180 + 1e-9) << part;
        for (const Bounds& other : pieces)
            EXPECT_FALSE(other.touches(all)) << part;
        pieces.push_back(all);
    }
    EXPECT_NEAR(bounds(strokes(sheet, "face", "bar.4")[0].points).width(), 250, 1e-9);
}

TEST(BodyTemplates, NotesNeedNoSecondPage)
{
    auto plans = testing::drawnPlans();
    plans.push_back({"screwed", screwedPlan()});
    for (const auto& [name, plan] : plans)
        for (const TemplateKind kind :
             {TemplateKind::Lid, TemplateKind::LidBelow, TemplateKind::HeadWall, TemplateKind::TrebleWall,
              TemplateKind::Base, TemplateKind::Blocks, TemplateKind::Backing, TemplateKind::Neck,
              TemplateKind::Fretboard, TemplateKind::StoryStick}) {
            const Sheet sheet = sheetOf(plan, kind);
            const double left = sheet.extent.minX;
            for (const Element& e : sheet.elements)
                if (const auto* t = std::get_if<Text>(&e.what); t && e.part == "sheet") {
                    const Bounds b = bounds(textOutline(*t, 1));
                    // A page of A4 holds 190 mm from the drawing's left edge on.
                    EXPECT_LE(b.width(), kMostNotes + 1e-9) << name << ", " << word(kind) << ": " << t->words;
                    EXPECT_LE(b.maxX - left, 190) << name << ", " << word(kind) << ": " << t->words;
                }
        }
}

TEST(BodyTemplates, NoWordsLieOverOthersAndAllCanBeRead)
{
    const std::set<double> series{2.5, 3.5, 5, 7};
    auto plans = testing::drawnPlans();
    plans.push_back({"screwed", screwedPlan()});
    for (const auto& [name, plan] : plans)
        for (const PlanUnit unit : {PlanUnit::Millimetre, PlanUnit::InchFraction})
            for (const TemplateKind kind : kBody) {
                Plan own = plan;
                own.sheet.unit = unit;
                if (name == "fresh") own.box.baseFastening = BaseFastening::Nailed;
                const Sheet sheet = sheetOf(own, kind);
                EXPECT_THAT(testing::wordsOverWords(sheet), ::testing::IsEmpty())
                    << name << ", " << word(kind);
                for (const Text& t : testing::allWords(sheet)) {
                    EXPECT_TRUE(series.count(t.height)) << t.words;
                    const Bounds b = bounds(textOutline(t, 1));
                    EXPECT_TRUE(sheet.extent.contains({b.minX, b.minY}) &&
                                sheet.extent.contains({b.maxX, b.maxY}))
                        << name << ", " << word(kind) << ": " << t.words;
                }
            }
}

TEST(BodyTemplates, AnyPlanWithinTheHardRangesGivesThem)
{
    testing::RandomPlans random(99);
    for (int i = 0; i < 120; ++i) {
        const Plan plan = random.next();
        const Layout layout = derive(plan);
        for (const TemplateKind kind : kBody) {
            const Sheet sheet = templateSheet(plan, layout, kind, unitStyle(plan));
            ASSERT_FALSE(sheet.extent.empty()) << "plan " << i << ", " << word(kind);
            for (const Element& e : sheet.elements) {
                const Bounds b = elementBounds(e, 1);
                ASSERT_TRUE(std::isfinite(b.minX + b.minY + b.maxX + b.maxY))
                    << "plan " << i << ", " << word(kind) << " " << e.layer;
            }
        }
    }
}

}  // namespace
}  // namespace lidwright
