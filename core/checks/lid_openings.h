#pragma once

#include "core/checks/check.h"
#include "core/geometry/segment_tree.h"

#include <deque>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// What is cut through the lid, for the parts that must keep off it. Private to core/checks.
namespace lidwright {

class LidOpenings {
public:
    enum class Fixings { LeftOut, Counted };
    explicit LidOpenings(const CheckInput& in, Fixings fixings = Fixings::LeftOut);

    struct Closest {
        Nearest nearest;   ///< infinitely far where nothing is cut; below 0 where they overlap
        std::string name;  ///< of the drawing, or "plain hole 2", "fixing hole 1"
    };
    Closest closest(const Ring& convex) const;
    bool empty() const { return m_all.empty(); }

private:
    std::deque<SegmentTree> m_own;  // stays where it is while it grows
    std::vector<std::pair<const SegmentTree*, std::string>> m_all;
};

/// Distance of an outline inside the box to the walls' inner faces; below 0 by how far it reaches into them.
double roomToWalls(const Layout& layout, const Ring& outline);

/// The outline moved.
Ring moved(const Ring& ring, Point by);

/// The least way (mm, a step of the bench) along a direction of length 1 after which `lacking` is 0 or less,
/// up to `most`; empty where there is none. `lacking` must not change faster than the way.
std::optional<double> wayUntilClear(Point direction, const std::function<double(Point)>& lacking,
                                    double most);

}  // namespace lidwright
