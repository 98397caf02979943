#include "app/commandline/drawing_input.h"

#include "app/commandline/drawing_session.h"
#include "app/document/safe_write.h"
#include "app/exchange/text_outlines.h"

#include "core/base/length_text.h"
#include "core/io/drawing_file.h"

#include <filesystem>
#include <optional>

namespace lidwright {

namespace {

std::string sizeText(const Artwork& art, const UnitStyle& style)
{
    return formatLength(art.width, style, false).text + " x " + formatLength(art.height, style).text;
}

}  // namespace

Result<DrawingInput> readDrawing(const std::string& path, const std::string& perInch, const std::string& wide,
                                 const UnitStyle& style)
{
    SvgOptions options;
    if (!perInch.empty()) {
        const Result<double> units = parseNumber(perInch);
        if (!units)
            return Error{units.error().what, "per inch: " + perInch, "write 96, 90, 72 or another number"};
        if (!(*units >= 1 && *units <= 100'000))
            return Error{"units per inch must lie between 1 and 100000", "per inch: " + perInch,
                         "usual are 96, 90 and 72"};
        options.unitsPerInch = *units;
    }
    if (!wide.empty()) {
        const Result<double> width = parseLength(wide, style);
        if (!width) return Error{width.error().what, "wide: " + wide, width.error().mend};
        if (!(*width > 0 && *width <= kCoordinateLimit))
            return Error{"the width must be more than 0 and at most 5 m", "wide: " + wide,
                         "write it as 80 mm"};
        options.width_mm = *width;
    }

    // Few drawings hold text, so fonts are made ready when the first words come.
    std::optional<DrawingSession> session;
    options.outlineText = [&session](const TextRun& run) {
        if (!QCoreApplication::instance()) session.emplace();
        return outlineByComputerFonts(run);
    };

    const Result<QByteArray> bytes = readWholeFile(QString::fromStdString(path), qint64(kSvgFileLimit));
    if (!bytes) return bytes.error();
    const std::string name = std::filesystem::path(path).filename().string();
    Result<DrawingReading> reading = readDrawingText(bytes->toStdString(), name, options);
    if (!reading) return reading.error();

    DrawingInput input;
    input.hasPhysicalSize = reading->hasPhysicalSize;
    for (const std::string& message : reading->art.messages)
        input.remarks.push_back(name + ": " + message);
    const bool dxf = namedDxf(name);
    // DXF without a unit is drawn in millimetres as a rule (common practice, no source).
    const double usual = dxf ? kMillimetresPerInch : kUsualUnitsPerInch;
    if (wide.empty() && (!perInch.empty() || !input.hasPhysicalSize))
        input.unitsPerInch = options.unitsPerInch.value_or(usual);
    if (wide.empty() && perInch.empty() && !input.hasPhysicalSize) {
        input.remarks.push_back(name + ": the file does not say how large it is; " +
                                (dxf ? "drawn in millimetres" : "at 96 units per inch") + " it is " +
                                sizeText(reading->art, style) +
                                (dxf ? " (say otherwise with per-inch 1 for inches, or with wide)"
                                     : " (say otherwise with per-inch 90 or 72, or with wide)"));
    }
    input.art = std::make_shared<const Artwork>(std::move(reading).value().art);
    return input;
}

}  // namespace lidwright
