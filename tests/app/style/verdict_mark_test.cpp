#include "app/style/verdict_mark.h"

#include "app/style/contrast.h"
#include "app/style/palette.h"
#include "tests/app/style/palettes.h"

#include <gtest/gtest.h>

#include <QImage>

#include <cmath>

namespace lidwright {
namespace {

using testing::darkPalette;
using testing::lightPalette;

constexpr Verdict kAll[] = {Verdict::Good, Verdict::Tight, Verdict::Unknown, Verdict::Wrong};

/// How much of each pixel the mark covers, 0 to 255: its shape without any colour.
QImage shapeOf(Verdict verdict, int side)
{
    QImage image(side, side, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    paintMark(painter, QRectF(0, 0, side, side), verdict, lightPalette());
    painter.end();
    return image.convertToFormat(QImage::Format_Alpha8);
}

int cover(const QImage& shape, double x, double y)
{
    const int side = shape.width();
    return qAlpha(shape.pixel(std::min(side - 1, static_cast<int>(x * side)),
                              std::min(side - 1, static_cast<int>(y * side))));
}

double difference(const QImage& a, const QImage& b)
{
    double sum = 0;
    for (int y = 0; y < a.height(); ++y)
        for (int x = 0; x < a.width(); ++x)
            sum += std::abs(qAlpha(a.pixel(x, y)) - qAlpha(b.pixel(x, y))) / 255.0;
    return sum / (a.width() * a.height());
}

TEST(VerdictMark, ShapesDifferWithoutAnyColour)
{
    for (const int side : {12, 16, 24, 48})
        for (const Verdict a : kAll)
            for (const Verdict b : kAll)
                if (a < b) {
                    // A tenth of all pixels: far more than two renderings of one shape could differ.
                    EXPECT_GT(difference(shapeOf(a, side), shapeOf(b, side)), 0.1)
                        << word(a) << " and " << word(b) << " at " << side;
                }
}

TEST(VerdictMark, ShapesAreWhatTheirWordsSay)
{
    constexpr int kSide = 96;
    const QImage good = shapeOf(Verdict::Good, kSide);
    EXPECT_EQ(cover(good, 0.5, 0.5), 0) << "open ring";
    EXPECT_EQ(cover(good, 0.5, 0.7), 0);
    EXPECT_EQ(cover(good, 0.5, 0.1), 255);
    EXPECT_EQ(cover(good, 0.02, 0.02), 0);

    const QImage tight = shapeOf(Verdict::Tight, kSide);
    EXPECT_EQ(cover(tight, 0.5, 0.3), 0) << "upper half open";
    EXPECT_EQ(cover(tight, 0.5, 0.7), 255) << "lower half filled";
    EXPECT_EQ(cover(tight, 0.5, 0.1), 255);

    const QImage wrong = shapeOf(Verdict::Wrong, kSide);
    EXPECT_EQ(cover(wrong, 0.1, 0.1), 255) << "a square has corners";
    EXPECT_EQ(cover(wrong, 0.5, 0.5), 0) << "the bar";
    EXPECT_EQ(cover(wrong, 0.5, 0.75), 255);

    const QImage unknown = shapeOf(Verdict::Unknown, kSide);
    EXPECT_EQ(cover(unknown, 0.5, 0.5), 0);
    int changes = 0;
    for (int step = 0; step < 720; ++step) {
        const auto at = [&](int s) {
            const double angle = 2 * kPi * s / 720;
            return cover(unknown, 0.5 + 0.405 * std::cos(angle), 0.5 + 0.405 * std::sin(angle)) > 127;
        };
        changes += at(step) != at(step + 1) ? 1 : 0;
    }
    EXPECT_GE(changes, 10) << "the ring is broken into dots";
}

TEST(VerdictMark, KeepsThreeToOneInLightAndDark)
{
    for (const QPalette& palette : {lightPalette(), darkPalette(), withReadableHighlight(lightPalette()),
                                    withReadableHighlight(darkPalette())})
        for (const Verdict verdict : kAll)
            for (const QPalette::ColorRole ground : {QPalette::Base, QPalette::Window})
                EXPECT_GE(contrastRatio(markColour(verdict, palette), palette.color(ground)), kMarkContrast)
                    << word(verdict);
}

TEST(VerdictMark, IconsKeepTheirContrastOnASelectedRow)
{
    for (const QPalette& desktop : {lightPalette(), darkPalette()}) {
        const QPalette palette = withReadableHighlight(desktop);
        for (const Verdict verdict : kAll) {
            const QImage image = markIcon(verdict, palette, 32)
                                     .pixmap(QSize(32, 32), 1.0, QIcon::Selected)
                                     .toImage()
                                     .convertToFormat(QImage::Format_ARGB32);
            bool solid = false;
            for (int y = 0; y < image.height(); ++y)
                for (int x = 0; x < image.width(); ++x) {
                    const QColor colour = image.pixelColor(x, y);
                    if (colour.alpha() < 255) continue;
                    solid = true;
                    EXPECT_GE(contrastRatio(colour, palette.color(QPalette::Highlight)), kMarkContrast);
                }
            EXPECT_TRUE(solid) << word(verdict);
        }
    }
}

TEST(VerdictMark, ColoursDifferToo)
{
    for (const QPalette& palette : {lightPalette(), darkPalette()})
        for (const Verdict a : kAll)
            for (const Verdict b : kAll)
                if (a < b) {
                    EXPECT_NE(markColour(a, palette), markColour(b, palette));
                }
}

TEST(VerdictMark, IsPaintedOnlyWithinItsBox)
{
    for (const Verdict verdict : kAll) {
        QImage image(60, 40, QImage::Format_ARGB32_Premultiplied);
        image.fill(Qt::transparent);
        QPainter painter(&image);
        paintMark(painter, QRectF(10, 10, 40, 20), verdict, lightPalette());
        painter.end();
        for (int y = 0; y < 40; ++y)
            for (int x = 0; x < 60; ++x)
                if (x < 19 || x > 40 || y < 9 || y > 30) {
                    EXPECT_EQ(qAlpha(image.pixel(x, y)), 0);
                }
    }
}

}  // namespace
}  // namespace lidwright
