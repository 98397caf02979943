#include "app/paper/sheet_tiles.h"

#include "app/paper/joint_marks.h"

namespace lidwright {

void append(Sheet& to, const Sheet& what, Point by)
{
    for (const Element& element : what.elements)
        to.elements.push_back(moved(element, by));
}

Bounds areaOf(const SheetInk& ink)
{
    return ink.empty() ? ink.extent() : ink.extent().grown(0.5);
}

std::optional<TiledSheet> tiled(const Sheet& sheet, const TilePaper& paper, const UnitStyle& style)
{
    const SheetInk ink(sheet);
    const Bounds area = areaOf(ink);
    const std::optional<Tiling> plain = tile(ink, area, paper);
    if (!plain || plain->tiles.size() < 2)
        return plain ? std::optional<TiledSheet>({*plain, nullptr}) : std::nullopt;

    // The lines stand off the drawing where that costs no page, otherwise on its lower and left side.
    const auto withLines = [&](const Bounds& about, const Bounds& all) -> std::optional<TiledSheet> {
        auto checks =
            std::make_shared<Sheet>(totalLengthLines(about, plain->columns > 1, plain->rows > 1, ink, style));
        Sheet both = sheet;
        append(both, *checks, {});
        const std::optional<Tiling> t = tile(SheetInk(both), all, paper);
        if (!t) return std::nullopt;
        return TiledSheet{*t, checks};
    };
    const double off = kTotalLineRoom;
    const std::optional<TiledSheet> outside =
        withLines(area, {area.minX - off, area.minY - off, area.maxX, area.maxY});
    if (outside && outside->tiling.tiles.size() == plain->tiles.size()) return outside;
    return withLines({area.minX + off, area.minY + off, area.maxX, area.maxY}, area);
}

}  // namespace lidwright
