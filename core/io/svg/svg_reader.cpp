#include "core/io/svg/svg_reader.h"

#include "core/base/units.h"
#include "core/io/svg/svg_budget.h"
#include "core/io/svg/svg_builder.h"
#include "core/io/svg/svg_gather.h"
#include "core/io/svg/svg_line.h"
#include "core/io/svg/svg_notes.h"
#include "core/io/svg/svg_page.h"
#include "core/io/svg/svg_xml.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace lidwright {

namespace {

constexpr double kCssUnitsPerInch = 96;
constexpr double kFinest = 1e-4, kCoarsest = 1;  // mm, of the flattening tolerance
/// A drawing is measured at about this size, mm, before its true scale is known.
constexpr double kTrialSize = 500;

Error inFile(Error error, const std::string& fileName)
{
    error.where = error.where.empty() ? fileName : fileName + ", " + error.where;
    return error;
}

std::optional<Error> optionsError(const SvgOptions& options)
{
    const auto positive = [](double value) { return std::isfinite(value) && value > 0; };
    if (options.unitsPerInch && !(positive(*options.unitsPerInch) && *options.unitsPerInch <= 1e6)) {
        return Error{"the units per inch must be above 0", "units per inch", "use 96, 90 or 72"};
    }
    if (options.width_mm && !(positive(*options.width_mm) && *options.width_mm <= 2 * kCoordinateLimit)) {
        return Error{"the width must be above 0 and at most 10,000 mm", "width", "give a smaller width"};
    }
    if (!(options.tolerance >= kFinest && options.tolerance <= kCoarsest)) {
        return Error{"the tolerance must lie between 0.0001 and 1 mm", "tolerance", "use 0.002 mm"};
    }
    return std::nullopt;
}

/// A box, in px of the page, outside which nothing is painted.
Bounds outerBounds(const svg::Scene& scene, const svg::Page& page)
{
    Bounds box;
    for (const svg::SceneItem& item : scene.items) {
        Bounds own = tightBounds(*item.shape.outline, item.shape.map);
        if (item.shape.line) {
            const svg::LineStyle& line = *item.shape.line;
            const double reach = line.join == Join::Miter ? std::max(1.5, line.miterLimit) : 1.5;
            own = own.grown(line.width / 2 * reach * svg::stretchOf(item.shape.map).most);
        }
        if (page.bounded) {
            own = {std::max(own.minX, 0.0), std::max(own.minY, 0.0), std::min(own.maxX, page.width),
                   std::min(own.maxY, page.height)};
        }
        if (!own.empty()) box.include(own);
    }
    return box;
}

Bounds paintedBounds(const Artwork& art)
{
    Bounds box;
    for (const ArtRun& run : art.runs)
        box.include(bounds(run.painted));
    return box;
}

/// px of the page, y down, to mm about `middle` (px), y up.
Transform millimetreMap(double scale, Point middle)
{
    return {scale, 0, 0, -scale, -scale * middle.x, scale * middle.y};
}

/// Moves everything so that `middle` comes to the origin, from grid point to grid point.
void moveToOrigin(Artwork& art, Point middle)
{
    const auto steps = [](double mm) { return std::round(mm * kGridPerMillimetre); };
    const double dx = steps(middle.x), dy = steps(middle.y);
    for (ArtRun& run : art.runs) {
        for (Region* region : {&run.painted, &run.enclosed}) {
            for (Ring& ring : region->rings) {
                for (Point& p : ring)
                    p = {(steps(p.x) - dx) / kGridPerMillimetre, (steps(p.y) - dy) / kGridPerMillimetre};
            }
        }
    }
}

/// What is painted, in px of the page, measured at a size at which it fits the grid.
struct Measured {
    Bounds box;
    std::optional<Error> error;
};
Measured measure(const svg::Scene& scene, const Bounds& outer, double tolerance)
{
    svg::Budget budget;
    svg::Notes unheard;
    const double scale = kTrialSize / std::max(outer.width(), outer.height());
    const Transform map = millimetreMap(scale, outer.centre());
    const Artwork art = svg::Gatherer(scene, map, tolerance, unheard, budget).gather();
    if (budget.broken()) return {{}, budget.error()};
    const Bounds mm = paintedBounds(art);
    if (mm.empty()) return {};
    const Point c = outer.centre();
    return {{c.x + mm.minX / scale, c.y - mm.maxY / scale, c.x + mm.maxX / scale, c.y - mm.minY / scale}, {}};
}

Error nothingPainted(const svg::Notes& notes)
{
    const std::vector<std::string> messages = notes.sentences();
    return {"nothing that can be cut is painted in it" + (messages.empty() ? "" : "; " + messages.front()),
            {},
            "draw filled shapes or lines as outlines"};
}

void noteSize(const svg::Page& page, svg::Notes& notes)
{
    if (page.physical && !page.viewBox) {
        notes.say(
            "The page's size is given in real units but the drawing's own units are not tied to it "
            "(no viewBox): they were taken as 96 to the inch, older programs meant 90: check the "
            "width.");
    }
}

Result<SvgReading> readPlain(std::string_view text, const SvgOptions& options)
{
    svg::Notes notes;
    svg::Budget budget;
    auto file = svg::parseXml(text, notes);
    if (!file) return file.error();
    double unitsPerInch = kCssUnitsPerInch;
    auto page = svg::readPage(file->root, unitsPerInch);
    if (page && !page->physical && options.unitsPerInch) {
        unitsPerInch = *options.unitsPerInch;
        page = svg::readPage(file->root, unitsPerInch);
    }
    if (!page) return page.error();
    const svg::Scene scene =
        svg::SceneBuilder(*file, *page, unitsPerInch, options.outlineText, notes, budget).build();
    if (budget.broken()) return *budget.error();
    Bounds outer = outerBounds(scene, *page);
    const bool measurable = outer.width() > 0 && outer.height() > 0 && std::isfinite(outer.width()) &&
                            std::isfinite(outer.height());
    if (!measurable) return nothingPainted(notes);

    double scale = kMillimetresPerInch / unitsPerInch;
    const double limit = 2 * kCoordinateLimit;
    if (options.width_mm || std::max(outer.width(), outer.height()) * scale > limit) {
        const double wanted = options.width_mm.value_or(kTrialSize);
        const Measured measured =
            measure(scene, outer, options.tolerance * std::min(1.0, kTrialSize / wanted));
        if (measured.error) return *measured.error;
        outer = measured.box;
        if (!(outer.width() > 0)) return nothingPainted(notes);
        if (options.width_mm) scale = *options.width_mm / outer.width();
    }
    if (std::max(outer.width(), outer.height()) * scale > limit) {
        return Error{"the drawing is larger than 10 m",
                     {},
                     "give the width that it shall have, or more units per inch"};
    }

    SvgReading reading;
    const Transform map = millimetreMap(scale, outer.centre());
    reading.art = svg::Gatherer(scene, map, options.tolerance, notes, budget).gather();
    if (budget.broken()) return *budget.error();
    const Bounds box = paintedBounds(reading.art);
    if (box.empty()) return nothingPainted(notes);
    moveToOrigin(reading.art, box.centre());
    noteSize(*page, notes);
    reading.art.width = box.width();
    reading.art.height = box.height();
    reading.art.fileSize = text.size();
    reading.art.messages = notes.sentences();
    reading.hasPhysicalSize = page->physical;
    reading.widthUnits = box.width() / scale;
    reading.heightUnits = box.height() / scale;
    if (page->bounded) {
        for (const Point corner : {Point{0, 0}, Point{page->width, page->height}})
            reading.page.include(map(corner) - box.centre());
    }
    return reading;
}

}  // namespace

Result<SvgReading> readSvg(std::string_view text, std::string fileName, const SvgOptions& options)
{
    if (const auto error = optionsError(options)) return *error;
    Result<SvgReading> reading = readPlain(text, options);
    if (!reading) return inFile(reading.error(), fileName);
    reading.value().art.fileName = std::move(fileName);
    return reading;
}

}  // namespace lidwright
