#include "core/drawing/template_views.h"

#include "tests/core/drawing/drawn_plans.h"

#include <random>

namespace lidwright {
namespace {

double squaredMoves(const std::vector<double>& from, const std::vector<double>& to)
{
    double sum = 0;
    for (std::size_t i = 0; i < from.size(); ++i)
        sum += (to[i] - from[i]) * (to[i] - from[i]);
    return sum;
}

TEST(KeptApart, PlacesFarEnoughApartStay)
{
    const std::vector<double> at{-3, 1, 5.5, 40};
    EXPECT_EQ(keptApart(at, 4), at);
    EXPECT_TRUE(keptApart({}, 4).empty());
}

TEST(KeptApart, EqualPlacesSpreadAboutTheirMiddle)
{
    const std::vector<double> three = keptApart({10, 10, 10}, 4);
    ASSERT_EQ(three.size(), 3U);
    EXPECT_NEAR(three[0], 6, 1e-12);
    EXPECT_NEAR(three[1], 10, 1e-12);
    EXPECT_NEAR(three[2], 14, 1e-12);
}

// No other way to keep them apart moves them less: tried against many.
TEST(KeptApart, NothingElseMovesThemLess)
{
    std::mt19937_64 bits(20260311);
    const auto between = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(bits() >> 11) * 0x1p-53);
    };
    for (int round = 0; round < 40; ++round) {
        std::vector<double> at(2 + bits() % 5);
        for (double& x : at)
            x = between(0, 15);
        std::sort(at.begin(), at.end());
        const std::vector<double> kept = keptApart(at, 4);
        ASSERT_EQ(kept.size(), at.size());
        for (std::size_t i = 1; i < kept.size(); ++i)
            ASSERT_GE(kept[i] - kept[i - 1], 4 - 1e-9);
        const double best = squaredMoves(at, kept);
        for (int other = 0; other < 4000; ++other) {
            std::vector<double> way = kept;
            for (double& x : way)
                x += between(-1, 1) * (other % 2 == 0 ? 0.1 : 3);
            bool apart = true;
            for (std::size_t i = 1; i < way.size(); ++i)
                apart = apart && way[i] - way[i - 1] >= 4;
            if (apart) EXPECT_GE(squaredMoves(at, way), best - 1e-9);
        }
    }
}

class TemplateViews : public ::testing::Test {
protected:
    Plan plan;
    Layout layout = derive(plan);
    BoardOptions options = atFullSize();
    ViewInput in{plan, layout, options, Side::Below};
    ViewPen pen{View::Top, false, in};

    static BoardOptions atFullSize()
    {
        BoardOptions out;
        out.paper = 1;
        return out;
    }
    Sheet sheet() { return templateOf(pen, "views"); }
};

TEST_F(TemplateViews, AFanOfWordsAtOnePlaceLeavesNoneOverAnother)
{
    std::vector<PlacedWords> places;
    for (int i = 0; i < 12; ++i)
        places.push_back({0.3 * i, std::to_string(i + 1) + ": 25 63/64"});
    addRunning(pen, "scale", -20, places, 3, Side::Above);
    addRunning(pen, "scale", 30, places, -3, Side::Below);
    const Sheet out = sheet();
    EXPECT_THAT(testing::wordsOverWords(out), ::testing::IsEmpty());
    EXPECT_EQ(testing::all<Text>(out).size(), 24U);
    // Every leader begins at its place.
    std::vector<double> from;
    for (const Element& e : out.elements)
        if (const auto* line = std::get_if<Stroke>(&e.what); line != nullptr && e.layer == "words")
            from.push_back(line->points.front().x);
    ASSERT_EQ(from.size(), 24U);
    for (std::size_t i = 0; i < 12; ++i)
        EXPECT_DOUBLE_EQ(from[i], places[i].at);
}

TEST_F(TemplateViews, AFanReachesAsFarAsItSays)
{
    const std::vector<PlacedWords> places{{0, "bass end"}, {0.5, "4: 5"}, {9, "1: 31 and more"}};
    addFan(pen, "scale", places, 0, Side::Above);
    const Bounds drawn = pen.extent(), said = fanReach(places);
    EXPECT_LE(said.minX, drawn.minX + 1e-9);
    EXPECT_GE(said.maxX, drawn.maxX - 1e-9);
    EXPECT_NEAR(said.maxY, drawn.maxY, 1e-9);
}

TEST_F(TemplateViews, ATableKeepsItsColumnsApart)
{
    pen.addSheetElements(
        tableElements("scale", {{"String", "Wide", ""}, {{"12", "a very long cell", "x"}, {"1", "", "yy"}}}));
    const Sheet out = sheet();
    EXPECT_THAT(testing::wordsOverWords(out), ::testing::IsEmpty());
    EXPECT_EQ(testing::all<Text>(out).size(), 7U) << "empty cells are not written";
}

TEST_F(TemplateViews, ViewsStandUnderAndBesideOneAnother)
{
    const auto box = [&](double width, double height) {
        ViewPen view(View::Top, false, in);
        view.outline("neck", "box",
                     {{50, 50}, {50 + width, 50}, {50 + width, 50 + height}, {50, 50 + height}},
                     LineKind::Visible);
        return view;
    };
    const auto lastBox = [&] {
        return bounds(testing::all<Stroke>(Sheet{"", {}, ViewPen(pen).take()}).back().points);
    };
    ViewPen first = box(30, 10), second = box(30, 20), third = box(170, 5), fourth = box(10, 5);
    stackBelow(pen, first);
    EXPECT_EQ(lastBox(), (Bounds{50, 50, 80, 60})) << "nothing there yet: it stays";
    placeBesideOrBelow(pen, second);
    EXPECT_GT(lastBox().minX, 80);
    EXPECT_DOUBLE_EQ(lastBox().maxY, 60) << "upper edges level";
    const double low = lastBox().minY;
    placeBesideOrBelow(pen, third);
    EXPECT_DOUBLE_EQ(lastBox().minX, 50) << "too wide for the page: under all of it";
    EXPECT_LT(lastBox().maxY, low);
    placeRight(pen, fourth);
    EXPECT_DOUBLE_EQ(lastBox().minY, 50);
    EXPECT_GT(lastBox().minX, 220);
}

// The round of a string of diameter d sunk to half of it leaves a mouth as wide as the string, sunk to a
// quarter one of d sqrt(3) / 2 (the chord at that height).
TEST(RoundGroove, IsTheRoundOfItsString)
{
    const auto at = [](double top) { return RoundGroove{3, 2, 7, top}; };
    EXPECT_NEAR(at(8).halfMouth(), 1, 1e-12);
    EXPECT_NEAR(at(7.5).halfMouth(), std::sqrt(3.0) / 2, 1e-12);
    EXPECT_NEAR(at(9).halfMouth(), 1, 1e-12);
    EXPECT_NEAR(at(7).halfMouth(), 0, 1e-12);
    for (const double top : {7.0, 7.2, 7.5, 8.0, 8.5, 9.0}) {
        const Bounds b = bounds(at(top).line(1)), five = bounds(at(top).line(5));
        EXPECT_NEAR(b.minY, 7, 0.01) << top;
        EXPECT_NEAR(b.maxY, top, 1e-9) << top;
        EXPECT_NEAR(b.width(), 2 * at(top).halfMouth(), 1e-9) << top;
        EXPECT_NEAR(b.centre().x, 3, 1e-9);
        EXPECT_NEAR(five.width(), 5 * b.width(), 0.02);
        for (const Point p : at(top).line(1))
            if (p.y < 8 - 1e-9) EXPECT_NEAR(distance(p, {3, 8}), 1, 1e-9);
    }
}

}  // namespace
}  // namespace lidwright
