#include "core/drawing/cut_drawing.h"

#include "core/base/length_text.h"
#include "core/drawing/cut_lines.h"
#include "core/drawing/cut_marks.h"
#include "core/drawing/cut_openings.h"
#include "core/drawing/ring_nesting.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr double kAround = 5;             // mm of air around everything
constexpr double kAboveWords = 4;         // mm
constexpr double kLeastWords = 150;       // mm that words are at least allowed to be wide
constexpr double kWidestAlignment = 100;  // mm
constexpr std::size_t kMostAlignment = 1000;

std::optional<Error> jobError(const Layout& layout, const CutJob& job)
{
    if (!(job.kerf >= 0 && job.kerf <= kWidestKerf))
        return Error{"the kerf must lie between 0 and 5 mm", "kerf", "give the width of the cut, as 0.2 mm"};
    if (job.alignment.size() > kMostAlignment)
        return Error{"there are more than 1000 alignment holes", "alignment holes", "give fewer"};
    for (const AlignmentHole& hole : job.alignment) {
        const bool placed =
            std::abs(hole.at.x) <= kCoordinateLimit && std::abs(hole.at.y) <= kCoordinateLimit;
        if (!placed || !(hole.diameter > 0 && hole.diameter <= kWidestAlignment))
            return Error{"an alignment hole has no sensible place or size", "alignment holes",
                         "give a diameter above 0 and up to 100 mm"};
    }
    if (layout.lidOutline.size() < 3)
        return Error{"the plan leaves no lid: the walls meet in the middle", "lid",
                     "make the walls thinner or the box larger"};
    return std::nullopt;
}

void addRings(std::vector<CutPath>& paths, CutOperation operation, const std::vector<Region>& regions)
{
    std::vector<Ring> rings;
    for (const Region& region : regions)
        rings.insert(rings.end(), region.rings.begin(), region.rings.end());
    const std::vector<int> depths = nestingDepths(rings);
    for (std::size_t i = 0; i < rings.size(); ++i)
        paths.push_back({operation, std::move(rings[i]), true, 0, depths[i]});
}

void addCircles(std::vector<CutPath>& paths, CutOperation operation,
                const std::vector<CutOpenings::Circle>& circles, const std::vector<Region>& around)
{
    for (const CutOpenings::Circle& circle : circles) {
        int depth = 0;
        for (const Region& region : around)
            for (const Ring& ring : region.rings)
                depth += contains(Region{{ring}}, circle.at) ? 1 : 0;
        paths.push_back({operation, {circle.at}, true, circle.radius, depth});
    }
}

std::string kerfWords(const CutJob& job)
{
    if (job.compensate && job.kerf > 0)
        return "Kerf " + decimalNumber(job.kerf, 3) + " mm taken off: cut on the line";
    return "No kerf taken off";
}

/// What the file says of itself.
std::vector<std::string> notesOf(const CutJob& job)
{
    return {"Millimetres, full size",
            job.mirrored ? "Mirrored: the lid's underside is seen" : "The lid's top face is seen",
            kerfWords(job)};
}

std::string meaning(const CutLayer& layer)
{
    switch (layer.operation) {
        case CutOperation::Engrave:
            return layer.filled ? "engrave the areas" : "engrave between the outlines";
        case CutOperation::CutInside:
            return "cut the openings";
        case CutOperation::Alignment:
            return "cut the round holes for pins";
        case CutOperation::CutOutline:
            return "cut the lid's outline";
        case CutOperation::Mark:
            return "not cut";
    }
    return "";
}

class Composer {
public:
    Composer(const Plan& plan, const Layout& layout, const CutJob& job)
        : m_plan(plan), m_layout(layout), m_job(job)
    {}

    Result<CutDrawing> compose()
    {
        CutOpenings openings = openingsOf(m_plan, m_layout, m_job);
        if (m_job.compensate && m_job.kerf > 0) takeKerfOff(openings, m_job.kerf);
        m_out.duplicates = openings.duplicates;
        m_out.messages = std::move(openings.messages);
        addCuts(openings);
        if (m_out.paths.empty() && !m_job.marks && !m_job.checkLine)
            return Error{"there is nothing to draw", "lid",
                         "ask for the outline, the marks or the check line"};
        m_out.mirrored = m_job.mirrored;
        if (m_job.mirrored) mirror();
        m_out.layers = usedLayers();
        addWords();
        settle();
        tell();
        return std::move(m_out);
    }

private:
    const Plan& m_plan;
    const Layout& m_layout;
    const CutJob& m_job;
    CutDrawing m_out;

    void addCuts(const CutOpenings& openings)
    {
        std::vector<CutPath> cuts, engraving;
        addRings(cuts, CutOperation::CutInside, openings.openings);
        addCircles(cuts, CutOperation::CutInside, openings.circles, openings.openings);
        addCircles(cuts, CutOperation::Alignment, openings.alignment, {});
        addRings(cuts, CutOperation::CutOutline, {openings.lid});
        addRings(engraving, CutOperation::Engrave, {openings.engraved});
        if (m_job.marks) {
            std::vector<CutPath> marks = lidMarks(m_layout);
            cuts.insert(cuts.end(), marks.begin(), marks.end());
        }
        // Engraving may run along a cut: its outlines bound an area and must stay closed.
        for (const std::vector<CutPath>* list : {&engraving, &cuts}) {
            LinesOnce lines;
            for (const CutPath& path : *list) {
                const std::vector<CutPath> fresh = lines.fresh(path);
                m_out.paths.insert(m_out.paths.end(), fresh.begin(), fresh.end());
            }
            m_out.duplicates += lines.dropped();
        }
    }

    void mirror()
    {
        for (CutPath& path : m_out.paths) {
            for (Point& p : path.points)
                p.y = -p.y;
            // Walked backwards, a ring keeps its winding.
            if (path.closed) std::reverse(path.points.begin(), path.points.end());
        }
    }

    std::vector<CutLayer> usedLayers() const
    {
        std::vector<CutLayer> used;
        for (const CutLayer& layer : m_job.preset.layers) {
            const bool words = layer.operation == CutOperation::Mark && (m_job.marks || m_job.checkLine);
            const bool drawn =
                words || std::any_of(m_out.paths.begin(), m_out.paths.end(),
                                     [&](const CutPath& p) { return p.operation == layer.operation; });
            if (drawn) used.push_back(layer);
        }
        return used;
    }

    Bounds lidBounds() const
    {
        Bounds lid = bounds(m_layout.lidOutline);
        if (m_job.mirrored) lid = {lid.minX, -lid.maxY, lid.maxX, -lid.minY};
        return lid;
    }

    void addWords()
    {
        m_out.title = m_plan.sheet.title + ": lid";
        m_out.notes = notesOf(m_job);
        std::vector<std::string> lines;
        if (m_job.marks) {
            lines.push_back(m_out.title);
            lines.insert(lines.end(), m_out.notes.begin(), m_out.notes.end());
            for (const CutLayer& layer : m_out.layers)
                lines.push_back("Layer " + layer.name + " " + layer.colour + ": " + meaning(layer));
        }
        const Bounds lid = lidBounds();
        Bounds all = extent();
        all.include(lid);
        for (CutPath& path : markedWords(lines, {lid.minX, all.minY - kAboveWords},
                                         std::max(lid.width(), kLeastWords), m_job.checkLine))
            m_out.paths.push_back(std::move(path));
    }

    Bounds extent() const
    {
        Bounds box;
        for (const CutPath& path : m_out.paths)
            box.include(bounds(path.points).grown(path.radius));
        return box;
    }

    /// Moves everything to its place and puts it into cutting order.
    void settle()
    {
        const Bounds box = extent().grown(kAround);
        const Point shift{-box.minX, -box.minY};
        for (CutPath& path : m_out.paths)
            for (Point& p : path.points)
                p = p + shift;
        m_out.lidOrigin = shift;
        m_out.extent = {0, 0, box.width(), box.height()};
        const auto place = [&](const CutPath& path) { return m_job.preset.layer(path.operation).order; };
        std::stable_sort(m_out.paths.begin(), m_out.paths.end(), [&](const CutPath& a, const CutPath& b) {
            return std::pair(place(a), -a.depth) < std::pair(place(b), -b.depth);
        });
    }

    void say(const char* pattern, std::vector<Sentence::Argument> arguments)
    {
        Sentence& sentence = m_out.messages.emplace_back();
        sentence.pattern = pattern;
        sentence.arguments = std::move(arguments);
    }

    void tell()
    {
        if (m_out.duplicates > 0)
            say("%1 lines lie on other lines and are written once.",
                {Measure{static_cast<double>(m_out.duplicates), Quantity::Count}});
        const auto orderOf = [&](CutOperation operation) { return m_job.preset.layer(operation).order; };
        const int lastInner = std::max(orderOf(CutOperation::CutInside), orderOf(CutOperation::Alignment));
        if (m_job.lidOutline && lastInner > orderOf(CutOperation::CutOutline))
            say("The preset cuts the outline before what lies inside it: the lid may shift.", {});
    }
};

}  // namespace

Result<CutDrawing> composeCutDrawing(const Plan& plan, const Layout& layout, const CutJob& job)
{
    if (const auto error = jobError(layout, job)) return *error;
    return Composer(plan, layout, job).compose();
}

std::string cutFileName(const std::string& base, const CutJob& job)
{
    std::string name;
    for (const char c : base) {
        const bool barred = static_cast<unsigned char>(c) < 0x20 || c == 0x7f ||
                            std::string_view("/\\:*?\"<>|").find(c) != std::string_view::npos;
        name += barred ? '-' : c;
    }
    if (name.empty()) name = "lid";
    name += "-mm";
    if (job.mirrored) name += "-mirrored";
    if (job.compensate && job.kerf > 0)
        return name + "-kerf-" + decimalNumber(job.kerf, 3) + "mm-compensated";
    return name + "-no-kerf-taken-off";
}

CutTotals totalsOf(const CutDrawing& drawing, CutOperation operation)
{
    CutTotals totals;
    for (const CutPath& path : drawing.paths) {
        if (path.operation != operation) continue;
        ++(path.closed ? totals.closed : totals.open);
        const double sign = path.depth % 2 == 0 ? 1 : -1;
        if (path.radius > 0) {
            totals.length += 2 * kPi * path.radius;
            totals.area += sign * kPi * path.radius * path.radius;
            continue;
        }
        for (std::size_t i = 1; i < path.points.size(); ++i)
            totals.length += distance(path.points[i - 1], path.points[i]);
        if (!path.closed) continue;
        totals.length += distance(path.points.back(), path.points.front());
        totals.area += sign * std::abs(signedArea(path.points));
    }
    return totals;
}

}  // namespace lidwright
