// Who wins when several places paint one shape, and how paints are named.

#include "core/io/svg/svg_style.h"

#include "tests/core/io/svg/svg_support.h"

#include "core/io/svg/svg_selector.h"

#include <gmock/gmock.h>

namespace lidwright {
namespace {

using ::testing::ElementsAre;
using testing::page100;
using testing::paintNames;
using testing::readGood;
using testing::says;

std::vector<std::string> paintsOf(const std::string& body)
{
    return paintNames(readGood(page100(body)).art);
}

TEST(SvgCascade, StrongerPlacesWin)
{
    const std::string sheet = "<style>rect{fill:#000001} .a{fill:#000002} #i{fill:#000003}</style>";
    EXPECT_THAT(paintsOf(sheet + R"(<rect width="9" height="9" fill="#00000f"/>)"),
                ElementsAre("fill #000001"));
    EXPECT_THAT(paintsOf(sheet + R"(<rect class="b a" width="9" height="9"/>)"), ElementsAre("fill #000002"));
    EXPECT_THAT(paintsOf(sheet + R"(<rect id="i" class="a" width="9" height="9"/>)"),
                ElementsAre("fill #000003"));
    EXPECT_THAT(paintsOf(sheet + R"(<rect id="i" style="fill:#000004" width="9" height="9"/>)"),
                ElementsAre("fill #000004"));
    EXPECT_THAT(paintsOf("<style>rect{fill:#000001 !important} #i{fill:#000003}</style>"
                         R"(<rect id="i" style="fill:#000004" width="9" height="9"/>)"),
                ElementsAre("fill #000001"));
    EXPECT_THAT(paintsOf("<style>rect{fill:#000001 !important}</style>"
                         R"(<rect style="fill:#000004!important" width="9" height="9"/>)"),
                ElementsAre("fill #000004"));
    EXPECT_THAT(paintsOf("<style>.a{fill:#000001} .b{fill:#000002}</style>"
                         R"(<rect class="b a" width="9" height="9"/>)"),
                ElementsAre("fill #000002"))
        << "the later of two equals";
}

TEST(SvgCascade, SheetsMayStandBehindAndInCdataAndHaveComments)
{
    EXPECT_THAT(paintsOf(R"(<rect class="a" width="9" height="9"/><style type="text/css"><![CDATA[
        /* .a { fill: red } */ @charset "x"; .b, .a { fill : #00aa00 ; stroke: none }
        @media print { .a { fill: blue } } @media screen { .a { fill-opacity: 1 } } ]]></style>)"),
                ElementsAre("fill #00aa00"));
}

TEST(SvgCascade, UnreadableRulesAreSaid)
{
    const auto art = readGood(page100("<style>rect:nth-child(2){fill:red} g + rect{fill:red}</style>"
                                      R"(<rect width="9" height="9"/>)"))
                         .art;
    EXPECT_TRUE(says(art, "2 style rules could not be read"));
    EXPECT_THAT(paintNames(art), ElementsAre("fill #000000"));
}

TEST(SvgCascade, InheritsKeepsAndResets)
{
    EXPECT_THAT(paintsOf(R"(<g fill="#112233"><rect width="9" height="9"/></g>)"),
                ElementsAre("fill #112233"));
    EXPECT_THAT(paintsOf(R"svg(<g fill="#112233"><rect fill="url(#x)" width="9" height="9"/></g>)svg"
                         R"(<rect width="5" height="5" fill="#fff"/>)"),
                ElementsAre("fill #ffffff"))
        << "a server that is not there paints nothing";
    EXPECT_THAT(
        paintsOf(R"(<g fill="#112233"><rect style="fill:red;fill:inherit" width="9" height="9"/></g>)"),
        ElementsAre("fill #112233"));
    EXPECT_THAT(paintsOf(R"(<g fill="#112233"><rect style="fill:initial" width="9" height="9"/></g>)"),
                ElementsAre("fill #000000"));
    EXPECT_THAT(paintsOf(R"(<g fill="#112233"><rect fill="nonsense" width="9" height="9"/></g>)"),
                ElementsAre("fill #112233"))
        << "what is no colour counts as not written";
    EXPECT_THAT(
        paintsOf(
            R"(<g opacity="inherit" color="#0000ff"><rect fill="currentColor" width="9" height="9"/></g>)"),
        ElementsAre("fill #0000ff"));
}

TEST(SvgPaint, EveryColourHasItsRunAndEqualNeighboursAreOne)
{
    const auto art =
        readGood(page100(R"(<g fill="red"><rect width="9" height="9"/><rect x="20" width="9" height="9"/>)"
                         R"(</g><rect x="40" width="9" height="9" fill="#F00" stroke="lime"/>)"
                         R"svg(<rect x="60" width="9" height="9" fill="rgb(100%,0%,0%)"/>)svg"))
            .art;
    EXPECT_THAT(paintNames(art), ElementsAre("fill #ff0000", "line #00ff00"));
    ASSERT_EQ(art.runs.size(), 3U);
    EXPECT_EQ(art.runs[0].paint, 0);
    EXPECT_EQ(art.runs[1].paint, 1);
    EXPECT_EQ(art.runs[2].paint, 0);
    EXPECT_NEAR(area(art.runs[0].painted), 3 * 81, 1e-3);
    EXPECT_TRUE(art.paints[1].line);
    EXPECT_EQ(art.paints[1].colour, "#00ff00");
    EXPECT_DOUBLE_EQ(art.paints[1].thinnest, 1);
    EXPECT_EQ(art.paints[0].thinnest, 0);
}

TEST(SvgPaint, PaintOrderPutsTheLineBelow)
{
    EXPECT_THAT(paintsOf(R"(<rect width="9" height="9" stroke="red" paint-order="stroke"/>)"),
                ElementsAre("line #ff0000", "fill #000000"));
}

TEST(SvgPaint, GradientsAreNamedByTheirMiddle)
{
    const std::string stops =
        R"(<stop offset="0" stop-color="#000000"/><stop offset="100%" stop-color="#ffffff"/>)";
    EXPECT_THAT(paintsOf("<linearGradient id=\"g\">" + stops +
                         R"(</linearGradient>)"
                         R"svg(<rect width="9" height="9" fill="url(#g)"/>)svg"),
                ElementsAre("fill gradient #808080"));
    EXPECT_THAT(paintsOf("<linearGradient id=\"h\">" + stops +
                         R"(</linearGradient><radialGradient id="g" href="#h"/>)"
                         R"svg(<rect width="9" height="9" fill="none" stroke="url('#g')"/>)svg"),
                ElementsAre("line gradient #808080"));
    EXPECT_THAT(paintsOf(R"svg(<linearGradient id="g"/><rect width="9" height="9" fill="url(#g)"/>)svg"
                         R"(<rect width="5" height="5" fill="#fff"/>)"),
                ElementsAre("fill #ffffff"))
        << "no stops, no paint";
    EXPECT_THAT(
        paintsOf("<linearGradient id=\"g\">" + stops +
                 R"(</linearGradient>)"
                 R"svg(<path d="M0 5H9" stroke-width="2" stroke="url(#g)"/><rect width="1" height="1"/>)svg"),
        ElementsAre("fill #000000"))
        << "nothing stands in a box without height";
    EXPECT_THAT(paintsOf(R"(<rect width="9" height="9" fill="url(#gone) #123456"/>)"),
                ElementsAre("fill #123456"));
}

TEST(SvgPaint, SeeThroughIsTakenAsSolidAndSaid)
{
    const auto art = readGood(page100(R"(<g opacity=".5"><rect width="9" height="9"/></g>)"
                                      R"(<rect width="9" height="9" fill="#00000080"/>)"))
                         .art;
    EXPECT_TRUE(says(art, "2 shapes are see-through"));
    EXPECT_THAT(paintNames(art), ElementsAre("fill #000000"));
}

TEST(SvgLines, TellWhatTheyEnclose)
{
    const auto run = [](const std::string& body) { return readGood(page100(body)).art.runs.at(0); };
    const std::string line = R"(fill="none" stroke="#f00" stroke-width=".1")";
    EXPECT_NEAR(area(run("<rect x='10' y='10' width='20' height='30' " + line + "/>").enclosed), 600, 1e-3);
    EXPECT_NEAR(area(run("<path d='M10 10h20v30h-20v-30' " + line + "/>").enclosed), 600, 1e-3)
        << "closed by meeting itself";
    EXPECT_NEAR(area(run("<path d='M10 10h20v30h-20' " + line + "/>").enclosed), 0, 0) << "open";
    EXPECT_NEAR(area(run("<g " + line +
                         "><rect x='10' y='10' width='40' height='40'/>"
                         "<rect x='20' y='20' width='10' height='10'/></g>")
                         .enclosed),
                1600 - 100, 1e-3)
        << "even-odd";
    EXPECT_NEAR(area(run("<g " + line +
                         "><rect x='10' y='10' width='40' height='40'/>"
                         "<rect x='10' y='10' width='40' height='40'/></g>")
                         .enclosed),
                1600, 1e-3)
        << "drawn twice is drawn once";
    EXPECT_NEAR(area(run("<rect x='10' y='10' width='20' height='30'/>").enclosed), 0, 0)
        << "fills enclose nothing";
}

TEST(SvgLines, ThinnestIsTheWidthOnTheLid)
{
    const auto art =
        readGood(page100(R"(<g fill="none" stroke="#f00"><path d="M0 9H50" stroke-width="3"/>)"
                         R"svg(<path transform="scale(.5)" d="M0 40H50" stroke-width="1"/></g>)svg"))
            .art;
    EXPECT_NEAR(art.paints.at(0).thinnest, 0.5, 1e-12);
}

TEST(SvgSelectors, MatchAsTheStandardSays)
{
    pugi::xml_document document;
    document.load_string("<svg><g class='a'><g id='x'><path class='b c' fill='red'/></g></g></svg>");
    const pugi::xml_node path = document.child("svg").child("g").child("g").child("path");
    const auto matches = [&](const char* text) {
        svg::Budget budget;
        const auto selector = svg::parseSelector(text);
        return selector && svg::selectorMatches(*selector, path, budget);
    };
    for (const char* yes :
         {"path", "*", ".b", ".c.b", "path.b", "g path", "svg g path", "#x > path", ".a > #x > .c",
          "svg .a path", ".a path", "[fill]", "path[fill=red]", "[fill='red']", "svg > g > g > path"})
        EXPECT_TRUE(matches(yes)) << yes;
    for (const char* no : {"rect", ".d", ".bc", "#x", "svg > path", ".a > path", "#x > g path", "[stroke]",
                           "[fill=blue]", "g:hover path", "a + path", "> path", "path >", "g g g path"})
        EXPECT_FALSE(matches(no)) << no;
}

}  // namespace
}  // namespace lidwright
