// Uses, symbols, nested viewports, clips, patterns, markers: areas that follow from the drawing by hand.

#include "tests/core/io/svg/svg_support.h"

#include "core/base/units.h"

namespace lidwright {
namespace {

using testing::page100;
using testing::paintedArea;
using testing::readGood;
using testing::says;

constexpr double kClose = 0.05;  // mm2

TEST(SvgUse, PlacesAndInheritsFromTheUse)
{
    EXPECT_NEAR(
        paintedArea(
            R"(<defs><rect id="r" width="10" height="20"/></defs>)"
            R"svg(<use xlink:href="#r" x="5" y="5"/><use href="#r" x="30" transform="scale(2)"/>)svg"),
        200 + 800, kClose);
    const auto art = readGood(page100(R"(<defs><rect id="r" width="10" height="20"/></defs>)"
                                      R"(<use href="#r" fill="#ff0000"/>)"))
                         .art;
    EXPECT_EQ(art.paints.at(0).name, "fill #ff0000");
}

TEST(SvgUse, OfASymbolIsTheOnlyWayToPaintIt)
{
    EXPECT_NEAR(
        paintedArea(R"(<symbol id="s"><rect width="10" height="10"/></symbol><rect width="3" height="3"/>)"),
        9, kClose);
}

TEST(SvgUse, OfASymbolIsScaledIntoItsPlace)
{
    const std::string symbol =
        R"(<symbol id="s" viewBox="0 0 10 10"><rect x="-5" width="10" height="10"/></symbol>)";
    EXPECT_NEAR(paintedArea(symbol + R"(<use href="#s" x="20" y="20" width="40" height="40"/>)"), 20 * 40,
                kClose);
    const std::string visible =
        R"(<symbol id="s" overflow="visible" viewBox="0 0 10 10"><rect x="-5" width="10" height="10"/></symbol>)";
    EXPECT_NEAR(paintedArea(visible + R"(<use href="#s" x="30" y="20" width="40" height="40"/>)"), 40 * 40,
                kClose);
}

TEST(SvgUse, InACircleIsSaidAndTheRestIsRead)
{
    const auto reading = readGood(page100(R"(<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>)"
                                          R"(<rect width="10" height="10"/><g id="c"><use href="#c"/></g>)"));
    EXPECT_TRUE(says(reading.art, "refer to themselves"));
    EXPECT_NEAR(area(testing::allPainted(reading.art)), 100, kClose);
}

TEST(SvgUse, OfWhatIsNotThereIsSaid)
{
    const auto reading = readGood(page100(R"(<use href="#gone"/><rect width="10" height="10"/>)"));
    EXPECT_TRUE(says(reading.art, "#gone"));
    const auto elsewhere = readGood(page100(R"(<use href="other.svg#a"/><rect width="10" height="10"/>)"));
    EXPECT_TRUE(says(elsewhere.art, "other.svg#a"));
}

TEST(SvgViewport, NestedSvgHasItsOwnUnitsAndEdge)
{
    // 50 x 40 at (10, 10) with a view box of 100 x 80: half size, and what sticks out is cut.
    EXPECT_NEAR(paintedArea(R"(<svg x="10" y="10" width="50" height="40" viewBox="0 0 100 80">)"
                            R"(<rect x="60" width="100" height="40"/></svg>)"),
                20 * 20, kClose);
    EXPECT_NEAR(paintedArea(R"(<svg x="10" y="10" width="20" height="40" overflow="visible">)"
                            R"(<rect width="50%" height="25%"/><rect x="20" width="30" height="10"/></svg>)"),
                10 * 10 + 300, kClose);
}

TEST(SvgViewport, PreserveAspectRatioPlacesMeetsAndSlices)
{
    const auto boxed = [](const std::string& aspect) {
        const auto reading = readGood(page100(R"(<svg width="80" height="40" viewBox="0 0 10 10" )"
                                              R"(preserveAspectRatio=")" +
                                              aspect + R"("><rect width="10" height="10"/></svg>)"));
        Bounds box = bounds(reading.art.runs.at(0).painted);
        // From the artwork's own frame back to the page's, y down.
        const Point corner{box.minX - reading.page.minX, reading.page.maxY - box.maxY};
        return Bounds{corner.x, corner.y, corner.x + box.width(), corner.y + box.height()};
    };
    const auto expect = [&](const std::string& aspect, const Bounds& wanted) {
        const Bounds box = boxed(aspect);
        EXPECT_NEAR(box.minX, wanted.minX, 1e-4) << aspect;
        EXPECT_NEAR(box.minY, wanted.minY, 1e-4) << aspect;
        EXPECT_NEAR(box.maxX, wanted.maxX, 1e-4) << aspect;
        EXPECT_NEAR(box.maxY, wanted.maxY, 1e-4) << aspect;
    };
    expect("xMidYMid meet", {20, 0, 60, 40});
    expect("xMinYMin", {0, 0, 40, 40});
    expect("xMaxYMax meet", {40, 0, 80, 40});
    expect("none", {0, 0, 80, 40});
    expect("xMidYMid slice", {0, 0, 80, 40});
}

TEST(SvgClip, CutsByShapeRuleUnitsAndNesting)
{
    const std::string big = R"svg(<rect x="10" y="10" width="80" height="80" clip-path="url(#c)"/>)svg";
    EXPECT_NEAR(paintedArea(R"(<clipPath id="c"><rect width="30" height="50"/></clipPath>)" + big), 20 * 40,
                kClose);
    EXPECT_NEAR(paintedArea(R"(<clipPath id="c"><circle cx="50" cy="50" r="20"/></clipPath>)" + big),
                kPi * 400, 0.3);
    EXPECT_NEAR(paintedArea(R"(<clipPath id="c"><path clip-rule="evenodd" )"
                            R"(d="M20 20H60V60H20Z M30 30H50V50H30Z"/></clipPath>)" +
                            big),
                1600 - 400, kClose);
    EXPECT_NEAR(paintedArea(R"(<clipPath id="c" clipPathUnits="objectBoundingBox"><rect x=".5" width=".25" )"
                            R"(height="1"/></clipPath>)" +
                            big),
                20 * 80, kClose);
    EXPECT_NEAR(
        paintedArea(
            R"(<clipPath id="d"><rect width="100" height="30"/></clipPath>)"
            R"svg(<clipPath id="c" clip-path="url(#d)"><rect width="30" height="100"/></clipPath>)svg" +
            big),
        20 * 20, kClose);
    EXPECT_NEAR(
        paintedArea(
            R"(<clipPath id="d"><rect width="100" height="30"/></clipPath><clipPath id="c">)"
            R"svg(<rect width="30" height="100" clip-path="url(#d)"/><rect x="50" y="50" width="10" )svg"
            R"(height="10"/></clipPath>)" +
            big),
        20 * 20 + 100, kClose);
    EXPECT_NEAR(
        paintedArea(
            R"svg(<clipPath id="c" transform="translate(10 0)"><g><rect width="30" height="50"/></g>)svg"
            R"(</clipPath>)" +
            big),
        30 * 40, kClose);
    EXPECT_NEAR(
        paintedArea(R"(<clipPath id="c"><rect width="30" height="50" fill="none" opacity="0"/></clipPath>)" +
                    big),
        20 * 40, kClose)
        << "a clip does not ask how its shapes are painted";
}

TEST(SvgClip, OfAGroupIsMeasuredOverAllItsShapes)
{
    EXPECT_NEAR(
        paintedArea(R"(<clipPath id="c" clipPathUnits="objectBoundingBox"><rect width=".5" height="1"/>)"
                    R"svg(</clipPath><g clip-path="url(#c)"><rect x="10" y="10" width="20" height="20"/>)svg"
                    R"(<rect x="70" y="10" width="20" height="20"/></g>)"),
        400, kClose);
}

TEST(SvgClip, EmptyHidesAllAndMissingHidesNothing)
{
    const auto hidden =
        readGood(page100(R"svg(<clipPath id="c"/><rect width="9" height="9" clip-path="url(#c)"/>)svg"
                         R"(<rect x="50" width="5" height="5"/>)"));
    EXPECT_NEAR(area(testing::allPainted(hidden.art)), 25, kClose);
    const auto whole = readGood(page100(R"svg(<rect width="9" height="9" clip-path="url(#gone)"/>)svg"));
    EXPECT_NEAR(area(testing::allPainted(whole.art)), 81, kClose);
    EXPECT_TRUE(says(whole.art, "#gone"));
}

TEST(SvgSwitch, TakesTheFirstThatFits)
{
    EXPECT_NEAR(
        paintedArea(
            R"(<switch><foreignObject requiredExtensions="http://example.org/x" width="9" )"
            R"(height="9"/><g><rect width="10" height="10"/></g><rect width="90" height="90"/></switch>)"),
        100, kClose);
    EXPECT_NEAR(paintedArea(R"(<switch><rect systemLanguage="fr" width="90" height="90"/>)"
                            R"(<rect systemLanguage="de, en" width="10" height="10"/></switch>)"),
                100, kClose);
}

TEST(SvgPattern, PaintsItsTiles)
{
    EXPECT_NEAR(paintedArea(R"(<pattern id="p" width="10" height="10" patternUnits="userSpaceOnUse">)"
                            R"(<rect width="4" height="5"/></pattern>)"
                            R"svg(<rect width="50" height="40" fill="url(#p)"/>)svg"),
                20 * 20, kClose);
    EXPECT_NEAR(paintedArea(R"(<pattern id="p" width=".25" height=".5" viewBox="0 0 2 2" )"
                            R"(preserveAspectRatio="none"><rect width="1" height="2"/></pattern>)"
                            R"svg(<rect x="10" y="10" width="40" height="40" fill="url(#p)"/>)svg"),
                800, kClose);
    EXPECT_NEAR(
        paintedArea(R"(<pattern id="q" width="10" height="10" patternUnits="userSpaceOnUse" )"
                    R"svg(patternTransform="rotate(90) scale(2)"><rect width="5" height="20"/></pattern>)svg"
                    R"svg(<pattern id="p" href="#q"/><rect width="40" height="40" fill="url(#p)"/>)svg"),
        800, kClose);
}

TEST(SvgPattern, WithMoreTilesThanCanBeDrawnIsTakenWholeAndSaid)
{
    const auto reading =
        readGood(page100(R"(<pattern id="p" width=".1" height=".1" patternUnits="userSpaceOnUse">)"
                         R"(<rect width=".05" height=".1"/></pattern>)"
                         R"svg(<rect width="50" height="40" fill="url(#p)"/>)svg"));
    EXPECT_NEAR(area(testing::allPainted(reading.art)), 2000, kClose);
    EXPECT_TRUE(says(reading.art, "pattern was taken as a plain area"));
    EXPECT_EQ(reading.art.paints.at(0).name, "fill pattern");
}

TEST(SvgMarker, StandsOnEveryVertexOfItsKind)
{
    const std::string marker = R"(<marker id="m" markerWidth="4" markerHeight="4" refX="2" refY="2" )"
                               R"(markerUnits="userSpaceOnUse"><rect width="4" height="4"/></marker>)";
    const std::string path = R"(d="M20 20 H80 V80 H20" fill="none" stroke="none" )";
    EXPECT_NEAR(paintedArea(marker + "<path " + path + R"svg(marker-mid="url(#m)"/>)svg"), 2 * 16, kClose);
    EXPECT_NEAR(paintedArea(marker + "<path " + path + R"svg(style="marker:url(#m)"/>)svg"), 4 * 16, kClose);
    EXPECT_NEAR(
        paintedArea(marker + "<path " + path + R"svg(style="marker-start:url(#m);marker-end:url(#m)"/>)svg"),
        2 * 16, kClose);
}

TEST(SvgMarker, ScalesWithTheLineAndTurnsWithIt)
{
    // Three units wide at a line width of 2: 6 long. It points along the line, from the end on.
    const std::string body =
        R"(<marker id="m" orient="auto" markerWidth="3" markerHeight="2" refX="0" refY="1" >)"
        R"(<rect width="3" height="2"/></marker>)"
        R"svg(<path d="M20 50 V20" stroke="#000" stroke-width="2" marker-end="url(#m)"/>)svg";
    const auto reading = readGood(page100(body));
    EXPECT_NEAR(reading.art.height, 36, 1e-4);
    EXPECT_NEAR(reading.art.width, 4, 1e-4);
    EXPECT_NEAR(area(testing::allPainted(reading.art)), 60 + 24, kClose);
}

TEST(SvgHidden, IsLeftOut)
{
    const std::string rest = R"(<rect x="90" y="90" width="10" height="10"/>)";
    for (const std::string hidden :
         {R"(<rect width="50" height="50" display="none"/>)",
          R"(<rect width="50" height="50" visibility="hidden"/>)",
          R"(<rect width="50" height="50" opacity="0"/>)",
          R"(<rect width="50" height="50" fill-opacity="0"/>)",
          R"(<rect width="50" height="50" fill="none"/>)",
          R"(<rect width="50" height="50" fill="transparent"/>)",
          R"(<g opacity="0"><rect width="50" height="50"/></g>)",
          R"(<defs><rect width="50" height="50"/></defs>)",
          R"svg(<rect width="50" height="50" transform="scale(0)"/>)svg",
          R"(<rect width="-50" height="50"/>)", R"(<circle r="0"/>)",
          R"(<g style="display:none"><rect width="50" height="50" display="inline"/></g>)",
          R"(<x:rect xmlns:x="http://example.org/" width="50" height="50"/>)"}) {
        EXPECT_NEAR(paintedArea(hidden + rest), 100, kClose) << hidden;
    }
    EXPECT_NEAR(
        paintedArea(R"(<g visibility="hidden"><rect width="10" height="10" visibility="visible"/></g>)"), 100,
        kClose);
}

}  // namespace
}  // namespace lidwright
