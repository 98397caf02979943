#include "app/paper/page_packing.h"

#include "core/solvers/lists/board_packing.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr double kMicrons = 1000;  // in a millimetre

Micron up(double mm)
{
    return static_cast<Micron>(std::ceil(mm * kMicrons));
}

}  // namespace

Point usableSize(const TilePaper& paper, bool turned)
{
    const double width = turned ? paper.height : paper.width;
    const double height = turned ? paper.width : paper.height;
    return {std::max(0.0, (width - 2 * paper.margin) / paper.correctionX),
            std::max(0.0, (height - 2 * paper.margin) / paper.correctionY - paper.footer)};
}

namespace {

/// The pages as boards and the scissors as saw: what can be cut apart by straight cuts is easy to cut out.
std::vector<PackedPage> packOn(const std::vector<BoardKind>& kinds, const std::vector<Bounds>& areas)
{
    std::vector<BoardPiece> pieces;
    for (const Bounds& area : areas) {
        const BoardFit fit{up(area.width()), up(area.height())};
        BoardPiece piece;
        for (const BoardKind& kind : kinds) {
            const bool fits = fit.length <= kind.length && fit.width <= kind.width;
            piece.fits.push_back(fits ? std::vector<BoardFit>{fit} : std::vector<BoardFit>{});
        }
        pieces.push_back(std::move(piece));
    }
    const BoardAnswer answer = packBoards(pieces, kinds, up(kBetweenPacked));
    std::vector<PackedPage> pages;
    for (const CutBoard& board : answer.boards) {
        PackedPage page;
        for (const LaidPiece& laid : board.laid) {
            const Bounds& area = areas[laid.piece];
            page.push_back({laid.piece, Point{static_cast<double>(laid.rect.x) / kMicrons - area.minX,
                                              static_cast<double>(laid.rect.y) / kMicrons - area.minY}});
        }
        std::sort(page.begin(), page.end(),
                  [](const PackedPart& a, const PackedPart& b) { return a.index < b.index; });
        if (!page.empty()) pages.push_back(std::move(page));
    }
    for (const std::size_t index : answer.missing)
        pages.push_back({{index, {}}});
    return pages;
}

}  // namespace

std::vector<PackedPage> packOnPages(const std::vector<Bounds>& areas, const TilePaper& paper)
{
    std::vector<BoardKind> kinds;
    for (const bool turned : {false, true}) {
        const Point size = usableSize(paper, turned);
        const auto room = [](double mm) { return static_cast<Micron>(std::floor(mm * kMicrons)); };
        if (size.x > 0 && size.y > 0)
            kinds.push_back({room(size.x), room(size.y), static_cast<int>(areas.size()), 0});
    }
    // Boards are counted by area, pages by number: a mixed choice is not always the best.
    std::vector<PackedPage> pages = packOn(kinds, areas);
    for (const BoardKind& kind : kinds)
        if (std::vector<PackedPage> other = packOn({kind}, areas); other.size() < pages.size())
            pages = std::move(other);
    std::sort(pages.begin(), pages.end(),
              [](const PackedPage& a, const PackedPage& b) { return a.front().index < b.front().index; });
    return pages;
}

}  // namespace lidwright
