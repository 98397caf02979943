// Areas of small drawings whose true value is known in closed form. The page is 100 mm wide with one unit to
// the millimetre; an outline that strays by d all along its length l changes the area by l * d, and so each
// area is held to a stray of 0.003 mm, well within the 0.01 mm that the reader promises.

#include "tests/core/io/svg/svg_support.h"

#include "core/base/units.h"

#include <cmath>

namespace lidwright {
namespace {

using testing::allPainted;
using testing::outlineLength;
using testing::page100;
using testing::readGood;

constexpr double kStray = 0.003;

struct Case {
    const char* name;
    std::string body;
    double area;
};

/// The area that one round end or join of half width r adds.
double halfDisc(double r)
{
    return kPi * r * r / 2;
}

std::vector<Case> fills()
{
    return {
        {"rect", R"(<rect x="10" y="20" width="30" height="40"/>)", 1200},
        {"rect in mm inside", R"(<rect x="10" y="20" width="1in" height="2cm"/>)",
         // 1 in = 96 user units, of which the page's edge leaves 90; 2 cm = 2 / 2.54 in.
         90 * 2 / 2.54 * 96},
        {"rounded rect", R"(<rect x="10" y="10" width="40" height="30" rx="5"/>)", 1200 - (4 - kPi) * 25},
        {"rounded rect, two radii", R"(<rect x="10" y="10" width="40" height="30" rx="8" ry="5"/>)",
         1200 - (4 - kPi) * 40},
        {"rounded rect, radius too large", R"(<rect x="10" y="10" width="40" height="20" rx="90" ry="10"/>)",
         kPi * 20 * 10},
        {"circle", R"(<circle cx="50" cy="50" r="40"/>)", kPi * 1600},
        {"ellipse", R"(<ellipse cx="50" cy="50" rx="40" ry="10"/>)", kPi * 400},
        {"polygon", R"(<polygon points="10,10 60,10 10,50"/>)", 1000},
        {"polyline filled", R"(<polyline points="10,10 60,10 10,50"/>)", 1000},
        {"polygon with an odd number", R"(<polygon points="10,10 60,10 10,50 7"/>)", 1000},
        {"path, relative", R"(<path d="m10 10h30v40h-30z"/>)", 1200},
        {"path, no blanks", R"(<path d="M10,10L40-.0,40,50L10+50Z"/>)", 30 * (50 + 40) / 2.0},
        // Integrating x dy with x = 3 h t (1 - t): both controls straight out by h over a chord w give 0.6 h
        // w.
        {"cubic arch", R"(<path d="M10 10 C 40 10 40 70 10 70 Z"/>)", 0.6 * 30 * 60},
        {"quadratic parabola", R"(<path d="M10 50 Q 50 -30 90 50 Z"/>)", 2.0 / 3 * 80 * 40},
        {"smooth quadratic", R"(<path d="M10 50 Q 20 30 30 50 T 50 50 Z"/>)", 2 * 2.0 / 3 * 20 * 10},
        {"smooth cubic", R"(<path d="M10 50 C 10 30 30 30 30 50 S 50 70 50 50 Z"/>)", 2 * 0.6 * 20 * 20},
        {"arc, half circle", R"(<path d="M10 50 A 30 30 0 0 1 70 50 Z"/>)", kPi * 450},
        {"arc, compact flags", R"(<path d="M10 50a30 30 0 0160 0z"/>)", kPi * 450},
        {"arc, large", R"(<path d="M50 50 V 20 A 30 30 0 1 1 20 50 Z"/>)", kPi * 900 * 0.75},
        {"arc, radii too small", R"(<path d="M10 50 A 1 1 0 0 1 70 50 Z"/>)", kPi * 450},
        {"arc, turned ellipse", R"(<path d="M20 50 A 30 15 45 0 1 80 50 A 30 15 45 0 1 20 50 Z"/>)",
         // The radii are scaled until the chord of 60 fits: semi-axes k*30, k*15 with
         // (60/2)^2 (cos^2 45 / 30^2 + sin^2 45 / 15^2) = k^2.
         kPi * 450 * 900 * (0.5 / 900 + 0.5 / 225)},
        {"star, nonzero", R"(<path d="M10 10H90V90H10Z M30 30H70V70H30Z"/>)", 6400},
        {"star, evenodd", R"(<path fill-rule="evenodd" d="M10 10H90V90H10Z M30 30H70V70H30Z"/>)",
         6400 - 1600},
        {"hole by direction", R"(<path d="M10 10H90V90H10Z M30 30V70H70V30Z"/>)", 6400 - 1600},
        {"two that overlap", R"(<rect width="40" height="40"/><rect x="20" width="40" height="40"/>)", 2400},
        {"translate, scale",
         R"svg(<g transform="translate(10 10) scale(2)"><rect width="5" height="10"/></g>)svg", 200},
        {"rotate about", R"svg(<rect x="30" y="40" width="40" height="20" transform="rotate(37 50 50)"/>)svg",
         800},
        {"skew", R"svg(<rect x="10" y="10" width="20" height="30" transform="skewX(20)"/>)svg", 600},
        {"matrix, mirrored", R"svg(<rect width="20" height="30" transform="matrix(-1 0 0 1 50 10)"/>)svg",
         600},
        {"nested transforms",
         R"svg(<g transform="scale(2)"><g transform="rotate(30)">)svg"
         R"svg(<g transform="translate(20 -2)"><rect width="9" height="7"/></g></g></g>)svg",
         252},
    };
}

std::vector<Case> lines()
{
    const std::string corner = R"(fill="none" stroke="#000" stroke-width="4" d="M10 10 H50 V50")";
    // Two legs of 40 by 4 that share a square of 2 by 2 on the inner side.
    constexpr double kLegs = 2 * 160 - 4;
    return {
        {"line, butt", R"(<line x1="10" y1="10" x2="60" y2="10" stroke="#000" stroke-width="4"/>)", 200},
        {"line, square", R"(<path stroke="#000" stroke-width="4" stroke-linecap="square" d="M10 10H60"/>)",
         216},
        {"line, round", R"(<path stroke="#000" stroke-width="4" stroke-linecap="round" d="M10 10H60"/>)",
         200 + 2 * halfDisc(2)},
        {"dot, round", R"(<path stroke="#000" stroke-width="4" stroke-linecap="round" d="M10 10h0"/>)",
         2 * halfDisc(2)},
        {"dot, square", R"(<path stroke="#000" stroke-width="4" stroke-linecap="square" d="M10 10h0"/>)", 16},
        {"dot, square, turned",
         R"svg(<path transform="rotate(30 10 10)" stroke="#000" stroke-width="4" )svg"
         R"(stroke-linecap="square" d="M10 10h0"/>)",
         16},
        {"corner, miter", "<path " + corner + "/>", kLegs + 4},
        {"corner, bevel", "<path stroke-linejoin=\"bevel\" " + corner + "/>", kLegs + 2},
        {"corner, round", "<path stroke-linejoin=\"round\" " + corner + "/>", kLegs + kPi},
        {"corner, miter beyond the limit", "<path stroke-miterlimit=\"1.4\" " + corner + "/>", kLegs + 2},
        // A miter adds as much on the outer side as the legs share on the inner.
        {"corner of 120 degrees",
         R"(<path fill="none" stroke="#000" stroke-width="2" )"
         R"(d="M10 10 L50 10 L70 44.64101615137755"/>)",
         160},
        {"closed square",
         R"(<rect x="20" y="20" width="40" height="40" fill="none" stroke="#000" )"
         R"(stroke-width="6"/>)",
         46 * 46 - 34 * 34},
        {"ring", R"(<circle cx="50" cy="50" r="30" fill="none" stroke="#000" stroke-width="5"/>)",
         kPi * 2 * 30 * 5},
        {"wide pen on a small curve",
         R"(<circle cx="50" cy="50" r="1" fill="none" stroke="#000" )"
         R"(stroke-width="60"/>)",
         kPi * 31 * 31},
        {"stretched pen",
         R"svg(<path transform="scale(3 1)" stroke="#000" stroke-width="4" d="M10 10V60"/>)svg", 3 * 4 * 50},
        {"stretched ring",
         R"svg(<circle transform="scale(2 1)" cx="25" cy="50" r="20" fill="none" stroke="#000" )svg"
         R"(stroke-width="4"/>)",
         kPi * 2 * (22 * 22 - 18 * 18)},
        {"dashes", R"(<path stroke="#000" stroke-width="2" stroke-dasharray="10 5" d="M10 10h60"/>)",
         4 * 10 * 2},
        {"dashes, odd list",
         R"(<path stroke="#000" stroke-width="2" stroke-dasharray="10 5 5" d="M10 10h40"/>)",
         2 * (10 + 5 + 5)},
        {"dashes, offset",
         R"(<path stroke="#000" stroke-width="2" stroke-dasharray="10" stroke-dashoffset="5" )"
         R"(d="M10 10h30"/>)",
         2 * (5 + 10)},
        {"dashes round a corner",
         R"(<path fill="none" stroke="#000" stroke-width="2" stroke-dasharray="100 10" )"
         R"(d="M10 10h20v20"/>)",
         80},
        {"dash over the seam is joined",
         R"(<path fill="none" stroke="#000" stroke-width="2" )"
         R"(stroke-dasharray="30 20" stroke-dashoffset="10" )"
         R"(d="M20 20h25v25h-25z"/>)",
         // 100 round, painted on 0-20, 40-70 and 90-100; both corners in there have their miters.
         120},
        {"all dashes zero is solid",
         R"(<path stroke="#000" stroke-width="2" stroke-dasharray="0 0" d="M10 10h60"/>)", 120},
        {"negative dash is solid",
         R"(<path stroke="#000" stroke-width="2" stroke-dasharray="5 -1" d="M10 10h60"/>)", 120},
        {"width in percent", R"(<path stroke="#000" stroke-width="2%" d="M10 10h60"/>)", 120},
        {"fill and line", R"(<rect x="20" y="20" width="40" height="40" stroke="red" stroke-width="6"/>)",
         46 * 46},
    };
}

class SvgArea : public ::testing::TestWithParam<Case> {};

TEST_P(SvgArea, IsTheTrueOne)
{
    const Region region = allPainted(readGood(page100(GetParam().body)).art);
    EXPECT_NEAR(area(region), GetParam().area, outlineLength(region) * kStray) << GetParam().name;
}

INSTANTIATE_TEST_SUITE_P(Fills, SvgArea, ::testing::ValuesIn(fills()));
INSTANTIATE_TEST_SUITE_P(Lines, SvgArea, ::testing::ValuesIn(lines()));

TEST(SvgPoints, PointsOfACircleLieWithinAHundredthOfAMillimetre)
{
    const SvgReading reading = readGood(page100(R"(<circle cx="50" cy="50" r="49"/>)"));
    ASSERT_EQ(reading.art.runs.size(), 1U);
    const Ring& ring = reading.art.runs[0].painted.rings.at(0);
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i], b = ring[(i + 1) % ring.size()];
        EXPECT_NEAR(length(a), 49, 0.0005);
        EXPECT_NEAR(length(0.5 * (a + b)), 49, 0.0025);
    }
    // Finer is possible, and coarser: pi / acos(1 - tolerance / radius) chords are the fewest.
    EXPECT_LT(ring.size(), 1.3 * kPi / std::acos(1 - 0.002 / 49));
}

TEST(SvgLines, AShortControlArmDoesNotSoftenACorner)
{
    // The curve leaves to the left and turns down within a thousandth of its length. It comes back at 19
    // degrees to its first direction: a point would reach out 1 / sin(9.5 deg) = 6 widths, beyond the limit
    // of 4, so pointed and cut corners are the same.
    const auto painted = [](const char* join) {
        return area(
            allPainted(readGood(page100(std::string("<path fill='none' stroke='#000' stroke-width='6' "
                                                    "stroke-linejoin='") +
                                        join +
                                        "' d='M60 20C59.85 20 48 55 45 64C42 73 20 50 33 38"
                                        "C46 26 50 16.558 60 20Z'/>"))
                           .art));
    };
    // The wrongly judged point would cover 9 mm2; what is left is the chords' own corners.
    EXPECT_NEAR(painted("miter"), painted("bevel"), 0.02);
}

}  // namespace
}  // namespace lidwright
