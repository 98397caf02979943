#include "core/solvers/air/mirror_pairs.h"

#include "core/base/units.h"
#include "core/solvers/air/square_potential.h"

#include <array>
#include <cmath>
#include <cstddef>

namespace lidwright {
namespace {

enum class Mirror { None, Low, High };

/// One coordinate of the cells: how far a cell is from the image of another.
struct Axis {
    double start = 0;  ///< mm, from the low wall to the first cell's edge
    double side = 0;   ///< mm, from wall to wall
    double cell = 0;
    int count = 0;
    Mirror mirror = Mirror::None;

    /// All cells whose numbers have the same key are equally far apart; keys go from 0 to 2 count - 2.
    int key(int i, int j) const { return mirror == Mirror::None ? i - j + count - 1 : i + j; }
    double apart(int key) const
    {
        if (mirror == Mirror::None) return (key - count + 1) * cell;
        const double sum = 2 * start + (key + 1) * cell;
        return mirror == Mirror::Low ? sum : 2 * side - sum;
    }
    /// Keys within reach.
    std::vector<int> near(double reach) const
    {
        std::vector<int> keys;
        for (int k = 0; k <= 2 * count - 2; ++k)
            if (std::abs(apart(k)) < reach) keys.push_back(k);
        return keys;
    }
    /// The partner of i for a key, or -1.
    int partner(int i, int key) const
    {
        const int j = mirror == Mirror::None ? i - key + count - 1 : key - i;
        return j >= 0 && j < count ? j : -1;
    }
};

/// The flow times itself moved, for one pair of keys.
double product(const std::vector<double>& flow, const Axis& x, const Axis& y, int keyX, int keyY)
{
    double sum = 0;
    for (int row = 0; row < y.count; ++row) {
        const int other = y.partner(row, keyY);
        if (other < 0) continue;
        for (int column = 0; column < x.count; ++column) {
            const int partner = x.partner(column, keyX);
            if (partner < 0) continue;
            sum += flow[static_cast<std::size_t>(row * x.count + column)] *
                   flow[static_cast<std::size_t>(other * x.count + partner)];
        }
    }
    return sum;
}

}  // namespace

double mirrorPairs(const OpeningGrid& grid, const std::vector<double>& flow, const AirBox& box, double split,
                   double reach)
{
    Axis x{grid.corner.x - box.inside.minX, box.inside.width(), grid.cell, grid.columns};
    Axis y{grid.corner.y - box.inside.minY, box.inside.height(), grid.cell, grid.rows};
    constexpr std::array<Mirror, 3> kAll = {Mirror::None, Mirror::Low, Mirror::High};
    double total = 0;
    for (const Mirror inX : kAll) {
        x.mirror = inX;
        for (const Mirror inY : kAll) {
            y.mirror = inY;
            if (inX == Mirror::None && inY == Mirror::None) continue;
            const std::vector<int> keysY = y.near(reach);
            for (const int keyX : x.near(reach))
                for (const int keyY : keysY) {
                    const double dx = x.apart(keyX), dy = y.apart(keyY), r = std::hypot(dx, dy);
                    if (!(r < reach)) continue;
                    const double whole = squarePotential(dx / grid.cell, dy / grid.cell) / grid.cell;
                    const double smooth =
                        r > 1e-9 * reach ? std::erf(split * r) / r : 2 * split / std::sqrt(kPi);
                    total += (whole - smooth) / (2 * kPi) * product(flow, x, y, keyX, keyY);
                }
        }
    }
    return total;
}

}  // namespace lidwright
