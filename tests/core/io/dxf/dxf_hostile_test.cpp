// Files made to break a reader: each is refused with an error that says what, where and how to mend it, or
// read with a message.

#include "tests/core/io/dxf/dxf_support.h"

#include <random>

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

void expectRefused(const std::string& text, const std::string& words, const DxfOptions& options = {})
{
    const auto reading = readDxf(text, "hostile.dxf", options);
    ASSERT_FALSE(reading.ok()) << words;
    const Error& error = reading.error();
    EXPECT_NE(error.what.find(words), std::string::npos) << error.text();
    EXPECT_EQ(error.where.rfind("hostile.dxf", 0), 0U) << error.where;
    EXPECT_FALSE(error.mend.empty());
}

std::string repeated(const std::string& text, int count)
{
    std::string out;
    out.reserve(text.size() * static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i)
        out += text;
    return out;
}

TEST(DxfHostile, NoAsciiDxfAtAll)
{
    expectRefused("", "no DXF");
    expectRefused("hello\nworld\n", "group code");
    expectRefused("<svg/>", "group code");
    expectRefused(std::string("AutoCAD Binary DXF\r\n\x1a\0\0\0SECTION", 30), "binary DXF");
    expectRefused(std::string("AC1027\0\0\0\0\0\x01", 12), "DWG");
    expectRefused("0\nEOF\n", "no DXF");
    expectRefused(millimetres(""), "nothing that can be cut");
    expectRefused(millimetres(groups({{0, "TEXT"}, {8, "a"}})), "1 thing that is no line");
    std::mt19937 dice(3);
    std::string noise;
    for (int i = 0; i < 50000; ++i)
        noise += static_cast<char>(dice() % 256);
    EXPECT_FALSE(readDxf(noise, "hostile.dxf").ok());
}

TEST(DxfHostile, ABrokenGroupCodeIsNamedWithItsLine)
{
    const auto reading = readDxf("0\nSECTION\n2\nENTITIES\n0\nLINE\nx8\n0\n", "hostile.dxf");
    ASSERT_FALSE(reading.ok());
    EXPECT_EQ(reading.error().where, "hostile.dxf, line 7");
}

TEST(DxfHostile, TruncatedAnywhereIsRefusedOrReadWithAWord)
{
    const std::string blocks = section("BLOCKS", groups({{0, "BLOCK"}, {2, "B"}, {10, "0"}, {20, "0"}}) +
                                                     square("0", "3", "0") + groups({{0, "ENDBLK"}}));
    const std::string text = millimetres(
        square("0", "10") + groups({{0, "INSERT"}, {8, "cut"}, {2, "B"}, {10, "30"}, {20, "0"}}), blocks);
    int read = 0;
    for (std::size_t n = 0; n + 4 < text.size(); ++n) {
        const auto reading = readDxf(text.substr(0, n), "hostile.dxf");
        if (!reading) continue;
        ++read;
        EXPECT_TRUE(says(reading->art, "breaks off")) << n;
    }
    EXPECT_GT(read, 0);
}

TEST(DxfHostile, LargerThanTheLimits)
{
    expectRefused(std::string(kDxfFileLimit + 1, ' '), "larger than 64 MiB");
    expectRefused(millimetres(repeated(line("0", "0", "1", "1"), static_cast<int>(kDxfEntityLimit) + 1)),
                  "200,000 entities");
    expectRefused(millimetres(groups({{0, "LWPOLYLINE"}, {8, "a"}}) +
                              repeated("10\n1\n20\n1\n", static_cast<int>(kDxfPointLimit) + 1)),
                  "2,000,000 points");
    expectRefused(
        millimetres(repeated(groups({{0, "CIRCLE"}, {8, "a"}, {10, "0"}, {20, "0"}, {40, "4000"}}), 1500)),
        "2,000,000 points");
    expectRefused(millimetres(line("0", "0", "10001", "0")), "larger than 10 m");
}

TEST(DxfHostile, BlocksThatMultiplyAreRefused)
{
    // Ten blocks, each of which inserts the one before it ten times.
    std::string blocks =
        groups({{0, "BLOCK"}, {2, "b0"}}) + circle("0", "0", "1", "0") + groups({{0, "ENDBLK"}});
    for (int i = 1; i <= 10; ++i) {
        std::string inner = "b";
        inner += std::to_string(i - 1);
        std::string own = "b";
        own += std::to_string(i);
        blocks += groups({{0, "BLOCK"}, {2, own}}) +
                  repeated(groups({{0, "INSERT"}, {8, "0"}, {2, inner}, {10, "1"}, {20, "0"}}), 10) +
                  groups({{0, "ENDBLK"}});
    }
    const std::string top = groups({{0, "INSERT"}, {8, "cut"}, {2, "b10"}, {10, "0"}, {20, "0"}});
    expectRefused(millimetres(top, section("BLOCKS", blocks)), "200,000 entities");
    // An empty block in a billion rows and columns.
    const std::string empty = section("BLOCKS", groups({{0, "BLOCK"}, {2, "e"}, {0, "ENDBLK"}}));
    expectRefused(
        millimetres(groups({{0, "INSERT"}, {8, "cut"}, {2, "e"}, {70, "2000000000"}, {71, "2000000000"}}),
                    empty),
        "200,000 entities");
}

TEST(DxfHostile, BlocksThatContainThemselvesAreNamed)
{
    const auto block = [](const std::string& name, const std::string& inserts) {
        return groups({{0, "BLOCK"}, {2, name}}) + square("0", "10", "0") +
               groups({{0, "INSERT"}, {8, "0"}, {2, inserts}, {10, "1"}, {20, "0"}, {0, "ENDBLK"}});
    };
    const std::string top = groups({{0, "INSERT"}, {8, "cut"}, {2, "A"}, {10, "0"}, {20, "0"}});
    const Artwork self = readGood(millimetres(top, section("BLOCKS", block("a", "A")))).art;
    EXPECT_TRUE(says(self, "contains itself"));
    EXPECT_NEAR(area(self.runs.front().enclosed), 100, 1e-6);
    const Artwork pair = readGood(millimetres(top, section("BLOCKS", block("a", "b") + block("b", "a")))).art;
    EXPECT_TRUE(says(pair, "contains itself"));
    const Artwork lost = readGood(millimetres(top + square("0", "5"))).art;
    EXPECT_TRUE(says(lost, "names a block that is not in the file"));

    std::string deep;
    for (int i = 0; i < 40; ++i)
        deep += block("d" + std::to_string(i), "d" + std::to_string(i + 1));
    const Artwork far =
        readGood(millimetres(groups({{0, "INSERT"}, {8, "cut"}, {2, "d0"}}), section("BLOCKS", deep))).art;
    EXPECT_TRUE(says(far, "lies in more than 16 others"));
}

TEST(DxfHostile, NumbersThatAreNoneAreNamed)
{
    for (const char* bad : {"nan", "inf", "-inf", "1e999", "1e12", "12,5", "", "0x10", "1 2"}) {
        const Artwork art = readGood(millimetres(square("0", "10") + circle(bad, "0", "3") +
                                                 line("0", bad, "1", "1") + circle("0", "0", bad)))
                                .art;
        EXPECT_NEAR(art.width, 10, 1e-9) << bad;
        EXPECT_TRUE(says(art, "numbers that cannot be read")) << bad;
    }
    EXPECT_TRUE(
        says(readGood(millimetres(square("0", "10") + circle("0", "0", "-3"))).art, "cannot be read"));
    const std::string vast = groups({{0, "INSERT"}, {8, "cut"}, {2, "B"}, {41, "1e9"}, {42, "1e9"}});
    const std::string blocks = section(
        "BLOCKS", groups({{0, "BLOCK"}, {2, "B"}}) + circle("0", "0", "1e9", "0") + groups({{0, "ENDBLK"}}));
    EXPECT_TRUE(says(readGood(millimetres(square("0", "10") + vast, blocks)).art, "out of bounds"));
}

TEST(DxfHostile, SplinesThatAreNoneAreNamed)
{
    const auto spline = [](const std::string& degree, const std::string& knots, const std::string& rest) {
        std::string out = groups({{0, "SPLINE"}, {8, "cut"}, {71, degree}});
        for (const char c : knots)
            out += groups({{40, std::string(1, c)}});
        return out + rest;
    };
    const std::string four = "10\n0\n20\n0\n10\n1\n20\n5\n10\n5\n20\n5\n10\n9\n20\n0\n";
    const std::string good = spline("3", "00001111", four);
    EXPECT_FALSE(says(readGood(millimetres(good + square("0", "9"))).art, "cannot be read"));
    for (const std::string& bad :
         {spline("3", "0000111", four), spline("3", "00001101", four), spline("0", "00111", four),
          spline("30", "00001111", four), spline("3", "00000000", four), spline("-3", "00001111", four),
          spline("3", "", four), spline("3", "00001111", ""),
          spline("3", "00001111", four + "41\n1\n41\n1\n41\n0\n41\n1\n"),
          spline("3", "00001111", four + "41\n1\n"),
          spline("3", "00001111", four + "41\n1\n41\n-2\n41\n1\n41\n1\n")})
        EXPECT_TRUE(says(readGood(millimetres(square("0", "9") + bad)).art, "cannot be read")) << bad;
}

TEST(DxfHostile, ManyControlPointsAndManyLinesInOnePointEnd)
{
    std::string spline = groups({{0, "SPLINE"}, {8, "cut"}, {71, "3"}});
    constexpr int kPoints = 100'000;
    for (int i = 0; i < kPoints + 4; ++i)
        spline += "40\n" + std::to_string(std::clamp(i - 3, 0, kPoints - 3)) + "\n";
    for (int i = 0; i < kPoints; ++i)
        spline += "10\n" + std::to_string(i % 317) + "\n20\n" + std::to_string(i / 317) + "\n";
    const auto reading = readDxf(millimetres(spline), "hostile.dxf");
    if (!reading)
        EXPECT_NE(reading.error().what.find("cross one another"), std::string::npos) << reading.error().what;
    std::string star;
    for (int i = 0; i < 20'000; ++i) {
        const std::string x = std::to_string(100 * std::cos(i * 0.001)),
                          y = std::to_string(100 * std::sin(i * 0.001));
        star += line("0", "0", x, y);
    }
    const auto rays = readDxf(millimetres(star), "hostile.dxf");
    if (!rays) EXPECT_NE(rays.error().what.find("cross one another"), std::string::npos) << rays.error().what;
}

TEST(DxfHostile, OptionsOutOfRange)
{
    const auto refused = [](const DxfOptions& options, const std::string& where) {
        const auto reading = readDxf(millimetres(square("0", "10")), "hostile.dxf", options);
        return !reading.ok() && reading.error().where == where;
    };
    for (const double bad : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
        DxfOptions unit, width, tolerance;
        unit.unit_mm = width.width_mm = tolerance.tolerance = bad;
        EXPECT_TRUE(refused(unit, "unit"));
        EXPECT_TRUE(refused(width, "width"));
        EXPECT_TRUE(refused(tolerance, "tolerance"));
    }
    DxfOptions width;
    width.width_mm = 50;
    expectRefused(millimetres(line("0", "0", "0", "10")), "no width", width);
}

}  // namespace
}  // namespace lidwright
