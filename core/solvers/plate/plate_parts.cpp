#include "core/solvers/plate/plate_parts.h"

namespace lidwright {
namespace {

std::vector<PieceCover> coverOf(const Region& area, const Region& material, const PlateGrid& grid)
{
    if (area.empty()) return {};
    return grid.cover(intersect(material, fill(area.rings, FillRule::NonZero)).rings);
}

void dropGaps(std::vector<LineBit>& bits)
{
    std::erase_if(bits, [](const LineBit& bit) { return bit.piece < 0; });
}

}  // namespace

PlateParts bringToPieces(const PlateProblem& problem, const Region& material, PlateGrid& grid)
{
    PlateParts parts;
    for (const PlateSupport& support : problem.supports) {
        parts.supportCovers.push_back(coverOf(support.area, material, grid));
        std::vector<LineBit> bits;
        for (std::size_t i = 1; i < support.line.size(); ++i) {
            if (support.line[i - 1] == support.line[i]) continue;
            const std::vector<LineBit> more = grid.walk(support.line[i - 1], support.line[i]);
            bits.insert(bits.end(), more.begin(), more.end());
        }
        dropGaps(bits);
        parts.supportBits.push_back(std::move(bits));
    }
    std::vector<std::array<int, 2>> ties;
    for (std::size_t r = 0; r < problem.ribs.size(); ++r) {
        std::vector<LineBit> bits = grid.walk(problem.ribs[r].from, problem.ribs[r].to);
        int before = -1;
        bool cut = false;
        Point end;
        for (const LineBit& bit : bits) {
            if (bit.piece < 0) {
                cut = true;
                continue;
            }
            if (cut && before >= 0) {
                parts.gaps.push_back({r, before, bit.piece, end, bit.from});
                ties.push_back({before, bit.piece});
            }
            cut = false;
            before = bit.piece;
            end = bit.to;
        }
        dropGaps(bits);
        parts.ribBits.push_back(std::move(bits));
    }
    grid.tie(ties);
    for (const PlatePatch& patch : problem.patches)
        parts.patchCovers.push_back(coverOf(patch.area, material, grid));
    for (const PlateLoad& load : problem.loads) {
        parts.loadCovers.push_back(coverOf(load.area, material, grid));
        parts.loadPieces.push_back(load.area.empty() ? grid.pieceAt(load.at) : -1);
    }
    for (const PlateMass& mass : problem.masses)
        parts.massPieces.push_back(grid.pieceAt(mass.at));
    return parts;
}

}  // namespace lidwright
