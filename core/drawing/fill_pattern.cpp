#include "core/drawing/fill_pattern.h"

#include "core/base/units.h"

#include <algorithm>
#include <cstdint>

namespace lidwright {
namespace {

// Spacings in mm on paper; common practice for hatching, own choice for grain.
constexpr double kGrainSpacing = 2.4;
constexpr double kEndGrainSpacing = 1.6;
constexpr double kEngravedSpacing = 1.0;
constexpr double kBackingSpacing = 2.0;
constexpr double kWarningSpacing = 1.5;

/// A family of lines: across coordinate = spacing * index, plus what bends and unsettles them.
struct Family {
    double angle = 0;  // radians
    double spacing = 1;
    bool grain = false;
};

/// The same unsettled number in [0, 1) for the same line, every time.
double unsettled(std::int64_t index, std::uint64_t salt)
{
    std::uint64_t h =
        static_cast<std::uint64_t>(index) * 0x9E3779B97F4A7C15ULL + salt * 0xD1B54A32D192ED03ULL;
    h ^= h >> 31U;
    h *= 0xBF58476D1CE4E5B9ULL;
    h ^= h >> 29U;
    return static_cast<double>(h >> 11U) / 9007199254740992.0;
}

class PatternMaker {
public:
    PatternMaker(const Family& family, double paper) : m_family(family), m_paper(paper)
    {
        m_along = {std::cos(family.angle), std::sin(family.angle)};
    }

    void make(const Ring& ring, std::vector<Polyline>& out)
    {
        const Ring bent = straightened(ring);
        const Bounds box = bounds(bent);
        double spacing = m_family.spacing * m_paper;
        while (box.height() / spacing > kMostPatternLines)
            spacing *= 2;
        const auto first = static_cast<std::int64_t>(std::ceil(box.minY / spacing)) - 1;
        const auto last = static_cast<std::int64_t>(std::floor(box.maxY / spacing)) + 1;
        std::vector<std::vector<double>> crossings(static_cast<std::size_t>(last - first + 1));
        collect(bent, spacing, first, last, crossings);
        for (std::size_t i = 0; i < crossings.size(); ++i) {
            const std::int64_t index = first + static_cast<std::int64_t>(i);
            std::vector<double>& at = crossings[i];
            std::sort(at.begin(), at.end());
            for (std::size_t k = 0; k + 1 < at.size(); k += 2)
                emit(index, height(index, spacing), at[k], at[k + 1], out);
        }
    }

private:
    Family m_family;
    double m_paper;
    Point m_along;

    /// How far a grain line strays sideways at u: two long waves.
    double wave(double u) const
    {
        if (!m_family.grain) return 0;
        const double w = 2 * kPi / (110 * m_paper);
        return m_paper * (0.55 * std::sin(w * u) + 0.3 * std::sin(2.7 * w * u + 1));
    }
    double height(std::int64_t index, double spacing) const
    {
        const double stray = m_family.grain ? 0.62 * (unsettled(index, 1) - 0.5) : 0;
        return (static_cast<double>(index) + stray) * spacing;
    }

    /// The ring in the frame in which the lines are straight and level. Long edges are cut up first, because
    /// they come out bent.
    Ring straightened(const Ring& ring) const
    {
        Ring out;
        const double step = 4 * m_paper;
        constexpr double kMostSteps = 2000;
        out.reserve(ring.size());
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i];
            const Point b = ring[(i + 1) % ring.size()];
            const int pieces =
                m_family.grain ? static_cast<int>(std::clamp(distance(a, b) / step, 1.0, kMostSteps)) : 1;
            for (int k = 0; k < pieces; ++k) {
                const Point p = a + (static_cast<double>(k) / pieces) * (b - a);
                const double u = dot(p, m_along);
                out.push_back({u, cross(m_along, p) - wave(u)});
            }
        }
        return out;
    }
    Point back(double u, double v) const
    {
        const double w = v + wave(u);
        return {u * m_along.x - w * m_along.y, u * m_along.y + w * m_along.x};
    }

    void collect(const Ring& ring, double spacing, std::int64_t first, std::int64_t last,
                 std::vector<std::vector<double>>& crossings) const
    {
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            Point a = ring[j];
            Point b = ring[i];
            if (a.y > b.y) std::swap(a, b);
            // A stray line may lie up to one index beside its place.
            const auto from = std::max(first, static_cast<std::int64_t>(std::floor(a.y / spacing)) - 1);
            const auto to = std::min(last, static_cast<std::int64_t>(std::ceil(b.y / spacing)) + 1);
            for (std::int64_t n = from; n <= to; ++n) {
                const double v = height(n, spacing);
                // Half-open, so that a vertex on the line counts once.
                if (v < a.y || v >= b.y) continue;
                crossings[static_cast<std::size_t>(n - first)].push_back(a.x + (b.x - a.x) * (v - a.y) /
                                                                                   (b.y - a.y));
            }
        }
    }

    void emit(std::int64_t index, double v, double from, double to, std::vector<Polyline>& out) const
    {
        if (!m_family.grain) {
            out.push_back({back(from, v), back(to, v)});
            return;
        }
        // Grain comes and goes: long runs with short breaks, placed by the line's own number.
        const double period = (70 + 90 * unsettled(index, 2)) * m_paper;
        const double run = period * (0.62 + 0.3 * unsettled(index, 3));
        const double start = period * unsettled(index, 4);
        for (double n = std::floor((from - start - run) / period); n * period + start < to; ++n) {
            const double a = std::max(from, n * period + start);
            const double b = std::min(to, n * period + start + run);
            if (b - a < 0.8 * m_paper) continue;
            const int pieces = std::clamp(static_cast<int>((b - a) / (4 * m_paper)), 1, 400);
            Polyline line;
            for (int k = 0; k <= pieces; ++k)
                line.push_back(back(a + (b - a) * k / pieces, v));
            out.push_back(std::move(line));
        }
    }
};

std::vector<Family> familiesOf(FillKind kind)
{
    switch (kind) {
        case FillKind::Wood:
            return {{0, kGrainSpacing, true}};
        case FillKind::WoodAcross:
            return {{kPi / 2, kGrainSpacing, true}};
        case FillKind::WoodEnd:
            return {{kPi / 4, kEndGrainSpacing, false}};
        case FillKind::Engraved:
            return {{kPi / 4, kEngravedSpacing, false}};
        case FillKind::Backing:
            return {{kPi / 4, kBackingSpacing, false}, {-kPi / 4, kBackingSpacing, false}};
        case FillKind::Warning:
            return {{-kPi / 4, kWarningSpacing, false}};
        case FillKind::Paper:
        case FillKind::CutThrough:
        case FillKind::Bridge:
        case FillKind::Fretboard:
        case FillKind::Block:
            break;
    }
    return {};
}

bool drawable(const Ring& ring)
{
    constexpr double kMost = 1e7;  // mm; beyond it no sheet is drawn
    return std::all_of(ring.begin(), ring.end(),
                       [](Point p) { return std::abs(p.x) <= kMost && std::abs(p.y) <= kMost; });
}

}  // namespace

std::vector<Polyline> fillPattern(const Ring& ring, FillKind kind, double paper)
{
    std::vector<Polyline> out;
    if (ring.size() < 3 || !(paper > 0) || !drawable(ring)) return out;
    for (const Family& family : familiesOf(kind))
        PatternMaker(family, paper).make(ring, out);
    return out;
}

double patternLineWidth(FillKind kind)
{
    const bool grain = kind == FillKind::Wood || kind == FillKind::WoodAcross;
    constexpr double kThinnest = 0.13;  // mm, the first width of ISO 128-2
    return grain ? kThinnest : lineWidth(LineKind::Narrow);
}

}  // namespace lidwright
