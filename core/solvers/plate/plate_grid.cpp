#include "core/solvers/plate/plate_grid.h"

#include "core/solvers/plate/piece_groups.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr double kLeastContact = 1e-6;  // mm of common border that joins two pieces
constexpr double kNudge = 2e-6;         // mm, off a border to the wood beside it

std::size_t at(int i)
{
    return static_cast<std::size_t>(i);
}

/// A stretch of a cell's border with wood at it.
struct Span {
    double from = 0, to = 0;
    int piece = 0;
};

/// Wood at the line where one coordinate is `line`, sorted along it.
void addSpans(std::vector<Span>& spans, const PlatePiece& piece, int index, bool upright, double line,
              double from, double to)
{
    if (piece.whole) {
        spans.push_back({from, to, index});
        return;
    }
    for (const Ring& ring : piece.loops) {
        Point a = ring.back();
        for (Point b : ring) {
            const bool along = upright ? a.x == line && b.x == line : a.y == line && b.y == line;
            if (along) {
                const double s = upright ? a.y : a.x, t = upright ? b.y : b.x;
                spans.push_back({std::min(s, t), std::max(s, t), index});
            }
            a = b;
        }
    }
}

void sortSpans(std::vector<Span>& spans)
{
    std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) { return a.from < b.from; });
}

}  // namespace

PlateGrid::PlateGrid(const Loops& material, int cells)
{
    for (const Ring& ring : material)
        m_cells.box.include(bounds(ring));
    const double wide = m_cells.box.width(), high = m_cells.box.height();
    const double size = std::max(wide, high) / cells;
    const auto count = [&](double side) { return std::max(1, static_cast<int>(std::lround(side / size))); };
    m_cells.countX = count(wide);
    m_cells.countY = count(high);
    makePieces(cutIntoCells(material, m_cells));
    joinPieces();
}

CellFrame PlateGrid::frame(int cell) const
{
    const double sizeX = m_cells.sizeX(), sizeY = m_cells.sizeY();
    const int i = cell % m_cells.countX, j = cell / m_cells.countX;
    return {
        {m_cells.box.minX + (i + 0.5) * sizeX, m_cells.box.minY + (j + 0.5) * sizeY}, sizeX / 2, sizeY / 2};
}

void PlateGrid::makePieces(std::vector<Loops> cells)
{
    const double full = m_cells.sizeX() * m_cells.sizeY();
    for (std::size_t c = 0; c < cells.size(); ++c) {
        m_first.push_back(static_cast<int>(m_pieces.size()));
        for (Loops& loops : groupPieces(std::move(cells[c]))) {
            PlatePiece piece;
            piece.cell = static_cast<int>(c);
            piece.moments = {};
            for (const Ring& ring : loops)
                piece.area += signedArea(ring);
            piece.whole = loops.size() == 1 && loops.front().size() == 4 && piece.area >= full * (1 - 1e-12);
            if (!piece.whole) {
                for (const Ring& ring : loops)
                    addMoments(piece.moments, ring, frame(piece.cell));
                piece.loops = std::move(loops);
            }
            m_pieces.push_back(std::move(piece));
        }
    }
    m_first.push_back(static_cast<int>(m_pieces.size()));
}

void PlateGrid::joinPieces()
{
    MergedSets components(m_pieces.size()), corners(4 * m_pieces.size());
    std::vector<unsigned> borders(4 * m_pieces.size());
    const auto spansOf = [&](int i, int j, bool upright, double line) {
        std::vector<Span> spans;
        const int cell = m_cells.cell(i, j);
        const double from = upright ? m_cells.lineY(j) : m_cells.lineX(i);
        const double to = upright ? m_cells.lineY(j + 1) : m_cells.lineX(i + 1);
        for (int p = m_first[at(cell)]; p < m_first[at(cell + 1)]; ++p)
            addSpans(spans, m_pieces[at(p)], p, upright, line, from, to);
        sortSpans(spans);
        return spans;
    };
    // Corners 0 to 3: the low ones along a border that is upright are 0 and 1, else 0 and 2.
    const auto join = [&](const std::vector<Span>& low, const std::vector<Span>& high, bool upright) {
        const int step = upright ? 1 : 2, other = upright ? 2 : 1;
        for (std::size_t a = 0, b = 0; a < low.size() && b < high.size();) {
            const double common = std::min(low[a].to, high[b].to) - std::max(low[a].from, high[b].from);
            if (common > kLeastContact) {
                const int p = low[a].piece, q = high[b].piece;
                components.merge(p, q);
                corners.merge(4 * p + step, 4 * q);
                corners.merge(4 * p + step + other, 4 * q + other);
            }
            ++(low[a].to < high[b].to ? a : b);
        }
    };
    const auto mark = [&](const std::vector<Span>& spans, unsigned border, int first, int second) {
        for (const Span& s : spans) {
            if (s.to - s.from <= kLeastContact) continue;
            borders[at(4 * s.piece + first)] |= border;
            borders[at(4 * s.piece + second)] |= border;
        }
    };
    const int nx = m_cells.countX, ny = m_cells.countY;
    for (int j = 0; j < ny; ++j) {
        for (int i = 1; i < nx; ++i) {
            const double line = m_cells.lineX(i);
            join(spansOf(i - 1, j, true, line), spansOf(i, j, true, line), true);
        }
        mark(spansOf(0, j, true, m_cells.box.minX), kLeftBorder, 0, 2);
        mark(spansOf(nx - 1, j, true, m_cells.box.maxX), kRightBorder, 1, 3);
    }
    for (int i = 0; i < nx; ++i) {
        for (int j = 1; j < ny; ++j) {
            const double line = m_cells.lineY(j);
            join(spansOf(i, j - 1, false, line), spansOf(i, j, false, line), false);
        }
        mark(spansOf(i, 0, false, m_cells.box.minY), kBottomBorder, 0, 1);
        mark(spansOf(i, ny - 1, false, m_cells.box.maxY), kTopBorder, 2, 3);
    }

    const std::vector<int> component = components.numbered(), node = corners.numbered();
    m_components = components.count();
    m_nodes.resize(at(corners.count()));
    for (std::size_t p = 0; p < m_pieces.size(); ++p) {
        PlatePiece& piece = m_pieces[p];
        piece.component = component[p];
        for (int c = 0; c < 4; ++c) {
            const std::size_t corner = 4 * p + at(c);
            PlateNode& copy = m_nodes[at(node[corner])];
            copy.i = piece.cell % nx + (c & 1);
            copy.j = piece.cell / nx + (c >> 1);
            copy.component = piece.component;
            copy.borders |= borders[corner];
            piece.nodes[at(c)] = node[corner];
        }
    }
}

void PlateGrid::tie(const std::vector<std::array<int, 2>>& pairs)
{
    if (pairs.empty()) return;
    MergedSets sets(at(m_components));
    for (const auto& pair : pairs)
        sets.merge(m_pieces[at(pair[0])].component, m_pieces[at(pair[1])].component);
    const std::vector<int> number = sets.numbered();
    m_components = sets.count();
    for (PlatePiece& piece : m_pieces)
        piece.component = number[at(piece.component)];
    for (PlateNode& node : m_nodes)
        node.component = number[at(node.component)];
}

int PlateGrid::cellAt(Point p) const
{
    const Bounds& box = m_cells.box;
    if (!box.grown(kNudge).contains(p)) return -1;
    const int i = std::clamp(static_cast<int>((p.x - box.minX) / m_cells.sizeX()), 0, m_cells.countX - 1);
    const int j = std::clamp(static_cast<int>((p.y - box.minY) / m_cells.sizeY()), 0, m_cells.countY - 1);
    return m_cells.cell(i, j);
}

int PlateGrid::pieceInCell(Point p) const
{
    const int cell = cellAt(p);
    if (cell < 0) return -1;
    for (int k = m_first[at(cell)]; k < m_first[at(cell + 1)]; ++k)
        if (m_pieces[at(k)].whole || insideLoops(m_pieces[at(k)].loops, p)) return k;
    return -1;
}

int PlateGrid::pieceAt(Point p) const
{
    for (const Point off : {Point{0, 0}, Point{-1, -1}, Point{1, -1}, Point{-1, 1}, Point{1, 1}}) {
        const int piece = pieceInCell(p + kNudge * off);
        if (piece >= 0) return piece;
    }
    return -1;
}

std::vector<PieceCover> PlateGrid::cover(const Loops& area) const
{
    std::vector<PieceCover> covers;
    std::vector<Loops> cells = cutIntoCells(area, m_cells);
    for (std::size_t c = 0; c < cells.size(); ++c) {
        const int first = m_first[c], count = m_first[c + 1] - first;
        if (cells[c].empty() || count == 0) continue;
        for (const Loops& part : groupPieces(std::move(cells[c]))) {
            PieceCover cover{first, {}};
            if (count > 1) {
                cover.piece = pieceAt(pointInside(part));
                if (cover.piece < first || cover.piece >= first + count) continue;
            }
            for (const Ring& ring : part)
                addMoments(cover.moments, ring, frame(static_cast<int>(c)));
            covers.push_back(cover);
        }
    }
    return covers;
}

std::vector<LineBit> PlateGrid::walk(Point from, Point to) const
{
    const Point along = to - from;
    const auto point = [&](double t) { return from + t * along; };
    std::vector<double> lines{0, 1};
    const auto meet = [](std::vector<double>& places, double t) {
        if (t > 0 && t < 1) places.push_back(t);
    };
    for (int i = 0; i <= m_cells.countX && along.x != 0; ++i)
        meet(lines, (m_cells.lineX(i) - from.x) / along.x);
    for (int j = 0; j <= m_cells.countY && along.y != 0; ++j)
        meet(lines, (m_cells.lineY(j) - from.y) / along.y);
    std::sort(lines.begin(), lines.end());

    std::vector<double> places = lines;
    const double far = length(along), least = kNudge / far;
    // Where the line comes to an edge; also of the cells at its other side where it runs along a border.
    const auto meetEdges = [&](const PlatePiece& piece, double low, double high) {
        for (const Ring& ring : piece.loops) {
            Point a = ring.back();
            for (Point b : ring) {
                const double sideA = cross(along, a - from) / far, sideB = cross(along, b - from) / far;
                Point hit = b;
                if ((sideA > 0) != (sideB > 0))
                    hit = a + sideA / (sideA - sideB) * (b - a);
                else if (std::abs(sideB) > kNudge)
                    hit = from;
                const double t = dot(hit - from, along) / (far * far);
                if (t > low && t < high) places.push_back(t);
                a = b;
            }
        }
    };
    for (std::size_t k = 0; k + 1 < lines.size(); ++k) {
        const Point middle = point((lines[k] + lines[k + 1]) / 2);
        std::array<int, 2> beside{};
        for (int side = 0; side < 2; ++side) {
            const Point off = kNudge / far * Point{-along.y, along.x};
            beside[at(side)] = cellAt(side == 0 ? middle + off : middle - off);
        }
        if (beside[0] == beside[1]) beside[1] = -1;
        for (int cell : beside)
            for (int p = cell < 0 ? 0 : m_first[at(cell)]; p < (cell < 0 ? 0 : m_first[at(cell + 1)]); ++p)
                meetEdges(m_pieces[at(p)], lines[k], lines[k + 1]);
    }
    std::sort(places.begin(), places.end());
    std::vector<LineBit> bits;
    double last = 0;
    for (double t : places) {
        if (t - last < least && t < 1) continue;
        if (t > last) bits.push_back({pieceAt(point((last + t) / 2)), point(last), point(t)});
        last = t;
    }
    return bits;
}

}  // namespace lidwright
