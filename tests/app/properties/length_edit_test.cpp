#include "app/properties/length_edit.h"

#include "app/style/verdict_mark.h"
#include "tests/app/properties/panel_window.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QWheelEvent>

namespace lidwright {
namespace {

using testing::ActiveWindow;

/// A length field beside another one that can take the keyboard, and somebody who accepts what is typed.
struct Field {
    explicit Field(UnitStyle s = {}, double least = 0, double most = 2000)
        : style(s),
          edit(new LengthEdit(least, most, style)),
          other(new QLineEdit),
          window(column(), {300, 100})
    {
        QObject::connect(edit, &TypedEdit::committed, edit, [this](const ParameterValue& value, bool step) {
            accepted.push_back(std::get<double>(value));
            steps.push_back(step);
            edit->setValue(value, style);
        });
        QObject::connect(edit, &TypedEdit::errorChanged, edit,
                         [this](const QString& message) { messages << message; });
        edit->setFocus();
    }
    QWidget* column() const
    {
        auto* content = new QWidget;
        auto* lines = new QVBoxLayout(content);
        lines->addWidget(edit);
        lines->addWidget(other);
        return content;
    }
    void set(double value) { edit->setValue(value, style); }

    UnitStyle style;
    std::vector<double> accepted;
    std::vector<bool> steps;
    QStringList messages;
    LengthEdit* edit;
    QLineEdit* other;
    ActiveWindow window;
};

UnitStyle fractions()
{
    UnitStyle style;
    style.unit = LengthUnit::InchFraction;
    return style;
}

void wheel(QWidget* widget, int eighths, Qt::KeyboardModifiers keys = Qt::NoModifier)
{
    const QPointF at = widget->rect().center();
    QWheelEvent event(at, widget->mapToGlobal(at), {}, QPoint(0, eighths), Qt::NoButton, keys,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(widget, &event);
}

struct Typed {
    const char* text;
    double millimetres;
};

TEST(LengthEdit, ReadsWhatMakersType)
{
    // From the table of length entries that every field must know; inches are 25.4 mm exactly.
    const Typed rows[] = {{"25 1/2\"", 647.7},
                          {"25-1/2\"", 647.7},
                          {"25.5in", 647.7},
                          {"25,5\"", 647.7},
                          {"648mm", 648},
                          {"3/4\"", 19.05},
                          {"1' 2 3/8\"", 365.125},
                          {"9/64\"", 3.571875},
                          {"64,8 cm", 648},
                          {"600+48", 648},
                          {"40", 40}};
    for (const Typed& row : rows) {
        Field field;
        field.set(100);
        testing::type(field.edit, QString::fromUtf8(row.text));
        ASSERT_EQ(field.accepted.size(), 1u) << row.text;
        EXPECT_NEAR(field.accepted[0], row.millimetres, 1e-9) << row.text;
        EXPECT_FALSE(field.steps[0]);
    }
}

TEST(LengthEdit, ABareNumberIsInTheUnitInUse)
{
    Field field(fractions());
    field.set(100);
    testing::type(field.edit, QStringLiteral("25 1/2"));
    ASSERT_EQ(field.accepted.size(), 1u);
    EXPECT_NEAR(field.accepted[0], 647.7, 1e-9);
    EXPECT_EQ(field.edit->text().toStdString(), "25 1/2 in");
}

TEST(LengthEdit, OpeningAndClosingAThousandTimesChangesNothing)
{
    for (const UnitStyle& style : {UnitStyle{}, fractions()}) {
        Field field(style);
        const double odd = 647.123456789012345;
        field.set(odd);
        EXPECT_TRUE(field.edit->text().startsWith(QChar(0x2248))) << "the text is rounded";
        for (int i = 0; i < 1000; ++i) {
            field.other->setFocus();
            field.edit->setFocus();
            if (i % 3 == 0) QTest::keyClick(field.edit, Qt::Key_Return);
        }
        field.other->setFocus();
        EXPECT_TRUE(field.accepted.empty());
        EXPECT_EQ(field.edit->millimetres(), odd) << "bit for bit";
    }
}

TEST(LengthEdit, TypingTheSameRoundedTextAgainChangesNothing)
{
    Field field(fractions());
    field.set(648);
    const QString shown = field.edit->text();
    QTest::keyClick(field.edit, Qt::Key_End);
    QTest::keyClick(field.edit, Qt::Key_Space);
    QTest::keyClick(field.edit, Qt::Key_Backspace);
    ASSERT_EQ(field.edit->text(), shown);
    QTest::keyClick(field.edit, Qt::Key_Return);
    EXPECT_TRUE(field.accepted.empty());
    EXPECT_EQ(field.edit->millimetres(), 648);
}

TEST(LengthEdit, TheMarkOfARoundedValueMayStandBeforeNewDigits)
{
    Field field;
    field.set(648.04);
    ASSERT_TRUE(field.edit->text().startsWith(QChar(0x2248)));
    // "≈ 648 mm" becomes "≈ 658 mm".
    field.edit->setSelection(field.edit->text().indexOf(QLatin1Char('4')), 1);
    QTest::keyClicks(field.edit, QStringLiteral("5"));
    QTest::keyClick(field.edit, Qt::Key_Return);
    EXPECT_EQ(field.accepted, std::vector<double>{658}) << field.edit->text().toStdString();
    // And the bad part is still found behind it.
    field.set(648.04);
    field.edit->setSelection(field.edit->text().indexOf(QLatin1Char('4')), 1);
    QTest::keyClicks(field.edit, QStringLiteral("x"));
    QTest::keyClick(field.edit, Qt::Key_Return);
    EXPECT_EQ(field.edit->selectedText().toStdString(), "x8");
}

TEST(LengthEdit, ABadTextStaysMarkedWithItsBadPartSelected)
{
    Field field;
    field.set(100);
    testing::type(field.edit, QStringLiteral("40 + abc"));
    EXPECT_TRUE(field.accepted.empty());
    EXPECT_TRUE(field.edit->hasError());
    EXPECT_EQ(field.edit->text().toStdString(), "40 + abc");
    EXPECT_EQ(field.edit->selectedText().toStdString(), "abc");
    ASSERT_FALSE(field.messages.isEmpty());
    EXPECT_FALSE(field.messages.last().isEmpty());
    EXPECT_EQ(field.edit->accessibleDescription(), field.messages.last());

    field.other->setFocus();
    EXPECT_EQ(field.edit->text().toStdString(), "40 + abc") << "leaving the field keeps the text";
    EXPECT_TRUE(field.edit->hasError());

    // Typing over the selected part mends it.
    field.edit->setFocus();
    field.edit->setSelection(5, 3);
    QTest::keyClicks(field.edit, QStringLiteral("2"));
    EXPECT_FALSE(field.edit->hasError());
    EXPECT_TRUE(field.messages.last().isEmpty());
    QTest::keyClick(field.edit, Qt::Key_Return);
    EXPECT_EQ(field.accepted, std::vector<double>{42});
}

TEST(LengthEdit, TheBadPartIsFoundBehindSignsOfSeveralBytes)
{
    Field field;
    field.set(100);
    testing::type(field.edit, QStringLiteral("½\" + xyz"));
    EXPECT_TRUE(field.edit->hasError());
    EXPECT_EQ(field.edit->selectedText().toStdString(), "xyz");
}

TEST(LengthEdit, EscBringsTheOldValueBack)
{
    Field field;
    field.set(647.123456789);
    testing::type(field.edit, QStringLiteral("nonsense"));
    ASSERT_TRUE(field.edit->hasError());
    QTest::keyClick(field.edit, Qt::Key_Escape);
    EXPECT_FALSE(field.edit->hasError());
    EXPECT_EQ(field.edit->text().toStdString(), "≈ 647.1 mm");
    field.other->setFocus();
    EXPECT_TRUE(field.accepted.empty());
    EXPECT_EQ(field.edit->millimetres(), 647.123456789);
}

TEST(LengthEdit, GroupedDigitsAreRefusedAndExplained)
{
    Field field;
    field.set(100);
    testing::type(field.edit, QStringLiteral("1,000"));
    EXPECT_TRUE(field.edit->hasError());
    EXPECT_TRUE(field.messages.last().contains(QStringLiteral("1000")))
        << field.messages.last().toStdString();
}

TEST(LengthEdit, EveryUselessTextIsRefusedAndNoneIsTaken)
{
    for (const char* text : {"", " ", "mm", "\"", "1/0", "(", ")", "((((", "--", "1..2", "5 furlongs",
                             "1e999", "25-1/2mm and more", "💥"}) {
        Field field;
        field.set(100);
        testing::type(field.edit, QString::fromUtf8(text));
        EXPECT_TRUE(field.accepted.empty()) << text;
        EXPECT_TRUE(field.edit->hasError()) << text;
        QTest::keyClick(field.edit, Qt::Key_Escape);
        EXPECT_EQ(field.edit->text().toStdString(), "100 mm");
    }
}

TEST(LengthEdit, ArrowKeysStepByTheUnit)
{
    Field field;
    field.set(100);
    QTest::keyClick(field.edit, Qt::Key_Up);
    QTest::keyClick(field.edit, Qt::Key_Up, Qt::ShiftModifier);
    QTest::keyClick(field.edit, Qt::Key_Down);
    QTest::keyClick(field.edit, Qt::Key_PageDown);
    EXPECT_EQ(field.accepted, (std::vector<double>{101, 111, 110, 100}));
    EXPECT_TRUE(field.steps[0]);

    Field inches(fractions());
    inches.set(25.4);
    QTest::keyClick(inches.edit, Qt::Key_Up);
    ASSERT_EQ(inches.accepted.size(), 1u);
    EXPECT_DOUBLE_EQ(inches.accepted[0], 25.4 + 25.4 / 16);
    EXPECT_EQ(inches.edit->text().toStdString(), "1 1/16 in");
}

TEST(LengthEdit, StepsStayWithinTheRange)
{
    Field field({}, 30, 100);
    field.set(99.5);
    QTest::keyClick(field.edit, Qt::Key_Up);
    QTest::keyClick(field.edit, Qt::Key_Up);
    EXPECT_EQ(field.accepted, std::vector<double>{100}) << "the second step has no room";
}

TEST(LengthEdit, AHundredStepsOfATenthAreTenMillimetres)
{
    Field field({}, 0, 10);
    field.set(0);
    for (int i = 0; i < 100; ++i)
        QTest::keyClick(field.edit, Qt::Key_Up);
    EXPECT_EQ(field.edit->millimetres(), 10);
}

TEST(LengthEdit, TheWheelStepsOnlyWithTheKeyboardInTheField)
{
    Field field;
    field.set(100);
    field.other->setFocus();
    wheel(field.edit, 120);
    EXPECT_TRUE(field.accepted.empty()) << "scrolling past a field leaves it alone";
    EXPECT_FALSE(field.edit->hasFocus());
    field.edit->setFocus();
    ASSERT_TRUE(field.edit->hasFocus());
    wheel(field.edit, 120);
    wheel(field.edit, -240);
    wheel(field.edit, 60);
    wheel(field.edit, 60);
    EXPECT_EQ(field.accepted, (std::vector<double>{101, 99, 100}));
}

TEST(LengthEdit, ARefusedValueIsMarkedByWhoRefusesIt)
{
    Field field;
    field.set(100);
    field.edit->disconnect(field.edit);
    QObject::connect(field.edit, &TypedEdit::committed, field.edit, [&field](const ParameterValue&, bool) {
        field.edit->markError(Error{"5 m is out of range", "neck.width", "stay below 150 mm"});
    });
    testing::type(field.edit, QStringLiteral("5000"));
    EXPECT_TRUE(field.edit->hasError());
    EXPECT_EQ(field.edit->text().toStdString(), "5000");
    EXPECT_EQ(field.edit->selectedText().toStdString(), "5000");
    EXPECT_EQ(field.edit->millimetres(), 100);
    EXPECT_EQ(field.edit->accessibleDescription().toStdString(), "5 m is out of range. Stay below 150 mm");
}

TEST(LengthEdit, WhatIsBeingTypedSurvivesAChangeElsewhere)
{
    Field field;
    field.set(100);
    QTest::keyClick(field.edit, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(field.edit, QStringLiteral("12"));
    field.set(105);
    EXPECT_EQ(field.edit->text().toStdString(), "12");
    QTest::keyClick(field.edit, Qt::Key_Escape);
    EXPECT_EQ(field.edit->text().toStdString(), "105 mm") << "the old value is the plan's value now";
}

TEST(LengthEdit, LeavesUndoToThePlanUntilSomethingIsTyped)
{
    Field field;
    field.set(100);
    QKeyEvent first(QEvent::ShortcutOverride, Qt::Key_Z, Qt::ControlModifier);
    first.ignore();
    QApplication::sendEvent(field.edit, &first);
    EXPECT_FALSE(first.isAccepted());
    QTest::keyClicks(field.edit, QStringLiteral("7"));
    QKeyEvent second(QEvent::ShortcutOverride, Qt::Key_Z, Qt::ControlModifier);
    second.ignore();
    QApplication::sendEvent(field.edit, &second);
    EXPECT_TRUE(second.isAccepted());
}

}  // namespace
}  // namespace lidwright
