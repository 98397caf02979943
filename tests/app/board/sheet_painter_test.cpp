#include "app/board/sheet_painter.h"

#include "app/board/board_cache.h"
#include "app/board/view_transform.h"
#include "app/style/contrast.h"

#include "core/geometry/region.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

namespace lidwright::testing {
namespace {

QImage painted(const Sheet& sheet, PaintLook look, QSize size = {200, 200})
{
    QImage image(size, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintSheet(painter, sheet, look);
    return image;
}

PaintLook at(double scale)
{
    PaintLook look;
    look.scale = scale;
    look.origin = {0, 200 / scale};
    return look;
}

/// Dark pixels along a column or row.
int darkInColumn(const QImage& image, int x)
{
    int dark = 0;
    for (int y = 0; y < image.height(); ++y)
        dark += qGray(image.pixel(x, y)) < 128;
    return dark;
}

TEST(SheetPainter, SheetPointsLandAtTheirPixels)
{
    Sheet sheet;
    sheet.elements.push_back({"", "", Fill{rectangleRing({50, 30}, 20, 10), FillKind::CutThrough}});
    PaintLook look = at(2);
    const QImage image = painted(sheet, look);
    const QRgb fill = printColours().theme.cutThrough.rgb();
    // 40 to 60 mm, 25 to 35 mm at 2 px per mm, y up from the lower edge.
    EXPECT_EQ(image.pixel(81, 200 - 51), fill);
    EXPECT_EQ(image.pixel(118, 200 - 68), fill);
    EXPECT_EQ(image.pixel(78, 200 - 60), qRgb(255, 255, 255));
    EXPECT_EQ(image.pixel(100, 200 - 72), qRgb(255, 255, 255));
}

TEST(SheetPainter, PrintedLinesHaveTheirTrueWidths)
{
    // Visible edges 0.5 mm, the rest 0.25 mm (ISO 128-2, group 0.5), here at 40 units to the mm.
    for (const auto& [kind, width] :
         {std::pair{LineKind::Visible, 0.5}, {LineKind::Narrow, 0.25}, {LineKind::Cut, 0.25}}) {
        Sheet sheet;
        sheet.elements.push_back({"", "", Stroke{{{0, 2.5}, {5, 2.5}}, false, kind}});
        PaintLook look = at(40);
        look.surface = Surface::Printer;
        EXPECT_NEAR(darkInColumn(painted(sheet, look), 100), width * 40, 1);
    }
}

TEST(SheetPainter, HiddenLinesAreDashedAsTheStandardHasThem)
{
    Sheet sheet;
    sheet.elements.push_back({"", "", Stroke{{{0, 2.5}, {20, 2.5}}, false, LineKind::Hidden}});
    PaintLook look = at(10);
    look.surface = Surface::Printer;
    look.origin = {0, 20};
    const QImage image = painted(sheet, look);
    // Dashes of 12 and gaps of 3 line widths of 0.25 mm: 30 and 7.5 px here.
    std::vector<int> runs;
    bool dark = false;
    int length = 0;
    for (int x = 0; x < 200; ++x) {
        const bool now = qGray(image.pixel(x, 200 - 25)) < 160;
        if (x > 0 && now != dark) {
            runs.push_back(length);
            length = 0;
        }
        dark = now;
        ++length;
    }
    ASSERT_GE(runs.size(), 6U);
    for (std::size_t i = 0; i + 1 < runs.size(); i += 2) {
        EXPECT_NEAR(runs[i], 30, 1.5);
        EXPECT_NEAR(runs[i + 1], 7.5, 1.5);
    }
}

TEST(SheetPainter, CapitalsAreAsHighAsTheSheetSays)
{
    Sheet sheet;
    sheet.elements.push_back({"", "", Text{{5, 5}, "HEH", 5, 0, Anchor::Left, false}});
    PaintLook look = at(10);
    look.surface = Surface::Printer;
    look.origin = {0, 20};
    const QImage image = painted(sheet, look, {400, 200});
    int top = image.height(), bottom = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            if (qGray(image.pixel(x, y)) < 128) {
                top = std::min(top, y);
                bottom = std::max(bottom, y);
            }
    EXPECT_NEAR(bottom - top + 1, 50, 3);
    EXPECT_NEAR(bottom + 1, 150, 2);  // the base line, 5 mm up
    // What is found under the pointer is where it is painted.
    const LaidText laid = layOut(std::get<Text>(sheet.elements[0].what), look);
    EXPECT_NEAR(laid.outline().boundingRect().top(), top, 3);
    EXPECT_NEAR(laid.outline().boundingRect().left(), 50, 1e-6);
}

TEST(SheetPainter, UprightTextRunsUpward)
{
    const Text text{{10, 2}, "240", 2.5, 90, Anchor::Middle, false};
    PaintLook look = at(10);
    const QRectF box = layOut(text, look).outline().boundingRect();
    EXPECT_GT(box.height(), box.width());
    EXPECT_NEAR(box.center().y(), 200 - 20, 1);
    EXPECT_NEAR(box.right(), 100, 1);  // read from the right: the letters' feet point to the right
}

TEST(SheetPainter, WhatLiesOutsideIsLeftOutWhatIsSeenIsTheSame)
{
    Sheet sheet;
    for (int i = 0; i < 60; ++i) {
        const Point c{double(i % 10) * 20, double(i / 10) * 20};
        sheet.elements.push_back({"", "", Fill{circleRing(c, 8), FillKind::Engraved}});
        sheet.elements.push_back({"", "", Stroke{circleRing(c, 8), true, LineKind::Visible}});
    }
    PaintLook look = at(5);
    look.surface = Surface::Screen;
    look.colours = boardColours(QPalette());
    const QImage all = painted(sheet, look);
    look.visible = {0, 0, 40, 40};
    EXPECT_EQ(all, painted(sheet, look));
}

TEST(SheetPainter, GreysOnlyOnPaper)
{
    Sheet sheet;
    int x = 0;
    for (const FillKind kind :
         {FillKind::Wood, FillKind::WoodAcross, FillKind::WoodEnd, FillKind::CutThrough, FillKind::Engraved,
          FillKind::Bridge, FillKind::Fretboard, FillKind::Backing, FillKind::Block, FillKind::Warning}) {
        sheet.elements.push_back({"", "", Fill{rectangleRing({double(x * 2 + 1), 10}, 1.8, 15), kind}});
        sheet.elements.push_back(
            {"", "", Stroke{{{double(x * 2), 1}, {double(x * 2), 19}}, false, LineKind(x % 7)}});
        ++x;
    }
    PaintLook look = at(10);
    look.surface = Surface::Printer;
    look.origin = {0, 20};
    const QImage image = painted(sheet, look);
    for (int y = 0; y < image.height(); ++y)
        for (int c = 0; c < image.width(); ++c) {
            const QRgb p = image.pixel(c, y);
            ASSERT_TRUE(qRed(p) == qGreen(p) && qGreen(p) == qBlue(p)) << c << "," << y;
        }
}

TEST(SheetColours, WhatMustBeSeenIsSeenOnBothPapers)
{
    QPalette light, dark;
    light.setColor(QPalette::Window, Qt::white);
    light.setColor(QPalette::WindowText, Qt::black);
    dark.setColor(QPalette::Window, Qt::black);
    dark.setColor(QPalette::WindowText, Qt::white);
    EXPECT_NE(boardColours(light).theme.paper, boardColours(dark).theme.paper);
    for (const QPalette& palette : {light, dark}) {
        const SheetColours c = boardColours(palette);
        for (const QColor& ground : {c.theme.paper, c.theme.wood}) {
            EXPECT_GE(contrastRatio(c.hairline, ground), kMarkContrast);
            EXPECT_GE(contrastRatio(c.theme.selection, ground), kMarkContrast);
        }
        EXPECT_GE(contrastRatio(c.hatch, c.theme.engraved), kMarkContrast);
    }
}

TEST(ViewTransform, ThereAndBackAndFit)
{
    ViewTransform t;
    t.fit({-100, -50, 300, 150}, {10, 20, 800, 300}, 10);
    EXPECT_DOUBLE_EQ(t.scale(), 280.0 / 200);
    const Point p{12.5, -7.25};
    const Point back = t.toSheet(t.toWidget(p));
    EXPECT_NEAR(back.x, p.x, 1e-12);
    EXPECT_NEAR(back.y, p.y, 1e-12);
    EXPECT_GT(t.toWidget(Point{0, 0}).y(), t.toWidget(Point{0, 10}).y());
    EXPECT_TRUE(QRectF(10, 20, 800, 300).contains(t.toWidget(Bounds{-100, -50, 300, 150})));
    t.fit({}, {0, 0, 100, 100}, 5);  // nothing to fit: nothing changes
    EXPECT_DOUBLE_EQ(t.scale(), 280.0 / 200);
    t.zoomAbout({0, 0}, -1);
    t.zoomAbout({0, 0}, std::numeric_limits<double>::quiet_NaN());
    EXPECT_DOUBLE_EQ(t.scale(), 280.0 / 200);
}

TEST(BoardCache, PansWithinItsMarginWithoutPaintingAnew)
{
    int paints = 0;
    const auto paint = [&](QPainter& p, const ViewTransform& t, const QRectF& area) {
        ++paints;
        p.fillRect(area, Qt::white);
        p.fillRect(QRectF(t.toWidget(Point{0, 0}), QSizeF(20, 20)), Qt::black);
    };
    BoardCache cache;
    ViewTransform t;
    const QRectF area(0, 0, 200, 100);
    t.pan({50, 50});
    EXPECT_TRUE(cache.stale(t, area, 1));
    cache.renew(t, area, 1, paint);
    EXPECT_FALSE(cache.stale(t, area, 1));
    t.pan({10, 5});
    EXPECT_FALSE(cache.stale(t, area, 1));
    QImage image(200, 100, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    cache.show(painter, t);
    painter.end();
    EXPECT_EQ(image.pixel(61, 56), qRgb(0, 0, 0));
    EXPECT_EQ(image.pixel(58, 56), qRgb(255, 255, 255));
    EXPECT_EQ(image.pixel(79, 74), qRgb(0, 0, 0));
    EXPECT_EQ(paints, 1);
    t.pan({100, 0});
    EXPECT_TRUE(cache.stale(t, area, 1));
    t.zoomAbout({0, 0}, 2);
    EXPECT_TRUE(cache.stale(t, area, 1));
    EXPECT_TRUE(cache.stale(t, area, 2));
}

}  // namespace
}  // namespace lidwright::testing
