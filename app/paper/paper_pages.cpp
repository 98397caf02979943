#include "app/paper/paper_pages.h"

#include "app/paper/cover_page.h"
#include "app/paper/joint_marks.h"
#include "app/paper/page_footer.h"
#include "app/paper/paper_size.h"
#include "app/paper/sheets_on_pages.h"
#include "app/paper/wrong_pages.h"

#include "core/drawing/overview_sheet.h"

#include <algorithm>

namespace lidwright {

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

namespace {

QString actualSize()
{
    return PaperText::tr("Print at actual size, 100 %: no fitting, no shrinking.");
}

Bounds moved(const Bounds& b, Point by)
{
    return {b.minX + by.x, b.minY + by.y, b.maxX + by.x, b.maxY + by.y};
}

/// The name of a tile in large letters: as near to the upper left of what is kept of it as lines leave room.
void tileName(Furniture& furniture, const Tile& tile, const SheetInk& ink)
{
    constexpr double kHeight = 7, kWidth = 17, kStep = 6;
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
        if (one.kind == TemplateKind::Overview) continue;
        for (std::size_t i = one.firstPage; i < one.firstPage + one.pageCount; ++i) {
            PaperPage& page = all.pages[i];
            Furniture furniture;
            const QString label = one.label();
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
        case TemplateKind::Overview:
            return PaperText::tr("Overview");
        case TemplateKind::LidBelow:
            return PaperText::tr("Lid from below");
        case TemplateKind::Base:
            return PaperText::tr("Base");
        case TemplateKind::Blocks:
            return PaperText::tr("Blocks and bars");
        case TemplateKind::Head:
            return PaperText::tr("Head");
        case TemplateKind::Nut:
            return PaperText::tr("Nut");
        case TemplateKind::Bridge:
            return PaperText::tr("Bridge");
        case TemplateKind::Gauges:
            return PaperText::tr("Gauges");
        case TemplateKind::CuttingPlan:
            return PaperText::tr("Cutting plan");
        case TemplateKind::Wiring:
            return PaperText::tr("Wiring");
        case TemplateKind::Backing:
            break;
    }
    return PaperText::tr("Backing");
}

namespace {

/// The kinds that the job asks for and the plan has. Asked for nothing that the plan has, the sheets
/// themselves say that there is nothing.
std::vector<TemplateKind> wantedKinds(const Plan& plan, const PaperJob& job)
{
    const std::vector<TemplateKind> had = templatesOf(plan);
    std::vector<TemplateKind> wanted;
    for (const TemplateKind kind : job.templates)
        if (std::find(had.begin(), had.end(), kind) != had.end()) wanted.push_back(kind);
    return wanted.empty() ? job.templates : wanted;
}

void addOverviewPage(PaperPages& all, const Plan& plan, const Layout& layout, const PaperJob& job)
{
    const bool inches = job.size == PaperSize::Letter || job.size == PaperSize::Tabloid;
    const OverviewPaper paper = inches ? OverviewPaper::Tabloid : OverviewPaper::A3;
    const Point size = overviewSize(paper);
    // It has a border and a title block of its own, and nothing on it is measured by the paper.
    PaperPage page;
    page.width = size.x;
    page.height = size.y;
    page.drawing = std::make_shared<const Sheet>(overviewSheet(plan, layout, unitStyle(plan), paper));
    page.window = {0, 0, size.x, size.y};
    page.fullSize = false;
    all.pages.push_back(std::move(page));
}

}  // namespace

Result<PaperPages> composePages(const Plan& plan, const PaperJob& job, const PaperGoOn& goOn)
{
    if (const QString problem = problemOf(job); !problem.isEmpty())
        return Error{problem.toStdString(), {}, {}};
    const Layout layout = derive(plan);
    const UnitStyle style = unitStyle(plan);
    const PaperFormat& format = formatOf(job.size);
    const bool roll = job.size == PaperSize::Roll;
    const TilePaper paper{format.width, format.height,   job.margin,     kFooterHeight,
                          job.overlap,  job.correctionX, job.correctionY};

    std::vector<LaidSheet> sheets;
    const std::vector<TemplateKind> wanted = wantedKinds(plan, job);
    for (const TemplateKind kind : wanted) {
        if (goOn && !goOn(static_cast<double>(sheets.size()) / static_cast<double>(wanted.size())))
            return Error{stoppedText().toStdString(), {}, {}};
        LaidSheet one;
        one.kind = kind;
        one.names << templateLabel(kind);
        if (kind != TemplateKind::Overview)
            one.drawing = std::make_shared<const Sheet>(templateSheet(plan, layout, kind, style));
        sheets.push_back(std::move(one));
    }
    if (!roll) {
        auto laid = laidOnPages(std::move(sheets), paper, style);
        if (!laid) return laid.error();
        sheets = std::move(laid).value();
    }
    PaperPages all;
    // The cover is composed last, when all is counted, but stands first.
    if (!roll) all.pages.emplace_back();
    addWrongPages(all, plan, job);
    all.front = all.pages.size();
    for (const LaidSheet& each : sheets) {
        TemplatePages one;
        one.kind = each.kind;
        one.names = each.names;
        one.firstPage = all.pages.size();
        if (!each.drawing) {
            addOverviewPage(all, plan, layout, job);
        } else if (roll) {
            addRollPage(all, job, each.drawing);
        } else {
            one.tiling = each.tiles->tiling;
            addTiles(all, job, each.drawing, *each.tiles);
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
