// How large a drawing comes out, and where.

#include "tests/core/io/svg/svg_support.h"

#include <cmath>

namespace lidwright {
namespace {

using testing::readGood;
using testing::says;

std::string file(const std::string& attributes,
                 const std::string& body = R"(<rect x="10" y="20" width="96" height="48"/>)")
{
    return R"(<svg xmlns="http://www.w3.org/2000/svg" )" + attributes + ">" + body + "</svg>";
}

struct SizeCase {
    std::string attributes;
    double width;  ///< mm, of a rectangle 96 units wide
    bool physical;
};

class SvgSize : public ::testing::TestWithParam<SizeCase> {};

TEST_P(SvgSize, IsWhatTheFileSays)
{
    const SvgReading reading = readGood(file(GetParam().attributes));
    EXPECT_NEAR(reading.art.width, GetParam().width, 1e-4);
    EXPECT_NEAR(reading.art.height, GetParam().width / 2, 1e-4);
    EXPECT_EQ(reading.hasPhysicalSize, GetParam().physical);
}

INSTANTIATE_TEST_SUITE_P(
    All, SvgSize,
    ::testing::Values(SizeCase{R"(width="200" height="200")", 25.4, false},
                      SizeCase{R"(width="200px" height="200px")", 25.4, false},
                      SizeCase{R"(width="200" height="200" viewBox="0 0 400 400")", 12.7, false},
                      SizeCase{R"(viewBox="0 0 400 400")", 25.4, false},
                      SizeCase{R"(width="100%" height="100%" viewBox="0 0 400 400")", 25.4, false},
                      SizeCase{"", 25.4, false},
                      SizeCase{R"(width="200mm" height="200mm" viewBox="0 0 200 200")", 96, true},
                      SizeCase{R"(width="20cm" height="20cm" viewBox="0 0 200 200")", 96, true},
                      SizeCase{R"(width="2in" height="2in" viewBox="0 0 192 192")", 25.4, true},
                      SizeCase{R"(width="144pt" height="144pt" viewBox="0 0 192 192")", 25.4, true},
                      SizeCase{R"(width="12pc" height="12pc" viewBox="0 0 192 192")", 25.4, true},
                      SizeCase{R"(width="200mm" viewBox="0 0 200 100")", 96, true},
                      SizeCase{R"(height="100mm" viewBox="0 0 200 100")", 96, true},
                      SizeCase{R"(width="100mm" height="100mm")", 25.4, true}));

TEST(SvgSizeOptions, UnitsPerInchCountOnlyWhereTheFileIsSilent)
{
    SvgOptions options;
    options.unitsPerInch = 72;
    EXPECT_NEAR(readGood(file(R"(width="200" height="200")"), options).art.width, 96 / 72.0 * 25.4, 1e-4);
    EXPECT_NEAR(readGood(file(R"(width="200mm" height="200mm" viewBox="0 0 200 200")"), options).art.width,
                96, 1e-4);
    // A length in real units inside stays what it is.
    EXPECT_NEAR(
        readGood(file(R"(width="200" height="200")", R"(<rect width="10mm" height="10mm"/>)"), options)
            .art.width,
        10, 1e-4);
}

TEST(SvgSizeOptions, WidthIsOfWhatIsPainted)
{
    SvgOptions options;
    options.width_mm = 77;
    for (const char* page :
         {R"(width="200" height="200")", R"(width="200mm" height="200mm" viewBox="0 0 200 200")", "",
          R"(width="2e7" height="2e7" viewBox="0 0 200 200")"}) {
        const SvgReading reading = readGood(file(page), options);
        EXPECT_NEAR(reading.art.width, 77, 1e-4) << page;
        EXPECT_NEAR(reading.art.height, 38.5, 1e-4) << page;
    }
    // A slanting line's true width is less than any box about its corners and pen tells.
    const SvgReading slant = readGood(
        file(R"(width="200" height="200")", R"(<path stroke="#000" stroke-width="9" d="M50 50L150 150"/>)"),
        options);
    EXPECT_NEAR(slant.art.width, 77, 1e-4);
    EXPECT_NEAR(slant.widthUnits, 100 + 9 / std::sqrt(2.0), 1e-3);
}

TEST(SvgSizeOptions, TellUnitsSoThatSizesCanBeShownBeforeTheChoice)
{
    const SvgReading plain = readGood(file(R"(width="200" height="200")"));
    EXPECT_NEAR(plain.widthUnits, 96, 1e-4);
    EXPECT_NEAR(plain.heightUnits, 48, 1e-4);
    SvgOptions options;
    options.width_mm = 500;
    EXPECT_NEAR(readGood(file(R"(width="200" height="200" viewBox="0 0 100 100")"), options).widthUnits, 180,
                1e-3)
        << "units of the page; its edge leaves 90 of the 96";
}

TEST(SvgSizeOptions, OutOfRangeAreRefused)
{
    for (const double bad : {0.0, -5.0, std::nan(""), HUGE_VAL}) {
        SvgOptions units, width, tolerance;
        units.unitsPerInch = bad;
        width.width_mm = bad;
        tolerance.tolerance = bad;
        EXPECT_FALSE(readSvg(file(""), "a", units).ok());
        EXPECT_FALSE(readSvg(file(""), "a", width).ok());
        EXPECT_FALSE(readSvg(file(""), "a", tolerance).ok());
    }
}

TEST(SvgFrame, OriginIsTheMiddleAndYPointsUp)
{
    const SvgReading reading = readGood(file(R"(width="200mm" height="200mm" viewBox="0 0 200 200")",
                                             R"(<rect x="10" y="20" width="30" height="40"/>)"
                                             R"(<rect x="30" y="60" width="10" height="10"/>)"));
    const Bounds box = bounds(testing::allPainted(reading.art));
    EXPECT_NEAR(box.minX, -15, 1e-4);
    EXPECT_NEAR(box.maxX, 15, 1e-4);
    EXPECT_NEAR(box.minY, -25, 1e-4);
    EXPECT_NEAR(box.maxY, 25, 1e-4);
    const Region all = testing::allPainted(reading.art);
    EXPECT_TRUE(contains(all, {-10, 20})) << "the top left is on top, left";
    EXPECT_FALSE(contains(all, {-10, -20}));
    EXPECT_TRUE(contains(all, {10, -20}));
    EXPECT_NEAR(reading.page.minX, -25, 1e-4);
    EXPECT_NEAR(reading.page.maxY, 45, 1e-4);
}

TEST(SvgFrame, EveryPointIsOnTheGridAndEveryRegionIsOriented)
{
    const SvgReading reading =
        readGood(file("", R"(<path fill-rule="evenodd" stroke="red" stroke-width="2" )"
                          R"svg(transform="rotate(33) scale(2 1.3)" )svg"
                          R"(d="M10 10C90 10 90 90 10 90S-70 10 10 10ZM20 20H40V40H20Z"/>)"));
    ASSERT_EQ(reading.art.runs.size(), 2U);
    for (const ArtRun& run : reading.art.runs) {
        EXPECT_GT(area(run.painted), 0);
        for (const Ring& ring : run.painted.rings) {
            ASSERT_GE(ring.size(), 3U);
            for (const Point& p : ring) {
                EXPECT_EQ(p.x, std::round(p.x * kGridPerMillimetre) / kGridPerMillimetre);
                EXPECT_EQ(p.y, std::round(p.y * kGridPerMillimetre) / kGridPerMillimetre);
            }
        }
        const Region again = fill(run.painted.rings, FillRule::NonZero);
        EXPECT_NEAR(area(again), area(run.painted), 1e-3);
    }
}

TEST(SvgFrame, KeepsNameSizeAndSaysTheSameTwice)
{
    const std::string text = file(R"(width="200" height="200")");
    const auto reading = readSvg(text, "sun.svg", {});
    ASSERT_TRUE(reading.ok());
    EXPECT_EQ(reading->art.fileName, "sun.svg");
    EXPECT_EQ(reading->art.fileSize, text.size());
    EXPECT_EQ(reading->art, readSvg(text, "sun.svg", {})->art);
}

TEST(SvgMessages, NameWhatWasLeftOut)
{
    const auto art =
        readGood(
            file(
                R"(width="200" height="200")",
                R"(<rect x="150" width="99" height="9"/><text x="5" y="5">Hello <tspan>there</tspan></text><text> </text>)"
                R"(<image width="5" height="5" href="data:image/png;base64,AAAA"/><script>1</script>)"
                R"svg(<rect width="5" height="5" filter="url(#f)" mask="url(#m)"><animate/></rect>)svg"
                R"svg(<foreignObject width="5" height="5"/><path d="M0 0H9V9X"/><rect width="5" height="5" transform="turn(5)"/>)svg"
                R"(<rect width="5" height="5" vector-effect="non-scaling-stroke" stroke="red"/>)"
                R"svg(<meshgradient id="mesh"/><rect width="5" height="5" fill="url(#mesh)"/>)svg"))
            .art;
    for (const char* words :
         {"1 piece of text was left out (\"Hello there\")", "1 picture made of pixels", "1 script",
          "1 filter", "1 mask", "1 animation", "another language", "1 shape breaks off",
          "1 transform or size", "keeps its width", "1 kind of paint", "beyond the page"})
        EXPECT_TRUE(says(art, words)) << words;
    EXPECT_EQ(art.messages.size(), 12U);
    const auto quiet = readGood(file(R"(width="200" height="200")")).art;
    EXPECT_TRUE(quiet.messages.empty()) << quiet.messages.front();
}

TEST(SvgMessages, WarnOfAPageInMillimetresWithoutAViewBox)
{
    EXPECT_TRUE(says(readGood(file(R"(width="100mm" height="100mm")")).art, "no viewBox"));
    EXPECT_FALSE(
        says(readGood(file(R"(width="100mm" height="100mm" viewBox="0 0 100 100")")).art, "no viewBox"));
}

}  // namespace
}  // namespace lidwright
