#include "core/layout/values.h"

#include "tests/support/random_plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <set>

namespace lidwright {
namespace {

std::optional<double> valueOf(const Plan& plan, const std::string& key)
{
    for (const DerivedValue& v : values(plan, derive(plan)))
        if (v.key == key) return v.measure.value;
    return std::nullopt;
}

void expectFinite(const std::vector<Point>& points, const char* what)
{
    for (const Point p : points)
        ASSERT_TRUE(std::isfinite(p.x) && std::isfinite(p.y)) << what;
}

void expectFinite(const Layout& layout)
{
    for (const Ring* ring : {&layout.boxOuter, &layout.boxInner, &layout.lidOutline, &layout.neckOutline,
                             &layout.fretboardOutline, &layout.bridgeOutline})
        expectFinite(*ring, "outline");
    for (const Ring& ring : layout.artField.rings)
        expectFinite(ring, "art field");
    for (const Ring& ring : layout.holes)
        expectFinite(ring, "hole");
    for (const auto& [nut, saddle] : layout.strings)
        expectFinite({nut, saddle}, "string");
    for (const BlockLayout& block : layout.blocks)
        expectFinite(block.outline, "block");
    for (const PlacedArtPtr& art : layout.art)
        for (const Region* region : {&art->cut, &art->engraved})
            for (const Ring& ring : region->rings)
                expectFinite(ring, "artwork");
    for (const Station& s : layout.stations)
        EXPECT_TRUE(std::isfinite(s.x)) << s.id;
    EXPECT_TRUE(std::is_sorted(layout.stations.begin(), layout.stations.end(),
                               [](const Station& a, const Station& b) { return a.x < b.x; }));
}

TEST(Values, OfTheFreshPlan)
{
    const Plan plan;
    EXPECT_DOUBLE_EQ(valueOf(plan, "box.body-length").value(), 330);
    EXPECT_DOUBLE_EQ(valueOf(plan, "box.wall-top").value(), 3);
    EXPECT_DOUBLE_EQ(valueOf(plan, "box.inside-depth").value(), 60);    // 64 - 4
    EXPECT_DOUBLE_EQ(valueOf(plan, "box.overall-height").value(), 67);  // 64 + 3
    EXPECT_NEAR(valueOf(plan, "box.inside-area").value(), 314 * 214, 1e-6);
    EXPECT_NEAR(valueOf(plan, "box.inside-volume").value(), 314.0 * 214 * 60, 1e-3);
    EXPECT_NEAR(valueOf(plan, "lid.area").value(), 330 * 230 - (4 - kPi) * 16, 0.2);
    EXPECT_DOUBLE_EQ(valueOf(plan, "scale.measured").value(), 635);
    EXPECT_DOUBLE_EQ(valueOf(plan, "nut.to-box").value(), 400);
    EXPECT_DOUBLE_EQ(valueOf(plan, "saddle.to-tail").value(), 95);
    EXPECT_DOUBLE_EQ(valueOf(plan, "neck.needed").value(), 885);
    EXPECT_DOUBLE_EQ(valueOf(plan, "neck.left-over").value(), 26);       // 915 - 885 - 2 x 2
    EXPECT_DOUBLE_EQ(valueOf(plan, "fretboard.left-over").value(), 48);  // 450 - 400 - 2
    EXPECT_DOUBLE_EQ(valueOf(plan, "head-wall.opening-depth").value(), 25);
    EXPECT_DOUBLE_EQ(valueOf(plan, "tail-wall.left-under").value(), 39);
    EXPECT_NEAR(valueOf(plan, "strings.pitch-at-nut").value(), 26.0 / 3, 1e-12);
    EXPECT_DOUBLE_EQ(valueOf(plan, "station.saddle").value(), 235);
    EXPECT_FALSE(valueOf(plan, "bridge.art-clearance"));
    EXPECT_DOUBLE_EQ(valueOf(plan, "lid.open-area").value(), 0);
}

TEST(Values, OpeningsAndClearances)
{
    Plan plan;
    plan.holes = {{HoleKind::Circle, 180, 0, 30, 60, 0}};
    EXPECT_NEAR(valueOf(plan, "hole.1.area").value(), kPi * 225, 1);
    EXPECT_NEAR(valueOf(plan, "lid.open-area").value(), kPi * 225, 1);
    EXPECT_NEAR(valueOf(plan, "bridge.art-clearance").value(), 226 - 195, 0.02);
}

// By hand: four corner blocks of 25 x 25 x 48, a wall block of 60 x 12 x 12.
TEST(Values, GlueOfBlocksAndBars)
{
    Plan plan;
    plan.blocks.resize(1);
    plan.bars.resize(1);
    plan.bars[0].length = 80;
    plan.bars[0].width = 7;
    EXPECT_NEAR(valueOf(plan, "corner-blocks.glue-on-walls").value(), 50 * 48, 1e-6);
    EXPECT_NEAR(valueOf(plan, "corner-blocks.glue-on-lid").value(), 625, 1e-6);
    EXPECT_NEAR(valueOf(plan, "block.1.glue-on-wall").value(), 60 * 12, 1e-6);
    EXPECT_NEAR(valueOf(plan, "block.1.glue-on-lid").value(), 60 * 12, 1e-6);
    EXPECT_NEAR(valueOf(plan, "bar.1.glue-on-lid").value(), 80 * 7, 1e-6);
    plan.cornerBlocks.present = false;
    EXPECT_FALSE(valueOf(plan, "corner-blocks.glue-on-lid"));
}

TEST(Values, OneStringHasNoPitch)
{
    Plan plan;
    plan.stringSet.resize(1);
    EXPECT_FALSE(valueOf(plan, "strings.pitch-at-nut"));
}

class RandomLayouts : public ::testing::TestWithParam<unsigned> {};

TEST_P(RandomLayouts, AreFiniteAndTheirValuesKeyedOnce)
{
    testing::RandomPlans plans(GetParam());
    for (int i = 0; i < 60; ++i) {
        const Plan plan = plans.next();
        const Layout layout = derive(plan);
        expectFinite(layout);
        std::set<std::string> keys;
        for (const DerivedValue& v : values(plan, layout)) {
            EXPECT_TRUE(std::isfinite(v.measure.value)) << v.key;
            EXPECT_TRUE(keys.insert(v.key).second) << v.key << " stands twice";
            EXPECT_FALSE(v.label.empty()) << v.key;
        }
    }
}
INSTANTIATE_TEST_SUITE_P(Seeds, RandomLayouts, ::testing::Range(100u, 108u));

}  // namespace
}  // namespace lidwright
