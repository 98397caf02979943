#include "app/exchange/cut_file_dialog.h"
#include "tests/app/paper/pdf_tools.h"
#include "tests/app/properties/panel_window.h"
#include "tests/support/plans.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QTemporaryDir>

namespace lidwright {
namespace {

Plan plan()
{
    Plan p;
    p.sheet.title = "Cutter's test";
    p.box.cornerRadius = 0;
    p.art = {testing::pieceOf(fill({rectangleRing({0, 0}, 60, 40)}, FillRule::NonZero))};
    p.art[0].x = 130;
    p.art[0].y = 65;
    return p;
}

TEST(CutFile, ThePdfIsTrueToSize)
{
    const Plan p = plan();
    const auto drawing = composeCutDrawing(p, derive(p), cutJobOf(p, cutPresets().front()));
    ASSERT_TRUE(drawing.ok());
    const auto bytes = cutFileBytes(*drawing, CutFormat::Pdf);
    ASSERT_TRUE(bytes.ok());
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("lid.pdf"));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(*bytes);
    file.close();
    const auto strokes = testing::strokesOf(path, 1);
    EXPECT_EQ(testing::countOf(strokes, 60, true), 2);
    EXPECT_EQ(testing::countOf(strokes, 40, false), 2);
    EXPECT_EQ(testing::countOf(strokes, p.box.length, true), 2 + 3)
        << "two edges, centre line and both neck edges";
    EXPECT_EQ(testing::countOf(strokes, p.box.width, false), 2);
    EXPECT_GE(testing::countOf(strokes, 100, true), 1);
    EXPECT_TRUE(bytes->contains("/PrintScaling /None"));
    // The page is as large as the drawing says.
    const auto boxes = testing::mediaBoxes(path);
    ASSERT_EQ(boxes.size(), 1U);
    EXPECT_NEAR(boxes[0].x * 25.4 / 72, drawing->extent.width(), 0.3);
}

TEST(CutFile, TheEndingChoosesTheFormat)
{
    EXPECT_EQ(cutFormatOf(QStringLiteral("a/b.SVG"), DxfVersion::R12), CutFormat::Svg);
    EXPECT_EQ(cutFormatOf(QStringLiteral("b.dxf"), DxfVersion::R12), CutFormat::DxfR12);
    EXPECT_EQ(cutFormatOf(QStringLiteral("b.dxf"), DxfVersion::R2000), CutFormat::DxfR2000);
    EXPECT_EQ(cutFormatOf(QStringLiteral("b.pdf"), DxfVersion::R2000), CutFormat::Pdf);
    EXPECT_FALSE(cutFormatOf(QStringLiteral("b.png"), DxfVersion::R2000));
}

struct Dialog {
    explicit Dialog(const Plan& p) : dialog(p, derive(p), {})
    {
        dialog.show();
        dialog.askForFile = [this](const QString& suggested) {
            asked = suggested;
            return folder.filePath(suggested);
        };
    }
    QPushButton* button(const QString& text)
    {
        for (QPushButton* b : dialog.findChildren<QPushButton*>())
            if (b->text() == text) return b;
        return nullptr;
    }
    QTemporaryDir folder;
    QString asked;
    CutFileDialog dialog;
};

TEST(CutFileDialog, WritesWhatWasChosenUnderANameThatSaysTheKerf)
{
    Plan p = plan();
    p.cutter.kerf = 0.2;
    p.cutter.compensate = true;
    Dialog d(p);
    EXPECT_EQ(testing::unnamedControls(&d.dialog).join(QLatin1Char(' ')).toStdString(), "");
    QTest::mouseClick(d.button(QStringLiteral("&Write...")), Qt::LeftButton);
    EXPECT_TRUE(d.asked.endsWith(QLatin1String(".svg")));
    EXPECT_TRUE(d.asked.contains(QLatin1String("0.2mm"))) << d.asked.toStdString();
    QFile svg(d.dialog.written());
    ASSERT_TRUE(svg.open(QIODevice::ReadOnly));
    EXPECT_TRUE(svg.readAll().contains("viewBox=\"0 0 "));
    auto* format = d.dialog.findChildren<QComboBox*>()[1];
    for (const char* ending : {".dxf", ".dxf", ".pdf"}) {
        QTest::keyClick(format, Qt::Key_Down);
        QTest::mouseClick(d.button(QStringLiteral("&Write...")), Qt::LeftButton);
        EXPECT_TRUE(d.dialog.written().endsWith(QLatin1String(ending)));
        EXPECT_GT(QFile(d.dialog.written()).size(), 500);
    }
}

TEST(CutFileDialog, SaysWhatToLookOutFor)
{
    Plan p = plan();
    // A hole that reaches over the lid's edge.
    p.holes = {SoundHole{HoleKind::Circle, 2, 60, 30, 60, 0}};
    Dialog d(p);
    auto* list = d.dialog.findChild<QListWidget*>();
    ASSERT_GE(list->count(), 1);
    EXPECT_TRUE(list->item(0)->text().contains(QLatin1String("edge"))) << list->item(0)->text().toStdString();
    p.holes.clear();
    Dialog fine(p);
    EXPECT_EQ(fine.dialog.findChild<QListWidget*>()->item(0)->text(),
              QStringLiteral("Nothing to look out for."));
}

}  // namespace
}  // namespace lidwright
