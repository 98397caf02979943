#include "core/drawing/sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace lidwright {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

constexpr LineKind kLines[] = {LineKind::Visible, LineKind::Narrow, LineKind::Hidden, LineKind::Centre,
                               LineKind::Phantom, LineKind::Cut,    LineKind::Mark};

TEST(Sheet, LineWidthsAreOfTheIsoSeriesAndTwoToOne)
{
    // ISO 128-20:1996: 0.13 0.18 0.25 0.35 0.5 0.7 1 1.4 2 mm.
    const std::set<double> series{0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2};
    for (const LineKind kind : kLines) {
        EXPECT_TRUE(series.count(lineWidth(kind))) << word(kind);
        if (kind != LineKind::Visible) {
            EXPECT_DOUBLE_EQ(lineWidth(LineKind::Visible) / lineWidth(kind), 2) << word(kind);
        }
    }
}

TEST(Sheet, DashesAreThoseOfTheIsoLineTypes)
{
    // Line types 02, 04 and 05 of ISO 128-20 at 0.25 mm: dash 12 d, long dash 24 d, gap 3 d, dot 0.5 d.
    EXPECT_THAT(dashPattern(LineKind::Hidden), ElementsAre(3.0, 0.75));
    EXPECT_THAT(dashPattern(LineKind::Centre), ElementsAre(6.0, 0.75, 0.125, 0.75));
    EXPECT_THAT(dashPattern(LineKind::Phantom), ElementsAre(6.0, 0.75, 0.125, 0.75, 0.125, 0.75));
    for (const LineKind kind : {LineKind::Visible, LineKind::Narrow, LineKind::Cut, LineKind::Mark})
        EXPECT_THAT(dashPattern(kind), IsEmpty()) << word(kind);
}

TEST(Sheet, WordsNameOneKindEach)
{
    std::set<std::string> lines;
    for (const LineKind kind : kLines)
        lines.insert(word(kind));
    EXPECT_EQ(lines.size(), std::size(kLines));
    std::set<std::string> fills;
    for (int i = 0; i <= static_cast<int>(FillKind::Warning); ++i)
        fills.insert(word(static_cast<FillKind>(i)));
    EXPECT_EQ(fills.size(), static_cast<std::size_t>(FillKind::Warning) + 1);
    EXPECT_FALSE(fills.count(""));
}

TEST(Sheet, MovingMovesEveryKindOfElement)
{
    const Point by{7, -3};
    const std::vector<Element> all{{"", "", Stroke{{{0, 0}, {4, 5}}, false, LineKind::Narrow}},
                                   {"", "", Fill{{{0, 0}, {4, 0}, {4, 5}}, FillKind::Wood}},
                                   {"", "", Text{{1, 2}, "word"}},
                                   {"", "", Dimension{{0, 0}, {40, 0}, 10, "40", ""}}};
    for (const Element& e : all) {
        const Bounds before = elementBounds(e, 2);
        const Bounds after = elementBounds(moved(e, by), 2);
        EXPECT_NEAR(after.minX, before.minX + by.x, 1e-12);
        EXPECT_NEAR(after.maxX, before.maxX + by.x, 1e-12);
        EXPECT_NEAR(after.minY, before.minY + by.y, 1e-12);
        EXPECT_NEAR(after.maxY, before.maxY + by.y, 1e-12);
    }
}

}  // namespace
}  // namespace lidwright
