#include "app/paper/print_correction.h"

#include "app/paper/paper_size.h"

#include <gtest/gtest.h>

#include <QTemporaryDir>

#include <limits>

namespace lidwright {
namespace {

TEST(PrintCorrection, IsNominalOverMeasured)
{
    EXPECT_DOUBLE_EQ(*correctionFrom(170, 169), 170.0 / 169);
    EXPECT_DOUBLE_EQ(*correctionFrom(170, 170), 1);
    for (const double measured : {0.0, -170.0, 150.0, 200.0, std::numeric_limits<double>::quiet_NaN(),
                                  std::numeric_limits<double>::infinity()}) {
        const Result<double> refused = correctionFrom(170, measured);
        ASSERT_FALSE(refused.ok()) << measured;
        EXPECT_FALSE(refused.error().mend.empty());
    }
}

TEST(PrintCorrection, KnowsAFittedPage)
{
    // Ratios as print-out over original, computed here from the sizes: A4 210 x 297, letter 215.9 x 279.4 mm.
    for (const double ratio : {279.4 / 297, 210 / 215.9, 204.0 / 210}) {
        EXPECT_FALSE(fittedPageWarning(1 / ratio).isEmpty()) << ratio;
        EXPECT_FALSE(fittedPageWarning(ratio).isEmpty()) << ratio;
    }
    EXPECT_TRUE(fittedPageWarning(1 / (279.4 / 297)).contains(QLatin1String("94.1")));
    for (const double honest : {1.0, 1.003, 0.998, 1.012, 0.985, 1.05})
        EXPECT_TRUE(fittedPageWarning(honest).isEmpty()) << honest;
}

TEST(PrintCorrection, IsKeptForEachPrinterAndPaper)
{
    QTemporaryDir folder;
    Settings settings(folder.filePath(QStringLiteral("s.ini")));
    const QString odd = QStringLiteral("Büro/2. Stock = \"laut\"");
    EXPECT_TRUE(loadCorrection(settings, odd, PaperSize::A4).none());
    const PrintCorrection found{1.0031234567890123, 0.9985, QStringLiteral("2026-03-01")};
    saveCorrection(settings, odd, PaperSize::A4, found);
    EXPECT_EQ(loadCorrection(settings, odd, PaperSize::A4), found);
    EXPECT_TRUE(loadCorrection(settings, odd, PaperSize::Letter).none());
    EXPECT_TRUE(loadCorrection(settings, QStringLiteral("Büro"), PaperSize::A4).none());
    settings.sync();
    const Settings again(settings.fileName());
    EXPECT_EQ(loadCorrection(again, odd, PaperSize::A4), found);
    saveCorrection(settings, odd, PaperSize::A4, {});
    EXPECT_EQ(loadCorrection(settings, odd, PaperSize::A4), PrintCorrection{});
}

TEST(PrintCorrection, IgnoresAStoredOneOutOfRange)
{
    QTemporaryDir folder;
    Settings settings(folder.filePath(QStringLiteral("s.ini")));
    saveCorrection(settings, {}, PaperSize::A4, {1.5, 1, QStringLiteral("2026-03-01")});
    EXPECT_EQ(loadCorrection(settings, {}, PaperSize::A4), PrintCorrection{});
}

TEST(PaperSize, FollowsTheLocale)
{
    for (const char* letter : {"en_US", "en_CA", "fr_CA", "es_MX"})
        EXPECT_EQ(usualPaperSize(QLocale(QLatin1String(letter))), PaperSize::Letter) << letter;
    for (const char* a4 : {"de_DE", "en_GB", "ja_JP", "pt_BR", "C"})
        EXPECT_EQ(usualPaperSize(QLocale(QLatin1String(a4))), PaperSize::A4) << a4;
    for (const PaperFormat& format : paperFormats())
        EXPECT_EQ(paperSizeNamed(format.word), format.size);
    EXPECT_FALSE(paperSizeNamed("a5").has_value());
}

}  // namespace
}  // namespace lidwright
