#include "app/properties/part_form.h"

#include "app/properties/choice_edit.h"
#include "app/properties/parameter_editor.h"
#include "app/properties/parameter_row.h"
#include "tests/app/properties/panel_window.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QToolButton>

namespace lidwright {
namespace {

using testing::ActiveWindow;
using testing::fullPlan;

struct Form {
    explicit Form(const char* part, const Plan& plan = fullPlan(), QSize size = {300, 600})
        : form(new PartForm(document)), window(form, size)
    {
        document.reset(plan, {});
        document.select(QLatin1String(part));
    }
    /// All words that the form shows now.
    QString words() const
    {
        QStringList all;
        for (const QLabel* label : form->findChildren<QLabel*>())
            if (label->isVisibleTo(form)) all << label->text();
        return all.join(QLatin1Char('\n')).replace(QChar(QChar::Nbsp), QLatin1Char(' '));
    }
    QLineEdit* line(const char* key) const { return form->findChild<QLineEdit*>(QLatin1String(key)); }
    QPushButton* button(const QString& text) const
    {
        for (QPushButton* b : form->findChildren<QPushButton*>())
            if (b->text() == text && b->isVisibleTo(form)) return b;
        return nullptr;
    }

    PlanDocument document;
    PartForm* form;
    ActiveWindow window;
};

TEST(PartForm, HasARowForEveryQuantityOfThePartInOrder)
{
    const Form f("neck");
    const auto refs = parametersOf(f.document.plan(), "neck");
    ASSERT_EQ(f.form->rows().size(), refs.size());
    for (std::size_t i = 0; i < refs.size(); ++i)
        EXPECT_EQ(f.form->rows()[i]->ref(), refs[i]);
}

TEST(PartForm, WithNoPartItSaysWhatToDo)
{
    const Form f("");
    EXPECT_TRUE(f.words().contains(QStringLiteral("No part is selected")));
}

TEST(PartForm, ASilencedQuantityShowsWhatItComesOutAsAndWhy)
{
    Form f("scale");
    ASSERT_TRUE(f.document.edit({{"scale.saddle-to-tail", 110.0}}, QStringLiteral("Move")));
    ASSERT_TRUE(f.document.edit({{"scale.hold", 1.0}}, QStringLiteral("Hold")));
    const QLineEdit* field = f.line("scale.nut-to-box");
    EXPECT_FALSE(field->isEnabled());
    EXPECT_TRUE(f.words().contains(QStringLiteral("Follows while what is held is \u201csaddle")))
        << f.words().toStdString();
    const double toBox = f.document.layout().headWall.outerX - f.document.layout().nutX;
    const QString shown = QString::fromStdString(spoken(mm(toBox), f.document.style()));
    EXPECT_EQ(field->text(), shown);
    ASSERT_TRUE(f.document.edit({{"scale.hold", 0.0}}, QStringLiteral("Hold")));
    EXPECT_TRUE(field->isEnabled());
    EXPECT_EQ(field->text().toStdString(), "400 mm") << "what was entered is still there";
}

TEST(PartForm, AValueOutOfRangeStaysInItsFieldWithTheReason)
{
    Form f("neck");
    QLineEdit* width = f.line("neck.width");
    width->setFocus();
    testing::type(width, QStringLiteral("3000"));
    EXPECT_EQ(f.document.plan().neck.width, Neck{}.width);
    EXPECT_EQ(width->text().toStdString(), "3000");
    EXPECT_TRUE(f.words().contains(QStringLiteral("3000 mm is out of range"))) << f.words().toStdString();
    EXPECT_TRUE(f.words().contains(QStringLiteral("between 10 mm and 150 mm")));
    EXPECT_EQ(f.document.undoStack().count(), 0);
    QTest::keyClick(width, Qt::Key_Escape);
    EXPECT_EQ(width->text().toStdString(), "38 mm");
    EXPECT_FALSE(f.words().contains(QStringLiteral("out of range")));
}

TEST(PartForm, AnUnusualValueIsTakenAndSaidToBeUnusual)
{
    Form f("neck");
    QLineEdit* width = f.line("neck.width");
    width->setFocus();
    EXPECT_FALSE(f.words().contains(QStringLiteral("outside")));
    testing::type(width, QStringLiteral("60"));
    EXPECT_EQ(f.document.plan().neck.width, 60);
    EXPECT_TRUE(f.words().contains(QStringLiteral("usual 32 to 50 mm; this is outside")));
}

TEST(PartForm, TheWayBackToTheDefaultShowsOnlyWhereThereIsOne)
{
    Form f("neck");
    ParameterRow* row = f.form->row(QStringLiteral("neck.width"));
    auto* reset = row->findChild<QToolButton*>(QStringLiteral("reset"));
    ASSERT_NE(reset, nullptr);
    EXPECT_FALSE(reset->isVisible());
    ASSERT_TRUE(f.document.edit({{"neck.width", 44.0}}, QStringLiteral("Wider")));
    EXPECT_TRUE(reset->isVisible());
    EXPECT_TRUE(reset->toolTip().contains(QStringLiteral("38 mm")));
    reset->setFocus();
    QTest::keyClick(reset, Qt::Key_Space);
    EXPECT_EQ(f.document.plan().neck.width, 38);
    EXPECT_FALSE(reset->isVisible());
    EXPECT_TRUE(f.line("neck.width")->hasFocus());
}

TEST(PartForm, AnotherUnitChangesTextsAndNoValue)
{
    Plan plan = fullPlan();
    plan.neck.width = 38.123456789;
    Form f("neck", plan);
    const QString before = f.line("neck.width")->text();
    ASSERT_TRUE(f.document.edit({{"sheet.unit", 2.0}}, QStringLiteral("Inches")));
    EXPECT_NE(f.line("neck.width")->text(), before);
    EXPECT_TRUE(f.line("neck.width")->text().endsWith(QStringLiteral(" in")));
    for (ParameterRow* row : f.form->rows()) {
        row->takeFocus();
        QTest::keyClick(row->editor().widget(), Qt::Key_Return);
    }
    Plan after = f.document.plan();
    after.sheet.unit = plan.sheet.unit;
    EXPECT_EQ(after, plan);
    EXPECT_EQ(f.document.undoStack().count(), 1);
}

TEST(PartForm, WhatFollowsIsCoresOwnAnswer)
{
    Form f("neck");
    for (const DerivedValue& value : values(f.document.plan(), f.document.layout())) {
        if (value.key != "neck.needed") continue;
        EXPECT_TRUE(f.words().contains(QString::fromStdString(value.label)));
        EXPECT_TRUE(f.words().contains(QString::fromStdString(spoken(value.measure, f.document.style()))));
        return;
    }
    FAIL() << "core has no neck.needed";
}

TEST(PartForm, WhatFollowsComesAndGoesWithWhatItIsAbout)
{
    Form f("bridge");
    const QString distance = QStringLiteral("Bridge to the nearest artwork or hole");
    EXPECT_TRUE(f.words().contains(distance));
    Plan bare = f.document.plan();
    bare.art.clear();
    bare.holes.clear();
    f.document.replace(bare, QStringLiteral("Bare lid"));
    EXPECT_FALSE(f.words().contains(distance));
    f.document.undoStack().undo();
    EXPECT_TRUE(f.words().contains(distance));
}

TEST(PartForm, TypedTextIsTakenWhenAnotherPartIsSelected)
{
    Form f("neck");
    QLineEdit* width = f.line("neck.width");
    width->setFocus();
    QTest::keyClick(width, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(width, QStringLiteral("41"));
    f.document.select(QStringLiteral("lid"));
    EXPECT_EQ(f.document.plan().neck.width, 41);
    EXPECT_EQ(f.document.undoStack().undoText().toStdString(), "Set neck width to 41 mm");
}

TEST(PartForm, AnUndoThatTakesThePartAwayIsSafeWhileSomethingIsTyped)
{
    Form f("lid");
    ASSERT_TRUE(f.document.edit({{"hole.count", 3.0}}, QStringLiteral("More")));
    f.document.select(QStringLiteral("hole.3"));
    auto* x = f.line("hole.3.x");
    ASSERT_NE(x, nullptr);
    x->setFocus();
    QTest::keyClick(x, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(x, QStringLiteral("99"));
    f.document.undoStack().undo();
    EXPECT_EQ(f.document.plan().holes.size(), 2u);
    EXPECT_EQ(f.document.plan(), fullPlan());
    EXPECT_TRUE(f.document.undoStack().canRedo()) << "no edit was made behind the undo";
    f.document.undoStack().redo();
    EXPECT_EQ(f.document.plan().holes.size(), 3u);
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
}

TEST(PartForm, StepsMergeIntoOneUndoStep)
{
    Form f("neck");
    QLineEdit* width = f.line("neck.width");
    width->setFocus();
    for (int i = 0; i < 5; ++i)
        QTest::keyClick(width, Qt::Key_Up);
    EXPECT_EQ(f.document.plan().neck.width, 43);
    EXPECT_EQ(f.document.undoStack().count(), 1);
    EXPECT_EQ(f.document.undoStack().undoText().toStdString(), "Set neck width to 43 mm");
}

TEST(PartForm, ButtonsOfListsAndMembersSayWhatIsWanted)
{
    Form f("hole");
    QSignalSpy added(f.form, &PartForm::addWanted);
    QTest::mouseClick(f.button(QStringLiteral("Add a plain hole")), Qt::LeftButton);
    ASSERT_EQ(added.size(), 1);
    EXPECT_EQ(added[0][0].toString().toStdString(), "hole");

    f.document.select(QStringLiteral("art.1"));
    QSignalSpy uses(f.form, &PartForm::paintUsesWanted);
    QSignalSpy removed(f.form, &PartForm::removeWanted);
    QTest::mouseClick(f.button(QStringLiteral("Uses of the paints...")), Qt::LeftButton);
    QTest::mouseClick(f.button(QStringLiteral("Remove")), Qt::LeftButton);
    EXPECT_EQ(uses.size(), 1);
    EXPECT_EQ(removed.size(), 1);

    f.document.select(QStringLiteral("box"));
    QSignalSpy outline(f.form, &PartForm::boxOutlineWanted);
    QTest::mouseClick(f.button(QStringLiteral("Outline from a drawing...")), Qt::LeftButton);
    EXPECT_EQ(outline.size(), 1);

    Form empty("art", Plan{});
    EXPECT_TRUE(empty.words().contains(QStringLiteral("There is no artwork yet")));
    EXPECT_NE(empty.button(QStringLiteral("Add artwork...")), nullptr);
}

TEST(PartForm, ADragShowsItsWayAndSettlesAfterwards)
{
    Form f("scale");
    f.document.beginDrag();
    f.document.previewDrag(Drag{{{"scale.nut-to-box", 390.0}}, {}, {}});
    EXPECT_EQ(f.line("scale.nut-to-box")->text().toStdString(), "390 mm");
    f.document.cancelDrag();
    EXPECT_EQ(f.line("scale.nut-to-box")->text().toStdString(), "400 mm");
}

TEST(PartForm, RowsTakeNoMoreHeightThanTheyNeed)
{
    const Form f("scale", fullPlan(), {300, 900});
    QTest::qWait(1);
    for (const ParameterRow* row : f.form->rows())
        EXPECT_LE(row->height(), row->layout()->heightForWidth(row->width()) + 1) << row->ref().key();
}

TEST(PartForm, NoLineOfALabelIsCutOff)
{
    Plan plan = fullPlan();
    plan.sheet.unit = PlanUnit::InchFraction;
    plan.neck.blankLength = 700;
    for (const PartInfo& part : parts()) {
        // As tall as the scrolled form gets: it is not squeezed in the window.
        const Form f(part.key, plan, {300, 2400});
        QTest::qWait(1);
        for (const QLabel* label : f.form->findChildren<QLabel*>()) {
            if (label->isVisibleTo(f.form) && label->wordWrap()) {
                EXPECT_GE(label->height(), label->heightForWidth(label->width()))
                    << label->text().toStdString();
            }
        }
    }
}

TEST(PartForm, TheLongestChoiceIsSeenWhole)
{
    const Form f("scale");
    QTest::qWait(1);
    const auto* choice = f.form->findChild<ChoiceEdit*>(QStringLiteral("scale.hold"));
    ASSERT_NE(choice, nullptr);
    EXPECT_GE(choice->width(), choice->wantedWidth());
}

TEST(PartForm, NothingIsWiderThanANarrowPanelEvenInLargeType)
{
    const QFont before = QApplication::font();
    QFont large = before;
    for (const double size : {9.0, 20.0}) {
        large.setPointSizeF(size);
        QApplication::setFont(large);
        for (const PartInfo& part : parts()) {
            const Form f(part.key, fullPlan(), {280, 900});
            f.form->resize(280, 900);
            EXPECT_LE(f.form->minimumSizeHint().width(), 280) << part.key << " at " << size;
        }
    }
    QApplication::setFont(before);
}

}  // namespace
}  // namespace lidwright
