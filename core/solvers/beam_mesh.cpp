#include "core/solvers/beam_mesh.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace lidwright {
namespace {

double between(double a, double b, double t)
{
    return a + (b - a) * t;
}

BeamSection between(const BeamSection& a, const BeamSection& b, double t)
{
    return {between(a.bending_Nmm2, b.bending_Nmm2, t),
            between(a.axial_N, b.axial_N, t),
            between(a.top, b.top, t),
            between(a.bottom, b.bottom, t),
            between(a.topModulus_MPa, b.topModulus_MPa, t),
            between(a.bottomModulus_MPa, b.bottomModulus_MPa, t),
            between(a.mass_kg_m, b.mass_kg_m, t),
            between(a.axis, b.axis, t)};
}

/// Places along the beam, no two of them nearer than a limit. What comes first keeps its place.
class Places {
public:
    explicit Places(double nearest) : m_nearest(nearest) {}

    void add(double x)
    {
        if (m_sorted.empty() || std::abs(nearestTo(x) - x) >= m_nearest)
            m_sorted.insert(std::lower_bound(m_sorted.begin(), m_sorted.end(), x), x);
    }

    double nearestTo(double x) const { return m_sorted[index(x)]; }

    std::size_t index(double x) const
    {
        const auto above = std::lower_bound(m_sorted.begin(), m_sorted.end(), x);
        if (above == m_sorted.begin()) return 0;
        const auto at = static_cast<std::size_t>(above - m_sorted.begin());
        if (above == m_sorted.end() || x - *(above - 1) <= *above - x) return at - 1;
        return at;
    }

    const std::vector<double>& sorted() const { return m_sorted; }

private:
    double m_nearest;
    std::vector<double> m_sorted;
};

/// Puts evenly spaced places between those that must be.
std::vector<double> filled(const std::vector<double>& wanted, double longest)
{
    std::vector<double> all;
    for (std::size_t i = 0; i + 1 < wanted.size(); ++i) {
        const double gap = wanted[i + 1] - wanted[i];
        const int parts = std::max(1, static_cast<int>(std::ceil(gap / longest - 1e-6)));
        for (int k = 0; k < parts; ++k)
            all.push_back(wanted[i] + gap * k / parts);
    }
    all.push_back(wanted.back());
    return all;
}

class Cutting {
public:
    Cutting(const NeckBeam& beam, int fineness) : m_beam(beam)
    {
        m_ends.push_back(beam.start);
        for (const BeamPiece& piece : beam.pieces)
            m_ends.push_back(m_ends.back() + piece.length);
        const double length = m_ends.back() - m_ends.front();
        Places wanted(kBeamNearest * length);
        wanted.add(m_ends.front());
        wanted.add(m_ends.back());
        for (const BeamSupport& support : beam.supports)
            wanted.add(support.x);
        for (double end : m_ends)
            wanted.add(end);
        for (const BeamAxial& axial : beam.axials) {
            wanted.add(axial.from);
            wanted.add(axial.to);
        }
        for (const BeamLoad& load : beam.loads)
            wanted.add(load.x);
        for (const BeamSpread& spread : beam.spreads) {
            wanted.add(spread.from);
            wanted.add(spread.to);
        }
        m_x = filled(wanted.sorted(), length / fineness);
        m_mesh.pointLoads.resize(2 * m_x.size());
    }

    BeamMesh mesh() &&
    {
        for (std::size_t i = 0; i + 1 < m_x.size(); ++i)
            m_mesh.elements.push_back(element(m_x[i], m_x[i + 1]));
        for (const BeamSupport& support : m_beam.supports)
            m_mesh.supportNodes.push_back(node(support.x));
        for (const BeamLoad& load : m_beam.loads)
            put(load.x, load.force_N, load.moment_Nmm);
        for (const BeamSpread& spread : m_beam.spreads)
            put(spread);
        for (const BeamAxial& axial : m_beam.axials)
            put(axial);
        return std::move(m_mesh);
    }

private:
    std::size_t node(double x) const
    {
        const auto above = std::lower_bound(m_x.begin(), m_x.end(), x);
        if (above == m_x.begin()) return 0;
        const auto at = static_cast<std::size_t>(above - m_x.begin());
        if (above == m_x.end() || x - *(above - 1) <= *above - x) return at - 1;
        return at;
    }

    BeamElement element(double from, double to) const
    {
        // The ends of pieces may lie beside the nodes they went to: the middle says which piece it is.
        const double middle = (from + to) / 2;
        std::size_t i = 0;
        while (i + 1 < m_beam.pieces.size() && middle > m_ends[i + 1])
            ++i;
        const BeamPiece& piece = m_beam.pieces[i];
        const auto along = [&](double x) {
            return std::clamp((x - m_ends[i]) / (m_ends[i + 1] - m_ends[i]), 0.0, 1.0);
        };
        BeamElement e;
        e.x = from;
        e.length = to - from;
        e.start = between(piece.start, piece.end, along(from));
        e.end = between(piece.start, piece.end, along(to));
        if (m_beam.selfWeight) {
            constexpr double kNewtonsPerMmPerKg_m = kGravity_m_s2 / 1000;
            e.startLoad_N_mm = -e.start.mass_kg_m * kNewtonsPerMmPerKg_m;
            e.endLoad_N_mm = -e.end.mass_kg_m * kNewtonsPerMmPerKg_m;
        }
        return e;
    }

    /// At the nearest node, with the moment that the shift takes.
    void put(double x, double force, double moment)
    {
        const std::size_t n = node(x);
        m_mesh.pointLoads[2 * n] += force;
        m_mesh.pointLoads[2 * n + 1] += moment + force * (x - m_x[n]);
    }

    void put(const BeamSpread& spread)
    {
        const std::size_t first = node(spread.from), last = node(spread.to);
        // Ends that were moved change sum and centre; what is missing is put there as a point load.
        const auto sumOf = [](double from, double to, double a, double b) {
            return std::pair{(a + b) / 2 * (to - from),  // force, and its moment about x = 0
                             (to - from) / 6 * (a * (2 * from + to) + b * (from + 2 * to))};
        };
        auto [force, moment] = sumOf(spread.from, spread.to, spread.atFrom_N_mm, spread.atTo_N_mm);
        if (last > first) {
            const auto [put, putMoment] = sumOf(m_x[first], m_x[last], spread.atFrom_N_mm, spread.atTo_N_mm);
            force -= put;
            moment -= putMoment;
        }
        const std::size_t middle = (first + last) / 2;
        m_mesh.pointLoads[2 * middle] += force;
        m_mesh.pointLoads[2 * middle + 1] += moment - force * m_x[middle];
        for (std::size_t i = first; i < last; ++i) {
            const auto at = [&](double x) {
                return between(spread.atFrom_N_mm, spread.atTo_N_mm,
                               (x - m_x[first]) / (m_x[last] - m_x[first]));
            };
            m_mesh.elements[i].startLoad_N_mm += at(m_x[i]);
            m_mesh.elements[i].endLoad_N_mm += at(m_x[i + 1]);
        }
    }

    void put(const BeamAxial& axial)
    {
        const std::size_t first = node(axial.from), last = node(axial.to);
        const auto height = [&](double x) {
            return between(axial.fromHeight, axial.toHeight, (x - m_x[first]) / (m_x[last] - m_x[first]));
        };
        for (std::size_t i = first; i < last; ++i) {
            BeamElement& e = m_mesh.elements[i];
            e.axial_N += axial.force_N;
            e.startCouple_Nmm -= axial.force_N * (height(m_x[i]) - e.start.axis);
            e.endCouple_Nmm -= axial.force_N * (height(m_x[i + 1]) - e.end.axis);
        }
        if (axial.tied && last > first) m_mesh.ties.push_back({first, last, axial.force_N});
    }

    const NeckBeam& m_beam;
    std::vector<double> m_ends;  ///< of the pieces
    std::vector<double> m_x;     ///< of the nodes
    BeamMesh m_mesh;
};

}  // namespace

BeamMesh beamMesh(const NeckBeam& beam, int fineness)
{
    return Cutting(beam, fineness).mesh();
}

}  // namespace lidwright
