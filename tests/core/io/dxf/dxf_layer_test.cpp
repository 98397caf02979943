// Layers, colours, units, joining, and what is said of the rest.

#include "tests/core/io/dxf/dxf_support.h"

#include "core/base/units.h"
#include "core/io/dxf/dxf_colour.h"

namespace lidwright {
namespace {

using testing::circle;
using testing::groups;
using testing::line;
using testing::millimetres;
using testing::readGood;
using testing::says;
using testing::section;
using testing::square;

std::string layerRow(const std::string& name, const std::string& colour, const std::string& flags = "0")
{
    return groups({{0, "LAYER"}, {2, name}, {70, flags}, {62, colour}});
}

std::string layerTable(const std::string& rows)
{
    return section("TABLES",
                   groups({{0, "TABLE"}, {2, "LAYER"}, {70, "9"}}) + rows + groups({{0, "ENDTAB"}}));
}

TEST(DxfLayer, EveryLayerAndColourIsAPaint)
{
    const std::string table = layerTable(layerRow("CUT", "1") + layerRow("Engrave", "5"));
    const std::string red = groups({{0, "CIRCLE"}, {8, "cut"}, {62, "1"}, {10, "50"}, {20, "0"}, {40, "3"}});
    const std::string own =
        groups({{0, "CIRCLE"}, {8, "CUT"}, {420, "1193046"}, {10, "0"}, {20, "50"}, {40, "3"}});
    const Artwork art = readGood(millimetres(square("0", "10", "CUT") + circle("30", "0", "4", "ENGRAVE") +
                                                 red + own + circle("0", "80", "4", "stray"),
                                             table))
                            .art;
    ASSERT_EQ(art.paints.size(), 4U);
    EXPECT_EQ(art.paints[0], (ArtPaint{"layer CUT", "#ff0000", true, kDxfHairline}));
    EXPECT_EQ(art.paints[1], (ArtPaint{"layer Engrave", "#0000ff", true, kDxfHairline}));
    EXPECT_EQ(art.paints[2], (ArtPaint{"layer CUT, #123456", "#123456", true, kDxfHairline}));
    EXPECT_EQ(art.paints[3], (ArtPaint{"layer stray", "#000000", true, kDxfHairline}));
    for (std::size_t i = 0; i < art.runs.size(); ++i)
        EXPECT_EQ(art.runs[i].paint, static_cast<int>(i));
    EXPECT_NEAR(area(art.runs[0].enclosed), 100 + kPi * 9, 0.1);
}

TEST(DxfLayer, HairlinesCutWhatTheyEnclose)
{
    const Artwork one = readGood(millimetres(square("0", "10"))).art;
    EXPECT_EQ(firstGuess(one), std::vector<ArtUse>{ArtUse::CutInside});
    const Artwork two = readGood(millimetres(square("0", "10") + circle("40", "0", "5", "other"))).art;
    EXPECT_EQ(firstGuess(two), (std::vector<ArtUse>{ArtUse::CutInside, ArtUse::CutInside}));
    EXPECT_NEAR(area(areas(one, firstGuess(one)).cut), 100, 1e-9);
    // Painted is the hairline itself.
    EXPECT_NEAR(area(one.runs.front().painted), 40 * kDxfHairline, 0.01);
}

TEST(DxfLayer, WhatIsOffFrozenOrOnPaperIsLeftOutAndNamed)
{
    const std::string table = layerTable(layerRow("off", "-3") + layerRow("cold", "2", "1"));
    const std::string paper =
        groups({{0, "CIRCLE"}, {8, "cut"}, {67, "1"}, {10, "900"}, {20, "0"}, {40, "3"}});
    const std::string viewport = groups({{0, "VIEWPORT"}, {8, "0"}, {67, "1"}});
    const Artwork art = readGood(millimetres(square("0", "10") + circle("0", "0", "50", "off") +
                                                 circle("0", "0", "60", "cold") +
                                                 circle("0", "0", "70", "Defpoints") + paper + viewport,
                                             table + layerTable(layerRow("defpoints", "7"))))
                            .art;
    EXPECT_NEAR(art.width, 10, 1e-9);
    EXPECT_TRUE(says(art, "3 lines on layers that are off or frozen"));
    EXPECT_TRUE(says(art, "on \"cold\""));
    EXPECT_TRUE(says(art, "1 thing in paper space"));
}

TEST(DxfLayer, NamesBecomeUtf8)
{
    const Artwork art =
        readGood(millimetres(circle("0", "0", "5", "M\\U+00E4rz") + circle("20", "0", "5", "T\xfcr") +
                             circle("40", "0", "5", "t\xc3\xb6n")))
            .art;
    ASSERT_EQ(art.paints.size(), 3U);
    EXPECT_EQ(art.paints[0].name, "layer M\xc3\xa4rz");
    EXPECT_EQ(art.paints[1].name, "layer T\xc3\xbcr");
    EXPECT_EQ(art.paints[2].name, "layer t\xc3\xb6n");
}

TEST(DxfLayer, UnitsOfTheHeader)
{
    const auto widthIn = [](const std::string& number) {
        const std::string header = section("HEADER", groups({{9, "$INSUNITS"}, {70, number}}));
        const auto reading =
            readDxf(header + section("ENTITIES", square("0", "0.01")) + groups({{0, "EOF"}}), "u.dxf");
        EXPECT_TRUE(reading.ok()) << number;
        if (!reading) return -1.0;
        EXPECT_TRUE(reading->hasPhysicalSize) << number;
        EXPECT_NEAR(reading->widthUnits, 0.01, 1e-9);
        return reading->art.width;
    };
    EXPECT_NEAR(widthIn("1"), 0.254, 1e-9);
    EXPECT_NEAR(widthIn("2"), 3.048, 1e-9);
    EXPECT_NEAR(widthIn("4"), 0.01, 1e-9);
    EXPECT_NEAR(widthIn("5"), 0.1, 1e-9);
    EXPECT_NEAR(widthIn("6"), 10, 1e-9);
    EXPECT_NEAR(widthIn("10"), 9.144, 1e-9);
    EXPECT_NEAR(widthIn("14"), 1, 1e-9);
}

TEST(DxfLayer, UnitsAreAskedForWhereTheFileHasNone)
{
    for (const std::string& header : {std::string(), section("HEADER", groups({{9, "$INSUNITS"}, {70, "0"}})),
                                      section("HEADER", groups({{9, "$MEASUREMENT"}, {70, "1"}}))}) {
        const std::string text = header + section("ENTITIES", square("0", "2")) + groups({{0, "EOF"}});
        EXPECT_FALSE(readGood(text).hasPhysicalSize);
        EXPECT_NEAR(readGood(text).art.width, 2, 1e-9);
        DxfOptions options;
        options.unit_mm = 25.4;
        EXPECT_NEAR(readGood(text, options).art.width, 50.8, 1e-9);
        EXPECT_NEAR(readGood(text, options).widthUnits, 2, 1e-9);
    }
    // What the file says goes before the unit, the width goes before both.
    DxfOptions options;
    options.unit_mm = 25.4;
    EXPECT_NEAR(readGood(millimetres(square("0", "2")), options).art.width, 2, 1e-9);
    options.width_mm = 120;
    EXPECT_NEAR(readGood(millimetres(square("0", "2")), options).art.width, 120, 1e-6);
    EXPECT_NEAR(readGood(millimetres(circle("0", "0", "3")), options).art.width, 120, 0.005);
}

TEST(DxfLayer, TheMiddleOfTheDrawingIsTheOrigin)
{
    const Artwork art = readGood(millimetres(square("1000", "1010") + circle("1030", "1005", "5"))).art;
    const Bounds box = bounds(art.runs.front().enclosed);
    EXPECT_NEAR(box.centre().x, 0, 1e-5);
    EXPECT_NEAR(box.centre().y, 0, 1e-5);
    EXPECT_NEAR(art.width, 35, 0.002);
}

TEST(DxfLayer, EndsJoinWithinTheToleranceAndNotBeyond)
{
    const auto triangle = [](const std::string& end) {
        return millimetres(line("0", "0", "10", "0") + line("10", "0", "10", "10") +
                           line("10", "10", "0", end));
    };
    const Artwork near = readGood(triangle("0.0099")).art;
    EXPECT_NEAR(area(near.runs.front().enclosed), 50, 0.1);
    EXPECT_TRUE(near.messages.empty());
    const Artwork apart = readGood(triangle("0.35")).art;
    EXPECT_TRUE(apart.runs.front().enclosed.empty());
    EXPECT_TRUE(says(apart, "1 line on layer cut is not closed"));
    EXPECT_TRUE(says(apart, "the narrowest gap is 0.35 mm, at x 0, y 0.175 of the file"))
        << apart.messages.front();
}

TEST(DxfLayer, ATailAndALooseLineDoNotSpoilTheOutline)
{
    const Artwork art = readGood(millimetres(line("0", "0", "10", "0") + line("10", "0", "10", "10") +
                                             line("10", "10", "0", "0") + line("10", "0", "15", "-5") +
                                             line("15", "-5", "20", "-5") + line("50", "50", "60", "50")))
                            .art;
    EXPECT_NEAR(area(art.runs.front().enclosed), 50, 1e-6);
    EXPECT_TRUE(says(art, "2 lines on layer cut are not closed"));
}

TEST(DxfLayer, OutlinesThatTouchInACornerAreBothFound)
{
    const Artwork art = readGood(millimetres(line("0", "0", "10", "0") + line("10", "0", "10", "10") +
                                             line("10", "10", "0", "0") + line("0", "0", "-10", "0") +
                                             line("-10", "0", "-10", "-10") + line("-10", "-10", "0", "0")))
                            .art;
    EXPECT_NEAR(area(art.runs.front().enclosed), 100, 1e-6);
    EXPECT_TRUE(art.messages.empty());
}

TEST(DxfLayer, ABridgeBetweenTwoOutlinesIsOpen)
{
    const auto triangle = [](const std::string& x, const std::string& far) {
        return line(x, "0", far, "5") + line(far, "5", far, "-5") + line(far, "-5", x, "0");
    };
    const Artwork art =
        readGood(millimetres(triangle("10", "20") + triangle("-10", "-20") + line("-10", "0", "10", "0")))
            .art;
    EXPECT_NEAR(area(art.runs.front().enclosed), 100, 1e-6);
    EXPECT_TRUE(says(art, "1 line on layer cut is not closed"));
}

TEST(DxfLayer, WhatIsDrawnTwiceCountsOnce)
{
    const std::string ring =
        line("0", "0", "10", "0") + line("10", "0", "10", "10") + line("10", "10", "0", "0");
    const Artwork art = readGood(millimetres(ring + line("10", "0", "0", "0") + circle("40", "0", "5") +
                                             circle("40", "0", "5")))
                            .art;
    EXPECT_NEAR(area(art.runs.front().enclosed), 50 + kPi * 25, 0.1);
    EXPECT_TRUE(says(art, "2 lines are drawn twice"));
    // An arc and its chord share their ends and are two lines.
    const std::string arc =
        groups({{0, "ARC"}, {8, "cut"}, {10, "0"}, {20, "0"}, {40, "5"}, {50, "0"}, {51, "180"}});
    EXPECT_FALSE(says(readGood(millimetres(arc + line("-5", "0", "5", "0"))).art, "twice"));
}

TEST(DxfLayer, WhatCannotBeCutIsCountedByKind)
{
    std::string more;
    for (const char* kind : {"TEXT", "TEXT", "MTEXT", "HATCH", "IMAGE", "DIMENSION", "3DFACE", "POINT"})
        more += groups({{0, kind}, {8, "cut"}, {10, "0"}, {20, "0"}});
    const Artwork art = readGood(millimetres(more + square("0", "10"))).art;
    EXPECT_TRUE(says(art,
                     "8 things that are no lines were left out (1 3DFACE, 1 DIMENSION, 1 HATCH, 1 IMAGE, "
                     "1 MTEXT, 1 POINT, 2 TEXT)"))
        << art.messages.front();
    // In a block that nothing inserts they are not worth a word.
    const std::string block =
        section("BLOCKS", groups({{0, "BLOCK"}, {2, "B"}, {0, "TEXT"}, {8, "0"}, {0, "ENDBLK"}}));
    EXPECT_TRUE(readGood(millimetres(square("0", "10"), block)).art.messages.empty());
}

TEST(DxfColour, TheNamedOnesAndTheHues)
{
    EXPECT_EQ(colourText(dxfColour(1)), "#ff0000");
    EXPECT_EQ(colourText(dxfColour(3)), "#00ff00");
    EXPECT_EQ(colourText(dxfColour(5)), "#0000ff");
    EXPECT_EQ(colourText(dxfColour(7)), "#000000");
    // As ezdxf 0.18's table has them.
    const std::pair<int, const char*> known[] = {
        {10, "#ff0000"}, {11, "#ff7f7f"}, {12, "#a50000"}, {13, "#a55252"},  {14, "#7f0000"},
        {16, "#4c0000"}, {19, "#261313"}, {20, "#ff3f00"}, {21, "#ff9f7f"},  {22, "#a52900"},
        {35, "#7f5f3f"}, {40, "#ffbf00"}, {58, "#262600"}, {240, "#ff003f"}, {243, "#a55267"}};
    for (const auto& [number, text] : known)
        EXPECT_EQ(colourText(dxfColour(number)), text) << number;
    EXPECT_EQ(dxfColour(0), 0U);
    EXPECT_EQ(dxfColour(256), 0U);
    for (int number = 1; number <= 255; ++number)
        EXPECT_EQ(dxfColour(nearestDxfColour(dxfColour(number))) == dxfColour(number) ||
                      dxfColour(number) == 0xffffff,
                  true)
            << number;
    EXPECT_EQ(nearestDxfColour(0x00a000), 92);
    EXPECT_EQ(colourOf("#12ab9f"), 0x12ab9fU);
    EXPECT_EQ(colourOf("red"), 0U);
}

}  // namespace
}  // namespace lidwright
