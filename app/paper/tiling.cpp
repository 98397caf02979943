#include "app/paper/tiling.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace lidwright {

namespace {

/// Pages needed to cover `length` by windows that share an overlap.
int pagesFor(double length, double window, double overlap)
{
    if (length <= window) return 1;
    // A hair of tolerance: a drawing exactly as long as the windows must not cost a page for rounding.
    const double more = std::ceil((length - window) / (window - overlap) - 1e-9);
    return more >= kMostTiles ? kMostTiles + 1 : 1 + static_cast<int>(more);
}

Bounds windowOf(const Tiling& t, int row, int column)
{
    const double x = t.left + column * t.stepX;
    const double y = t.top - row * t.stepY;
    return {x, y - t.windowHeight, x + t.windowWidth, y};
}

/// Where the grid begins along one axis. `band(start, i)` gives the overlap between tile i and the next one.
template <typename Band>
double gridStart(const SheetInk& ink, double centred, double slack, int joints, const Band& band)
{
    if (joints == 0 || slack <= 0) return centred;
    constexpr int kTries = 12;  // to either side of the middle
    double best = centred;
    std::size_t least = std::numeric_limits<std::size_t>::max();
    // From the middle outward, so that of equally good places the one nearest to the middle is taken.
    for (int i = 0; i <= 2 * kTries; ++i) {
        const int step = (i + 1) / 2 * (i % 2 == 0 ? 1 : -1);
        const double start = centred + slack / 2 * step / kTries;
        std::size_t crossed = 0;
        for (int joint = 0; joint < joints; ++joint)
            crossed += ink.linesIn(band(start, joint));
        if (crossed >= least) continue;
        least = crossed;
        best = start;
    }
    return best;
}

std::optional<Tiling> layOn(const SheetInk& ink, const Bounds& area, const TilePaper& paper, bool turned)
{
    Tiling t;
    t.pageWidth = turned ? paper.height : paper.width;
    t.pageHeight = turned ? paper.width : paper.height;
    t.overlap = paper.overlap;
    t.windowWidth = (t.pageWidth - 2 * paper.margin) / paper.correctionX;
    t.windowHeight = (t.pageHeight - 2 * paper.margin) / paper.correctionY - paper.footer;
    t.stepX = t.windowWidth - t.overlap;
    t.stepY = t.windowHeight - t.overlap;
    // Also refuses what is not a number.
    if (!(t.stepX >= t.overlap && t.stepY >= t.overlap && t.stepX > 10 && t.stepY > 10)) return std::nullopt;
    t.columns = pagesFor(area.width(), t.windowWidth, t.overlap);
    t.rows = pagesFor(area.height(), t.windowHeight, t.overlap);
    if (t.columns > kMostTiles || t.rows > kMostTiles || t.columns * t.rows > kMostTiles) return std::nullopt;

    const Point centre = area.centre();
    const double width = t.windowWidth + (t.columns - 1) * t.stepX;
    const double height = t.windowHeight + (t.rows - 1) * t.stepY;
    t.left =
        gridStart(ink, centre.x - width / 2, width - area.width(), t.columns - 1, [&](double left, int i) {
            const double x = left + (i + 1) * t.stepX;
            return Bounds{x, area.minY, x + t.overlap, area.maxY};
        });
    t.top = gridStart(ink, centre.y + height / 2, height - area.height(), t.rows - 1, [&](double top, int i) {
        const double y = top - (i + 1) * t.stepY;
        return Bounds{area.minX, y - t.overlap, area.maxX, y};
    });
    for (int row = 0; row < t.rows; ++row) {
        for (int column = 0; column < t.columns; ++column) {
            Tile one;
            one.row = row;
            one.column = column;
            one.name = rowLetters(row) + std::to_string(column + 1);
            one.window = windowOf(t, row, column);
            // What lies in an overlap is shown by the page before: it does not make this one needed.
            Bounds own = one.window;
            if (column > 0) own.minX += t.overlap;
            if (row > 0) own.maxY -= t.overlap;
            if (ink.touches(own)) t.tiles.push_back(one);
        }
    }
    for (Tile& one : t.tiles) {
        one.left = t.printed(one.row, one.column - 1);
        one.right = t.printed(one.row, one.column + 1);
        one.above = t.printed(one.row - 1, one.column);
        one.below = t.printed(one.row + 1, one.column);
        one.kept = one.window;
        if (one.left) one.kept.minX = t.jointX(one.column - 1);
        if (one.right) one.kept.maxX = t.jointX(one.column);
        if (one.above) one.kept.maxY = t.jointY(one.row - 1);
        if (one.below) one.kept.minY = t.jointY(one.row);
    }
    return t;
}

}  // namespace

bool Tiling::printed(int row, int column) const
{
    return std::any_of(tiles.begin(), tiles.end(),
                       [&](const Tile& t) { return t.row == row && t.column == column; });
}

double Tiling::jointX(int column) const
{
    return left + (column + 1) * stepX + overlap / 2;
}

double Tiling::jointY(int row) const
{
    return top - (row + 1) * stepY - overlap / 2;
}

std::optional<Tiling> tile(const SheetInk& ink, const Bounds& area, const TilePaper& paper)
{
    if (area.empty()) return std::nullopt;
    std::optional<Tiling> upright = layOn(ink, area, paper, false);
    std::optional<Tiling> turned = layOn(ink, area, paper, true);
    if (!upright || !turned) return upright ? upright : turned;
    if (upright->tiles.size() != turned->tiles.size())
        return upright->tiles.size() < turned->tiles.size() ? upright : turned;
    const bool lies = area.width() > area.height();
    return lies && upright->tiles.size() == 1 ? turned : upright;
}

std::string rowLetters(int row)
{
    std::string letters;
    for (int n = row + 1; n > 0; n = (n - 1) / 26)
        letters.insert(letters.begin(), static_cast<char>('A' + (n - 1) % 26));
    return letters;
}

}  // namespace lidwright
