#include "tests/app/commandline/program.h"

#include <QFile>
#include <QImage>
#include <QXmlStreamReader>

namespace lidwright {
namespace {

using testing::run;

class PictureCommand : public testing::ProgramTest {};

TEST_F(PictureCommand, DrawsEveryViewAsPng)
{
    QList<QImage> seen;
    for (const char* view : {"all", "top", "under", "side", "head-end", "tail-end"}) {
        const auto ran =
            run({QStringLiteral("picture"), QStringLiteral("-o"), path("v.png"), QStringLiteral("--view"),
                 QLatin1String(view), QStringLiteral("--width"), QStringLiteral("700"),
                 QStringLiteral("--art"), squareFile() + QStringLiteral(",x=90,y=60,scale=0.5")});
        EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
        const QImage image(path("v.png"));
        EXPECT_EQ(image.width(), 700) << view;
        int dark = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x)
                dark += qGray(image.pixel(x, y)) < 128 ? 1 : 0;
        EXPECT_GT(dark, 500) << view;
        EXPECT_LT(dark, image.width() * image.height() / 2) << view;
        for (const QImage& other : seen)
            EXPECT_NE(image, other) << view << " looks like another view";
        seen << image;
    }
}

TEST_F(PictureCommand, WritesSvgInMillimetres)
{
    EXPECT_EQ(run({QStringLiteral("picture"), QStringLiteral("-o"), path("v.svg"), QStringLiteral("--view"),
                   QStringLiteral("top")})
                  .code,
              0);
    QFile file(path("v.svg"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    QXmlStreamReader reader(&file);
    ASSERT_TRUE(reader.readNextStartElement());
    EXPECT_EQ(reader.name(), QLatin1String("svg"));
    const QString width = reader.attributes().value(QLatin1String("width")).toString();
    EXPECT_TRUE(width.endsWith(QLatin1String("mm"))) << width.toStdString();
    EXPECT_GT(width.chopped(2).toDouble(), 330) << "the lid's length at full size";
    while (!reader.atEnd())
        reader.readNext();
    EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
}

TEST_F(PictureCommand, SettingsShow)
{
    const QStringList base{QStringLiteral("picture"), QStringLiteral("-o"), path("v.svg"),
                           QStringLiteral("--view"), QStringLiteral("top")};
    const auto drawn = [&](const QStringList& more) {
        EXPECT_EQ(run(base + more).code, 0);
        QFile file(path("v.svg"));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    };
    const QByteArray before = drawn({});
    EXPECT_EQ(drawn({}), before) << "the same plan gives the same file";
    EXPECT_NE(drawn({QStringLiteral("--set"), QStringLiteral("box.width=200")}), before);
}

TEST_F(PictureCommand, RefusesBadWords)
{
    const auto refused = [&](const QStringList& words, const char* says) {
        const auto ran = run(QStringList{QStringLiteral("picture")} + words);
        EXPECT_EQ(ran.code, 2) << words.join(QLatin1Char(' ')).toStdString();
        EXPECT_TRUE(ran.says(says)) << ran.err.toStdString();
    };
    refused({}, "-o");
    refused({QStringLiteral("-o"), path("v.gif")}, ".png");
    refused({QStringLiteral("-o"), path("v")}, ".png");
    refused({QStringLiteral("-o"), path("v.png"), QStringLiteral("--view"), QStringLiteral("topp")},
            "did you mean top?");
    for (const char* width : {"0", "-5", "1e9", "wide", "nan"})
        refused({QStringLiteral("-o"), path("v.png"), QStringLiteral("--width"), QLatin1String(width)},
                "pixels");
    refused({QStringLiteral("-o"), path("no/folder/v.png")}, "v.png");
    EXPECT_FALSE(QFile::exists(path("v.png")));
}

}  // namespace
}  // namespace lidwright
