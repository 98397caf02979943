#include "app/exchange/board_picture.h"

#include "tests/support/plans.h"

#include "core/drawing/board_sheet.h"
#include "core/io/svg/svg_reader.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QImage>
#include <QTemporaryDir>

namespace lidwright {
namespace {

TEST(BoardPicture, APngHasTheBoardsSizeAtItsResolution)
{
    const QTemporaryDir dir;
    const Plan plan;
    const Layout layout = derive(plan);
    const QString path = dir.filePath(QStringLiteral("a.png"));
    EXPECT_EQ(writeBoardPicture(plan, layout, false, path), "");
    const QImage image(path);
    ASSERT_FALSE(image.isNull());
    EXPECT_NEAR(image.dotsPerMeterX(), 200 / 0.0254, 1);
    BoardOptions options;
    options.style = unitStyle(plan);
    options.paper = 2;
    const double width = boardSheet(plan, layout, options).sheet.extent.width() + 2 * 20;
    EXPECT_NEAR(image.width(), width / 2 / 25.4 * 200, 2);
    // Something is drawn, and paper is left.
    int dark = 0;
    for (int y = 0; y < image.height(); y += 3)
        for (int x = 0; x < image.width(); x += 3)
            dark += image.pixelColor(x, y).lightness() < 100;
    EXPECT_GT(dark, 200);
    EXPECT_GT(image.pixelColor(2, 2).lightness(), 240);
}

TEST(BoardPicture, AnSvgIsInMillimetres)
{
    const QTemporaryDir dir;
    const Plan plan;
    const QString path = dir.filePath(QStringLiteral("a.svg"));
    EXPECT_EQ(writeBoardPicture(plan, derive(plan), true, path), "");
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray text = file.readAll();
    const auto reading = readSvg(text.toStdString(), "a.svg");
    ASSERT_TRUE(reading.ok()) << reading.error().text();
    EXPECT_TRUE(reading->hasPhysicalSize);
    EXPECT_GT(reading->art.width, plan.neck.blankLength / 2);
}

TEST(BoardPicture, OtherEndingsAndBadPlacesAreRefused)
{
    const QTemporaryDir dir;
    const Plan plan;
    EXPECT_NE(writeBoardPicture(plan, derive(plan), false, dir.filePath(QStringLiteral("a.gif"))), "");
    EXPECT_NE(writeBoardPicture(plan, derive(plan), false, QStringLiteral("/no/such/folder/a.png")), "");
}

}  // namespace
}  // namespace lidwright
