#include "app/style/contrast.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

// WCAG 2.2 names 4.5:1 and 3:1; these neighbouring greys lie on either side of each limit on white.
TEST(Contrast, MeetsTheKnownBoundaries)
{
    EXPECT_NEAR(contrastRatio(QColor("#767676"), Qt::white), 4.542, 0.001);
    EXPECT_NEAR(contrastRatio(QColor("#777777"), Qt::white), 4.478, 0.001);
    EXPECT_NEAR(contrastRatio(QColor("#949494"), Qt::white), 3.033, 0.001);
    EXPECT_NEAR(contrastRatio(QColor("#959595"), Qt::white), 2.995, 0.001);
    EXPECT_GE(contrastRatio(QColor("#767676"), Qt::white), kTextContrast);
    EXPECT_LT(contrastRatio(QColor("#777777"), Qt::white), kTextContrast);
    EXPECT_GE(contrastRatio(QColor("#949494"), Qt::white), kMarkContrast);
    EXPECT_LT(contrastRatio(QColor("#959595"), Qt::white), kMarkContrast);
}

TEST(Contrast, RunsFromOneToTwentyOneInEitherOrder)
{
    EXPECT_DOUBLE_EQ(contrastRatio(Qt::black, Qt::white), 21);
    EXPECT_DOUBLE_EQ(contrastRatio(Qt::white, Qt::black), 21);
    EXPECT_DOUBLE_EQ(contrastRatio(QColor("#0072b2"), QColor("#0072b2")), 1);
    EXPECT_DOUBLE_EQ(relativeLuminance(QColor(255, 0, 0)), 0.2126);
}

TEST(Contrast, AColourIsMovedNoFurtherThanNeeded)
{
    const QColor good("#005f99");
    EXPECT_EQ(withContrast(good, {Qt::white}, 4.5), good);
    const QColor moved = withContrast(QColor("#e69f00"), {Qt::white}, 3);
    EXPECT_GE(contrastRatio(moved, Qt::white), 3);
    EXPECT_LT(contrastRatio(moved, Qt::white), 3.3);
    EXPECT_GT(moved.saturation(), 200) << "an orange stays an orange";
}

TEST(Contrast, IsReachedOnAnyPairOfNearGrounds)
{
    std::mt19937 random(20240);
    const auto channel = [&] { return static_cast<int>(random() % 256); };
    for (int i = 0; i < 2000; ++i) {
        const QColor ground(channel(), channel(), channel());
        const QColor colour = withContrast(QColor(channel(), channel(), channel()), {ground}, 4.5);
        // Black or white reaches 4.58:1 on every ground, so 4.5 can always be met.
        EXPECT_GE(contrastRatio(colour, ground), 4.5) << ground.name().toStdString();
    }
}

TEST(Contrast, WhereNothingReachesItBlackOrWhiteComesNearest)
{
    const QColor colour = withContrast(QColor("#808080"), {Qt::black, Qt::white}, 10);
    EXPECT_TRUE(colour == QColor(Qt::black) || colour == QColor(Qt::white));
}

}  // namespace
}  // namespace lidwright
