#include "app/exchange/import_artwork_dialog.h"

#include "app/exchange/paint_table.h"
#include "app/exchange/paint_uses_dialog.h"
#include "app/properties/length_edit.h"
#include "tests/app/exchange/drawings.h"
#include "tests/support/plans.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFont>
#include <QPainterPath>
#include <QPushButton>
#include <QRadioButton>
#include <QTest>

namespace lidwright {
namespace {

class ImportArtwork : public ::testing::Test {
protected:
    void open(const char* name)
    {
        dialog = std::make_unique<ImportArtworkDialog>(drawings.path(name), UnitStyle());
        EXPECT_FALSE(button(QDialogButtonBox::Ok)->isEnabled()) << "nothing is read yet";
        dialog->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(dialog.get()));
    }
    bool settled()
    {
        return QTest::qWaitFor([this] { return !dialog->import().busy(); }, 20'000);
    }
    QPushButton* button(QDialogButtonBox::StandardButton which)
    {
        return dialog->findChild<QDialogButtonBox*>()->button(which);
    }
    static void choose(QRadioButton* choice)
    {
        QTest::mouseClick(choice, Qt::LeftButton, {}, QPoint(8, choice->height() / 2));
    }

    testing::Drawings drawings;
    std::unique_ptr<ImportArtworkDialog> dialog;
};

TEST_F(ImportArtwork, AMeasuredDrawingComesInAtItsOwnSize)
{
    open("measured.svg");
    ASSERT_TRUE(settled());
    ASSERT_TRUE(button(QDialogButtonBox::Ok)->isEnabled());
    QTest::mouseClick(button(QDialogButtonBox::Ok), Qt::LeftButton);
    EXPECT_EQ(dialog->result(), QDialog::Accepted);
    const ArtPiece piece = dialog->piece();
    ASSERT_TRUE(piece.art);
    EXPECT_NEAR(piece.art->width, 100, 0.02);
    EXPECT_NEAR(piece.art->height, 40, 0.02);
    EXPECT_EQ(piece.name, "measured");
    EXPECT_EQ(piece.uses, std::vector<ArtUse>{ArtUse::Cut});
}

TEST_F(ImportArtwork, AUnitlessDrawingIsAskedAboutAndReadAnew)
{
    open("unitless.svg");
    ASSERT_TRUE(settled());
    const double at96 = dialog->piece().art->width;
    choose(dialog->import().size().unitsButton(72));
    EXPECT_FALSE(button(QDialogButtonBox::Ok)->isEnabled()) << "not while it is read anew";
    ASSERT_TRUE(settled());
    EXPECT_NEAR(dialog->piece().art->width, at96 * 96 / 72, 0.01);

    LengthEdit* width = dialog->import().size().widthEdit();
    width->setFocus();
    width->selectAll();
    QTest::keyClicks(width, QStringLiteral("8 cm"));
    QTest::keyClick(width, Qt::Key_Return);
    ASSERT_TRUE(settled());
    EXPECT_NEAR(dialog->piece().art->width, 80, 0.01);
    EXPECT_TRUE(dialog->isVisible()) << "Enter in a field does not close the dialog";
}

TEST_F(ImportArtwork, WhatWasLeftOutIsSaid)
{
    open("unitless.svg");
    ASSERT_TRUE(settled());
    ASSERT_FALSE(dialog->import().messages().isEmpty());
    EXPECT_TRUE(dialog->import()
                    .messages()
                    .join(QLatin1Char(' '))
                    .contains(QLatin1String("text"), Qt::CaseInsensitive))
        << dialog->import().messages().join(QLatin1Char('\n')).toStdString();
}

TEST_F(ImportArtwork, LettersAreDrawnByTheFontsOfThisComputer)
{
    open("lettered.svg");
    ASSERT_TRUE(settled());
    const QString said = dialog->import().messages().join(QLatin1Char(' '));
    EXPECT_TRUE(said.contains(QLatin1String("(\"Lid\") was drawn with the font DejaVu Sans")))
        << said.toStdString();
    // Stem of the L, the i without its dot, the dot, the d with its hole.
    QFont font(QStringLiteral("DejaVu Sans"));
    font.setPixelSize(1000);
    QPainterPath word;
    word.addText(0, 0, font, QStringLiteral("Lid"));
    EXPECT_NEAR(dialog->piece().art->width, word.boundingRect().width() * 0.03, 0.03);
    EXPECT_EQ(dialog->piece().art->runs.at(0).painted.rings.size(), 5U);
}

TEST_F(ImportArtwork, UsesChosenByHandSurviveANewSize)
{
    open("unitless.svg");
    ASSERT_TRUE(settled());
    PaintTable& table = dialog->paints();
    ASSERT_EQ(table.rowCount(), 3);
    EXPECT_EQ(table.uses(), firstGuess(*dialog->piece().art));
    QTest::keyClick(table.useBox(0), Qt::Key_End);
    ASSERT_EQ(table.uses()[0], ArtUse::Ignored);
    choose(dialog->import().size().unitsButton(90));
    ASSERT_TRUE(settled());
    EXPECT_EQ(dialog->piece().uses[0], ArtUse::Ignored);
    EXPECT_EQ(dialog->piece().uses.size(), 3u);
}

TEST_F(ImportArtwork, ABrokenDrawingIsSaidAndCannotBeTaken)
{
    open("broken.svg");
    ASSERT_TRUE(settled());
    EXPECT_FALSE(button(QDialogButtonBox::Ok)->isEnabled());
    EXPECT_TRUE(dialog->import().errorText().contains(QLatin1String("broken.svg")))
        << dialog->import().errorText().toStdString();
    QTest::keyClick(dialog.get(), Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
}

TEST_F(ImportArtwork, AMissingFileIsSaid)
{
    open("none.svg");
    ASSERT_TRUE(settled());
    EXPECT_FALSE(dialog->import().errorText().isEmpty());
}

TEST_F(ImportArtwork, CanBeClosedWhileReading)
{
    // Thousands of overlapping discs take a moment.
    QByteArray text =
        R"(<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200">)";
    for (int i = 0; i < 4000; ++i)
        text += QStringLiteral("<circle cx='%1' cy='%2' r='9' fill='#%3'/>")
                    .arg(10 + (i * 37) % 180)
                    .arg(10 + (i * 61) % 180)
                    .arg(i % 7, 6, 16, QLatin1Char('0'))
                    .toLatin1();
    drawings.write("slow.svg", text + "</svg>");
    open("slow.svg");
    QTest::mouseClick(button(QDialogButtonBox::Cancel), Qt::LeftButton);
    EXPECT_EQ(dialog->result(), QDialog::Rejected);
    dialog.reset();
    QThreadPool::globalInstance()->waitForDone();
    QCoreApplication::processEvents();
}

TEST(PaintUses, AreChangedOnAPieceThatIsOnTheLid)
{
    ArtPiece piece = testing::pieceOf({{circleRing({0, 0}, 20)}});
    PaintUsesDialog dialog(piece, {});
    dialog.show();
    EXPECT_EQ(dialog.uses(), piece.uses);
    QTest::keyClick(dialog.paints().useBox(0), Qt::Key_Down);
    QTest::mouseClick(dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok), Qt::LeftButton);
    EXPECT_EQ(dialog.result(), QDialog::Accepted);
    EXPECT_EQ(dialog.uses(), std::vector<ArtUse>{ArtUse::Engraved});
}

}  // namespace
}  // namespace lidwright
