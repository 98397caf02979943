#include "app/studies/plot_face.h"

#include "app/studies/plot_picture.h"
#include "tests/app/studies/study_values.h"
#include "tests/app/style/palettes.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QImage>
#include <QSvgRenderer>
#include <QTemporaryDir>

namespace lidwright {
namespace {

using testing::sagPlot;
using testing::strangePlots;

PlotLook lookOf(const QPalette& palette, int pixels = 13)
{
    PlotLook look{palette, QFont(), {}, true};
    look.font.setPixelSize(pixels);
    return look;
}

QImage painted(const StudyPlot& plot, const PlotLook& look, QSize size)
{
    QImage image(size, QImage::Format_RGB32);
    image.fill(Qt::magenta);
    QPainter painter(&image);
    paintPlot(painter, plot, QRectF(QPointF(0, 0), size), look);
    return image;
}

int labelsOf(const PlotFace& face, PlotLabel::Kind kind)
{
    return static_cast<int>(std::count_if(face.labels.begin(), face.labels.end(),
                                          [kind](const PlotLabel& label) { return label.kind == kind; }));
}

/// Texts overlap neither one another nor the lines of the guides nor the frame, and all lie in the box.
void expectClear(const PlotFace& face, const QRectF& box)
{
    for (std::size_t i = 0; i < face.labels.size(); ++i) {
        const PlotLabel& one = face.labels[i];
        EXPECT_TRUE(box.adjusted(-0.5, -0.5, 0.5, 0.5).contains(one.box)) << one.words.toStdString();
        if (!face.bare)
            EXPECT_FALSE(face.frame.intersects(one.box)) << one.words.toStdString() << " covers data";
        for (std::size_t j = i + 1; j < face.labels.size(); ++j)
            EXPECT_FALSE(one.box.intersects(face.labels[j].box))
                << one.words.toStdString() << " over " << face.labels[j].words.toStdString();
        for (const PlotFace::Guide& guide : face.guides)
            EXPECT_FALSE(one.box.left() < guide.x && guide.x < one.box.right() &&
                         guide.top < one.box.bottom() - 1 && one.box.bottom() <= face.frame.top())
                << "a guide's line runs through " << one.words.toStdString();
        for (const PlotFace::Key& key : face.keys)
            EXPECT_FALSE(one.box.intersects(key.swatch)) << one.words.toStdString();
    }
}

TEST(PlotFace, NoTextCoversAnotherOrTheData)
{
    for (const int pixels : {9, 13, 18, 26})
        for (const QSize size :
             {QSize(1000, 625), QSize(420, 220), QSize(300, 180), QSize(260, 500), QSize(150, 110)})
            for (const bool title : {true, false}) {
                PlotLook look = lookOf(testing::lightPalette(), pixels);
                look.title = title;
                SCOPED_TRACE(::testing::Message()
                             << pixels << " px in " << size.width() << " x " << size.height());
                const QRectF box(QPointF(7, 3), size);
                expectClear(layOutPlot(sagPlot(), box, look), box);
                for (const auto& [name, plot] : strangePlots()) {
                    SCOPED_TRACE(name);
                    expectClear(layOutPlot(plot, box, look), box);
                }
            }
}

TEST(PlotFace, ShowsAxesKeysAndGuides)
{
    const PlotFace face = layOutPlot(sagPlot(), QRectF(0, 0, 900, 500), lookOf(testing::lightPalette()));
    EXPECT_EQ(face.keys.size(), 3U);
    EXPECT_EQ(labelsOf(face, PlotLabel::Kind::Guide), 6) << "all six find room, four of them close together";
    EXPECT_EQ(face.guides.size(), 6U);
    EXPECT_GE(labelsOf(face, PlotLabel::Kind::AcrossTick), 6);
    EXPECT_GE(labelsOf(face, PlotLabel::Kind::UpTick), 4);
    const auto heading = std::find_if(face.labels.begin(), face.labels.end(), [](const PlotLabel& label) {
        return label.kind == PlotLabel::Kind::AcrossHeading;
    });
    ASSERT_NE(heading, face.labels.end());
    EXPECT_EQ(heading->words, QStringLiteral("Distance from the nut (mm)"));
    for (const StudySeries& series : sagPlot().series)
        for (const Point& p : series.points)
            EXPECT_TRUE(face.frame.contains(face.place(p)));
    EXPECT_LT(face.place({0, 0}).x(), face.place({1, 0}).x());
    EXPECT_GT(face.place({0, 0}).y(), face.place({0, 1}).y()) << "up is up";
    EXPECT_LE(face.up.low, -2.4);
    EXPECT_GE(face.up.high, 0);
    // One line that is named as the axis needs no key.
    StudyPlot one = sagPlot();
    one.series.resize(1);
    one.series[0].name = one.up.heading;
    EXPECT_TRUE(layOutPlot(one, QRectF(0, 0, 900, 500), lookOf(testing::lightPalette())).keys.empty());
}

TEST(PlotFace, SaysWhenThereIsNothingToDraw)
{
    const PlotLook look = lookOf(testing::lightPalette());
    for (const auto& [name, plot] : strangePlots()) {
        SCOPED_TRACE(name);
        bool any = false;
        for (const StudySeries& series : plot.series)
            for (const Point& p : series.points)
                any = any || plottable(p);
        const PlotFace face = layOutPlot(plot, QRectF(0, 0, 500, 300), look);
        EXPECT_EQ(face.bare, !any);
        EXPECT_EQ(labelsOf(face, PlotLabel::Kind::Bare), any ? 0 : 1);
        EXPECT_EQ(labelsOf(face, PlotLabel::Kind::UpTick) > 0, any) << "no axis that says nothing";
    }
}

TEST(PlotPaint, StrangePlotsArePainted)
{
    for (const auto& [name, plot] : strangePlots())
        for (const QSize size : {QSize(500, 300), QSize(90, 60), QSize(1, 1)}) {
            SCOPED_TRACE(name);
            const QImage image = painted(plot, lookOf(testing::lightPalette()), size);
            // The ground is painted whatever comes.
            EXPECT_EQ(image.pixelColor(size.width() - 1, size.height() - 1), QColor(Qt::white));
        }
}

TEST(PlotPaint, LightAndDarkDiffer)
{
    const QImage light = painted(sagPlot(), lookOf(testing::lightPalette()), {500, 300});
    const QImage dark = painted(sagPlot(), lookOf(testing::darkPalette()), {500, 300});
    EXPECT_EQ(light.pixelColor(1, 1), testing::lightPalette().color(QPalette::Base));
    EXPECT_EQ(dark.pixelColor(1, 1), testing::darkPalette().color(QPalette::Base));
    const auto lightest = [](const QImage& image) {
        int most = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x)
                most = std::max(most, image.pixelColor(x, y).lightness());
        return most;
    };
    EXPECT_GT(lightest(dark), 200) << "lines and texts are light on the dark ground";
}

TEST(PlotPaint, SeriesDifferWithoutColour)
{
    // The keys alone, in shades of grey, moved to one place: no two look alike.
    StudyPlot plot = sagPlot();
    plot.series.clear();
    plot.guides.clear();
    for (int i = 0; i < 8; ++i)
        plot.series.push_back({"x", {{0, 0}, {1, 1.0 * i}}, false});
    const PlotLook look = lookOf(testing::lightPalette());
    const QSize size(900, 400);
    const PlotFace face = layOutPlot(plot, QRectF(QPointF(0, 0), size), look);
    const QImage image = painted(plot, look, size);
    ASSERT_EQ(face.keys.size(), 8U);
    std::vector<std::vector<bool>> patterns;
    for (const PlotFace::Key& key : face.keys) {
        const QRect box = key.swatch.toRect();
        std::vector<bool> ink;
        for (int y = box.top(); y <= box.bottom(); ++y)
            for (int x = box.left(); x <= box.right(); ++x)
                ink.push_back(image.pixelColor(x, y).lightness() < 200);
        EXPECT_GT(std::count(ink.begin(), ink.end(), true), 20);
        for (const auto& other : patterns) {
            int differ = 0;
            for (std::size_t i = 0; i < ink.size() && i < other.size(); ++i)
                differ += ink[i] != other[i];
            EXPECT_GT(differ, 10);
        }
        patterns.push_back(ink);
    }
}

TEST(PlotPaint, AnExtremeAmongManyPointsIsSeen)
{
    // One point of 200 000 stands out; it may not be lost with those that share its pixel.
    StudyPlot plot = sagPlot();
    plot.guides.clear();
    plot.series = {{"Sag", {}, false}};
    for (int i = 0; i < 200'000; ++i)
        plot.series[0].points.push_back({1.0 * i, i == 100'001 ? 10.0 : 0.01 * (i % 3)});
    const PlotLook look = lookOf(testing::lightPalette());
    const PlotFace face = layOutPlot(plot, QRectF(0, 0, 500, 300), look);
    const QImage image = painted(plot, look, {500, 300});
    const QPoint tip = face.place({100'001, 8}).toPoint();
    int darkest = 255;
    for (int x = tip.x() - 2; x <= tip.x() + 2; ++x)
        darkest = std::min(darkest, image.pixelColor(x, tip.y()).lightness());
    EXPECT_LT(darkest, 120);
}

TEST(PlotWords, SayLeastAndMost)
{
    const QString words = plotWords(sagPlot(), {});
    EXPECT_TRUE(words.contains(QStringLiteral("Bare neck: least -2.4 mm at 300 mm, most 0 mm at 0 mm.")))
        << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("Saddle at 570 mm.")));
    EXPECT_EQ(pointWords(sagPlot(), {1, 30}, {}),
              QStringLiteral("With a bar. Distance from the nut: 300 mm. Sag: -1.1 mm"));
    EXPECT_TRUE(pointWords(sagPlot(), {9, 0}, {}).isEmpty());
    for (const auto& [name, plot] : strangePlots())
        EXPECT_FALSE(plotWords(plot, {}).isEmpty()) << name;
}

TEST(PlotPicture, WritesSvgAndPngAndNothingElse)
{
    const QTemporaryDir folder;
    const QString svg = folder.filePath(QStringLiteral("a.svg")),
                  png = folder.filePath(QStringLiteral("a.PNG"));
    ASSERT_FALSE(writePlotPicture(sagPlot(), {}, QFont(), svg));
    ASSERT_FALSE(writePlotPicture(sagPlot(), {}, QFont(), png));
    QSvgRenderer reader(svg);
    ASSERT_TRUE(reader.isValid());
    EXPECT_EQ(reader.viewBoxF(), QRectF(0, 0, 1000, 625));
    QFile file(svg);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray text = file.readAll();
    EXPECT_TRUE(text.contains("width=\"200mm\" height=\"125mm\"")) << text.left(300).toStdString();
    EXPECT_TRUE(text.contains("Head-end wall"));
    EXPECT_FALSE(text.contains("nan"));
    const QImage image(png);
    ASSERT_EQ(image.size(), QSize(2000, 1250));
    EXPECT_EQ(image.dotsPerMeterX(), 10'000);
    // Another program's reading of the drawing has its ink where the picture has it.
    QImage drawn(image.size(), QImage::Format_RGB32);
    drawn.fill(Qt::white);
    QPainter painter(&drawn);
    reader.render(&painter);
    painter.end();
    const auto ink = [](const QImage& of) {
        std::vector<int> columns(20);
        for (int y = 0; y < of.height(); y += 2)
            for (int x = 0; x < of.width(); x += 2)
                columns[static_cast<std::size_t>(x / 100)] += 255 - of.pixelColor(x, y).lightness();
        return columns;
    };
    const std::vector<int> a = ink(image), b = ink(drawn);
    for (std::size_t i = 1; i < 19; ++i)
        EXPECT_NEAR(a[i], b[i], 0.35 * a[i] + 4000) << i;
    EXPECT_TRUE(writePlotPicture(sagPlot(), {}, QFont(), folder.filePath(QStringLiteral("a.bmp"))));
    EXPECT_TRUE(writePlotPicture(sagPlot(), {}, QFont(), QStringLiteral("/no/such/folder/a.svg")));
}

}  // namespace
}  // namespace lidwright
