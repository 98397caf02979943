#include "core/layout/base_fastening.h"

#include <cmath>

namespace lidwright {
namespace {

/// Evenly along a-b, from inset to inset.
void alongSide(Point a, Point b, double spacing, std::vector<BaseFixing>& out)
{
    const double length = distance(a, b);
    const double room = length - 2 * kBaseFixingInset;
    if (!(room > 0)) return;
    const Point along = (b - a) * (1 / length);
    // A counter-clockwise outline has its inside at the left.
    const Point inward{-along.y, along.x};
    const auto gaps = static_cast<int>(std::ceil(room / spacing - 1e-9));
    for (int i = 0; i <= gaps; ++i)
        out.push_back({a + along * (kBaseFixingInset + room * i / gaps), inward});
}

void alongOutline(const Ring& ring, double spacing, std::vector<BaseFixing>& out)
{
    double whole = 0;
    for (std::size_t i = 0; i < ring.size(); ++i)
        whole += distance(ring[i], ring[(i + 1) % ring.size()]);
    const auto count = static_cast<int>(std::ceil(whole / spacing - 1e-9));
    if (count < 1) return;
    const double turn = signedArea(ring) > 0 ? 1 : -1;
    double gone = 0;
    int next = 0;
    for (std::size_t i = 0; i < ring.size() && next < count; ++i) {
        const Point a = ring[i], b = ring[(i + 1) % ring.size()];
        const double length = distance(a, b);
        if (length <= 0) continue;
        const Point along = (b - a) * (1 / length);
        while (next < count && whole * next / count <= gone + length) {
            out.push_back({a + along * (whole * next / count - gone), Point{-along.y, along.x} * turn});
            ++next;
        }
        gone += length;
    }
}

}  // namespace

std::vector<BaseFixing> baseFixings(const Plan& plan, const Layout& layout)
{
    std::vector<BaseFixing> out;
    if (plan.box.baseFastening == BaseFastening::Glued || !(plan.box.baseSpacing > 0)) return out;
    if (plan.box.shape == BoxShape::Outline) {
        alongOutline(layout.boxOuter, plan.box.baseSpacing, out);
        return out;
    }
    const Bounds b = layout.body;
    if (b.empty()) return out;
    const Point corners[] = {{b.minX, b.minY}, {b.maxX, b.minY}, {b.maxX, b.maxY}, {b.minX, b.maxY}};
    for (std::size_t i = 0; i < 4; ++i)
        alongSide(corners[i], corners[(i + 1) % 4], plan.box.baseSpacing, out);
    return out;
}

double baseFixingZ(const Layout& layout)
{
    return (layout.base.low + layout.base.high) / 2;
}

}  // namespace lidwright
