#include "core/drawing/board_sheet.h"

#include "tests/core/drawing/drawn_plans.h"
#include "tests/support/random_plan.h"

#include <map>
#include <set>

namespace lidwright {
namespace {

using testing::all;
using testing::optionsOf;
using testing::viewOf;

bool apart(const Bounds& a, const Bounds& b)
{
    return !a.touches(b);
}

void expectDisjoint(const BoardSheet& board, const std::string& name)
{
    for (std::size_t i = 0; i < board.views.size(); ++i) {
        EXPECT_FALSE(board.views[i].extent.empty()) << name;
        for (std::size_t k = i + 1; k < board.views.size(); ++k)
            EXPECT_TRUE(apart(board.views[i].extent, board.views[k].extent))
                << name << ": " << board.views[i].label << " and " << board.views[k].label;
    }
}

TEST(BoardSheet, ViewsStandWhereTheProjectionPutsThem)
{
    for (auto& [name, plan] : testing::drawnPlans())
        for (const Projection projection : {Projection::FirstAngle, Projection::ThirdAngle}) {
            BoardOptions options = optionsOf(plan);
            options.projection = projection;
            const BoardSheet board = boardSheet(plan, derive(plan), options);
            ASSERT_EQ(board.views.size(), 4U);
            expectDisjoint(board, name);
            const Bounds top = viewOf(board, View::Top)->extent;
            const Bounds section = viewOf(board, View::Section)->extent;
            const Bounds head = viewOf(board, View::HeadEnd)->extent;
            const Bounds tail = viewOf(board, View::TailEnd)->extent;
            // First angle: from above drawn below, from the left drawn at the right. Third angle: as seen.
            const bool first = projection == Projection::FirstAngle;
            EXPECT_EQ(first, top.maxY < section.minY) << name;
            EXPECT_EQ(!first, top.minY > section.maxY) << name;
            EXPECT_EQ(first, head.minX > section.maxX) << name;
            EXPECT_EQ(!first, head.maxX < section.minX) << name;
            EXPECT_EQ(first, tail.maxX < section.minX) << name;
            for (const Element& e : board.sheet.elements) {
                const Bounds b = elementBounds(e, board.sheet.paper);
                EXPECT_TRUE(board.sheet.extent.contains({b.minX, b.minY}) &&
                            board.sheet.extent.contains({b.maxX, b.maxY}))
                    << name << ": " << e.layer;
            }
        }
}

TEST(BoardSheet, StationsAndHeightsLineUpThroughTheViews)
{
    for (auto& [name, plan] : testing::drawnPlans()) {
        const Layout layout = derive(plan);
        for (const bool under : {false, true}) {
            BoardOptions options = optionsOf(plan);
            options.under = under;
            const BoardSheet board = boardSheet(plan, layout, options);
            const PlacedView& lid = *viewOf(board, under ? View::Under : View::Top);
            const PlacedView& section = *viewOf(board, View::Section);
            for (const Station& s : layout.stations)
                EXPECT_DOUBLE_EQ(lid.toSheet({s.x, 31}).x, section.toSheet({s.x, -12}).x)
                    << name << " " << s.id;
            for (const double z : {layout.walls.low, layout.neckZ.high, 0.0, layout.bridgeZ.high})
                for (const View view : {View::HeadEnd, View::TailEnd})
                    EXPECT_DOUBLE_EQ(viewOf(board, view)->toSheet({17, z}).y, section.toSheet({90, z}).y)
                        << name;
        }
    }
}

TEST(BoardSheet, MirroredViewsAreMirroredAndComeBack)
{
    Plan plan;
    const Layout layout = derive(plan);
    BoardOptions options = optionsOf(plan);
    options.under = true;
    const BoardSheet board = boardSheet(plan, layout, options);
    const PlacedView& head = *viewOf(board, View::HeadEnd);
    const PlacedView& tail = *viewOf(board, View::TailEnd);
    const PlacedView& under = *viewOf(board, View::Under);
    EXPECT_TRUE(head.mirrored);
    EXPECT_FALSE(tail.mirrored);
    EXPECT_TRUE(under.mirrored);
    // Looking toward the tail from the head, the treble side is on the left; looking back, on the right.
    EXPECT_LT(head.toSheet({50, 0}).x, head.toSheet({-50, 0}).x);
    EXPECT_GT(tail.toSheet({50, 0}).x, tail.toSheet({-50, 0}).x);
    // Turned over about its length: stations stay, bass and treble change.
    EXPECT_LT(under.toSheet({0, 50}).y, under.toSheet({0, -50}).y);
    EXPECT_LT(under.toSheet({0, 0}).x, under.toSheet({100, 0}).x);
    for (const PlacedView& v : board.views) {
        const Point p{12.5, -34};
        const Point back = v.toView(v.toSheet(p));
        EXPECT_NEAR(back.x, p.x, 1e-12);
        EXPECT_NEAR(back.y, p.y, 1e-12);
    }
}

TEST(BoardSheet, ALidSeenFromBelowIsTheMirrorImageOfItsArtwork)
{
    Plan plan;
    plan.art.push_back(testing::roundel());
    const Layout layout = derive(plan);
    BoardOptions options = optionsOf(plan);
    const auto middle = [&](bool under) {
        options.under = under;
        options.only = under ? View::Under : View::Top;
        const BoardSheet board = boardSheet(plan, layout, options);
        Bounds art;
        for (const Element& e : board.sheet.elements)
            if (e.part == "art.1" && e.layer == "artwork") art.include(elementBounds(e, 2));
        return art.centre();
    };
    EXPECT_NEAR(middle(false).x, 120, 0.01);
    EXPECT_NEAR(middle(false).y, 40, 0.01);
    EXPECT_NEAR(middle(true).x, 120, 0.01);
    EXPECT_NEAR(middle(true).y, -40, 0.01);
}

TEST(BoardSheet, CutOutsArePaintedOneByOneAfterTheLid)
{
    Plan plan;
    plan.art.push_back(testing::roundel());
    plan.holes.push_back({});
    const Layout layout = derive(plan);
    BoardOptions options = optionsOf(plan);
    options.only = View::Top;
    const BoardSheet board = boardSheet(plan, layout, options);
    std::ptrdiff_t lid = -1;
    std::vector<std::pair<std::size_t, Fill>> later;
    for (std::size_t i = 0; i < board.sheet.elements.size(); ++i) {
        const Element& e = board.sheet.elements[i];
        const auto* fill = std::get_if<Fill>(&e.what);
        if (!fill) continue;
        if (e.part == "lid") lid = static_cast<std::ptrdiff_t>(i);
        if (e.layer == "artwork" || e.layer == "holes") later.emplace_back(i, *fill);
    }
    ASSERT_GE(lid, 0);
    // Two rings of the band, two of the cut, one hole.
    ASSERT_EQ(later.size(), 5U);
    std::map<FillKind, int> kinds;
    double before = 1e300;
    for (const auto& [index, fill] : later) {
        EXPECT_GT(static_cast<std::ptrdiff_t>(index), lid);
        ++kinds[fill.kind];
        if (fill.kind == FillKind::CutThrough && index != later.back().first) {
            EXPECT_LT(std::abs(signedArea(fill.ring)), before);
        }
        before = std::abs(signedArea(fill.ring)) + 1e-6;
    }
    EXPECT_EQ(kinds[FillKind::CutThrough], 2);
    EXPECT_EQ(kinds[FillKind::Engraved], 1);
    EXPECT_EQ(kinds[FillKind::Wood], 2);
    // What lies inside comes after what it lies in: band, its hole, cut, its island.
    EXPECT_EQ(later[0].second.kind, FillKind::Engraved);
    EXPECT_EQ(later[1].second.kind, FillKind::Wood);
    EXPECT_EQ(later[2].second.kind, FillKind::CutThrough);
    EXPECT_EQ(later[3].second.kind, FillKind::Wood);
}

TEST(BoardSheet, SectionShowsWhereTheNecksLineRunsThroughOpenAir)
{
    Plan plan;
    plan.art.push_back(testing::roundel());
    plan.art.front().y = 0;  // the ring is cut on both sides of its island
    const Layout layout = derive(plan);
    BoardOptions options = optionsOf(plan);
    options.only = View::Section;
    double open = 0;
    for (const Fill& f : all<Fill>(boardSheet(plan, layout, options).sheet))
        if (f.kind == FillKind::CutThrough) open += bounds(f.ring).width();
    EXPECT_NEAR(open, 2 * (20 - 12), 0.02);
}

TEST(BoardSheet, OneViewAloneIsThatView)
{
    const Plan plan;
    const Layout layout = derive(plan);
    for (const View view : {View::Top, View::Under, View::Section, View::HeadEnd, View::TailEnd}) {
        BoardOptions options = optionsOf(plan);
        options.only = view;
        const BoardSheet board = boardSheet(plan, layout, options);
        ASSERT_EQ(board.views.size(), 1U);
        EXPECT_EQ(board.views.front().view, view);
        EXPECT_GT(board.sheet.elements.size(), 10U);
    }
}

TEST(BoardSheet, TextHeightsAreOfTheIsoSeries)
{
    const std::set<double> series{2.5, 3.5, 5, 7};
    for (auto& [name, plan] : testing::drawnPlans())
        for (const Text& t : testing::allWords(boardSheet(plan, derive(plan), optionsOf(plan)).sheet)) {
            EXPECT_TRUE(series.count(t.height)) << name << ": " << t.words;
            EXPECT_FALSE(t.words.empty()) << name;
        }
}

TEST(BoardSheet, AnyPlanWithinTheHardRangesGivesADrawing)
{
    testing::RandomPlans random(77);
    for (int i = 0; i < 150; ++i) {
        const Plan plan = random.next();
        const Layout layout = derive(plan);
        BoardOptions options = optionsOf(plan);
        options.under = i % 3 == 0;
        options.paper = i % 2 == 0 ? 1.5 : 4;
        options.selected = i % 4 == 0 ? "hole.1" : i % 4 == 1 ? "art.1" : i % 4 == 2 ? "block.2" : "strings";
        const BoardSheet board = boardSheet(plan, layout, options);
        ASSERT_EQ(board.views.size(), 4U);
        expectDisjoint(board, "plan " + std::to_string(i));
        for (const Element& e : board.sheet.elements) {
            const Bounds b = elementBounds(e, board.sheet.paper);
            EXPECT_TRUE(std::isfinite(b.minX) && std::isfinite(b.minY) && std::isfinite(b.maxX) &&
                        std::isfinite(b.maxY))
                << "plan " << i << ": " << e.layer;
        }
    }
}

TEST(BoardSheet, APaperSizeOfNothingIsTakenAsFullSize)
{
    const Plan plan;
    const Layout layout = derive(plan);
    BoardOptions options = optionsOf(plan);
    for (const double paper : {0.0, -3.0, std::nan("")}) {
        options.paper = paper;
        EXPECT_DOUBLE_EQ(boardSheet(plan, layout, options).sheet.paper, 1);
    }
}

}  // namespace
}  // namespace lidwright
