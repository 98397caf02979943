#include "core/drawing/inside_views.h"

#include "tests/core/drawing/drawn_plans.h"
#include "tests/support/inside_plans.h"
#include "tests/support/random_plan.h"

#include "core/base/length_text.h"
#include "core/layout/fittings_layout.h"
#include "core/solvers/height_chain.h"

#include <set>

namespace lidwright {
namespace {

using testing::furnishedPlan;
using testing::optionsOf;

Sheet viewAlone(const Plan& plan, View view, const std::string& selected = {})
{
    BoardOptions options = optionsOf(plan);
    options.only = view;
    options.under = view == View::Under;
    options.selected = selected;
    return boardSheet(plan, derive(plan), options).sheet;
}

template <typename T>
std::vector<T> of(const Sheet& sheet, const std::string& part, const std::string& layer)
{
    std::vector<T> out;
    for (const Element& e : sheet.elements)
        if (e.part == part && e.layer == layer)
            if (const auto* what = std::get_if<T>(&e.what)) out.push_back(*what);
    return out;
}

/// True when a ring of that part with exactly these bounds is drawn with the line kind.
bool draws(const Sheet& sheet, const std::string& part, const Bounds& box, LineKind kind)
{
    for (const Element& e : sheet.elements)
        if (const auto* s = std::get_if<Stroke>(&e.what); s && e.part == part && s->kind == kind) {
            const Bounds b = bounds(s->points);
            if (std::abs(b.minX - box.minX) + std::abs(b.maxX - box.maxX) + std::abs(b.minY - box.minY) +
                    std::abs(b.maxY - box.maxY) <
                1e-6)
                return true;
        }
    return false;
}

Bounds mirroredInY(const Bounds& b)
{
    return {b.minX, -b.maxY, b.maxX, -b.minY};
}

TEST(InsideViews, FromBelowBarsAndWiringAreTheLayoutsMirrored)
{
    const Plan plan = furnishedPlan();
    const Layout l = derive(plan);
    const Sheet under = viewAlone(plan, View::Under);
    for (const BarLayout& bar : l.bars) {
        const auto fills = of<Fill>(under, bar.part, "bars");
        ASSERT_EQ(fills.size(), 1U);
        // A ring's signed area changes its sign when it is mirrored.
        EXPECT_NEAR(signedArea(fills[0].ring), -signedArea(bar.outline), 1e-9);
        EXPECT_TRUE(draws(under, bar.part, mirroredInY(bounds(bar.outline)), LineKind::Visible));
    }
    for (std::size_t i = 0; i < l.devices.size(); ++i) {
        const bool let = plan.wiring[i].place == DevicePlace::Neck;
        EXPECT_TRUE(draws(under, l.devices[i].part, mirroredInY(bounds(l.devices[i].body)),
                          let ? LineKind::Hidden : LineKind::Visible))
            << i;
    }
    // The stick covers the second bar where they cross: hidden lines there, and none of the first.
    EXPECT_FALSE(of<Stroke>(under, "bar.2", "hidden").empty());
    EXPECT_TRUE(of<Stroke>(under, "bar.1", "hidden").empty());
}

TEST(InsideViews, FromAboveTheyAreHiddenAndHolesAreSeen)
{
    const Plan plan = furnishedPlan();
    const Layout l = derive(plan);
    const Sheet top = viewAlone(plan, View::Top);
    for (const BarLayout& bar : l.bars)
        EXPECT_TRUE(draws(top, bar.part, bounds(bar.outline), LineKind::Hidden));
    // A magnetic pickup comes up through the lid, the disc and the pot stay under it.
    EXPECT_TRUE(draws(top, "wiring.3", bounds(l.devices[2].face), LineKind::Visible));
    EXPECT_TRUE(draws(top, "wiring.1", bounds(l.devices[0].body), LineKind::Hidden));
    EXPECT_TRUE(draws(top, "wiring.4", bounds(l.devices[3].body), LineKind::Hidden));
    EXPECT_TRUE(draws(top, "wiring.4", bounds(circleRing(l.devices[3].hole, 5)), LineKind::Visible));
    EXPECT_EQ(of<Stroke>(top, "wiring.4", "centre").size(), 2U);
    // The hole through a side wall: two sides, as far as the wall is thick.
    const auto sides = of<Stroke>(top, "wiring.5", "hidden");
    int across = 0;
    for (const Stroke& s : sides)
        if (!s.closed) {
            ++across;
            EXPECT_NEAR(bounds(s.points).height(), plan.box.sideWall, 1e-9);
            EXPECT_NEAR(std::abs(s.points[0].x - 270), 5, 1e-9);
            EXPECT_NEAR(bounds(s.points).maxY, plan.box.width / 2, 1e-9);
        }
    EXPECT_EQ(across, 2);
}

TEST(InsideViews, TheReliefsOutlineCoversWhatTheStickLoses)
{
    // Against the stick's own profile: what is drawn as lowered is where the top lies lower than untouched.
    for (const double padWidth : {0.0, 20.0})
        for (const ReliefPad pad : {ReliefPad::UnderBridge, ReliefPad::None}) {
            Plan plan;
            plan.relief.padWidth = padWidth;
            plan.relief.pad = pad;
            const Layout l = derive(plan);
            const auto outlines = reliefOutlines(plan, l);
            ASSERT_EQ(outlines.size(), 1U);
            const double inside = l.tailWall.innerX - l.headWall.innerX - 40;  // without both lands
            const bool padded = pad == ReliefPad::UnderBridge;
            const double full = padded ? 40 * (padWidth > 0 ? padWidth : plan.neck.width) : 0;
            double drawn = 0;
            for (const Ring& ring : outlines[0].rings)
                drawn += signedArea(ring);
            EXPECT_NEAR(drawn, inside * plan.neck.width - full, 1e-3);
            for (double x = l.headWall.innerX + 0.5; x < l.tailWall.innerX; x += 1) {
                const bool lowered = stickTop(plan, l, x) < l.lid.low - 1e-3;
                EXPECT_EQ(lowered, contains(Region{outlines[0].rings}, {x, l.neckY})) << x;
            }
        }
}

TEST(InsideViews, TheSectionShowsTheUntouchedTopOverEveryCut)
{
    Plan plan = furnishedPlan();
    plan.neck.tilt = 1;
    plan.neck.top = 3;
    const Layout l = derive(plan);
    const Sheet section = viewAlone(plan, View::Section);
    std::vector<Stroke> lines = of<Stroke>(section, "relief", "untouched");
    const auto hollows = of<Stroke>(section, "hollow.1", "untouched");
    lines.insert(lines.end(), hollows.begin(), hollows.end());
    ASSERT_FALSE(lines.empty());
    for (const Stroke& line : lines) {
        EXPECT_EQ(line.kind, LineKind::Phantom);
        for (const Point p : line.points) {
            const double free = l.neckZ.high + l.neckSlope * (p.x - l.headWall.outerX);
            EXPECT_NEAR(p.y, std::min(free, l.lid.low), 1e-5);
        }
    }
    // All that is lowered has the line over it, once.
    const auto covering = [&](double x) {
        return std::count_if(lines.begin(), lines.end(), [x](const Stroke& s) {
            const Bounds b = bounds(s.points);
            return x > b.minX && x < b.maxX;
        });
    };
    for (double x = l.headWall.innerX + 0.3; x < l.tailWall.innerX; x += 0.7)
        EXPECT_EQ(covering(x), l.relief.depthAt(x) > 0 ? 1 : 0) << x;
}

TEST(InsideViews, TheSectionCutsWhatItMeetsAndHidesWhatStandsBehind)
{
    const Plan plan = furnishedPlan();
    const Layout l = derive(plan);
    const Sheet section = viewAlone(plan, View::Section);
    const Bounds behind = bounds(l.bars[0].outline);
    EXPECT_TRUE(
        draws(section, "bar.1", {behind.minX, l.bars[0].low, behind.maxX, l.bars[0].high}, LineKind::Hidden));
    // Turned by 70 degrees a bar 9 wide is cut 9 / sin 70 long.
    const auto cut = of<Fill>(section, "bar.2", "bars");
    ASSERT_EQ(cut.size(), 1U);
    EXPECT_NEAR(bounds(cut[0].ring).width(), 9 / std::sin(radians(70)), 1e-6);
    EXPECT_NEAR(bounds(cut[0].ring).minY, l.lid.low - 5, 1e-9);
    EXPECT_EQ(of<Fill>(section, "wiring.3", "wiring").size(), 1U);
    EXPECT_TRUE(of<Fill>(section, "wiring.5", "wiring").empty());
    EXPECT_TRUE(draws(section, "wiring.5", bounds(l.devices[4].face), LineKind::Hidden));
    // Beside the narrow pad the floor goes on.
    const auto floor = of<Stroke>(section, "relief", "hidden");
    ASSERT_EQ(floor.size(), 1U);
    EXPECT_NEAR(bounds(floor[0].points).minY, l.lid.low - plan.relief.depth, 1e-9);
    const auto feet = of<Fill>(section, "fittings", "fittings");
    EXPECT_EQ(feet.size(), 2U);
    for (const Fill& foot : feet) {
        EXPECT_NEAR(bounds(foot.ring).maxY, l.walls.low, 1e-9);
        EXPECT_NEAR(bounds(foot.ring).height(), plan.fittings.footHeight, 1e-9);
    }
}

TEST(InsideViews, EachEndViewShowsTheHolesOfItsOwnWall)
{
    const Plan plan = furnishedPlan();
    const Layout l = derive(plan);
    for (const bool head : {true, false}) {
        const Sheet sheet = viewAlone(plan, head ? View::HeadEnd : View::TailEnd);
        const std::size_t own = head ? 5 : 6, other = head ? 6 : 5;
        const double sign = head ? -1 : 1;
        const auto holes = of<Fill>(sheet, l.devices[own].part, "wiring");
        ASSERT_EQ(holes.size(), 1U);
        const Bounds hole = bounds(holes[0].ring);
        EXPECT_NEAR(hole.centre().x, sign * plan.wiring[own].along, 1e-9);
        EXPECT_NEAR(hole.centre().y, l.walls.high - plan.wiring[own].down, 1e-9);
        EXPECT_NEAR(hole.width(), plan.wiring[own].hole, 0.03);
        EXPECT_EQ(of<Stroke>(sheet, l.devices[own].part, "centre").size(), 2U);
        EXPECT_TRUE(of<Fill>(sheet, l.devices[other].part, "wiring").empty());
    }
}

/// Keys of the editable dimensions of a part in a view.
std::set<std::string> keysOf(const Plan& plan, View view, const std::string& part)
{
    std::set<std::string> out;
    const UnitStyle style = unitStyle(plan);
    for (const Element& e : viewAlone(plan, view, part).elements)
        if (const auto* d = std::get_if<Dimension>(&e.what); d && e.part == part && !d->key.empty()) {
            out.insert(d->key);
            // The words are the plan's own value.
            const auto ref = findParameter(plan, d->key);
            EXPECT_TRUE(ref.ok()) << d->key;
            const double value = std::abs(std::get<double>(get(plan, *ref)));
            EXPECT_EQ(d->words, formatLength(value, style, false).text) << d->key;
        }
    return out;
}

TEST(InsideViews, TheSelectedPartsMeasuresStandWhereTheyAre)
{
    using Keys = std::set<std::string>;
    const Plan plan = furnishedPlan();
    EXPECT_EQ(keysOf(plan, View::Section, "relief"),
              (Keys{"relief.depth", "relief.head-land", "relief.tail-land", "relief.pad-length"}));
    EXPECT_EQ(keysOf(plan, View::Under, "relief"),
              (Keys{"relief.head-land", "relief.tail-land", "relief.pad-length", "relief.pad-width"}));
    EXPECT_EQ(keysOf(plan, View::Section, "hollow.1"),
              (Keys{"hollow.1.from", "hollow.1.length", "hollow.1.depth"}));
    EXPECT_EQ(keysOf(plan, View::Under, "bar.1"),
              (Keys{"bar.1.x", "bar.1.y", "bar.1.length", "bar.1.width"}));
    EXPECT_EQ(keysOf(plan, View::Section, "bar.1"), Keys{"bar.1.height"});
    EXPECT_EQ(keysOf(plan, View::Top, "wiring.4"),
              (Keys{"wiring.4.along", "wiring.4.aside", "wiring.4.hole"}));
    EXPECT_EQ(keysOf(plan, View::Section, "wiring.5"), (Keys{"wiring.5.down", "wiring.5.hole"}));
    EXPECT_EQ(keysOf(plan, View::Top, "wiring.5"), Keys{"wiring.5.along"});
    EXPECT_EQ(keysOf(plan, View::HeadEnd, "wiring.6"),
              (Keys{"wiring.6.along", "wiring.6.down", "wiring.6.hole"}));
    EXPECT_EQ(keysOf(plan, View::TailEnd, "wiring.7"),
              (Keys{"wiring.7.along", "wiring.7.down", "wiring.7.hole"}));
    EXPECT_EQ(keysOf(plan, View::Section, "fittings"),
              (Keys{"fittings.foot-height", "fittings.foot-diameter", "fittings.strap-before"}));
    // A part that is gone has none.
    EXPECT_EQ(keysOf(plan, View::Under, "bar.3"), Keys{});
}

TEST(InsideViews, TheSectionShowsTheChainOfHeightsOfTheSetUp)
{
    Plan plan;
    plan.neck.tilt = 0.3;
    const HeightChain chain = heightChain(plan, derive(plan));
    const auto shown = of<Dimension>(viewAlone(plan, View::Section, "setup"), "setup", "dimensions");
    ASSERT_EQ(shown.size(), 3U);
    EXPECT_NEAR(distance(shown[0].a, shown[0].b), chain.nutOverFrets, 1e-9);
    EXPECT_NEAR(distance(shown[1].a, shown[1].b), chain.atOctave, 1e-9);
    EXPECT_NEAR(distance(shown[2].a, shown[2].b), chain.overBoxEdge, 1e-9);
    EXPECT_EQ(shown[0].key, "setup.nut-clearance");
    EXPECT_TRUE(of<Dimension>(viewAlone(plan, View::Section), "setup", "dimensions").empty());
}

TEST(InsideViews, AnyPlanWithinTheHardRangesIsDrawn)
{
    testing::RandomPlans random(911);
    for (int i = 0; i < 60; ++i) {
        Plan plan = random.next();
        const Plan furnished = furnishedPlan();
        plan.bars = furnished.bars;
        plan.wiring = furnished.wiring;
        plan.hollows = furnished.hollows;
        plan.fittings = furnished.fittings;
        const Layout layout = derive(plan);
        for (const char* part : {"relief", "hollow.1", "bar.2", "wiring.3", "wiring.6", "fittings"})
            for (const View view : {View::Top, View::Under, View::Section, View::HeadEnd}) {
                BoardOptions options = optionsOf(plan);
                options.only = view;
                options.selected = part;
                const Sheet sheet = boardSheet(plan, layout, options).sheet;
                EXPECT_TRUE(std::isfinite(sheet.extent.width()) && std::isfinite(sheet.extent.height()))
                    << i << " " << part;
            }
    }
}

}  // namespace
}  // namespace lidwright
