#include "core/solvers/plate/polygon_moments.h"

#include "core/solvers/plate/gauss_points.h"

namespace lidwright {

void addMoments(CellMoments& moments, const Ring& ring, const CellFrame& frame)
{
    if (ring.size() < 3) return;
    Point a = frame.local(ring.back());
    for (const Point& corner : ring) {
        const Point b = frame.local(corner), step = b - a;
        // Integral of x^p y^q over the area = of x^(p+1) y^q / (p+1) dy round it; level edges have no part.
        if (step.y != 0) {
            for (const GaussPoint& g : kGauss7) {
                const Point at = a + g.at * step;
                double x = at.x * step.y * g.weight;
                for (int p = 0; p < kMomentOrder; ++p, x *= at.x) {
                    double value = x / (p + 1);
                    double* row = moments.data() + p * kMomentOrder;
                    for (int q = 0; q < kMomentOrder; ++q, value *= at.y)
                        row[q] += value;
                }
            }
        }
        a = b;
    }
}

CellMoments wholeCellMoments()
{
    CellMoments moments{};
    for (int p = 0; p < kMomentOrder; p += 2)
        for (int q = 0; q < kMomentOrder; q += 2)
            moments[static_cast<std::size_t>(p * kMomentOrder + q)] = 4.0 / ((p + 1) * (q + 1));
    return moments;
}

}  // namespace lidwright
