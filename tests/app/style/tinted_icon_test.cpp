#include "app/style/verdict_mark.h"
#include "tests/app/style/palettes.h"

#include "core/plan/catalogue.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QImage>

namespace lidwright {
namespace {

using testing::darkPalette;
using testing::lightPalette;

QImage imageOf(const QIcon& icon, int side, QIcon::Mode mode = QIcon::Normal)
{
    return icon.pixmap(QSize(side, side), 1.0, mode).toImage().convertToFormat(QImage::Format_ARGB32);
}

QString iconOfPart(const char* key)
{
    return QStringLiteral("part_") + QString::fromLatin1(key).replace(QLatin1Char('-'), QLatin1Char('_'));
}

TEST(TintedIcon, EveryPartOfTheCatalogueHasItsDrawing)
{
    for (const PartInfo& part : parts()) {
        const QIcon icon = tintedIcon(iconOfPart(part.key), lightPalette());
        ASSERT_FALSE(icon.isNull()) << part.key;
        const QImage image = imageOf(icon, 32);
        int inked = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x)
                inked += image.pixelColor(x, y).alpha() > 128 ? 1 : 0;
        EXPECT_GT(inked, 40) << part.key;
        EXPECT_LT(inked, 700) << part.key;
    }
}

TEST(TintedIcon, NoTwoPartsLookAlike)
{
    std::vector<std::pair<std::string, QImage>> seen;
    for (const PartInfo& part : parts()) {
        const QImage image = imageOf(tintedIcon(iconOfPart(part.key), lightPalette()), 20);
        for (const auto& [name, other] : seen)
            EXPECT_NE(image, other) << part.key << " and " << name;
        seen.emplace_back(part.key, image);
    }
}

TEST(TintedIcon, TakesThePalettesColourForEachState)
{
    for (const QPalette& palette : {lightPalette(), darkPalette()}) {
        const QIcon icon = tintedIcon(QStringLiteral("part_box"), palette);
        const std::pair<QIcon::Mode, QColor> wanted[] = {
            {QIcon::Normal, palette.color(QPalette::WindowText)},
            {QIcon::Selected, palette.color(QPalette::HighlightedText)},
            {QIcon::Disabled, palette.color(QPalette::Disabled, QPalette::WindowText)}};
        for (const auto& [mode, colour] : wanted) {
            const QImage image = imageOf(icon, 48, mode);
            bool solid = false;
            for (int y = 0; y < image.height(); ++y)
                for (int x = 0; x < image.width(); ++x)
                    if (image.pixelColor(x, y).alpha() == 255) {
                        EXPECT_EQ(image.pixelColor(x, y).rgb(), colour.rgb());
                        solid = true;
                    }
            EXPECT_TRUE(solid);
        }
    }
}

TEST(TintedIcon, IsDrawnFreshAtTheSizeAsked)
{
    const QIcon icon = tintedIcon(QStringLiteral("part_bridge"), lightPalette());
    for (const int side : {16, 20, 25, 40, 96})
        EXPECT_EQ(imageOf(icon, side).size(), QSize(side, side));
    EXPECT_EQ(icon.pixmap(QSize(16, 16), 1.5).size(), QSize(24, 24));
}

TEST(TintedIcon, AnUnknownNameGivesNoIcon)
{
    EXPECT_TRUE(tintedIcon(QStringLiteral("no_such_drawing"), lightPalette()).isNull());
    EXPECT_TRUE(tintedIcon(QStringLiteral("../../etc/passwd"), lightPalette()).isNull());
}

}  // namespace
}  // namespace lidwright
