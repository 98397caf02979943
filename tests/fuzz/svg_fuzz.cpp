// Feeds any bytes to the SVG reader. The first byte picks the options, unless the file begins like any XML.

#include "tests/fuzz/fuzz_checks.h"

#include "core/io/svg/svg_reader.h"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <optional>
#include <set>
#include <string>
#include <string_view>

namespace {

using namespace lidwright;

using fuzzing::require;

void checkRegion(const Region& region)
{
    fuzzing::checkRegion(region, kCoordinateLimit);
}

void checkArt(const Artwork& art)
{
    require(!art.runs.empty() && !art.paints.empty());
    Bounds box;
    std::set<int> used;
    std::set<std::string> names;
    for (const ArtRun& run : art.runs) {
        require(run.paint >= 0 && run.paint < static_cast<int>(art.paints.size()));
        used.insert(run.paint);
        require(!run.painted.empty());
        checkRegion(run.painted);
        checkRegion(run.enclosed);
        require(run.enclosed.empty() || art.paints[static_cast<std::size_t>(run.paint)].line);
        box.include(bounds(run.painted));
    }
    require(used.size() == art.paints.size());
    for (const ArtPaint& paint : art.paints) {
        require(names.insert(paint.name).second);
        require(paint.colour.size() == 7 && paint.colour[0] == '#');
        require(paint.name.rfind(paint.line ? "line " : "fill ", 0) == 0);
        require(paint.line ? paint.thinnest >= 0 && std::isfinite(paint.thinnest) : paint.thinnest == 0);
    }
    const double step = 2 / kGridPerMillimetre;
    require(std::abs(box.centre().x) <= step && std::abs(box.centre().y) <= step);
    require(std::abs(box.width() - art.width) <= step && std::abs(box.height() - art.height) <= step);
    for (const std::string& message : art.messages)
        require(message.size() > 10 && message.back() == '.');
}

/// A square for every byte, so that text goes the way of shapes without any font.
std::optional<TextShape> squareLetters(const TextRun& run)
{
    require(!run.words.empty() && run.size > 0 && std::isfinite(run.size));
    require(run.weight >= 1 && run.weight <= 1000 && run.stretch >= 50 && run.stretch <= 200);
    if (run.words.find('?') != std::string::npos) return std::nullopt;
    TextShape shape;
    svg::Pen pen;
    for (const char c : run.words) {
        const double side = c == ' ' ? 0 : run.size / 2, x = shape.advance;
        pen.moveTo({x, 0});
        pen.lineTo({x + side, 0});
        pen.curveTo({x + 1.2 * side, -side / 3}, {x + 1.2 * side, -side}, {x + side, -side});
        pen.lineTo({x, -side});
        pen.close();
        shape.advance += run.size + run.letterSpacing;
    }
    shape.letters = pen.take();
    shape.ascent = run.size;
    shape.fonts = {"squares"};
    return shape;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    if (size == 0) return 0;
    const unsigned pick = data[0];
    const std::string_view all(reinterpret_cast<const char*>(data), size);
    const std::string_view text = pick == '<' ? all : all.substr(1);
    SvgOptions options;
    if (pick % 4 == 1) options.unitsPerInch = 72;
    if (pick % 4 == 2) options.width_mm = 120;
    if (pick % 8 >= 4) options.tolerance = 0.05;
    if (pick % 16 < 8 || pick == '<') options.outlineText = squareLetters;
    const Result<SvgReading> reading = readSvg(text, "fuzz.svg", options);
    if (!reading) {
        const Error& error = reading.error();
        require(!error.what.empty() && !error.mend.empty() && error.where.rfind("fuzz.svg", 0) == 0);
        return 0;
    }
    checkArt(reading->art);
    require(reading->art.fileSize == text.size());
    require(std::isfinite(reading->widthUnits) && reading->widthUnits >= 0);
    if (options.width_mm) {
        require(std::abs(reading->art.width - 120) < 0.05 + reading->art.height * 1e-3);
    }
    return 0;
}
