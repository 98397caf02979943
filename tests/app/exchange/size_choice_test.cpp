#include "app/exchange/size_choice.h"

#include "app/properties/length_edit.h"

#include <gtest/gtest.h>

#include <QRadioButton>
#include <QSignalSpy>
#include <QTest>

namespace lidwright {
namespace {

SvgReading unitless()
{
    SvgReading reading;
    reading.widthUnits = 480;
    reading.heightUnits = 240;
    reading.art.width = 127;
    reading.art.height = 63.5;
    return reading;
}

TEST(SizeChoice, EachChoiceSaysWhatSizeComesOfIt)
{
    SizeChoice choice{UnitStyle()};
    choice.setReading(unitless());
    choice.show();
    EXPECT_TRUE(choice.unitsButton(96)->isChecked());
    // 480 units: 5 in at 96, 5 1/3 in at 90, 6 2/3 in at 72 to the inch.
    EXPECT_TRUE(choice.unitsButton(96)->text().contains(QLatin1String("127")))
        << choice.unitsButton(96)->text().toStdString();
    EXPECT_TRUE(choice.unitsButton(96)->text().contains(QString::fromUtf8("5 \u00d7 2 1/2 in")));
    EXPECT_TRUE(choice.unitsButton(90)->text().contains(QLatin1String("135.5")));
    EXPECT_TRUE(choice.unitsButton(72)->text().contains(QLatin1String("169.3")));

    QSignalSpy chosen(&choice, &SizeChoice::chosen);
    QTest::mouseClick(choice.unitsButton(72), Qt::LeftButton, {},
                      QPoint(8, choice.unitsButton(72)->height() / 2));
    EXPECT_EQ(chosen.count(), 1);
    EXPECT_EQ(choice.options().unitsPerInch, 72);
    EXPECT_FALSE(choice.options().width_mm);
}

TEST(SizeChoice, ATypedWidthIsChosenByTypingIt)
{
    SizeChoice choice{UnitStyle()};
    choice.setReading(unitless());
    choice.show();
    QSignalSpy chosen(&choice, &SizeChoice::chosen);
    choice.widthEdit()->setFocus();
    choice.widthEdit()->selectAll();
    QTest::keyClicks(choice.widthEdit(), QStringLiteral("4 1/2\""));
    QTest::keyClick(choice.widthEdit(), Qt::Key_Return);
    EXPECT_TRUE(choice.widthButton()->isChecked());
    EXPECT_GE(chosen.count(), 1);
    ASSERT_TRUE(choice.options().width_mm);
    EXPECT_DOUBLE_EQ(*choice.options().width_mm, 114.3);

    choice.widthEdit()->selectAll();
    QTest::keyClicks(choice.widthEdit(), QStringLiteral("9 m"));
    QTest::keyClick(choice.widthEdit(), Qt::Key_Return);
    EXPECT_TRUE(choice.widthEdit()->hasError());
    EXPECT_DOUBLE_EQ(*choice.options().width_mm, 114.3);
}

TEST(SizeChoice, AFileThatKnowsItsSizeIsTakenAtItsWord)
{
    SizeChoice choice{UnitStyle()};
    SvgReading reading = unitless();
    reading.hasPhysicalSize = true;
    choice.setReading(reading);
    choice.show();
    EXPECT_FALSE(choice.unitsButton(96)->isVisible());
    EXPECT_FALSE(choice.options().unitsPerInch);
    EXPECT_FALSE(choice.options().width_mm);
}

TEST(SizeChoice, ADxfIsAskedForTheUnitItWasDrawnIn)
{
    SizeChoice choice{UnitStyle{}};
    DrawingReading reading;
    reading.widthUnits = 4;
    reading.heightUnits = 2;
    reading.art.width = 4;
    reading.art.height = 2;
    choice.setReading(reading, true);
    choice.show();
    EXPECT_TRUE(choice.unitsButton(96)->text().contains(QLatin1String("illimetres")));
    EXPECT_TRUE(choice.unitsButton(90)->text().contains(QLatin1String("101.6")));
    ASSERT_TRUE(choice.options().unitsPerInch);
    EXPECT_EQ(*choice.options().unitsPerInch, 25.4);
    choice.unitsButton(90)->setChecked(true);
    EXPECT_EQ(*choice.options().unitsPerInch, 1);
}

}  // namespace
}  // namespace lidwright
