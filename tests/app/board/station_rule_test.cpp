#include "app/board/station_labels.h"
#include "tests/app/board/board_fixture.h"

#include <random>

namespace lidwright::testing {
namespace {

TEST(StationLabels, NothingEverOverlaps)
{
    std::mt19937 random(7);
    std::uniform_real_distribution<double> place(-50, 1250), width(30, 320);
    std::uniform_int_distribution<int> weight(1, 4), count(1, 16);
    int shownLabels = 0, allLabels = 0;
    for (int run = 0; run < 300; ++run) {
        std::vector<LabelWish> wishes(static_cast<std::size_t>(count(random)));
        for (LabelWish& w : wishes)
            w = {place(random), width(random), weight(random)};
        std::sort(wishes.begin(), wishes.end(), [](auto& a, auto& b) { return a.at < b.at; });
        const auto places = staggerLabels(wishes, 3, 100, 1200, 10);
        ASSERT_EQ(places.size(), wishes.size());
        for (std::size_t i = 0; i < places.size(); ++i) {
            ++allLabels;
            if (!places[i].shown) continue;
            ++shownLabels;
            const double from = places[i].left, to = from + wishes[i].width;
            EXPECT_GE(from, 100);
            EXPECT_LE(to, 1200);
            EXPECT_TRUE(from > wishes[i].at || to < wishes[i].at);
            for (std::size_t j = 0; j < places.size(); ++j) {
                if (j == i || !places[j].shown) continue;
                const double start = places[j].left, end = start + wishes[j].width;
                if (places[j].row == places[i].row) {
                    EXPECT_TRUE(end < from || to < start);
                }
                // Leaders of labels farther out do not run through these words.
                if (places[j].row >= places[i].row) {
                    EXPECT_FALSE(wishes[j].at > from && wishes[j].at < to);
                }
            }
        }
    }
    // Room is used: an empty answer would pass all of the above.
    EXPECT_GT(shownLabels, allLabels / 3);
}

TEST(StationLabels, TheWeightierOneStays)
{
    const std::vector<LabelWish> wishes{{500, 300, 1}, {502, 300, 4}};
    const auto places = staggerLabels(wishes, 1, 400, 830, 10);
    EXPECT_FALSE(places[0].shown);
    EXPECT_TRUE(places[1].shown);
}

class Rule : public BoardTest {
protected:
    StationRule& rule() { return board.stationRule(); }
    QString wordsAt(double x)
    {
        for (const auto& s : rule().shownStations())
            if (std::abs(s.x - x) < 0.01) return s.words;
        return {};
    }
};

TEST_F(Rule, EveryStationWithItsDistanceFromTheNutOrTheBox)
{
    for (const Station& s : layout().stations)
        EXPECT_FALSE(wordsAt(s.x).isEmpty()) << s.id;
    EXPECT_TRUE(wordsAt(layout().nutX).endsWith("0 mm"));
    EXPECT_TRUE(wordsAt(layout().saddleX).endsWith("635 mm")) << wordsAt(layout().saddleX).toStdString();

    QSignalSpy changed(&rule(), &StationRule::zeroChanged);
    // The switch at the left end.
    QTest::mouseClick(&rule(), Qt::LeftButton, {}, {20, rule().height() - 10});
    EXPECT_EQ(changed.count(), 1);
    EXPECT_EQ(rule().zero(), StationRule::Zero::Box);
    EXPECT_TRUE(wordsAt(layout().nutX).endsWith("-400 mm")) << wordsAt(layout().nutX).toStdString();
    EXPECT_TRUE(wordsAt(layout().saddleX).endsWith("235 mm"));
    QTest::keyClick(&rule(), Qt::Key_Space);
    EXPECT_EQ(rule().zero(), StationRule::Zero::Nut);
}

TEST_F(Rule, WordsDoNotTouchAtAnyZoom)
{
    for (const double factor : {1.0, 1.6, 1.6, 1.6, 0.1, 0.5}) {
        board.zoomBy(factor);
        const auto& all = rule().shownStations();
        for (std::size_t i = 0; i < all.size(); ++i)
            for (std::size_t j = i + 1; j < all.size(); ++j) {
                if (!all[i].place.shown || !all[j].place.shown) continue;
                EXPECT_FALSE(rule().wordsBox(all[i]).intersects(rule().wordsBox(all[j])))
                    << all[i].words.toStdString() << " / " << all[j].words.toStdString();
            }
    }
}

TEST_F(Rule, NutAndSaddleAreNamedOnTheWholeSheet)
{
    for (const double x : {layout().nutX, layout().saddleX})
        for (const auto& s : rule().shownStations())
            if (std::abs(s.x - x) < 0.01) {
                EXPECT_TRUE(s.place.shown) << s.words.toStdString();
            }
}

TEST_F(Rule, PointingNearAStationMeansIt)
{
    QSignalSpy pointed(&rule(), &StationRule::pointedAt);
    QTest::mouseMove(&rule(), QPoint(pixel(View::Top, {layout().saddleX, 0}).x() + 2, 8));
    ASSERT_FALSE(pointed.isEmpty());
    EXPECT_DOUBLE_EQ(pointed.last().at(0).toDouble(), layout().saddleX);
}

TEST_F(Rule, LiesOnTheSideOfTheLidsView)
{
    EXPECT_GT(rule().y(), board.height() / 2);
    document.reset(with(startPlan(), {{"sheet.projection", 1.0}}), {});
    // Third angle: the view from above lies above, and so does the rule.
    EXPECT_EQ(rule().y(), 0);
    EXPECT_GT(pixel(View::Section, {0, 0}).y(), pixel(View::Top, {0, 0}).y());
}

}  // namespace
}  // namespace lidwright::testing
