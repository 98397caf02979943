#include "core/io/svg/svg_gather.h"

#include "core/io/svg/svg_line.h"
#include "core/io/svg/svg_unite.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <set>
#include <tuple>
#include <utility>

namespace lidwright::svg {

namespace {

/// What sticks out of the page by less than this, mm, is not worth a word.
constexpr double kOutside = 0.1;

bool holds(const Bounds& outer, const Bounds& inner)
{
    return inner.empty() ||
           (outer.contains({inner.minX, inner.minY}) && outer.contains({inner.maxX, inner.maxY}));
}

}  // namespace

const Gatherer::Window& Gatherer::window(const Clip& clip)
{
    const auto known = m_windows.find(&clip);
    if (known != m_windows.end()) return known->second;
    std::vector<Region> parts;
    for (const SceneShape& shape : clip.shapes)
        parts.push_back(clipped(area(shape), shape.clip.get()));
    Window made;
    made.region = uniteAll(std::move(parts), m_budget);
    made.box = bounds(made.region);
    made.upright = isUpright(made.region);
    return m_windows.emplace(&clip, std::move(made)).first->second;
}

Region Gatherer::area(const SceneShape& shape)
{
    if (m_budget.broken()) return {};
    const bool vast =
        shape.line && shape.line->width * stretchOf(shapeMap(shape)).most > 2 * kCoordinateLimit;
    if (vast) m_notes.add(Issue::BadTransform);
    if (shape.line) return paintedLine(shape, shapeMap(shape), m_tolerance, m_budget);
    return filledArea(shape, shapeMap(shape), m_tolerance, m_budget);
}

void Gatherer::noteOutside(const Clip& clip, const Bounds& box)
{
    if (clip.page && !holds(window(clip).box.grown(kOutside), box)) m_notes.add(Issue::Outside);
}

/// The innermost clip that cuts something off a region with this box; null where none does.
const Clip* Gatherer::firstThatCuts(const Clip* clip, const Bounds& box)
{
    for (; clip; clip = clip->outer.get()) {
        const Window& view = window(*clip);
        if (!view.upright || !holds(view.box, box)) return clip;
    }
    return nullptr;
}

Region Gatherer::clipped(Region region, const Clip* clip)
{
    while (!region.empty() && !m_budget.broken()) {
        clip = firstThatCuts(clip, bounds(region));
        if (!clip) break;
        noteOutside(*clip, bounds(region));
        const Window& view = window(*clip);
        region = cutTo(std::move(region), view.region, m_budget);
        clip = clip->outer.get();
    }
    return region;
}

/// The area of the items first ... last - 1. Neighbours that wait for the same clip are clipped together.
Region Gatherer::painted(std::size_t first, std::size_t last)
{
    std::vector<Region> done;
    Batch batch;
    const auto flush = [&] {
        if (batch.areas.empty()) return;
        Region all = uniteAll(std::exchange(batch.areas, {}), m_budget);
        all = clipped(std::move(all), batch.clip);
        if (!all.empty()) done.push_back(std::move(all));
    };
    for (std::size_t i = first; i < last && !m_budget.broken(); ++i) {
        const SceneShape& shape = m_scene.items[i].shape;
        Region part = area(shape);
        const Clip* cuts = firstThatCuts(shape.clip.get(), bounds(part));
        if (part.empty()) continue;
        if (cuts && cuts->page) {
            // Every shape that leaves the page is to be counted.
            noteOutside(*cuts, bounds(part));
            part = cutTo(std::move(part), window(*cuts).region, m_budget);
            cuts = nullptr;
        }
        if (cuts != batch.clip) flush();
        batch.clip = cuts;
        batch.areas.push_back(std::move(part));
    }
    flush();
    return uniteAll(std::move(done), m_budget);
}

/// What the lines first ... last - 1 enclose, by the even-odd rule; a line drawn twice counts once.
Region Gatherer::enclosed(std::size_t first, std::size_t last)
{
    std::vector<Ring> all;
    std::set<std::tuple<long long, long long, long long, long long, long long>> seen;
    for (std::size_t i = first; i < last && !m_budget.broken(); ++i) {
        const SceneShape& shape = m_scene.items[i].shape;
        Region own = fillAll(closedRings(shape, shapeMap(shape), m_tolerance), FillRule::EvenOdd, m_budget);
        own = clipped(std::move(own), shape.clip.get());
        for (Ring& ring : own.rings) {
            const auto micrometres = [](double mm) { return std::llround(mm * 1000); };
            const Bounds box = bounds(ring);
            const auto key = std::tuple(micrometres(box.minX), micrometres(box.minY), micrometres(box.maxX),
                                        micrometres(box.maxY), std::llround(signedArea(ring) * 100));
            if (seen.insert(key).second) all.push_back(std::move(ring));
        }
    }
    return fillAll(std::move(all), FillRule::EvenOdd, m_budget);
}

double Gatherer::thinnest(std::size_t first, std::size_t last) const
{
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = first; i < last; ++i) {
        const SceneShape& shape = m_scene.items[i].shape;
        if (shape.line) least = std::min(least, shape.line->width * stretchOf(shapeMap(shape)).least);
    }
    return least;
}

Artwork Gatherer::gather()
{
    Artwork art;
    std::map<int, int> places;  // paint of the scene -> paint of the artwork
    const std::vector<SceneItem>& items = m_scene.items;
    for (std::size_t first = 0, last = 0; first < items.size() && !m_budget.broken(); first = last) {
        const int paint = items[first].paint;
        while (last < items.size() && items[last].paint == paint)
            ++last;
        const ScenePaint& source = m_scene.paints[static_cast<std::size_t>(paint)];
        ArtRun run;
        run.painted = painted(first, last);
        if (run.painted.empty()) continue;
        if (source.line) run.enclosed = enclosed(first, last);
        const auto [place, isNew] = places.emplace(paint, static_cast<int>(art.paints.size()));
        if (isNew) art.paints.push_back({source.name, source.colour, source.line, 0});
        run.paint = place->second;
        if (source.line) {
            double& least = art.paints[static_cast<std::size_t>(run.paint)].thinnest;
            least = isNew ? thinnest(first, last) : std::min(least, thinnest(first, last));
        }
        // Nothing was seen between two runs of one paint: they are one.
        if (!art.runs.empty() && art.runs.back().paint == run.paint) {
            ArtRun& before = art.runs.back();
            before.painted = uniteAll({std::move(before.painted), std::move(run.painted)}, m_budget);
            before.enclosed = unite(before.enclosed, run.enclosed);
        } else {
            art.runs.push_back(std::move(run));
        }
    }
    return art;
}

}  // namespace lidwright::svg
