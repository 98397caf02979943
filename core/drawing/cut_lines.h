#pragma once

#include "core/drawing/cut_drawing.h"
#include "core/geometry/point_snap.h"

#include <set>

namespace lidwright {

/// Remembers lines and leaves out those that come again, whichever way they run.
class LinesOnce {
public:
    LinesOnce() : m_snap(kSameCutLine) {}

    /// The path, in pieces where some of it was there already: those pieces are open.
    std::vector<CutPath> fresh(const CutPath& path);
    /// How many lines (or whole circles) were left out.
    int dropped() const { return m_dropped; }

private:
    PointSnap m_snap;
    std::set<std::pair<int, int>> m_lines;
    std::set<std::pair<int, std::int64_t>> m_circles;
    int m_dropped = 0;
};

}  // namespace lidwright
