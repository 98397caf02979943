#include "core/io/build/bench_html.h"

#include "core/io/drawing/sheet_svg.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <pugixml.hpp>

#include <regex>
#include <set>

namespace lidwright {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

/// A drawing with one line, one cut-out and one word, in two runs of the same layer.
Sheet drawing()
{
    Sheet sheet;
    sheet.title = "A <drawing>";
    sheet.extent = {0, 0, 400, 100};
    sheet.paper = 4;
    sheet.elements = {{"a", "box", Stroke{{{0, 0}, {400, 100}}, false, LineKind::Visible}},
                      {"a", "holes", Fill{{{10, 10}, {20, 10}, {20, 20}}, FillKind::CutThrough}},
                      {"a", "holes", Fill{{{30, 10}, {40, 10}, {40, 20}}, FillKind::Engraved}},
                      {"a", "box", Text{{50, 50}, "word & word", 2.5}}};
    return sheet;
}

BenchSheet sheetWith(std::vector<BenchBlock> blocks)
{
    BenchSheet sheet;
    sheet.title = "Title";
    sheet.below = {"Below %1.", {mm(12.5)}};
    sheet.footer = "The foot";
    sheet.sections.push_back({"one", "First", 3, true, true, true, std::move(blocks)});
    return sheet;
}

/// The page as an XML parser reads it, with what only HTML knows put in by hand.
pugi::xml_document parsed(const std::string& html)
{
    std::string page = html.substr(html.find("<html"));
    page = std::regex_replace(page, std::regex("<meta[^>]*>"), "");
    page = std::regex_replace(page, std::regex("&nbsp;"), "-");
    pugi::xml_document document;
    const auto read = document.load_string(page.c_str());
    EXPECT_TRUE(read) << read.description() << " at "
                      << page.substr(static_cast<std::size_t>(read.offset), 80);
    return document;
}

TEST(BenchHtml, WordsHaveTheirLooks)
{
    const std::string page =
        benchHtml(sheetWith({BenchWords{BenchWords::Look::Plain, {"Plain %1", {mm(3)}}},
                             BenchWords{BenchWords::Look::Small, {"Small", {}}},
                             BenchWords{BenchWords::Look::Strong, {"Strong", {}}},
                             BenchWords{BenchWords::Look::Caution, {"Mind the saw", {}}, "Caution"},
                             BenchWords{BenchWords::Look::Plain, {"the sentence", {}}, "wrong", "neck.blank"},
                             BenchWords{BenchWords::Look::Indented, {"the reason", {}}},
                             BenchWords{BenchWords::Look::Heading, {"Below", {}}}}));
    EXPECT_THAT(page, HasSubstr("<h1>Title</h1>\n<p>Below 12.5 mm.</p>"));
    EXPECT_THAT(page, HasSubstr("<section id=\"one\" class=\"together page\">"));
    EXPECT_THAT(page, HasSubstr("<h2><span class=\"box\"></span>3. First</h2>"));
    EXPECT_THAT(page, HasSubstr("<p>Plain 3 mm</p>"));
    EXPECT_THAT(page, HasSubstr("<p class=\"small\">Small</p>"));
    EXPECT_THAT(page, HasSubstr("<p><b>Strong</b></p>"));
    EXPECT_THAT(page, HasSubstr("<p class=\"caution\"><b>Caution</b>. Mind the saw</p>"));
    EXPECT_THAT(page, HasSubstr("<p><b>wrong</b>, neck.blank: the sentence</p>"));
    EXPECT_THAT(page, HasSubstr("<p class=\"indented\">the reason</p>"));
    EXPECT_THAT(page, HasSubstr("<h3>Below</h3>"));
    EXPECT_THAT(page, HasSubstr("The foot</p>\n</body>"));
}

TEST(BenchHtml, TablesHaveRoomToWriteIn)
{
    BenchTable table;
    table.head = {{{"What", {}}}, {{"Plan", {}}}, {{"Came out", {}}}};
    table.rows = {{{{"Length", {}}}, {{"%1", {mm(100)}}, false, true}, {{}, true, false}}};
    EXPECT_THAT(benchHtml(sheetWith({table})), HasSubstr("<tr><td>Length</td><td class=\"number\">100 mm</td>"
                                                         "<td class=\"write\">&nbsp;</td></tr>"));
}

TEST(BenchHtml, WhateverTheWordsSayItIsWellFormed)
{
    BenchSheet sheet =
        sheetWith({BenchWords{BenchWords::Look::Plain, {"%1", {std::string("1 < 2 && \x01 \"x\"")}}},
                   BenchPicture{drawing(), "A <b>caption</b>"}});
    sheet.title = "A <b>\"wild\"</b> & <script>alert(1)</script>";
    sheet.footer = "</body>";
    const std::string page = benchHtml(sheet);
    EXPECT_THAT(page, Not(HasSubstr("<script")));
    const pugi::xml_document document = parsed(page);
    const pugi::xml_node body = document.child("html").child("body");
    EXPECT_STREQ(body.child("h1").text().get(), sheet.title.c_str());
    EXPECT_STREQ(body.child("section").child("p").text().get(), "1 < 2 &&  \"x\"");
    EXPECT_STREQ(body.child("section").child("figure").child("figcaption").text().get(), "A <b>caption</b>");
}

/// A drawing at a fourth of life stands there a fourth as wide, so that its words have their heights.
TEST(BenchHtml, PicturesHaveTheirSizeOnPaper)
{
    const std::string page = benchHtml(sheetWith({BenchPicture{drawing(), {}}}));
    const pugi::xml_document document = parsed(page);
    const pugi::xml_node figure = document.child("html").child("body").child("section").child("figure");
    EXPECT_STREQ(figure.attribute("style").value(), "width:100mm;max-width:100%");
    EXPECT_STREQ(figure.child("svg").attribute("viewBox").value(), "0 0 400 100");
    EXPECT_FALSE(figure.child("figcaption"));
}

TEST(BenchHtml, NoTwoThingsInThePageShareAnId)
{
    const std::string page =
        benchHtml(sheetWith({BenchPicture{drawing(), "one"}, BenchPicture{drawing(), "two"}}));
    const std::regex id(" id=\"([^\"]*)\"");
    std::set<std::string> seen;
    for (std::sregex_iterator it(page.begin(), page.end(), id), end; it != end; ++it)
        EXPECT_TRUE(seen.insert((*it)[1]).second) << (*it)[1];
    EXPECT_EQ(seen.size(), 1U + 2 * 4);  // the section; in each drawing its paper and three runs
    EXPECT_THAT(seen, ::testing::Contains("figure-2-box"));
}

/// Tints would be a raster of dots on a printer without colours.
TEST(BenchHtml, DrawingsAreBlackAndGrey)
{
    const std::string page = benchHtml(sheetWith({BenchPicture{drawing(), {}}}));
    const std::regex colour("#([0-9a-f]{6})\"");
    int found = 0;
    for (std::sregex_iterator it(page.begin(), page.end(), colour), end; it != end; ++it, ++found) {
        const std::string rgb = (*it)[1];
        EXPECT_TRUE(rgb.substr(0, 2) == rgb.substr(2, 2) && rgb.substr(2, 2) == rgb.substr(4, 2)) << rgb;
    }
    EXPECT_GE(found, 5);
    EXPECT_THAT(page, HasSubstr("#e6e6e6"));  // the cut-out is told from the wood
}

}  // namespace
}  // namespace lidwright
