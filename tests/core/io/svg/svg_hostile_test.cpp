// Files made to break a reader: each is refused with an error that says what, where and how to mend it, or
// read with a message.

#include "tests/core/io/svg/svg_support.h"

#include <random>

namespace lidwright {
namespace {

using testing::page100;
using testing::readGood;
using testing::says;

std::string repeated(const std::string& text, int count)
{
    std::string out;
    for (int i = 0; i < count; ++i)
        out += text;
    return out;
}

void expectRefused(const std::string& text, const std::string& words)
{
    const auto reading = readSvg(text, "hostile.svg", {});
    ASSERT_FALSE(reading.ok());
    const Error& error = reading.error();
    EXPECT_NE(error.what.find(words), std::string::npos) << error.text();
    EXPECT_EQ(error.where.rfind("hostile.svg", 0), 0U) << error.where;
    EXPECT_FALSE(error.mend.empty());
}

TEST(SvgHostile, NoSvgAtAll)
{
    expectRefused("", "not well formed");
    expectRefused("hello", "not well formed");
    expectRefused("<html><body/></html>", "no SVG");
    expectRefused("\x1f\x8b\x08", "compressed");
    std::mt19937 dice(3);
    std::string noise;
    for (int i = 0; i < 50000; ++i)
        noise += static_cast<char>(dice() % 256);
    EXPECT_FALSE(readSvg(noise, "hostile.svg", {}).ok());
}

TEST(SvgHostile, BrokenXmlNamesTheLine)
{
    const auto reading = readSvg("<svg>\n<g>\n</svg>", "hostile.svg", {});
    ASSERT_FALSE(reading.ok());
    EXPECT_NE(reading.error().where.find("line 3"), std::string::npos) << reading.error().where;
    EXPECT_GE(reading.error().position, 0);
}

TEST(SvgHostile, TruncatedAnywhereIsRefusedOrRead)
{
    const std::string text = page100(R"(<g fill="red"><path d="M0 0H9V9Z" style="stroke:#123"/></g>)");
    for (std::size_t n = 0; n < text.size(); ++n)
        EXPECT_FALSE(readSvg(text.substr(0, n), "hostile.svg", {}).ok()) << n;
}

TEST(SvgHostile, LargerThanTheLimit)
{
    expectRefused(std::string(kSvgFileLimit + 1, ' '), "larger than 64 MiB");
}

TEST(SvgHostile, TooManyElements)
{
    expectRefused(page100(repeated("<g/>", 200'001)), "200,000 elements");
    expectRefused(page100(repeated("<title/>", 400'001)), "elements");
}

TEST(SvgHostile, TwoHundredThousandRectanglesAreTheLimitNotBeyondIt)
{
    std::string body;
    for (int i = 0; i < 199'998; ++i) {
        body += "<rect x='" + std::to_string(i % 500) + "' y='" + std::to_string(i / 500) +
                "' width='.5' height='.5'/>";
    }
    const auto reading = readGood("<svg width='500' height='400'>" + body + "</svg>");
    EXPECT_NEAR(area(testing::allPainted(reading.art)), 199'998 * 0.25 * std::pow(25.4 / 96, 2), 1);
}

TEST(SvgHostile, CloneBomb)
{
    std::string body = "<g id='a0'><rect width='1' height='1'/></g>";
    for (int i = 0; i < 12; ++i) {
        body += "<g id='a" + std::to_string(i + 1) + "'>" +
                repeated("<use href='#a" + std::to_string(i) + "'/>", 10) + "</g>";
    }
    expectRefused(page100(body), "200,000 elements, clones counted");
}

TEST(SvgHostile, ClipBomb)
{
    std::string body = "<clipPath id='c0'><rect width='9' height='9'/></clipPath>";
    for (int i = 0; i < 40; ++i) {
        const std::string before = "clip-path='url(#c" + std::to_string(i) + ")'";
        body += "<clipPath id='c" + std::to_string(i + 1) + "' " + before + "><rect width='9' height='9' " +
                before + "/></clipPath>";
    }
    expectRefused(page100(body + "<rect width='9' height='9' clip-path='url(#c40)'/>"), "200,000 elements");
}

TEST(SvgHostile, BoxesOfBoxesBomb)
{
    expectRefused(
        page100("<clipPath id='c' clipPathUnits='objectBoundingBox'><rect width='1' height='1'/></clipPath>" +
                repeated("<g clip-path='url(#c)'>", 400) + repeated("<rect width='5' height='5'/>", 1000) +
                repeated("</g>", 400)),
        "200,000 elements");
}

TEST(SvgHostile, EntityBombs)
{
    std::string subset = "<!ENTITY e0 'aaaaaaaaaa'>";
    for (int i = 1; i < 12; ++i)
        subset +=
            "<!ENTITY e" + std::to_string(i) + " '" + repeated("&e" + std::to_string(i - 1) + ";", 10) + "'>";
    expectRefused("<!DOCTYPE svg [" + subset + "]><svg>&e11;</svg>", "entities grow");
    expectRefused("<!DOCTYPE svg [<!ENTITY a '&b;'><!ENTITY b '&a;'>]><svg>&a;</svg>", "contains itself");
    expectRefused("<!DOCTYPE svg [<!ENTITY a '&b;'", "no end");
    const auto outside = readGood(
        "<!DOCTYPE svg [<!ENTITY a SYSTEM 'file:///etc/hostname'>]>"
        "<svg width='9' height='9'>&a;<rect width='4' height='4'/></svg>");
    EXPECT_TRUE(says(outside.art, "another file"));
}

TEST(SvgHostile, NestedBeyondTheLimit)
{
    for (const int depth : {600, 20'000}) {
        expectRefused(
            page100(repeated("<g>", depth) + "<rect width='1' height='1'/>" + repeated("</g>", depth)),
            "512 elements inside");
    }
    const int good = kSvgDepthLimit - 3;
    EXPECT_TRUE(
        readSvg(page100(repeated("<g>", good) + "<rect width='1' height='1'/>" + repeated("</g>", good)), "a",
                {})
            .ok());
}

TEST(SvgHostile, TooManyPoints)
{
    expectRefused(page100("<path d='M0 0" + repeated("h1", 2'000'001) + "'/>"), "2,000,000 points");
    expectRefused(page100("<path stroke='red' stroke-dasharray='.00001' d='M0 0H100'/>"), "6,000,000 points");
}

TEST(SvgHostile, StyleBomb)
{
    expectRefused(page100("<style>" + repeated("*{fill:red}", 5000) + "</style>" +
                          repeated("<rect width='1' height='1'/>", 5000)),
                  "style rules");
}

TEST(SvgHostile, TangleBeyondReason)
{
    std::mt19937 dice(5);
    std::string zigzag, plaid;
    for (int i = 0; i < 20'000; ++i) {
        zigzag += "L" + std::to_string(dice() % 10000 / 100.0) + " " + std::to_string(i % 2 * 100);
        plaid += "M" + std::to_string(i * 0.005) + " 0v100M0 " + std::to_string(i * 0.005) + "h100";
    }
    expectRefused(page100("<path d='M0 0" + zigzag + "'/>"), "cross one another");
    expectRefused(page100("<path stroke='red' stroke-width='.001' d='" + plaid + "'/>"), "cross one another");
}

TEST(SvgHostile, ManyTilesAndMarkers)
{
    std::string nested =
        "<pattern id='p0' width='1' height='1' patternUnits='userSpaceOnUse'><rect width='.5' "
        "height='1'/></pattern>";
    for (int i = 0; i < 4; ++i) {
        nested += "<pattern id='p" + std::to_string(i + 1) +
                  "' width='2' height='2' patternUnits='userSpaceOnUse'>"
                  "<rect width='9' height='9' fill='url(#p" +
                  std::to_string(i) + ")'/></pattern>";
    }
    expectRefused(page100(nested + "<rect width='100' height='100' fill='url(#p4)'/>"), "200,000 elements");
    expectRefused(page100("<marker id='m'><path d='M0 0" + repeated("L1 1", 1000) +
                          "'/></marker>"
                          "<path marker-mid='url(#m)' d='M0 0" +
                          repeated("L1 1", 5000) + "'/>"),
                  "points");
}

TEST(SvgHostile, CirclesOfEveryKind)
{
    const auto reading = readGood(page100(
        "<clipPath id='c' clip-path='url(#c)'><rect width='3' height='3' clip-path='url(#c)'/></clipPath>"
        "<rect clip-path='url(#c)' width='5' height='5'/>"
        "<pattern id='p' width='30' height='30' patternUnits='userSpaceOnUse'><rect width='20' height='20' "
        "fill='url(#p)'/></pattern><rect width='50' height='50' fill='url(#p)'/>"
        "<linearGradient id='g' href='#h'/><linearGradient id='h' href='#g'/><rect width='9' height='9' "
        "fill='url(#g)'/>"
        "<pattern id='q' href='#r'/><pattern id='r' href='#q'/><rect width='9' height='9' fill='url(#q)'/>"
        "<marker id='m'><path d='M0 0L1 1' marker-start='url(#m)' stroke='red'/></marker>"
        "<path d='M0 0L1 1' marker-start='url(#m)' stroke='red'/><symbol id='s'><use href='#s'/></symbol>"
        "<use href='#s'/><rect x='90' width='10' height='10'/>"));
    EXPECT_TRUE(says(reading.art, "refer to themselves"));
    EXPECT_GE(area(testing::allPainted(reading.art)), 100);
}

TEST(SvgHostile, NumbersBeyondAllBounds)
{
    const auto reading = readGood(page100(
        "<path d='M0 0L nan 5L5 5'/><path d='M0 0L inf 5'/><path d='M0 0h1e308h1e308v5z'/><rect width='NaN' "
        "height='5'/>"
        "<rect width='1e999' height='5'/><rect width='5' height='5' transform='scale(1e200) scale(1e200)'/>"
        "<circle cx='50' cy='1e300' r='1e300'/><path d='M0 0A1e300 1e-300 1e300 1 0 5 5'/>"
        "<rect x='-1e12' y='-1e12' width='2e12' height='2e12' fill='red'/>"
        "<circle r='1e12' stroke='blue' stroke-width='1e11' fill='none'/>"
        "<path d='M-1e9 50H1e9' stroke='green' stroke-width='4'/>"
        "<rect width='1e-300' height='1e-300'/><rect width='5' height='5' transform='matrix(1e-200 0 0 "
        "1e-200 0 0)'/>"));
    EXPECT_NEAR(area(testing::allPainted(reading.art)), 10'000, 1);
    const Bounds box = bounds(testing::allPainted(reading.art));
    EXPECT_LT(std::max({-box.minX, -box.minY, box.maxX, box.maxY}), kCoordinateLimit);
    bool green = false;
    for (const ArtRun& run : reading.art.runs) {
        if (reading.art.paints[static_cast<std::size_t>(run.paint)].name != "line #008000") continue;
        green = true;
        EXPECT_NEAR(area(run.painted), 400, 0.1) << "a line a million km long still has its width";
    }
    EXPECT_TRUE(green);
}

TEST(SvgHostile, LargerThanTheLidIsRefusedWithTheRemedy)
{
    expectRefused("<svg><rect width='1e6' height='9'/></svg>", "larger than 10 m");
    expectRefused("<svg width='1e12' height='1e12'><rect width='1e12' height='1e12'/></svg>",
                  "larger than 10 m");
    SvgOptions options;
    options.width_mm = 200;
    EXPECT_NEAR(readGood("<svg width='1e12' height='1e12'><rect width='1e12' height='1e12'/></svg>", options)
                    .art.height,
                200, 1e-3);
    // A large page with a small drawing on it is no matter.
    EXPECT_NEAR(readGood("<svg width='1e9' height='1e9'><rect x='1e8' y='5e8' width='96' height='96'/></svg>")
                    .art.width,
                25.4, 1e-3);
}

TEST(SvgHostile, NothingPaintedSaysWhy)
{
    expectRefused(page100(""), "nothing that can be cut");
    const auto reading = readSvg(page100("<text>Hi</text>"), "a.svg", {});
    ASSERT_FALSE(reading.ok());
    EXPECT_NE(reading.error().what.find("text"), std::string::npos) << reading.error().what;
    expectRefused("<svg width='0' height='9'><rect width='9' height='9'/></svg>", "page has no size");
    expectRefused("<svg viewBox='0 0 0 9'><rect width='9' height='9'/></svg>", "page has no size");
}

}  // namespace
}  // namespace lidwright
