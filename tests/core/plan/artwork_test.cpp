#include "core/plan/artwork.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

Region box(double x, double y, double w, double h)
{
    return {{rectangleRing({x + w / 2, y + h / 2}, w, h)}};
}

ArtPaint fillOf(const std::string& colour)
{
    return {"fill " + colour, colour, false, 0};
}

ArtPaint lineOf(const std::string& colour, double width)
{
    return {"line " + colour, colour, true, width};
}

std::vector<ArtUse> guess(const std::vector<ArtPaint>& paints)
{
    Artwork art;
    art.paints = paints;
    return firstGuess(art);
}

TEST(FirstGuess, CutsALonePaintWhateverItsColour)
{
    EXPECT_EQ(guess({fillOf("#000000")}), std::vector{ArtUse::Cut});
    EXPECT_EQ(guess({fillOf("#ffffff")}), std::vector{ArtUse::Cut});
    EXPECT_EQ(guess({lineOf("#ff0000", 3)}), std::vector{ArtUse::Cut});
    EXPECT_EQ(guess({lineOf("#ff0000", 0.1)}), std::vector{ArtUse::CutInside})
        << "a hairline is where to cut";
    EXPECT_TRUE(guess({}).empty());
}

TEST(FirstGuess, GoesByLightnessAndWidth)
{
    EXPECT_EQ(guess({fillOf("#000000"), fillOf("#ffffff"), fillOf("#202060"), fillOf("#fdfdf8"),
                     fillOf("#c08040"), lineOf("#000000", 0.05), lineOf("#0000ff", 2)}),
              (std::vector{ArtUse::Cut, ArtUse::Wood, ArtUse::Cut, ArtUse::Wood, ArtUse::Engraved,
                           ArtUse::CutInside, ArtUse::Engraved}));
}

TEST(FirstGuess, TakesUnreadableColoursAsDark)
{
    EXPECT_EQ(guess({fillOf("nonsense"), fillOf("#ffffff")}), (std::vector{ArtUse::Cut, ArtUse::Wood}));
}

/// What the uses say about one point: runs in order, later ones on top.
struct Truth {
    bool cut = false, engraved = false;
};

Truth truthAt(const Artwork& art, const std::vector<ArtUse>& uses, Point p)
{
    Truth truth;
    for (const ArtRun& run : art.runs) {
        const auto i = static_cast<std::size_t>(run.paint);
        const ArtUse use = i < uses.size() ? uses[i] : ArtUse::Ignored;
        if (!contains(use == ArtUse::CutInside ? run.enclosed : run.painted, p)) continue;
        if (use == ArtUse::Cut || use == ArtUse::CutInside) truth.cut = true;
        if (use == ArtUse::Engraved) truth.engraved = true;
        if (use == ArtUse::Wood) truth = {};
    }
    truth.engraved = truth.engraved && !truth.cut;
    return truth;
}

TEST(Areas, FollowThePaintingOrder)
{
    Artwork art;
    art.paints = {fillOf("#000000"), fillOf("#ffffff")};
    art.runs = {{0, box(0, 0, 20, 20), {}}, {1, box(5, 5, 10, 10), {}}, {0, box(8, 8, 4, 4), {}}};
    const ArtAreas one = areas(art, {ArtUse::Cut, ArtUse::Wood});
    EXPECT_DOUBLE_EQ(area(one.cut), 400 - 100 + 16);
    EXPECT_TRUE(one.engraved.empty());
    const ArtAreas two = areas(art, {ArtUse::Engraved, ArtUse::Cut});
    EXPECT_DOUBLE_EQ(area(two.cut), 100);
    EXPECT_DOUBLE_EQ(area(two.engraved), 300) << "engraving never covers a cut, even painted over it";
    EXPECT_DOUBLE_EQ(area(areas(art, {ArtUse::Cut}).cut), 400) << "missing uses are ignored paints";
    EXPECT_TRUE(areas(art, {}).cut.empty());
}

TEST(Areas, CutInsideTakesWhatTheLinesEnclose)
{
    Artwork art;
    art.paints = {lineOf("#ff0000", 0.1)};
    art.runs = {{0, subtract(box(0, 0, 20, 20), box(1, 1, 18, 18)), box(0.5, 0.5, 19, 19)}};
    EXPECT_DOUBLE_EQ(area(areas(art, {ArtUse::CutInside}).cut), 361);
    EXPECT_DOUBLE_EQ(area(areas(art, {ArtUse::Cut}).cut), 76);
}

TEST(Areas, AgreeWithThePointByPointRuleOnRandomStacks)
{
    std::mt19937 dice(21);
    std::uniform_real_distribution<double> place(0, 80), size(2, 30);
    for (int round = 0; round < 60; ++round) {
        Artwork art;
        std::vector<ArtUse> uses;
        for (int i = 0; i < 5; ++i) {
            art.paints.push_back(lineOf("#00000" + std::to_string(i), 1));
            uses.push_back(static_cast<ArtUse>(dice() % 5));
        }
        for (int i = 0; i < 1 + round; ++i) {
            art.runs.push_back({static_cast<int>(dice() % 5),
                                box(place(dice), place(dice), size(dice), size(dice)),
                                box(place(dice), place(dice), size(dice), size(dice))});
        }
        const ArtAreas result = areas(art, uses);
        for (int k = 0; k < 200; ++k) {
            const Point p{place(dice) * 1.3, place(dice) * 1.3};
            const Truth truth = truthAt(art, uses, p);
            EXPECT_EQ(contains(result.cut, p), truth.cut);
            EXPECT_EQ(contains(result.engraved, p), truth.engraved);
        }
    }
}

TEST(Areas, OfThousandsOfAlternatingRunsAreRight)
{
    Artwork art;
    art.paints = {fillOf("#000000"), fillOf("#ffffff")};
    for (int i = 0; i < 3000; ++i) {
        art.runs.push_back({0, box(i % 60 * 10, i / 60 * 10, 8, 8), {}});
        art.runs.push_back({1, box(i % 60 * 10 + 2, i / 60 * 10 + 2, 4, 4), {}});
    }
    EXPECT_NEAR(area(areas(art, {ArtUse::Cut, ArtUse::Wood}).cut), 3000 * (64 - 16), 1e-6);
}

}  // namespace
}  // namespace lidwright
