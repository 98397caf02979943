// Glues the tiles of a PDF together with the eyes of another program and compares them with the undivided
// sheet.
#include "app/paper/paper_pages.h"
#include "app/paper/pdf_writer.h"
#include "tests/app/paper/paper_plans.h"
#include "tests/app/paper/pdf_tools.h"

#include <QFile>
#include <QTemporaryDir>

namespace lidwright {
namespace {

constexpr int kDpi = 150;
constexpr double kDotsPerMm = kDpi / 25.4;
// The drawing's black lines have dots darker than kDark wherever they run; grey marks have none so dark.
// Where a grey mark crosses a line or the dots fall otherwise, a line still is darker than kGrey.
constexpr int kDark = 75;
constexpr int kGrey = 170;

/// Pages of a PDF and how each shows the drawing.
struct Painted {
    PaperPages pages;
    std::vector<QImage> images;

    /// Grey value of the drawing's point on page `i`; white outside the paper.
    int at(std::size_t i, Point p, int dx = 0, int dy = 0) const
    {
        const PaperPage& page = pages.pages[i];
        const Point onPage = page.toPage(p + page.offset);
        const int x = static_cast<int>(std::floor(onPage.x * kDotsPerMm)) + dx;
        const int y = static_cast<int>(std::floor((page.height - onPage.y) * kDotsPerMm)) + dy;
        return images[i].valid(x, y) ? qGray(images[i].pixel(x, y)) : 255;
    }
    /// The darkest dot within one dot of the point.
    int darkestNear(std::size_t i, Point p) const
    {
        int darkest = 255;
        for (const int dx : {-1, 0, 1})
            for (const int dy : {-1, 0, 1})
                darkest = std::min(darkest, at(i, p, dx, dy));
        return darkest;
    }
};

Painted painted(const Plan& plan, const PaperJob& job)
{
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("t.pdf"));
    EXPECT_EQ(writePaperPdf(plan, job, path).toStdString(), "");
    Painted result;
    auto pages = composePages(plan, job);
    EXPECT_TRUE(pages.ok());
    result.pages = std::move(pages).value();
    result.images = testing::paintedPages(path, kDpi);
    EXPECT_EQ(result.images.size(), result.pages.pages.size());
    return result;
}

/// The page on which the point is seen when all is joined.
std::size_t pageOf(const Painted& tiles, Point p)
{
    const TemplatePages& lid = tiles.pages.templates[0];
    for (std::size_t i = 0; i < lid.tiling->tiles.size(); ++i)
        if (lid.tiling->tiles[i].kept.contains(p)) return lid.firstPage + i;
    return 0;
}

struct Difference {
    int darkWhole = 0;
    int darkTiles = 0;
    int lost = 0;   ///< dark dots of the whole sheet that the tiles lack
    int added = 0;  ///< dark dots of the tiles that the whole sheet lacks
    int holes = 0;  ///< dark dots of the whole sheet where no page is
};

/// Compares the two in the drawing's frame, the whole sheet moved by `shift`.
Difference compared(const Painted& tiles, const Painted& whole, Point shift)
{
    Difference d;
    const Bounds area = whole.pages.pages[0].drawing->extent;
    const double step = 1 / kDotsPerMm;
    for (double y = area.minY; y < area.maxY; y += step) {
        for (double x = area.minX; x < area.maxX; x += step) {
            const Point p{x, y};
            const bool dark = whole.at(0, p + shift) < kDark;
            const std::size_t page = pageOf(tiles, p);
            if (page == 0) {
                if (dark) ++d.holes;
                continue;
            }
            if (dark) {
                ++d.darkWhole;
                if (tiles.darkestNear(page, p) > kGrey) ++d.lost;
            }
            if (tiles.at(page, p) < kDark) {
                ++d.darkTiles;
                if (whole.darkestNear(0, p + shift) > kGrey) ++d.added;
            }
        }
    }
    return d;
}

/// The drawing that the tiles show, on one sheet of paper that is large enough for it.
Painted onOneSheet(const Painted& tiles)
{
    const PaperPage& tile = tiles.pages.pages[tiles.pages.templates[0].firstPage];
    PaperPage page;
    page.drawing = tile.drawing;
    const Bounds area = tile.drawing->extent.grown(2);
    page.width = area.width();
    page.height = area.height();
    page.offset = Point{} - Point{area.minX, area.minY};
    page.window = {0, 0, area.width(), area.height()};
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("t.pdf"));
    const Result<QByteArray> pdf = pdfOf({page}, QStringLiteral("t"));
    EXPECT_TRUE(pdf.ok());
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(*pdf);
    file.close();
    Painted result;
    result.pages.pages = {page};
    result.images = testing::paintedPages(path, kDpi);
    return result;
}

void expectSame(PaperJob job, TemplateKind kind = TemplateKind::Lid)
{
    const Plan plan = testing::largePlan();
    job.templates = {kind};
    const Painted tiles = painted(plan, job);
    const Painted whole = onOneSheet(tiles);
    ASSERT_EQ(whole.images.size(), 1U);
    ASSERT_GT(tiles.images.size(), 3U) << "a cover and several tiles";

    const Difference d = compared(tiles, whole, {0, 0});
    EXPECT_GT(d.darkWhole, 10'000);
    EXPECT_GT(d.darkTiles, 10'000);
    EXPECT_EQ(d.lost, 0);
    EXPECT_EQ(d.added, 0);
    EXPECT_EQ(d.holes, 0);
    // Were the tiles off by half a millimetre, it would be seen.
    for (const Point shift : {Point{0.5, 0}, Point{0, 0.5}})
        EXPECT_GT(compared(tiles, whole, shift).lost, 1000);
}

TEST(PaperStitch, A4TilesMakeTheWholeSheet)
{
    expectSame({});
}

TEST(PaperStitch, A4TilesMakeTheWholeNeck)
{
    expectSame({}, TemplateKind::Neck);
}

TEST(PaperStitch, LetterTilesWithASmallOverlapMakeTheWholeSheet)
{
    PaperJob job;
    job.size = PaperSize::Letter;
    job.overlap = 6;
    job.margin = 12;
    expectSame(job);
}

TEST(PaperStitch, CrossesLieAtTheSamePlacesOnBothSidesOfAJoint)
{
    PaperJob job;
    job.templates = {TemplateKind::Lid};
    const auto pages = composePages(testing::largePlan(), job);
    ASSERT_TRUE(pages.ok());
    const TemplatePages& lid = pages->templates[0];
    // The circles of the crosses, in the drawing's frame.
    const auto crosses = [&](std::size_t tile) {
        const PaperPage& page = pages->pages[lid.firstPage + tile];
        std::vector<Point> places;
        for (const Element& element : page.furniture.elements) {
            const auto* stroke = std::get_if<Stroke>(&element.what);
            if (stroke && stroke->closed && stroke->points.size() > 8)
                places.push_back(bounds(stroke->points).centre() - page.offset);
        }
        return places;
    };
    int shared = 0;
    for (std::size_t i = 0; i < lid.tiling->tiles.size(); ++i) {
        for (std::size_t j = 0; j < lid.tiling->tiles.size(); ++j) {
            if (i == j) continue;
            for (const Point& p : crosses(i)) {
                // A cross that lies well within the other page's window is drawn there too.
                if (!lid.tiling->tiles[j].window.grown(-3).contains(p)) continue;
                const auto others = crosses(j);
                EXPECT_TRUE(
                    std::any_of(others.begin(), others.end(), [&](Point q) { return distance(p, q) < 1e-6; }))
                    << p.x << ", " << p.y;
                ++shared;
            }
        }
    }
    EXPECT_GT(shared, 8);
}

}  // namespace
}  // namespace lidwright
