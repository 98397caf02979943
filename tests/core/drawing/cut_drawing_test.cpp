#include "core/drawing/cut_drawing.h"

#include "tests/core/drawing/cut_plans.h"
#include "tests/core/drawing/drawn_plans.h"

namespace lidwright {
namespace {

using testing::addArt;
using testing::boundsOf;
using testing::drawn;
using testing::pathsOf;
using testing::square;
using testing::squareLid;
using testing::tells;

bool isCut(CutOperation operation)
{
    return operation == CutOperation::CutInside || operation == CutOperation::Alignment ||
           operation == CutOperation::CutOutline;
}

/// Lines of the paths that lie on another one, compared pair by pair.
int doubled(const std::vector<CutPath>& paths)
{
    std::vector<std::pair<Point, Point>> lines;
    for (const CutPath& path : paths)
        for (std::size_t i = 0; i + (path.closed ? 0 : 1) < path.points.size() && path.radius == 0; ++i)
            lines.emplace_back(path.points[i], path.points[(i + 1) % path.points.size()]);
    int count = 0;
    for (std::size_t i = 0; i < lines.size(); ++i)
        for (std::size_t k = 0; k < i; ++k) {
            const auto& [a, b] = lines[i];
            const auto& [c, d] = lines[k];
            const bool same = (distance(a, c) <= 1e-4 && distance(b, d) <= 1e-4) ||
                              (distance(a, d) <= 1e-4 && distance(b, c) <= 1e-4);
            count += same && distance(a, b) > 1e-3 ? 1 : 0;
        }
    return count;
}

std::vector<CutPath> cutsOf(const CutDrawing& drawing)
{
    std::vector<CutPath> cuts;
    for (const CutPath& path : drawing.paths)
        if (isCut(path.operation)) cuts.push_back(path);
    return cuts;
}

TEST(CutDrawing, EveryPlanIsDrawnTrueClosedOrderedAndOnce)
{
    for (const auto& [name, plan] : testing::drawnPlans()) {
        const Layout layout = derive(plan);
        const CutDrawing drawing = drawn(plan);
        // Sizes: the lid's and those of all that goes through it.
        const Bounds lid = bounds(layout.lidOutline);
        const Bounds outline = boundsOf(drawing, CutOperation::CutOutline);
        EXPECT_NEAR(outline.width(), lid.width(), 1e-9) << name;
        EXPECT_NEAR(outline.height(), lid.height(), 1e-9) << name;
        EXPECT_NEAR(outline.minX - lid.minX, drawing.lidOrigin.x, 1e-9) << name;
        std::vector<Region> cut;
        for (const PlacedArtPtr& art : layout.art)
            cut.push_back(art->cut);
        for (const Ring& hole : layout.holes)
            cut.push_back(fill({hole}, FillRule::NonZero));
        const double whole = area(unite(cut));
        // A true circle is larger than its chords by less than this share.
        EXPECT_NEAR(totalsOf(drawing, CutOperation::CutInside).area, whole, 2e-3 * whole + 1e-6) << name;
        for (const CutPath& path : cutsOf(drawing)) {
            EXPECT_TRUE(path.closed) << name;
            if (path.radius == 0) EXPECT_GE(path.points.size(), 3U) << name;
        }
        EXPECT_EQ(doubled(cutsOf(drawing)), 0) << name;
        // Order: by the preset, then from the inside outwards.
        int order = 0, depth = 0;
        for (const CutPath& path : drawing.paths) {
            const int now = CutJob{}.preset.layer(path.operation).order;
            EXPECT_GE(now, order) << name;
            if (now == order) EXPECT_LE(path.depth, depth) << name;
            order = now;
            depth = path.depth;
        }
        // Everything stands at the right of and above (0, 0), within the extent.
        for (const CutPath& path : drawing.paths) {
            const Bounds box = bounds(path.points).grown(path.radius);
            EXPECT_GE(box.minX, 0) << name;
            EXPECT_GE(box.minY, 0) << name;
            EXPECT_LE(box.maxX, drawing.extent.maxX) << name;
            EXPECT_LE(box.maxY, drawing.extent.maxY) << name;
        }
    }
}

TEST(CutDrawing, NestedOutlinesAreCutFromTheInsideOut)
{
    Plan plan = squareLid();
    // An opening with an island with an opening, and a lone opening.
    const Region rings{{rectangleRing({0, 0}, 60, 60), rectangleRing({0, 0}, 40, 40),
                        rectangleRing({0, 0}, 10, 10), rectangleRing({60, 0}, 5, 5)}};
    addArt(plan, fill(rings.rings, FillRule::EvenOdd), {100, 0});
    const std::vector<CutPath> paths = pathsOf(drawn(plan), CutOperation::CutInside);
    ASSERT_EQ(paths.size(), 4U);
    std::vector<double> widths;
    for (const CutPath& path : paths)
        widths.push_back(bounds(path.points).width());
    EXPECT_DOUBLE_EQ(widths[0], 10);
    EXPECT_DOUBLE_EQ(widths[1], 40);
    EXPECT_EQ((std::set<double>{std::round(widths[2]), std::round(widths[3])}), (std::set<double>{5, 60}));
    EXPECT_NEAR(totalsOf(drawn(plan), CutOperation::CutInside).area, 3600 - 1600 + 100 + 25, 1e-6);
    EXPECT_NEAR(totalsOf(drawn(plan), CutOperation::CutInside).length, 4 * (60 + 40 + 10 + 5), 1e-6);
}

TEST(CutDrawing, TheSameOpeningTwiceIsCutOnce)
{
    Plan plan = squareLid();
    addArt(plan, square({0, 0}, 20), {100, 0});
    addArt(plan, square({0, 0}, 20), {100, 0});
    plan.holes.resize(2);
    for (SoundHole& hole : plan.holes)
        hole.x = 200, hole.y = 50;
    const CutDrawing drawing = drawn(plan);
    EXPECT_EQ(totalsOf(drawing, CutOperation::CutInside).closed, 2);
    EXPECT_GE(drawing.duplicates, 4);
    EXPECT_TRUE(tells(drawing, "lines lie on other lines"));
    EXPECT_EQ(drawn(squareLid()).duplicates, 0);
}

TEST(CutDrawing, OpeningsSideBySideBecomeOne)
{
    Plan plan = squareLid();
    addArt(plan, square({0, 0}, 20), {100, 0});
    addArt(plan, square({0, 0}, 20), {120, 0});
    const CutDrawing drawing = drawn(plan);
    const std::vector<CutPath> paths = pathsOf(drawing, CutOperation::CutInside);
    ASSERT_EQ(paths.size(), 1U);
    EXPECT_DOUBLE_EQ(std::abs(signedArea(paths.front().points)), 800);
    EXPECT_EQ(drawing.duplicates, 1);
}

TEST(CutDrawing, AWallOfNothingIsNotCutTwice)
{
    Plan plan = squareLid();
    // Half a micrometre of wood between two openings: the common side is cut once and left open once.
    addArt(plan, Region{{rectangleRing({0, 0}, 20, 20), rectangleRing({20.0005, 0}, 20, 20)}}, {100, 0});
    const CutDrawing drawing = drawn(plan);
    EXPECT_EQ(drawing.duplicates, 1);
    const CutTotals totals = totalsOf(drawing, CutOperation::CutInside);
    EXPECT_EQ(totals.closed, 1);
    EXPECT_EQ(totals.open, 1);
    EXPECT_NEAR(totals.length, 7 * 20, 1e-2);
}

TEST(CutDrawing, LoneRoundHolesStayCircles)
{
    Plan plan = squareLid();
    plan.holes = {{HoleKind::Circle, 80, 60, 25}, {HoleKind::Circle, 200, 60, 25}, {HoleKind::Slot, 80, -60}};
    addArt(plan, square({0, 0}, 20), {210, 60});
    const CutDrawing drawing = drawn(plan);
    std::vector<CutPath> circles;
    for (const CutPath& path : pathsOf(drawing, CutOperation::CutInside))
        if (path.radius > 0) circles.push_back(path);
    ASSERT_EQ(circles.size(), 1U);
    EXPECT_DOUBLE_EQ(circles.front().radius, 12.5);
    EXPECT_NEAR(circles.front().points.front().x - drawing.lidOrigin.x, 80, 1e-9);
    // The other one runs into the square and is one outline with it.
    EXPECT_EQ(totalsOf(drawing, CutOperation::CutInside).closed, 3);
}

TEST(CutDrawing, OpeningsAtTheEdgeBecomePartOfTheOutline)
{
    Plan plan = squareLid();
    addArt(plan, square({0, 0}, 20), {300, 0});
    addArt(plan, square({0, 0}, 20), {400, 0});
    const CutDrawing drawing = drawn(plan);
    EXPECT_TRUE(pathsOf(drawing, CutOperation::CutInside).empty());
    EXPECT_NEAR(totalsOf(drawing, CutOperation::CutOutline).area, 300 * 200 - 10 * 20, 1e-6);
    EXPECT_TRUE(tells(drawing, "reaches the lid's edge"));
    EXPECT_TRUE(tells(drawing, "lies beside the lid"));

    CutJob job;
    job.lidOutline = false;
    const CutDrawing openings = drawn(plan, job);
    EXPECT_TRUE(pathsOf(openings, CutOperation::CutOutline).empty());
    EXPECT_NEAR(totalsOf(openings, CutOperation::CutInside).area, 400, 1e-6);
}

TEST(CutDrawing, AnOpeningAcrossTheLidPartsIt)
{
    Plan plan = squareLid();
    addArt(plan, Region{{rectangleRing({0, 0}, 20, 400)}}, {150, 0});
    const CutDrawing drawing = drawn(plan);
    EXPECT_EQ(totalsOf(drawing, CutOperation::CutOutline).closed, 2);
    EXPECT_TRUE(tells(drawing, "cut the lid into 2 pieces"));
}

TEST(CutDrawing, EngravingIsDrawnLessWhatIsCut)
{
    Plan plan = squareLid();
    plan.art.push_back(testing::roundel());
    addArt(plan, square({0, 0}, 10), {145, 40});
    const CutDrawing drawing = drawn(plan);
    const double band = kPi * (32 * 32 - 20 * 20);
    // The square lies in the band but for what of it lies within the ring of radius 20: a sliver.
    const double engraved = totalsOf(drawing, CutOperation::Engrave).area;
    EXPECT_LT(engraved, band - 90);
    EXPECT_GT(engraved, band - 102);
    CutJob job;
    job.engraving = false;
    EXPECT_TRUE(pathsOf(drawn(plan, job), CutOperation::Engrave).empty());
    for (const CutPath& path : pathsOf(drawing, CutOperation::Engrave))
        EXPECT_TRUE(path.closed);
}

TEST(CutDrawing, MarksAreOnTheirOwnLayerAndTheCheckLineIs100)
{
    const Plan plan = squareLid();
    CutJob job;
    job.lidOutline = false;
    job.marks = false;
    const std::vector<CutPath> check = pathsOf(drawn(plan, job), CutOperation::Mark);
    ASSERT_FALSE(check.empty());
    EXPECT_DOUBLE_EQ(distance(check.front().points.front(), check.front().points.back()), 100);
    job.checkLine = false;
    const auto nothing = composeCutDrawing(plan, derive(plan), job);
    ASSERT_FALSE(nothing.ok());
    EXPECT_NE(nothing.error().what.find("nothing to draw"), std::string::npos);

    const CutDrawing marked = drawn(plan);
    const Layout layout = derive(plan);
    const auto has = [&](const std::vector<Point>& points) {
        const auto paths = pathsOf(marked, CutOperation::Mark);
        return std::any_of(paths.begin(), paths.end(), [&](const CutPath& path) {
            return path.points.size() == points.size() &&
                   std::equal(points.begin(), points.end(), path.points.begin(),
                              [&](Point a, Point b) { return distance(a + marked.lidOrigin, b) < 1e-9; });
        });
    };
    EXPECT_TRUE(has({{0, 0}, {300, 0}}));  // centre line
    EXPECT_TRUE(has(layout.bridgeOutline));
    EXPECT_TRUE(has({layout.saddleFrom, layout.saddleTo}));
    EXPECT_EQ(marked.layers.size(), 2U);
    EXPECT_EQ(marked.layers.back().operation, CutOperation::Mark);
}

TEST(CutDrawing, MirroredItIsTheUnderside)
{
    Plan plan = squareLid();
    addArt(plan, square({0, 0}, 20), {100, 40});
    CutJob job;
    job.mirrored = true;
    job.marks = false;
    const CutDrawing drawing = drawn(plan, job);
    const Bounds opening = boundsOf(drawing, CutOperation::CutInside);
    const Bounds lid = boundsOf(drawing, CutOperation::CutOutline);
    EXPECT_NEAR(opening.centre().x - lid.minX, 100, 1e-9);
    EXPECT_NEAR(opening.centre().y - lid.centre().y, -40, 1e-9);
    EXPECT_TRUE(drawing.mirrored);
}

TEST(CutDrawing, AlignmentHolesKeepClear)
{
    Plan plan = squareLid();
    addArt(plan, square({0, 0}, 20), {100, 0});
    CutJob job;
    job.alignment = {{{50, 0}, 4}, {{111, 0}, 4}, {{1, 0}, 4}, {{100, 0}, 4}, {{400, 0}, 4}};
    const CutDrawing drawing = drawn(plan, job);
    const std::vector<CutPath> holes = pathsOf(drawing, CutOperation::Alignment);
    ASSERT_EQ(holes.size(), 1U);
    EXPECT_DOUBLE_EQ(holes.front().radius, 2);
    EXPECT_TRUE(tells(drawing, "hole for a screw or pin"));
    EXPECT_EQ(drawing.messages.size(), 4U);

    // The plan's own holes for screws and pins are cut with them.
    plan.fixings = {LidFixing{FixingKind::Pin, 20, 30, 3}};
    const std::vector<CutPath> more = pathsOf(drawn(plan, job), CutOperation::Alignment);
    ASSERT_EQ(more.size(), 2U);
    EXPECT_TRUE(std::any_of(more.begin(), more.end(), [](const CutPath& p) { return p.radius == 1.5; }));
}

TEST(CutDrawing, APresetThatFreesTheLidTooEarlyIsNamed)
{
    CutJob job;
    for (CutLayer& layer : job.preset.layers) {
        if (layer.operation == CutOperation::CutOutline) layer.order = 1;
        if (layer.operation == CutOperation::Engrave) layer.order = 9;
    }
    EXPECT_TRUE(tells(drawn(squareLid(), job), "the lid may shift"));
    EXPECT_FALSE(tells(drawn(squareLid()), "the lid may shift"));
}

TEST(CutDrawing, WhatMakesNoSenseIsRefused)
{
    const Plan plan = squareLid();
    const auto refused = [&](const CutJob& job, const std::string& where) {
        const auto drawing = composeCutDrawing(plan, derive(plan), job);
        return !drawing.ok() && drawing.error().where == where && !drawing.error().mend.empty();
    };
    for (const double kerf : {-0.1, 5.1, std::nan(""), std::numeric_limits<double>::infinity()}) {
        CutJob job;
        job.kerf = kerf;
        EXPECT_TRUE(refused(job, "kerf")) << kerf;
    }
    for (const AlignmentHole hole : {AlignmentHole{{0, 0}, 0}, AlignmentHole{{std::nan(""), 0}, 3},
                                     AlignmentHole{{0, 1e9}, 3}, AlignmentHole{{0, 0}, 1000}}) {
        CutJob job;
        job.alignment = {hole};
        EXPECT_TRUE(refused(job, "alignment holes"));
    }
    CutJob many;
    many.alignment.assign(1001, {{50, 0}, 3});
    EXPECT_TRUE(refused(many, "alignment holes"));
    EXPECT_FALSE(composeCutDrawing(plan, Layout{}, {}).ok());
}

}  // namespace
}  // namespace lidwright
