// Own drawings against an independent renderer. The numbers are the inked pixels in the four quarters of a
// picture of 200 by 200 pixels, each pixel counted by how much of it is covered, as rsvg-convert 2.54 paints
// them: rsvg-convert -w 200 -h 200 NAME.svg -o NAME.png, then the alpha channel / 255 summed over the top
// left, top right, bottom left and bottom right quarter and rounded.

#include "tests/core/io/svg/svg_support.h"

#include <array>
#include <fstream>
#include <iterator>

namespace lidwright {
namespace {

struct Reference {
    std::string name;
    std::array<double, 4> quarters;
};

std::string contentOf(const std::string& name)
{
    std::string path = LIDWRIGHT_SOURCE_DIR;
    path.append("/tests/data/svg/").append(name).append(".svg");
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

class SvgReference : public ::testing::TestWithParam<Reference> {};

TEST_P(SvgReference, InksEveryQuarterAsTheRendererDoes)
{
    const SvgReading reading = testing::readGood(contentOf(GetParam().name));
    ASSERT_FALSE(reading.page.empty());
    const double scale = 200 / reading.page.width();
    const Transform toPixels{scale, 0, 0, -scale, -reading.page.minX * scale, reading.page.maxY * scale};
    const Region painted = transformed(testing::allPainted(reading.art), toPixels);
    for (int i = 0; i < 4; ++i) {
        const Region quarter{{rectangleRing({i % 2 * 100 + 50.0, i / 2 * 100 + 50.0}, 100, 100)}};
        const Region part = intersect(painted, quarter);
        // The renderer samples a pixel 17 by 15 times: an outline may be off by half of that, 1/30 pixel.
        const double tolerance = 1 + testing::outlineLength(part) / 30;
        EXPECT_NEAR(area(part), GetParam().quarters[static_cast<std::size_t>(i)], tolerance)
            << "quarter " << i;
    }
    EXPECT_TRUE(reading.art.messages.empty() || testing::says(reading.art, "see-through") ||
                testing::says(reading.art, "beyond the page"));
}

INSTANTIATE_TEST_SUITE_P(Files, SvgReference,
                         ::testing::Values(Reference{"arcs_compact", {3567, 1181, 2019, 4863}},
                                           Reference{"clips_nested", {3771, 3772, 1057, 2450}},
                                           Reference{"dashes_capped", {654, 1540, 897, 808}},
                                           Reference{"entities_expanded", {4051, 76, 76, 3501}},
                                           Reference{"layers_switched", {3597, 3504, 3778, 1314}},
                                           Reference{"lengths_mixed", {5400, 1460, 1234, 4567}},
                                           Reference{"markers_turned", {409, 497, 545, 589}},
                                           Reference{"pattern_tiles", {2926, 170, 172, 2737}},
                                           Reference{"strokes_joined", {1683, 2380, 2662, 2180}},
                                           Reference{"style_sheet", {1060, 1548, 6400, 2824}},
                                           Reference{"symbols_used", {2272, 0, 4434, 1699}},
                                           Reference{"transforms_deep", {0, 0, 1932, 1368}},
                                           Reference{"windings", {2830, 1956, 5200, 6400}}),
                         [](const auto& file) { return file.param.name; });

}  // namespace
}  // namespace lidwright
