#include "core/io/drawing/sheet_svg.h"

#include "core/drawing/template_sheets.h"

#include <gtest/gtest.h>
#include <pugixml.hpp>

#include <set>

namespace lidwright {
namespace {

/// Parses or fails the test; kept alive by the caller.
void parse(const std::string& svg, pugi::xml_document& doc)
{
    const auto read = doc.load_buffer(svg.data(), svg.size(), pugi::parse_default, pugi::encoding_utf8);
    ASSERT_TRUE(read) << read.description() << " at " << read.offset;
}

std::vector<pugi::xml_node> named(const pugi::xml_document& doc, const char* name)
{
    std::vector<pugi::xml_node> out;
    for (const auto& hit : doc.select_nodes((std::string("//*[local-name()='") + name + "']").c_str()))
        out.push_back(hit.node());
    return out;
}

Sheet sheetOf(std::vector<Element> elements)
{
    Sheet sheet;
    sheet.title = "Plate";
    sheet.extent = {-10, -20, 110, 60};
    sheet.elements = std::move(elements);
    return sheet;
}

/// The points of a path of straight lines.
std::vector<Point> pointsOf(const pugi::xml_node& path)
{
    std::string d = path.attribute("d").value();
    for (char& c : d)
        if (c == 'M' || c == 'L' || c == 'Z') c = ' ';
    std::vector<Point> out;
    const char* at = d.c_str();
    char* end = nullptr;
    for (;;) {
        const double x = std::strtod(at, &end);
        if (end == at) return out;
        at = end;
        const double y = std::strtod(at, &end);
        at = end;
        out.push_back({x, y});
    }
}

TEST(SheetSvg, OneUnitIsOneMillimetre)
{
    pugi::xml_document doc;
    parse(writeSheetSvg(sheetOf({})), doc);
    const pugi::xml_node svg = doc.document_element();
    EXPECT_STREQ(svg.name(), "svg");
    EXPECT_STREQ(svg.attribute("width").value(), "120mm");
    EXPECT_STREQ(svg.attribute("height").value(), "80mm");
    EXPECT_STREQ(svg.attribute("viewBox").value(), "0 0 120 80");
    EXPECT_FALSE(svg.attribute("transform"));
    EXPECT_STREQ(svg.child("title").text().get(), "Plate");
}

TEST(SheetSvg, PointsComeBackWithYDownToAMicrometre)
{
    const Ring ring{{0, 0}, {99.9996, -3.14159}, {12.3456, 55}, {-9.5, 0.0004}};
    SheetSvgOptions options;
    options.tinted = false;
    pugi::xml_document doc;
    parse(writeSheetSvg(sheetOf({{"lid", "outline", Stroke{ring, true, LineKind::Cut}}}), options), doc);
    const auto paths = named(doc, "path");
    ASSERT_EQ(paths.size(), 1U);
    const auto points = pointsOf(paths[0]);
    ASSERT_EQ(points.size(), ring.size());
    for (std::size_t i = 0; i < ring.size(); ++i) {
        EXPECT_NEAR(points[i].x, ring[i].x + 10, 0.00051);
        EXPECT_NEAR(points[i].y, 60 - ring[i].y, 0.00051);
    }
    const std::string d = paths[0].attribute("d").value();
    EXPECT_EQ(d, "M10 60L110 63.142 22.346 5 .5 60Z");
}

TEST(SheetSvg, LinesHaveTheirWidthAndDashesAtTheSheetsScale)
{
    for (const double paper : {1.0, 2.0})
        for (const LineKind kind : {LineKind::Visible, LineKind::Narrow, LineKind::Hidden, LineKind::Centre,
                                    LineKind::Phantom, LineKind::Cut, LineKind::Mark}) {
            Sheet sheet = sheetOf({{"", "x", Stroke{{{0, 0}, {50, 0}}, false, kind}}});
            sheet.paper = paper;
            pugi::xml_document doc;
            parse(writeSheetSvg(sheet), doc);
            const pugi::xml_node path = named(doc, "path").at(0);
            EXPECT_NEAR(path.attribute("stroke-width").as_double(), lineWidth(kind) * paper, 1e-9);
            std::vector<double> dashes;
            std::istringstream text(path.attribute("stroke-dasharray").value());
            for (double v = 0; text >> v;)
                dashes.push_back(v);
            const auto expected = dashPattern(kind);
            ASSERT_EQ(dashes.size(), expected.size()) << word(kind);
            for (std::size_t i = 0; i < dashes.size(); ++i)
                EXPECT_NEAR(dashes[i], expected[i] * paper, 1e-9) << word(kind);
        }
}

TEST(SheetSvg, LayersAreGroupsWithIdsOfTheirOwn)
{
    const auto line = [](const char* layer) {
        return Element{"", layer, Stroke{{{0, 0}, {1, 1}}, false, LineKind::Narrow}};
    };
    pugi::xml_document doc;
    parse(writeSheetSvg(sheetOf({line("lid"), line("lid"), line("neck"), line("lid"), line("lid-2"),
                                 line("lid"), line("2 <odd> \"name\""), line(""), line("paper")})),
          doc);
    const auto groups = named(doc, "g");
    ASSERT_EQ(groups.size(), 8U);
    EXPECT_STREQ(groups[0].attribute("id").value(), "lid");
    EXPECT_EQ(std::distance(groups[0].begin(), groups[0].end()), 2);
    std::set<std::string> ids;
    for (const auto& node : doc.select_nodes("//@id"))
        EXPECT_TRUE(ids.insert(node.attribute().value()).second) << node.attribute().value();
}

TEST(SheetSvg, AnyWordsAreWellFormed)
{
    const std::string hostile =
        "a<b>&\"c' ]]> \x01\x1f\xff\xc3 \xed\xa0\x80 \xf0\x9f\x8e\xb8 \xef\xbf\xbf \xe2\x89\x88";
    Sheet sheet = sheetOf({{"", "words", Text{{5, 5}, hostile}}});
    sheet.title = hostile;
    pugi::xml_document doc;
    const std::string svg = writeSheetSvg(sheet);
    parse(svg, doc);
    const std::string back = named(doc, "text").at(0).text().get();
    EXPECT_EQ(back.substr(0, 12), "a<b>&\"c' ]]>");
    EXPECT_NE(back.find("\xf0\x9f\x8e\xb8"), std::string::npos);
    EXPECT_NE(back.find("\xe2\x89\x88"), std::string::npos);
    EXPECT_EQ(svg.find('\x01'), std::string::npos);
    EXPECT_EQ(svg.find('\xff'), std::string::npos);
    EXPECT_EQ(svg.find("\xed\xa0\x80"), std::string::npos);
}

TEST(SheetSvg, TextsHaveSizePlaceAnchorAndTurn)
{
    pugi::xml_document doc;
    parse(writeSheetSvg(sheetOf(
              {{"", "w", Text{{5, 5}, "one", 3.5}}, {"", "w", Text{{5, 5}, "two", 2.5, 90, Anchor::Left}}})),
          doc);
    const auto texts = named(doc, "text");
    ASSERT_EQ(texts.size(), 2U);
    // Capitals 3.5 mm high in a face whose capitals are 0.729 of its size.
    EXPECT_NEAR(texts[0].attribute("font-size").as_double(), 3.5 / 0.729, 0.001);
    EXPECT_STREQ(texts[0].attribute("text-anchor").value(), "middle");
    EXPECT_STREQ(texts[0].attribute("x").value(), "15");
    EXPECT_STREQ(texts[0].attribute("y").value(), "55");
    EXPECT_STREQ(texts[1].attribute("transform").value(), "translate(15 55) rotate(-90)");
    EXPECT_FALSE(texts[1].attribute("text-anchor"));
}

TEST(SheetSvg, UntintedHoldsOnlyLinesAndWords)
{
    const std::vector<Element> elements{
        {"", "lid", Fill{{{0, 0}, {50, 0}, {50, 30}}, FillKind::Wood}},
        {"", "lid", Stroke{{{0, 0}, {50, 0}}, false, LineKind::Cut}},
        {"", "dimensions", Dimension{{0, 0}, {50, 0}, 10, "50", "", 2.5, 0, 0, 0, true}}};
    SheetSvgOptions plain;
    plain.tinted = false;
    pugi::xml_document doc;
    parse(writeSheetSvg(sheetOf(elements), plain), doc);
    for (const auto& path : named(doc, "path"))
        EXPECT_FALSE(path.attribute("fill"));
    EXPECT_EQ(named(doc, "path").size(), 1U + 5U);
    EXPECT_TRUE(named(doc, "rect").empty());
    pugi::xml_document tinted;
    parse(writeSheetSvg(sheetOf(elements)), tinted);
    EXPECT_EQ(named(tinted, "path").size(),
              1U + 5U + 2U + 1U);  // tint, grain and the bare paper behind the words
}

TEST(SheetSvg, OddNumbersHarmNothing)
{
    Sheet sheet =
        sheetOf({{"", "x", Stroke{{{std::nan(""), 1e300}, {-1e300, HUGE_VAL}}, false, LineKind::Narrow}},
                 {"", "x", Fill{{{0, 0}, {std::nan(""), 1}, {HUGE_VAL, 2}}, FillKind::Engraved}}});
    pugi::xml_document doc;
    const std::string svg = writeSheetSvg(sheet);
    parse(svg, doc);
    EXPECT_EQ(svg.find("nan"), std::string::npos);
    EXPECT_EQ(svg.find("inf"), std::string::npos);
    Sheet empty;
    parse(writeSheetSvg(empty), doc);
}

TEST(SheetSvg, ALidTemplateIsAsLargeAsItsLid)
{
    const Plan plan;
    const Sheet sheet = templateSheet(plan, derive(plan), TemplateKind::Lid, unitStyle(plan));
    pugi::xml_document doc;
    parse(writeSheetSvg(sheet), doc);
    const pugi::xml_node outline = doc.select_node("//*[@id='outline']").node();
    ASSERT_TRUE(outline);
    const Bounds b = bounds(pointsOf(outline.first_child()));
    EXPECT_NEAR(b.width(), plan.box.length, 0.001);
    EXPECT_NEAR(b.height(), plan.box.width, 0.001);
    EXPECT_NEAR(doc.document_element().attribute("width").as_double(), sheet.extent.width(), 0.001);
}

}  // namespace
}  // namespace lidwright
