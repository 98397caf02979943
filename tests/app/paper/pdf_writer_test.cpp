#include "app/paper/pdf_writer.h"

#include "app/paper/page_furniture.h"
#include "app/paper/printing.h"
#include "tests/app/paper/pdf_tools.h"

#include <QFile>
#include <QTemporaryDir>

namespace lidwright {
namespace {

PaperPage pageWith(double width, double height)
{
    PaperPage page;
    page.width = width;
    page.height = height;
    page.margin = 10;
    Furniture furniture;
    furniture.line({0, 0}, {150, 0});
    furniture.text({0, 5}, QStringLiteral("words"), 3);
    page.furniture = furniture.sheet();
    return page;
}

class PdfWriter : public ::testing::Test {
protected:
    QString written(const QByteArray& bytes)
    {
        const QString path = m_folder.filePath(QStringLiteral("t.pdf"));
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(bytes);
        return path;
    }
    QTemporaryDir m_folder;
};

TEST_F(PdfWriter, TurnsPrintScalingOffAndStaysWhole)
{
    const auto pdf = pdfOf({pageWith(210, 297), pageWith(297, 210), pageWith(500, 250)},
                           QStringLiteral("Prüfung (1) \\ 2"));
    ASSERT_TRUE(pdf.ok()) << pdf.error().text();
    const QString path = written(*pdf);
    const auto checked = testing::runTool(QStringLiteral("qpdf"), {QStringLiteral("--check"), path});
    EXPECT_EQ(checked.code, 0) << checked.out.toStdString() << checked.err.toStdString();
    const auto json = testing::runTool(QStringLiteral("qpdf"), {QStringLiteral("--json"), path});
    EXPECT_TRUE(json.out.contains("\"/PrintScaling\": \"/None\"")) << json.out.left(2000).toStdString();
    const auto info = testing::runTool(QStringLiteral("pdfinfo"), {path});
    EXPECT_TRUE(info.out.contains("PDF version:     1.7")) << info.out.toStdString();
    EXPECT_TRUE(info.out.contains("Prüfung (1) \\ 2")) << info.out.toStdString();
}

TEST_F(PdfWriter, PagesHaveTheirPapersSizes)
{
    const auto pdf =
        pdfOf({pageWith(210, 297), pageWith(297, 210), pageWith(500, 250), pageWith(215.9, 279.4)}, {});
    ASSERT_TRUE(pdf.ok());
    const std::vector<Point> boxes = testing::mediaBoxes(written(*pdf));
    // Qt rounds the page to whole points; what is on it is not rounded.
    const Point sizes[] = {{210, 297}, {297, 210}, {500, 250}, {215.9, 279.4}};
    ASSERT_EQ(boxes.size(), std::size(sizes));
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        EXPECT_NEAR(boxes[i].x, sizes[i].x * 72 / 25.4, 0.5) << i;
        EXPECT_NEAR(boxes[i].y, sizes[i].y * 72 / 25.4, 0.5) << i;
    }
}

TEST_F(PdfWriter, LinesHaveTheirLengthsWidthsAndPlaces)
{
    const auto pdf = pdfOf({pageWith(210, 297), pageWith(500, 250)}, {});
    ASSERT_TRUE(pdf.ok());
    const QString path = written(*pdf);
    for (const int number : {1, 2}) {
        const auto strokes = testing::strokesOf(path, number);
        ASSERT_EQ(strokes.size(), 1U);
        EXPECT_NEAR(strokes[0].length(), 150, 0.005);
        EXPECT_NEAR(strokes[0].width, lineWidth(LineKind::Mark), 0.001);
        EXPECT_NEAR(strokes[0].a.x, 10, 0.02);
        EXPECT_NEAR(strokes[0].a.y, (number == 1 ? 297 : 250) - 10, 0.2);
    }
}

TEST_F(PdfWriter, RefusesWhatIsNoPdf)
{
    for (const QByteArray& bytes :
         {QByteArray(), QByteArray("%PDF-1.4"), QByteArray("hello trailer startxref"),
          QByteArray("%PDF-1.4\ntrailer\n<< /Root 2 0 R >>\nstartxref\n5\n%%EOF"),
          QByteArray("%PDF-1.4\ntrailer\n<< /Root 2 0 R /Size 3 >>\nstartxref\n5\n%%EOF"),
          QByteArray(
              "%PDF-1.4\ntrailer\n<< /Root 99999999999999999999 0 R /Size 3 >>\nstartxref\n5\n%%EOF")}) {
        const auto result = withoutPrintScaling(bytes);
        ASSERT_FALSE(result.ok());
        EXPECT_FALSE(result.error().what.empty());
    }
    EXPECT_FALSE(pdfOf({}, {}).ok());
}

// An A3 page on A4 paper that lies: as large as its edge of 6 mm allows, about the middle; on larger paper as
// it is.
TEST(FittedPage, KeepsWithinThePaperAndItsShape)
{
    const PaperPage page = pageWith(420, 297);
    constexpr double kDots = 4;
    const QRectF whole(0, 0, 420 * kDots, 297 * kDots);
    const QRectF small = fittedOn(page, {297, 210}, kDots).mapRect(whole);
    EXPECT_NEAR(small.center().x(), 297 * kDots / 2, 1e-9);
    EXPECT_NEAR(small.center().y(), 210 * kDots / 2, 1e-9);
    EXPECT_NEAR(small.width() / small.height(), 420.0 / 297, 1e-9);
    EXPECT_NEAR(small.height(), 198 * kDots, 1e-9) << "6 mm above and below; the width then has more";
    EXPECT_GE(small.left(), 6 * kDots - 1e-9);
    EXPECT_NEAR(fittedOn(page, {594, 420}, kDots).mapRect(whole).width(), 420 * kDots, 1e-9);
}

}  // namespace
}  // namespace lidwright
