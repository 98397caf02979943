// Feeds any bytes to the DXF reader. The first byte picks the options, unless the file begins like any DXF.

#include "tests/fuzz/fuzz_checks.h"

#include "core/io/dxf/dxf_reader.h"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <set>
#include <string>
#include <string_view>

namespace {

using namespace lidwright;

using fuzzing::require;

void checkRegion(const Region& region)
{
    fuzzing::checkRegion(region, kCoordinateLimit + 1);
}

void checkArt(const Artwork& art)
{
    require(!art.runs.empty() && art.paints.size() == art.runs.size());
    Bounds box;
    std::set<std::string> names;
    for (std::size_t i = 0; i < art.runs.size(); ++i) {
        const ArtRun& run = art.runs[i];
        require(run.paint == static_cast<int>(i));
        require(!run.painted.empty());
        checkRegion(run.painted);
        checkRegion(run.enclosed);
        box.include(bounds(run.painted));
    }
    for (const ArtPaint& paint : art.paints) {
        require(names.insert(paint.name).second);
        require(paint.colour.size() == 7 && paint.colour[0] == '#');
        require(paint.name.rfind("layer ", 0) == 0);
        require(paint.line && paint.thinnest == kDxfHairline);
    }
    for (const ArtUse use : firstGuess(art))
        require(use == ArtUse::CutInside);
    // Sizes are those of the drawing; what is painted is a hairline larger, less what its round ends lose.
    const double slack = 0.2 * kDxfHairline;
    require(std::abs(box.centre().x) <= slack && std::abs(box.centre().y) <= slack);
    require(std::abs(box.width() - art.width - kDxfHairline) <= slack);
    require(std::abs(box.height() - art.height - kDxfHairline) <= slack);
    for (const std::string& message : art.messages)
        require(message.size() > 10 && message.back() == '.');
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    if (size == 0) return 0;
    const unsigned pick = data[0];
    const std::string_view all(reinterpret_cast<const char*>(data), size);
    const bool plain = pick == ' ' || pick == '0' || pick == '9';
    const std::string_view text = plain ? all : all.substr(1);
    DxfOptions options;
    if (!plain && pick % 4 == 1) options.unit_mm = 25.4;
    if (!plain && pick % 4 == 2) options.width_mm = 120;
    if (!plain && pick % 8 >= 4) options.tolerance = 0.05;
    const Result<DrawingReading> reading = readDxf(text, "fuzz.dxf", options);
    if (!reading) {
        const Error& error = reading.error();
        require(!error.what.empty() && !error.mend.empty() && error.where.rfind("fuzz.dxf", 0) == 0);
        return 0;
    }
    checkArt(reading->art);
    require(reading->art.fileSize == text.size());
    require(std::isfinite(reading->widthUnits) && reading->widthUnits >= 0);
    if (options.width_mm) require(std::abs(reading->art.width - 120) < 0.2 + reading->art.height * 1e-3);
    return 0;
}
