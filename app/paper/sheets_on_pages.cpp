#include "app/paper/sheets_on_pages.h"

#include "app/paper/page_furniture.h"
#include "app/paper/page_packing.h"
#include "app/paper/paper_pages.h"

#include <algorithm>
#include <iterator>

namespace lidwright {
namespace {

std::shared_ptr<const Sheet> finished(Sheet sheet)
{
    sheet.extent = SheetInk(sheet).extent();
    return std::make_shared<const Sheet>(std::move(sheet));
}

std::size_t pagesOf(const LaidSheet& sheet)
{
    return sheet.tiles ? sheet.tiles->tiling.tiles.size() : 0;
}

/// The part of the drawing for which `asNote` holds, or does not.
Sheet partOf(const Sheet& sheet, bool asNote)
{
    Sheet part;
    part.title = sheet.title;
    for (const Element& e : sheet.elements)
        if (isTemplateNote(e) == asNote) part.elements.push_back(e);
    return part;
}

/// Room for the marks by which a page is checked and joined, mm.
constexpr double kMarksRoom = 12;

/// The notes in a free place of one of the tiles, where room for the size check stays.
std::optional<Sheet> withNotes(const Sheet& drawing, const Sheet& notes, const TiledSheet& tiles)
{
    const Bounds size = areaOf(SheetInk(notes));
    constexpr double kAround = 3;  // mm
    Sheet inked = drawing;
    if (tiles.checks) append(inked, *tiles.checks, {});
    const SheetInk ink(inked);
    for (const Tile& tile : tiles.tiling.tiles) {
        Bounds room = tile.kept;
        if (tile.left) room.minX += kMarksRoom;
        if (tile.right) room.maxX -= kMarksRoom;
        if (tile.above) room.maxY -= kMarksRoom;
        if (tile.below) room.minY += kMarksRoom;
        const auto place = InkMap(ink, room).free(size.width() + 2 * kAround, size.height() + 2 * kAround);
        if (!place) continue;
        const Point by{place->minX + kAround - size.minX, place->minY + kAround - size.minY};
        Sheet noted = inked;
        append(noted, notes, by);
        if (!InkMap(SheetInk(noted), tile.kept).free(kSquareWidth, kSquareHeight)) continue;
        Sheet together = drawing;
        append(together, notes, by);
        return together;
    }
    return std::nullopt;
}

/// The notes of `of` as a sheet of its own, if one page holds them.
std::optional<LaidSheet> looseNotes(const LaidSheet& of, const Sheet& notes, const TilePaper& paper,
                                    const UnitStyle& style)
{
    LaidSheet words;
    words.tiles = tiled(notes, paper, style);
    if (pagesOf(words) != 1) return std::nullopt;
    words.kind = of.kind;
    words.names << PaperText::tr("%1: notes").arg(of.names.join(QStringLiteral(", ")));
    words.drawing = finished(notes);
    return words;
}

/// Gives `sheet` the bare drawing on `tiles`, with each of the notes in a free place; those that find none go
/// to `loose`.
void layBare(LaidSheet& sheet, Sheet bare, const TiledSheet& tiles, std::vector<LaidSheet> notes,
             std::vector<LaidSheet>& loose)
{
    sheet.tiles = tiles;
    for (LaidSheet& words : notes) {
        if (std::optional<Sheet> together = withNotes(bare, *words.drawing, tiles))
            bare = std::move(*together);
        else
            loose.push_back(std::move(words));
    }
    sheet.drawing = finished(std::move(bare));
}

/// Drawings that take fewer pages without their notes lose them to a free place or to `loose`.
void partFromNotes(LaidSheet& sheet, std::vector<LaidSheet>& loose, const TilePaper& paper,
                   const UnitStyle& style)
{
    const Sheet drawing = partOf(*sheet.drawing, false), notes = partOf(*sheet.drawing, true);
    if (drawing.elements.empty() || notes.elements.empty()) return;
    const std::optional<TiledSheet> bare = tiled(drawing, paper, style);
    if (!bare || bare->tiling.tiles.size() >= pagesOf(sheet)) return;
    if (std::optional<LaidSheet> words = looseNotes(sheet, notes, paper, style))
        layBare(sheet, drawing, *bare, {std::move(*words)}, loose);
}

/// `lower` under `upper`, flush left.
Sheet stacked(const Sheet& upper, const Sheet& lower)
{
    const Bounds a = areaOf(SheetInk(upper)), b = areaOf(SheetInk(lower));
    Sheet both;
    both.title = upper.title;
    append(both, upper, {});
    append(both, lower, {a.minX - b.minX, a.minY - kBetweenPacked - b.maxY});
    return both;
}

/// Long drawings together on the same row of pages, where that saves any; their notes stand where there is
/// room.
void joinStrips(std::vector<LaidSheet>& sheets, std::vector<LaidSheet>& loose, const TilePaper& paper,
                const UnitStyle& style)
{
    const auto strip = [](const LaidSheet& s) { return pagesOf(s) > 1 && s.tiles->tiling.rows == 1; };
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        for (std::size_t k = i + 1; k < sheets.size();) {
            LaidSheet &upper = sheets[i], &lower = sheets[k];
            if (!strip(upper) || !strip(lower)) {
                ++k;
                continue;
            }
            Sheet both = stacked(partOf(*upper.drawing, false), partOf(*lower.drawing, false));
            const std::optional<TiledSheet> joined = tiled(both, paper, style);
            std::vector<LaidSheet> notes;
            // Notes that no page holds by themselves, as those of drawings joined before, stay where they
            // are.
            bool lost = false;
            for (const LaidSheet* one : {&upper, &lower}) {
                const Sheet words = partOf(*one->drawing, true);
                if (words.elements.empty()) continue;
                auto laid = looseNotes(*one, words, paper, style);
                lost = lost || !laid;
                if (laid) notes.push_back(std::move(*laid));
            }
            if (!joined || joined->tiling.rows != 1 || lost ||
                joined->tiling.tiles.size() >= pagesOf(upper) + pagesOf(lower)) {
                ++k;
                continue;
            }
            upper.names << lower.names;
            layBare(upper, std::move(both), *joined, std::move(notes), loose);
            sheets.erase(sheets.begin() + static_cast<std::ptrdiff_t>(k));
        }
    }
}

/// The small ones among them laid together.
void packSmall(std::vector<LaidSheet>& all, const TilePaper& paper, const UnitStyle& style)
{
    std::vector<std::size_t> small;
    std::vector<Bounds> areas;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (pagesOf(all[i]) != 1) continue;
        small.push_back(i);
        areas.push_back(areaOf(SheetInk(*all[i].drawing)));
    }
    std::vector<bool> gone(all.size(), false);
    for (const PackedPage& page : packOnPages(areas, paper)) {
        if (page.size() < 2) continue;
        Sheet together;
        QStringList names;
        for (const PackedPart& part : page) {
            const LaidSheet& one = all[small[part.index]];
            names << one.names;
            append(together, *one.drawing, part.by);
        }
        // What the packing promised is kept to only if it comes true.
        auto drawing = finished(std::move(together));
        std::optional<TiledSheet> tiles = tiled(*drawing, paper, style);
        if (!tiles || tiles->tiling.tiles.size() != 1) continue;
        for (const PackedPart& part : page)
            gone[small[part.index]] = true;
        const std::size_t first = small[page.front().index];
        gone[first] = false;
        all[first].names = names;
        all[first].drawing = std::move(drawing);
        all[first].tiles = std::move(tiles);
    }
    std::vector<LaidSheet> left;
    for (std::size_t i = 0; i < all.size(); ++i)
        if (!gone[i]) left.push_back(std::move(all[i]));
    all = std::move(left);
}

}  // namespace

Result<std::vector<LaidSheet>> laidOnPages(std::vector<LaidSheet> sheets, const TilePaper& paper,
                                           const UnitStyle& style)
{
    std::vector<LaidSheet> loose;
    for (LaidSheet& sheet : sheets) {
        if (!sheet.drawing) continue;
        sheet.tiles = tiled(*sheet.drawing, paper, style);
        if (!sheet.tiles) {
            return Error{PaperText::tr("The template does not fit on this paper.").toStdString(),
                         sheet.names.join(QStringLiteral(", ")).toStdString(),
                         PaperText::tr("Choose larger paper, a smaller overlap or a roll.").toStdString()};
        }
        if (pagesOf(sheet) > 1) partFromNotes(sheet, loose, paper, style);
    }
    joinStrips(sheets, loose, paper, style);
    std::move(loose.begin(), loose.end(), std::back_inserter(sheets));
    packSmall(sheets, paper, style);
    return sheets;
}

}  // namespace lidwright
