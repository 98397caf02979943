#include "app/properties/choice_edit.h"
#include "app/properties/flag_edit.h"
#include "app/properties/notes_edit.h"
#include "app/properties/number_edit.h"
#include "app/properties/text_edit.h"
#include "tests/app/properties/panel_window.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QWheelEvent>

namespace lidwright {
namespace {

using testing::ActiveWindow;

const Parameter& parameter(const char* key)
{
    for (const Parameter& p : catalogue())
        if (std::string_view(p.key) == key) return p;
    ADD_FAILURE() << key;
    return catalogue().front();
}

void wheelDown(QWidget* widget)
{
    const QPointF at = widget->rect().center();
    QWheelEvent event(at, widget->mapToGlobal(at), {}, QPoint(0, -120), Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(widget, &event);
}

std::vector<double> numbersTyped(const char* key, const char* text, double before)
{
    auto* edit = new NumberEdit(parameter(key), UnitStyle{});
    ActiveWindow window(edit, {200, 60});
    std::vector<double> taken;
    QObject::connect(edit, &TypedEdit::committed, edit, [&](const ParameterValue& value, bool) {
        taken.push_back(std::get<double>(value));
        edit->setValue(value, UnitStyle{});
    });
    edit->setValue(before, UnitStyle{});
    edit->setFocus();
    testing::type(edit, QString::fromUtf8(text));
    return taken;
}

TEST(NumberEdit, ReadsAnglesRatiosAndCounts)
{
    EXPECT_EQ(numbersTyped("bridge.angle", "2.5", 0), std::vector<double>{2.5});
    EXPECT_EQ(numbersTyped("bridge.angle", "-3°", 0), std::vector<double>{-3});
    EXPECT_EQ(numbersTyped("art.#.scale", "1/2", 1), std::vector<double>{0.5});
    EXPECT_EQ(numbersTyped("strings.count", "6", 4), std::vector<double>{6});
}

TEST(NumberEdit, RefusesUnitsOfLength)
{
    EXPECT_TRUE(numbersTyped("bridge.angle", "3 mm", 0).empty());
    EXPECT_TRUE(numbersTyped("strings.count", "three", 4).empty());
}

TEST(NumberEdit, StepsByOneDegreeOnePieceOrAHundredth)
{
    const std::pair<const char*, double> rows[] = {
        {"bridge.angle", 2}, {"strings.count", 2}, {"art.#.scale", 1.01}};
    for (const auto& [key, wanted] : rows) {
        auto* edit = new NumberEdit(parameter(key), UnitStyle{});
        ActiveWindow window(edit, {200, 60});
        QSignalSpy taken(edit, &TypedEdit::committed);
        edit->setValue(1.0, UnitStyle{});
        edit->setFocus();
        QTest::keyClick(edit, Qt::Key_Up);
        ASSERT_EQ(taken.size(), 1) << key;
        EXPECT_DOUBLE_EQ(std::get<double>(taken[0][0].value<ParameterValue>()), wanted) << key;
    }
}

TEST(ChoiceEdit, TheWheelNeverChangesIt)
{
    auto* edit = new ChoiceEdit(parameter("scale.hold").choices);
    ActiveWindow window(edit, {200, 60});
    QSignalSpy taken(edit, &ChoiceEdit::committed);
    edit->setValue(0);
    wheelDown(edit);
    edit->setFocus();
    wheelDown(edit);
    EXPECT_EQ(edit->currentIndex(), 0);
    EXPECT_TRUE(taken.isEmpty());
}

TEST(ChoiceEdit, KeysChooseAndWhatIsRefusedGoesBack)
{
    auto* edit = new ChoiceEdit(parameter("scale.hold").choices);
    ActiveWindow window(edit, {200, 60});
    QSignalSpy taken(edit, &ChoiceEdit::committed);
    edit->setValue(0);
    edit->setFocus();
    QTest::keyClick(edit, Qt::Key_Down);
    ASSERT_EQ(taken.size(), 1);
    EXPECT_EQ(taken[0][0].toDouble(), 1);
    EXPECT_EQ(edit->currentIndex(), 0) << "nobody took the choice";
}

TEST(FlagEdit, SpaceTogglesItAndItSaysSo)
{
    auto* edit = new FlagEdit;
    ActiveWindow window(edit, {200, 60});
    QSignalSpy taken(edit, &FlagEdit::committed);
    QObject::connect(edit, &FlagEdit::committed, edit, &FlagEdit::setValue);
    edit->setValue(0);
    EXPECT_EQ(edit->text().toStdString(), "no");
    edit->setFocus();
    QTest::keyClick(edit, Qt::Key_Space);
    EXPECT_EQ(taken.size(), 1);
    EXPECT_TRUE(edit->isChecked());
    EXPECT_EQ(edit->text().toStdString(), "yes");
}

TEST(TextEdit, TakesWhatIsTypedAndEscBringsItBack)
{
    auto* edit = new TextEdit(200, UnitStyle{});
    ActiveWindow window(edit, {200, 60});
    QSignalSpy taken(edit, &TypedEdit::committed);
    edit->setValue(std::string("Old"), UnitStyle{});
    edit->setFocus();
    QTest::keyClicks(edit, QStringLiteral(" name"));
    QTest::keyClick(edit, Qt::Key_Escape);
    EXPECT_EQ(edit->text().toStdString(), "Old");
    EXPECT_TRUE(taken.isEmpty());
    testing::type(edit, QStringLiteral("Vögel 3 mm"));
    ASSERT_EQ(taken.size(), 1);
    EXPECT_EQ(std::get<std::string>(taken[0][0].value<ParameterValue>()), "Vögel 3 mm");
}

TEST(TextEdit, ALineBreakFromAFileIsNotLostByLookingAtIt)
{
    auto* edit = new TextEdit(200, UnitStyle{});
    ActiveWindow window(edit, {200, 60});
    QSignalSpy taken(edit, &TypedEdit::committed);
    edit->setValue(std::string("two\nlines"), UnitStyle{});
    edit->setFocus();
    QTest::keyClick(edit, Qt::Key_Return);
    EXPECT_TRUE(taken.isEmpty());
    EXPECT_EQ(std::get<std::string>(edit->value()), "two\nlines");
}

TEST(NotesEdit, TakesSeveralLinesWhenTheKeyboardLeaves)
{
    auto* content = new QWidget;
    auto* lines = new QVBoxLayout(content);
    auto* notes = new NotesEdit;
    auto* other = new QLineEdit;
    lines->addWidget(notes);
    lines->addWidget(other);
    ActiveWindow window(content, {300, 200});
    QStringList taken;
    QObject::connect(notes, &NotesEdit::committed, notes, [&](const QString& text) {
        taken << text;
        notes->setValue(text);
    });
    notes->setValue(QStringLiteral("first"));
    notes->setFocus();
    QTest::keyClick(notes, Qt::Key_End);
    QTest::keyClick(notes, Qt::Key_Return);
    QTest::keyClicks(notes, QStringLiteral("second"));
    notes->setValue(QStringLiteral("changed elsewhere"));
    EXPECT_EQ(notes->toPlainText().toStdString(), "first\nsecond");
    other->setFocus();
    EXPECT_EQ(taken, QStringList{QStringLiteral("first\nsecond")});
    // Looking again changes nothing, Esc forgets.
    notes->setFocus();
    QTest::keyClicks(notes, QStringLiteral("x"));
    QTest::keyClick(notes, Qt::Key_Escape);
    other->setFocus();
    EXPECT_EQ(taken.size(), 1);
    EXPECT_EQ(notes->toPlainText().toStdString(), "first\nsecond");
}

}  // namespace
}  // namespace lidwright
