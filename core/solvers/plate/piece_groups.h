#pragma once

#include "core/solvers/plate/cell_cutter.h"

namespace lidwright {

/// True when p is within the loops by the even-odd rule; on a border either may come.
bool insideLoops(const Loops& loops, Point p);

/// A point well inside loops that bound something: middle of the widest wood on some level line.
Point pointInside(const Loops& loops);

/// Parts loops into connected pieces: each an outer boundary, then the holes in it. What meets in a point
/// only does not hang together.
std::vector<Loops> groupPieces(Loops touching);

/// Sets that grow together; numbers them once they are done.
class MergedSets {
public:
    explicit MergedSets(std::size_t count);

    int find(int a);
    void merge(int a, int b);
    /// Numbers of the sets from 0, in order of their first members; one for each member.
    std::vector<int> numbered();
    int count() const { return m_count; }  ///< after numbered()

private:
    std::vector<int> m_parent;
    int m_count = 0;
};

}  // namespace lidwright
