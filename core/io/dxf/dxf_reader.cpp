#include "core/io/dxf/dxf_reader.h"

#include "core/base/length_text.h"
#include "core/base/units.h"
#include "core/io/dxf/dxf_chain.h"
#include "core/io/dxf/dxf_document.h"
#include "core/io/dxf/dxf_expand.h"
#include "core/io/svg/svg_stroker.h"
#include "core/io/svg/svg_unite.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace lidwright {
namespace {

constexpr double kFinest = 1e-4, kCoarsest = 1;  // mm, of the tolerance
constexpr double kLongest = 2 * kCoordinateLimit;
/// A drawing whose size is asked for is measured with chords this share of its size off.
constexpr double kMeasure = 1e-6;

std::optional<Error> optionsError(const DxfOptions& options)
{
    const auto positive = [](double value) { return std::isfinite(value) && value > 0; };
    if (options.unit_mm && !(positive(*options.unit_mm) && *options.unit_mm <= 1e6))
        return Error{"the unit must be above 0 mm", "unit", "use 1 for millimetres or 25.4 for inches"};
    if (options.width_mm && !(positive(*options.width_mm) && *options.width_mm <= kLongest))
        return Error{"the width must be above 0 and at most 10,000 mm", "width", "give a smaller width"};
    if (!(options.tolerance >= kFinest && options.tolerance <= kCoarsest))
        return Error{"the tolerance must lie between 0.0001 and 1 mm", "tolerance", "use 0.002 mm"};
    return std::nullopt;
}

/// Bytes that cannot be read as text, whatever comes after them.
std::optional<Error> foreignBytes(std::string_view text)
{
    if (text.size() > kDxfFileLimit)
        return Error{"the file is larger than 64 MiB", {}, "leave out part of the drawing"};
    if (text.rfind("AutoCAD Binary DXF", 0) == 0)
        return Error{"it is a binary DXF file", {}, "save the drawing as ASCII DXF"};
    const bool dwg = text.size() > 6 && text.substr(0, 2) == "AC" && text[2] >= '1' && text[2] <= '9';
    if (dwg && text.substr(0, 200).find('\0') != std::string_view::npos)
        return Error{"it is a DWG file", {}, "save the drawing as ASCII DXF"};
    return std::nullopt;
}

Error nothingDrawn(const dxf::Notes& notes)
{
    const std::vector<std::string> messages = notes.sentences();
    return {"nothing that can be cut is drawn in it" + (messages.empty() ? "" : "; " + messages.front()),
            {},
            "draw lines, arcs, polylines or splines in model space"};
}

class DxfReader {
public:
    DxfReader(const dxf::Document& document, const DxfOptions& options, dxf::Notes& notes)
        : m_document(document), m_options(options), m_notes(notes)
    {}

    Result<DrawingReading> read()
    {
        if (auto error = measure()) return *error;
        const dxf::Expanded drawn = dxf::expand(m_document, m_map, m_options.tolerance, nullptr);
        if (drawn.error) return *drawn.error;
        for (const dxf::PaintLines& paint : drawn.paints)
            addPaint(paint);
        if (m_budget.broken()) return *m_budget.error();
        Artwork& art = m_out.art;
        if (art.runs.empty()) return nothingDrawn(m_notes);
        moveToOrigin(drawn.box.centre());
        art.width = drawn.box.width();
        art.height = drawn.box.height();
        art.messages = m_notes.sentences();
        m_out.hasPhysicalSize = m_document.unit_mm > 0;
        m_out.widthUnits = art.width / m_scale;
        m_out.heightUnits = art.height / m_scale;
        return std::move(m_out);
    }

private:
    const dxf::Document& m_document;
    const DxfOptions& m_options;
    dxf::Notes& m_notes;
    double m_scale = 1;  ///< mm per unit
    Transform m_map;     ///< units to mm
    DrawingReading m_out;
    svg::Budget m_budget;
    std::set<std::string> m_names;

    /// Finds scale and place.
    std::optional<Error> measure()
    {
        const double infinite = std::numeric_limits<double>::infinity();
        // Coarse chords first: they say how fine is fine enough.
        const dxf::Expanded coarse = dxf::expand(m_document, {}, infinite, &m_notes);
        if (coarse.error) return coarse.error;
        Bounds box = coarse.box;
        if (box.empty()) return nothingDrawn(m_notes);
        m_scale = m_document.unit_mm > 0 ? m_document.unit_mm : m_options.unit_mm.value_or(1);
        if (m_options.width_mm) {
            const double size = std::max(box.width(), box.height());
            const dxf::Expanded fine = dxf::expand(m_document, {}, kMeasure * size, nullptr);
            if (fine.error) return fine.error;
            box = fine.box;
            if (!(box.width() > 0))
                return Error{"the drawing has no width", "width",
                             "leave the width away, or turn the drawing"};
            m_scale = *m_options.width_mm / box.width();
        }
        if (!(std::max(box.width(), box.height()) * m_scale <= kLongest))
            return Error{
                "the drawing is larger than 10 m", {}, "give the width that it shall have, or its unit"};
        const Point middle = box.centre();
        m_map = Transform::scaling(m_scale, m_scale) * Transform::translation(-middle.x, -middle.y);
        return std::nullopt;
    }

    std::string uniqueName(const std::string& wanted)
    {
        std::string name = wanted;
        for (int i = 2; !m_names.insert(name).second; ++i)
            name = wanted + " (" + std::to_string(i) + ")";
        return name;
    }

    std::string nameOf(const dxf::PaintLines& paint)
    {
        const dxf::Layer& layer = m_document.layers[static_cast<std::size_t>(paint.layer)];
        const std::string name = "layer " + layer.name;
        return uniqueName(paint.colour == layer.colour ? name : name + ", " + colourText(paint.colour));
    }

    Region hairlines(const dxf::Chains& chains)
    {
        const svg::PenShape pen{kDxfHairline / 2, Join::Round, Cap::Round, 4, kDxfHairline / 10, {1, 0}};
        std::vector<Ring> rings;
        const auto paint = [&](const std::vector<Point>& points, bool closed) {
            if (m_budget.broken()) return;
            const std::size_t before = rings.size();
            svg::appendPenRings(rings, {points, closed}, pen);
            std::size_t count = 0;
            for (std::size_t i = before; i < rings.size(); ++i)
                count += rings[i].size();
            m_budget.flatPoints(count);
        };
        for (const Ring& ring : chains.rings)
            paint(ring, true);
        for (const std::vector<Point>& line : chains.open)
            paint(line, false);
        if (m_budget.broken()) return {};
        return svg::fillAll(std::move(rings), FillRule::NonZero, m_budget);
    }

    void addPaint(const dxf::PaintLines& paint)
    {
        if (m_budget.broken()) return;
        const dxf::Chains chains = dxf::chained(paint.lines, kDxfMeeting);
        ArtRun run;
        run.paint = static_cast<int>(m_out.art.paints.size());
        run.painted = hairlines(chains);
        for (int i = 0; i < chains.doubled; ++i)
            m_notes.add(dxf::Issue::Doubled);
        if (run.painted.empty()) return;
        run.enclosed = svg::fillAll(chains.rings, FillRule::EvenOdd, m_budget);
        const std::string name = nameOf(paint);
        if (chains.groups > 0) tellOpen(name, chains);
        m_out.art.paints.push_back({name, colourText(paint.colour), true, kDxfHairline});
        m_out.art.runs.push_back(std::move(run));
    }

    void tellOpen(const std::string& paint, const dxf::Chains& chains)
    {
        std::string text = chains.groups == 1 ? "1 line on " + paint + " is not closed and encloses nothing"
                                              : std::to_string(chains.groups) + " lines on " + paint +
                                                    " are not closed and enclose nothing";
        if (std::isfinite(chains.gap)) {
            const Point inFile = (1 / m_scale) * (chains.gapAt - Point{m_map.e, m_map.f});
            text += "; the narrowest gap is " + decimalNumber(chains.gap, 3) + " mm, at x " +
                    decimalNumber(inFile.x, 3) + ", y " + decimalNumber(inFile.y, 3) + " of the file";
        }
        m_notes.say(text + ".");
    }

    /// Moves everything so that `middle` comes to the origin, from grid point to grid point.
    void moveToOrigin(Point middle)
    {
        const auto steps = [](double mm) { return std::round(mm * kGridPerMillimetre); };
        const double dx = steps(middle.x), dy = steps(middle.y);
        for (ArtRun& run : m_out.art.runs)
            for (Region* region : {&run.painted, &run.enclosed})
                for (Ring& ring : region->rings)
                    for (Point& p : ring)
                        p = {(steps(p.x) - dx) / kGridPerMillimetre, (steps(p.y) - dy) / kGridPerMillimetre};
    }
};

Result<DrawingReading> readPlain(std::string_view text, const DxfOptions& options)
{
    if (const auto error = foreignBytes(text)) return *error;
    dxf::Notes notes;
    const auto document = dxf::parse(text, notes);
    if (!document) return document.error();
    auto reading = DxfReader(*document, options, notes).read();
    if (reading) reading.value().art.fileSize = text.size();
    return reading;
}

}  // namespace

Result<DrawingReading> readDxf(std::string_view text, std::string fileName, const DxfOptions& options)
{
    if (const auto error = optionsError(options)) return *error;
    Result<DrawingReading> reading = readPlain(text, options);
    if (!reading) {
        Error error = reading.error();
        error.where = error.where.empty() ? fileName : fileName + ", " + error.where;
        return error;
    }
    reading.value().art.fileName = std::move(fileName);
    return reading;
}

}  // namespace lidwright
