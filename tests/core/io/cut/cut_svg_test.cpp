#include "core/io/cut/cut_svg.h"

#include "tests/core/io/cut/cut_files.h"

#include "core/io/svg/svg_reader.h"

namespace lidwright {
namespace {

using testing::countOf;
using testing::filedLid;

TEST(CutSvg, SaysMillimetresInSizeAndViewBox)
{
    CutDrawing drawing = filedLid();
    drawing.extent = {0, 0, 123.45678, 67};
    const std::string svg = writeCutSvg(drawing);
    EXPECT_NE(svg.find("width=\"123.4568mm\" height=\"67mm\" viewBox=\"0 0 123.4568 67\""),
              std::string::npos);
    EXPECT_EQ(svg.find("transform"), std::string::npos);
}

TEST(CutSvg, LayersStandInCuttingOrder)
{
    const std::string svg = writeCutSvg(filedLid());
    std::size_t last = 0;
    for (const char* id : {"engrave", "cut-inside", "cut-holes", "cut-outline", "not-cut"}) {
        const std::size_t at = svg.find(std::string("<g id=\"") + id + "\" fill=\"none\" stroke=\"#");
        ASSERT_NE(at, std::string::npos) << id;
        EXPECT_GT(at, last) << id;
        last = at;
    }
    EXPECT_EQ(countOf(svg, "<g "), 5);
    EXPECT_EQ(countOf(svg, "<circle "), 2);
    EXPECT_EQ(svg.find("<text"), std::string::npos);
}

TEST(CutSvg, OnlyEngravingIsEverFilled)
{
    const std::string svg = writeCutSvg(filedLid(true));
    EXPECT_EQ(countOf(svg, "fill=\"#"), 1);
    EXPECT_NE(svg.find("<g id=\"engrave\" fill=\"#000000\" fill-rule=\"evenodd\" stroke=\"none\">"),
              std::string::npos);
    EXPECT_EQ(countOf(svg, "fill=\"none\""), 4);
}

TEST(CutSvg, ReadBackTheLinesEncloseWhatIsCut)
{
    const CutDrawing drawing = filedLid();
    const auto reading = readSvg(writeCutSvg(drawing), "lid.svg");
    ASSERT_TRUE(reading.ok()) << reading.error().text();
    EXPECT_TRUE(reading->hasPhysicalSize);
    EXPECT_NEAR(reading->page.width(), drawing.extent.width(), 1e-3);
    // All red lines together, even-odd: the lid less its openings and the holes, islands and all.
    double lines = 0;
    for (const ArtRun& run : reading->art.runs)
        if (reading->art.paints[static_cast<std::size_t>(run.paint)].colour == "#ff0000")
            lines += area(run.enclosed);
    const double wanted = 300 * 200 - (900 - 100) - kPi * 12.5 * 12.5 - kPi * 1.5 * 1.5;
    EXPECT_NEAR(lines, wanted, 1e-4 * wanted);
}

TEST(CutSvg, AnyTitleMakesAWellFormedFile)
{
    CutDrawing drawing = filedLid();
    drawing.title = "a<b> & \"c\" \xff\x01 \xc3\xa4 \xf0\x9f\x8e\xb8";
    const std::string svg = writeCutSvg(drawing);
    EXPECT_NE(svg.find("<title>a&lt;b&gt; &amp; &quot;c&quot; \xEF\xBF\xBD\xEF\xBF\xBD \xc3\xa4 "
                       "\xf0\x9f\x8e\xb8</title>"),
              std::string::npos);
    EXPECT_TRUE(readSvg(svg, "lid.svg").ok());
    EXPECT_NE(svg.find("<desc>Millimetres, full size. "), std::string::npos);
    EXPECT_NE(svg.find("No kerf taken off. "), std::string::npos);
}

}  // namespace
}  // namespace lidwright
