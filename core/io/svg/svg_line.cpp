#include "core/io/svg/svg_line.h"

#include "core/io/svg/svg_bound_lines.h"
#include "core/io/svg/svg_dash.h"
#include "core/io/svg/svg_stroker.h"
#include "core/io/svg/svg_unite.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace lidwright::svg {

namespace {

// Twice kCoordinateLimit is where the geometry's grid ends; what is visible ends at kCoordinateLimit.
constexpr double kFarthest = 1.8 * kCoordinateLimit;
/// Nearer than this to a turn with even scale, the pen counts as round.
constexpr double kEven = 1e-9;
/// Ends that meet within this, mm, close a line (the bar that outlines are held to).
constexpr double kMeeting = 0.01;

Bounds reachable(double reach)
{
    const double far = std::min(kFarthest, kCoordinateLimit + std::min(reach, kCoordinateLimit));
    return {-far, -far, far, far};
}

Flatness flatnessOf(const LineStyle& line, double scale, double tolerance, double reach)
{
    Flatness flatness{tolerance};
    flatness.visible = reachable(reach);
    const double half = line.width * scale / 2;
    // The pen's outer edge is half a width farther out than the chord, and strays with it.
    if (half > tolerance) flatness.turn = 2 * std::acos(1 - tolerance / half);
    return flatness;
}

std::vector<FlatLine> penLines(const SceneShape& shape, const Transform& map, double scale, double tolerance,
                               Budget& budget)
{
    const LineStyle& line = *shape.line;
    const double reach = line.width * scale / 2 * std::max(1.0, line.miterLimit);
    std::vector<FlatLine> lines =
        flatten(*shape.outline, map, flatnessOf(line, scale, tolerance, reach), budget);
    if (!line.dashes.empty() && !budget.broken()) {
        std::vector<double> pattern;
        for (const double dash : line.dashes)
            pattern.push_back(dash * scale);
        lines = dashed(lines, pattern, line.dashOffset * scale, budget);
    }
    return linesWithin(lines, reachable(reach));
}

Region stroked(const std::vector<FlatLine>& lines, const LineStyle& line, double scale, Point axis,
               double tolerance, Budget& budget)
{
    const double half = std::min(line.width * scale / 2, kCoordinateLimit);
    const PenShape pen{half, line.join, line.cap, line.miterLimit, tolerance, axis};
    std::vector<Ring> rings;
    for (const FlatLine& piece : lines)
        appendPenRings(rings, piece, pen);
    return fillAll(std::move(rings), FillRule::NonZero, budget);
}

}  // namespace

Stretch stretchOf(const Transform& m)
{
    // Singular values of the linear part, by its similar and anti-similar halves.
    const double q = std::hypot((m.a + m.d) / 2, (m.b - m.c) / 2);
    const double r = std::hypot((m.a - m.d) / 2, (m.b + m.c) / 2);
    return {q + r, std::abs(q - r)};
}

Region paintedLine(const SceneShape& shape, const Transform& map, double tolerance, Budget& budget)
{
    const Stretch stretch = stretchOf(map);
    const LineStyle& line = *shape.line;
    if (!(stretch.most > 0) || !(line.width > 0)) return {};
    if (stretch.least >= stretch.most * (1 - kEven)) {
        const Point axis = (1 / stretch.most) * Point{map.a, map.b};
        return stroked(penLines(shape, map, stretch.most, tolerance, budget), line, stretch.most, axis,
                       tolerance, budget);
    }
    // An uneven map stretches the pen: painted in the user's units, enlarged until the longer way fits,
    // about the outline's own middle so that the grid's range suffices; then squeezed into place.
    const Point middle = tightBounds(*shape.outline, {}).centre();
    const Transform local =
        Transform::scaling(stretch.most, stretch.most) * Transform::translation(-middle.x, -middle.y);
    const Transform back = map * Transform::translation(middle.x, middle.y) *
                           Transform::scaling(1 / stretch.most, 1 / stretch.most);
    const Region painted = stroked(penLines(shape, local, stretch.most, tolerance, budget), line,
                                   stretch.most, {1, 0}, tolerance, budget);
    Region moved = transformed(painted, back);
    for (Ring& ring : moved.rings)
        ring = ringWithin(ring, reachable(0));
    return fill(moved.rings, FillRule::NonZero);
}

std::vector<Ring> closedRings(const SceneShape& shape, const Transform& map, double tolerance)
{
    std::vector<Ring> rings;
    // Its points were counted when the line itself was painted.
    Budget counted;
    Flatness flatness{tolerance};
    flatness.visible = reachable(0);
    for (const FlatLine& line : flatten(*shape.outline, map, flatness, counted)) {
        if (line.points.size() < 3) continue;
        const bool meets = distance(line.points.front(), line.points.back()) <= kMeeting;
        if (line.closed || meets) rings.push_back(ringWithin(line.points, reachable(0)));
    }
    return rings;
}

Region filledArea(const SceneShape& shape, const Transform& map, double tolerance, Budget& budget)
{
    std::vector<Ring> rings;
    Flatness flatness{tolerance};
    flatness.visible = reachable(0);
    for (const FlatLine& line : flatten(*shape.outline, map, flatness, budget)) {
        if (line.points.size() >= 3) rings.push_back(ringWithin(line.points, reachable(0)));
    }
    return fillAll(std::move(rings), shape.rule, budget);
}

}  // namespace lidwright::svg
