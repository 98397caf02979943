#pragma once

#include "core/io/svg/svg_budget.h"
#include "core/io/svg/svg_notes.h"
#include "core/io/svg/svg_scene.h"
#include "core/plan/artwork.h"

#include <map>
#include <vector>

namespace lidwright::svg {

/// Turns the list of painted shapes into areas on the grid: one run for every change of paint.
class Gatherer {
public:
    /// `toMillimetres` maps units of the page (y down) to mm (y up).
    Gatherer(const Scene& scene, const Transform& toMillimetres, double tolerance, Notes& notes,
             Budget& budget)
        : m_scene(scene), m_map(toMillimetres), m_tolerance(tolerance), m_notes(notes), m_budget(budget)
    {}

    /// The runs that cover anything, and the paints that they use, in painting order; not to be used where
    /// the budget is then broken. Runs of enclosed areas without paint do not occur.
    Artwork gather();

private:
    /// A clip at this scale.
    struct Window {
        Region region;
        Bounds box;
        bool upright = false;  ///< the region is its box
    };
    /// Areas that wait to be clipped together.
    struct Batch {
        const Clip* clip = nullptr;
        std::vector<Region> areas;
    };

    const Scene& m_scene;
    Transform m_map;
    double m_tolerance;
    Notes& m_notes;
    Budget& m_budget;
    std::map<const Clip*, Window> m_windows;

    const Window& window(const Clip& clip);
    Region area(const SceneShape& shape);
    Region clipped(Region region, const Clip* clip);
    const Clip* firstThatCuts(const Clip* clip, const Bounds& box);
    void noteOutside(const Clip& clip, const Bounds& box);
    Region painted(std::size_t first, std::size_t last);
    Region enclosed(std::size_t first, std::size_t last);
    double thinnest(std::size_t first, std::size_t last) const;
    Transform shapeMap(const SceneShape& shape) const { return m_map * shape.map; }
};

}  // namespace lidwright::svg
