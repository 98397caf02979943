#include "app/paper/paper_pages.h"

#include "app/paper/cover_page.h"
#include "app/paper/joint_marks.h"
#include "app/paper/page_footer.h"
#include "app/paper/paper_size.h"

#include <algorithm>

namespace lidwright {

namespace {

QString actualSize()
{
    return PaperText::tr("Print at actual size, 100 %: no fitting, no shrinking.");
}

PaperPage blankPage(const PaperJob& job, double width, double height)
{
    PaperPage page;
    page.width = width;
    page.height = height;
    page.margin = job.margin;
    page.correctionX = job.correctionX;
    page.correctionY = job.correctionY;
    return page;
}

Bounds moved(const Bounds& b, Point by)
{
    return {b.minX + by.x, b.minY + by.y, b.maxX + by.x, b.maxY + by.y};
}

void append(Sheet& to, const Sheet& what, Point by)
{
    for (Element element : what.elements) {
        if (auto* stroke = std::get_if<Stroke>(&element.what)) {
            for (Point& p : stroke->points)
                p = p + by;
        } else if (auto* fill = std::get_if<Fill>(&element.what)) {
            for (Point& p : fill->ring)
                p = p + by;
        } else if (auto* text = std::get_if<Text>(&element.what)) {
            text->at = text->at + by;
        }
        to.elements.push_back(std::move(element));
    }
}

/// What must lie on paper: the ink with its lines' widths, without the bare paper that the sheet has about
/// it.
Bounds areaOf(const SheetInk& ink)
{
    return ink.empty() ? ink.extent() : ink.extent().grown(0.5);
}

/// A template's tiling together with its total-length lines.
struct TiledSheet {
    Tiling tiling;
    std::shared_ptr<const Sheet> checks;
};

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
            std::make_shared<Sheet>(totalLengthLines(about, plain->columns > 1, plain->rows > 1, style));
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

/// The name of a tile in large letters: as near to the upper left of what is kept of it as lines leave room.
void tileName(Furniture& furniture, const Tile& tile, const SheetInk& ink)
{
    constexpr double kHeight = 6, kWidth = 14, kStep = 6;
    const Bounds& kept = tile.kept;
    const Point first{kept.minX + 4, kept.maxY - 5 - kHeight};
    // Row by row, so that it stays near the upper edge.
    const auto free = [&]() -> std::optional<Point> {
        for (double y = first.y; y > kept.centre().y; y -= kStep)
            for (double x = first.x; x < kept.centre().x; x += kStep)
                if (!ink.crosses({x - 1, y - 1, x + kWidth, y + kHeight + 1})) return Point{x, y};
        return std::nullopt;
    };
    furniture.text(free().value_or(first), QString::fromStdString(tile.name), kHeight);
}

/// What shows that the page was printed at actual size, where it covers no line that is cut or measured: the
/// square, else a level and an upright line, each on the least ink where no place is free.
void sizeCheck(Furniture& furniture, const Tile& tile, Sheet inked)
{
    if (const auto square = InkMap(SheetInk(inked), tile.kept).free(kSquareWidth, kSquareHeight)) {
        checkSquare(furniture, {square->minX, square->minY});
        return;
    }
    for (const bool up : {false, true}) {
        const double width = up ? kCheckLineWidth : kCheckLineLength;
        const double height = up ? kCheckLineLength : kCheckLineWidth;
        const Bounds place = InkMap(SheetInk(inked), tile.kept).freest(width, height);
        checkLine(furniture, {place.minX, place.minY}, up);
        append(inked, furniture.sheet(), {});
    }
}

void addTiles(PaperPages& all, const PaperJob& job, const std::shared_ptr<const Sheet>& drawing,
              const TiledSheet& tiles)
{
    const bool lone = tiles.tiling.tiles.size() == 1;
    for (const Tile& tile : tiles.tiling.tiles) {
        PaperPage page = blankPage(job, tiles.tiling.pageWidth, tiles.tiling.pageHeight);
        page.drawing = drawing;
        page.checks = tiles.checks;
        page.offset = Point{0, kFooterHeight} - Point{tile.window.minX, tile.window.minY};
        page.window = moved(tile.window, page.offset);
        for (const Bounds& band : wasteBands(tile))
            page.waste.push_back(moved(band, page.offset));

        Sheet inked = *drawing;
        if (tiles.checks) append(inked, *tiles.checks, {});
        Furniture onSheet;
        const SheetInk ink(inked);
        jointMarks(onSheet, tiles.tiling, tile, ink);
        if (!lone) {
            page.name = tile.name;
            tileName(onSheet, tile, ink);
        }
        append(inked, onSheet.sheet(), {});
        sizeCheck(onSheet, tile, inked);
        append(page.furniture, onSheet.sheet(), page.offset);
        all.pages.push_back(std::move(page));
    }
}

/// Room beside and below the drawing for the rulers of a roll's page, mm.
constexpr double kRulerStrip = 24;

void addRollPage(PaperPages& all, const PaperJob& job, const std::shared_ptr<const Sheet>& drawing)
{
    const Bounds area = areaOf(SheetInk(*drawing));
    // Rulers of 4 in need this much whatever the drawing needs.
    constexpr double kLeast = 110;
    const double width = kRulerStrip + std::max(area.width(), kLeast);
    const double height = kFooterHeight + kRulerStrip + std::max(area.height(), kLeast);
    PaperPage page =
        blankPage(job, width * job.correctionX + 2 * job.margin, height * job.correctionY + 2 * job.margin);
    page.drawing = drawing;
    const Point corner{kRulerStrip, kFooterHeight + kRulerStrip};
    page.offset = corner - Point{area.minX, area.minY};
    page.window = {corner.x, corner.y, width, height};
    Furniture furniture;
    checkRulers(furniture, {0, kFooterHeight});
    append(page.furniture, furniture.sheet(), {});
    all.pages.push_back(std::move(page));
}

void addFooters(PaperPages& all, const Plan& plan, const PaperJob& job)
{
    for (const TemplatePages& one : all.templates) {
        for (std::size_t i = one.firstPage; i < one.firstPage + one.pageCount; ++i) {
            PaperPage& page = all.pages[i];
            Furniture furniture;
            const QString label = templateLabel(one.kind);
            const QString name = QString::fromStdString(page.name);
            pageFooter(furniture, {name.isEmpty() ? label : PaperText::tr("%1, page %2").arg(label, name),
                                   QString::fromStdString(plan.sheet.title), qsizetype(i) + 1,
                                   qsizetype(all.pages.size()), actualSize(), correctionNote(job)});
            if (one.tiling && one.pageCount > 1) {
                const double right = (page.width - 2 * page.margin) / page.correctionX;
                pageMap(furniture, *one.tiling, {right - 40, 0.5, right, kFooterHeight - 1.5}, Anchor::Right,
                        page.name);
            }
            append(page.furniture, furniture.sheet(), {});
        }
    }
}

}  // namespace

QString templateLabel(TemplateKind kind)
{
    switch (kind) {
        case TemplateKind::Lid:
            return PaperText::tr("Lid");
        case TemplateKind::HeadWall:
            return PaperText::tr("Head-end wall");
        case TemplateKind::TailWall:
            return PaperText::tr("Tail-end wall");
        case TemplateKind::BassWall:
            return PaperText::tr("Bass side wall");
        case TemplateKind::TrebleWall:
            return PaperText::tr("Treble side wall");
        case TemplateKind::Neck:
            return PaperText::tr("Neck");
        case TemplateKind::Fretboard:
            return PaperText::tr("Fretboard");
        case TemplateKind::StoryStick:
            return PaperText::tr("Story stick");
        case TemplateKind::Wiring:
            return PaperText::tr("Wiring");
        case TemplateKind::Backing:
            break;
    }
    return PaperText::tr("Backing");
}

Result<PaperPages> composePages(const Plan& plan, const PaperJob& job)
{
    if (const QString problem = problemOf(job); !problem.isEmpty())
        return Error{problem.toStdString(), {}, {}};
    const Layout layout = derive(plan);
    const UnitStyle style = unitStyle(plan);
    const PaperFormat& format = formatOf(job.size);
    const bool roll = job.size == PaperSize::Roll;
    const TilePaper paper{format.width, format.height,   job.margin,     kFooterHeight,
                          job.overlap,  job.correctionX, job.correctionY};

    PaperPages all;
    // The cover is composed last, when all is counted, but stands first.
    if (!roll) all.pages.emplace_back();
    const std::vector<TemplateKind> had = templatesOf(plan);
    const auto has = [&had](TemplateKind kind) {
        return std::find(had.begin(), had.end(), kind) != had.end();
    };
    // Asked for nothing that the plan has, the sheets themselves say that there is nothing.
    const bool some = std::any_of(job.templates.begin(), job.templates.end(), has);
    for (const TemplateKind kind : job.templates) {
        if (some && !has(kind)) continue;
        const auto drawing = std::make_shared<const Sheet>(templateSheet(plan, layout, kind, style));
        TemplatePages one;
        one.kind = kind;
        one.firstPage = all.pages.size();
        if (roll) {
            addRollPage(all, job, drawing);
        } else {
            const std::optional<TiledSheet> tiles = tiled(*drawing, paper, style);
            if (!tiles) {
                return Error{
                    PaperText::tr("The template does not fit on this paper.").toStdString(),
                    templateLabel(kind).toStdString(),
                    PaperText::tr("Choose larger paper, a smaller overlap or a roll.").toStdString()};
            }
            one.tiling = tiles->tiling;
            addTiles(all, job, drawing, *tiles);
        }
        one.pageCount = all.pages.size() - one.firstPage;
        all.templates.push_back(std::move(one));
    }
    addFooters(all, plan, job);
    if (!roll) {
        all.pages.front() = blankPage(job, format.width, format.height);
        all.pages.front().furniture = coverSheet(plan, job, all);
    }
    return all;
}

}  // namespace lidwright
