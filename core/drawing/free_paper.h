#pragma once

#include "core/geometry/point.h"

#include <optional>
#include <vector>

namespace lidwright {

/// Where on a sheet there is still room: an area and what has been put on it, with the air kept around it. mm
/// of paper.
class FreePaper {
public:
    enum class Toward { Top, LowerLeft, LowerRight };

    explicit FreePaper(const Bounds& area) : m_area(area) {}

    /// Nothing else comes nearer to it than `gap`.
    void take(const Bounds& what, double gap) { m_taken.push_back(what.grown(gap)); }
    /// Inside the area and clear of everything taken.
    bool isFree(const Bounds& what) const;

    /// Lower left corner of a place for something of that size, the farthest toward a side or a corner.
    std::optional<Point> placeFor(Point size, Toward toward) const;
    /// By how much to move a group as a whole so that every one of it is free: as high as it goes, in the
    /// middle of the area if it can be, or with `atLeft` at its left. The group's own members do not keep
    /// each other away.
    std::optional<Point> placeForAll(const std::vector<Bounds>& group, bool atLeft = false) const;
    /// By how much something that is free is moved so that it has as much air at its left as at its right,
    /// and below as above.
    Point toTheMiddle(const Bounds& what) const;

private:
    Bounds m_area;
    std::vector<Bounds> m_taken;  ///< with the air around them
};

}  // namespace lidwright
