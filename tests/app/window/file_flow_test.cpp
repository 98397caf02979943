#include "app/document/file_lock.h"
#include "app/document/plan_files.h"
#include "app/document/safe_write.h"
#include "tests/app/window/window_fixture.h"
#include "tests/support/short_disk.h"

#include <QLineEdit>
#include <QPushButton>

namespace lidwright {
namespace {

class Files : public testing::WindowTest {
protected:
    /// A saved plan with this title.
    QString saved(const char* name, const std::string& title)
    {
        Plan plan;
        plan.sheet.title = title;
        EXPECT_FALSE(savePlanFile(plan, at(name)));
        return at(name);
    }
};

TEST_F(Files, TheTitleNamesTheFileAndMarksChanges)
{
    ASSERT_TRUE(window->files().openPath(saved("one.lidplan", "One")));
    EXPECT_TRUE(window->windowTitle().contains(QLatin1String("one.lidplan")));
    EXPECT_FALSE(window->isWindowModified());
    edit(300);
    EXPECT_TRUE(window->isWindowModified());
    document().undoStack().undo();
    EXPECT_FALSE(window->isWindowModified());
}

TEST_F(Files, SavingAsksForANameOnceOnly)
{
    document().edit({{"sheet.title", std::string("My: box / one")}}, QStringLiteral("title"));
    chosenPath = at("named");
    QTest::keyClick(window.get(), Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(suggestedPath, "My- box - one.lidplan") << "no character that a file name must not have";
    EXPECT_EQ(document().filePath(), at("named.lidplan")) << "the ending is added";
    EXPECT_FALSE(document().modified());
    chosenPath.clear();
    edit(300);
    QTest::keyClick(window.get(), Qt::Key_S, Qt::ControlModifier);
    EXPECT_FALSE(document().modified());
    EXPECT_EQ(openPlanFile(at("named.lidplan"))->plan, document().plan());
    EXPECT_EQ(window->files().recent().paths(), QStringList{at("named.lidplan")});
}

TEST_F(Files, GoingBackFromTheNameQuestionChangesNothing)
{
    edit(300);
    chosenPath.clear();
    EXPECT_FALSE(window->files().save());
    EXPECT_TRUE(document().modified());
}

TEST_F(Files, AFailedSaveIsSaidAndAnotherNameOffered)
{
    ASSERT_TRUE(window->files().openPath(saved("one.lidplan", "One")));
    edit(300);
    {
        const testing::ShortDisk full(10);
        EXPECT_FALSE(window->files().save());
    }
    EXPECT_TRUE(document().modified());
    ASSERT_EQ(notices().size(), 1);
    EXPECT_EQ(openPlanFile(at("one.lidplan"))->plan.box.length, Plan{}.box.length);
    chosenPath = at("two.lidplan");
    QTest::mouseClick(window->notices().findChild<QPushButton*>(), Qt::LeftButton);
    EXPECT_FALSE(document().modified());
    EXPECT_EQ(document().filePath(), at("two.lidplan"));
    EXPECT_TRUE(notices().isEmpty()) << notices().join(QLatin1Char('\n')).toStdString();
}

TEST_F(Files, ClosingAsksAndNamesTheFile)
{
    ASSERT_TRUE(window->files().openPath(saved("one.lidplan", "One")));
    edit(300);
    QString question;
    EXPECT_TRUE(whenAsked(click(QMessageBox::Cancel, &question), [this] { window->close(); }));
    EXPECT_TRUE(question.contains(QLatin1String("one.lidplan"))) << question.toStdString();
    EXPECT_TRUE(window->isVisible());
    EXPECT_TRUE(document().modified());

    EXPECT_TRUE(whenAsked(click(QMessageBox::Discard), [this] { window->close(); }));
    EXPECT_FALSE(window->isVisible());
    EXPECT_EQ(openPlanFile(at("one.lidplan"))->plan.box.length, Plan{}.box.length);
}

TEST_F(Files, ClosingCanSaveFirst)
{
    ASSERT_TRUE(window->files().openPath(saved("one.lidplan", "One")));
    edit(300);
    EXPECT_TRUE(whenAsked(click(QMessageBox::Save), [this] { window->close(); }));
    EXPECT_FALSE(window->isVisible());
    EXPECT_EQ(openPlanFile(at("one.lidplan"))->plan.box.length, 300);
}

TEST_F(Files, ClosingStaysWhenTheSaveFails)
{
    ASSERT_TRUE(window->files().openPath(saved("one.lidplan", "One")));
    edit(300);
    const testing::ShortDisk full(10);
    EXPECT_TRUE(whenAsked(click(QMessageBox::Save), [this] { window->close(); }));
    EXPECT_TRUE(window->isVisible());
}

TEST_F(Files, ClosingUnchangedAsksNothing)
{
    EXPECT_FALSE(whenAsked([](QDialog* dialog) { dialog->reject(); }, [this] { window->close(); }));
    EXPECT_FALSE(window->isVisible());
}

TEST_F(Files, WhatIsTypedBelongsToTheSavedPlan)
{
    ASSERT_TRUE(window->files().openPath(saved("one.lidplan", "One")));
    document().select(QStringLiteral("box"));
    QTest::mouseClick(window->firstSteps().findChildren<QAbstractButton*>().first(), Qt::LeftButton);
    auto* field = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    ASSERT_NE(field, nullptr);
    field->selectAll();
    QTest::keyClicks(field, QStringLiteral("12\""));
    QTest::keyClick(field, Qt::Key_S, Qt::ControlModifier);
    EXPECT_DOUBLE_EQ(openPlanFile(at("one.lidplan"))->plan.box.length, 304.8);
}

TEST_F(Files, NewAndOpenAskAboutUnsavedWork)
{
    edit(300);
    EXPECT_TRUE(whenAsked(click(QMessageBox::Cancel), [this] { action(Command::New)->trigger(); }));
    EXPECT_EQ(document().plan().box.length, 300);
    chosenPath = saved("one.lidplan", "One");
    int asked = 0;
    whenAsked(
        [&](QDialog* dialog) {
            ++asked;
            click(QMessageBox::Discard)(dialog);
        },
        [this] { action(Command::Open)->trigger(); });
    EXPECT_EQ(asked, 1);
    EXPECT_EQ(document().plan().sheet.title, "One");
}

TEST_F(Files, ABadFileIsSaidAndTheBoardStaysAsItWas)
{
    ASSERT_TRUE(window->files().openPath(saved("one.lidplan", "One")));
    ASSERT_FALSE(writeFileSafely(at("bad.lidplan"), "no plan"));
    EXPECT_FALSE(window->files().openPath(at("bad.lidplan")));
    ASSERT_EQ(notices().size(), 1);
    EXPECT_TRUE(notices().first().contains(QLatin1String("bad.lidplan"))) << notices().first().toStdString();
    EXPECT_EQ(document().plan().sheet.title, "One");
    EXPECT_EQ(document().filePath(), at("one.lidplan"));
    EXPECT_TRUE(window->files().openPath(at("one.lidplan")));
    EXPECT_TRUE(notices().isEmpty()) << "an old message does not concern the new plan";
}

TEST_F(Files, APlanThatIsOpenElsewhereComesAsACopy)
{
    const QString path = saved("one.lidplan", "One");
    FileLock other;
    ASSERT_EQ(other.take(path), FileLock::Answer::Held);
    EXPECT_TRUE(window->files().openPath(path));
    EXPECT_EQ(document().filePath(), "");
    ASSERT_EQ(notices().size(), 1);
    edit(300);
    // Save As always works: under another name without a question, over the same one after a question.
    chosenPath = at("two.lidplan");
    EXPECT_TRUE(window->files().save());
    edit(301);
    chosenPath = path;
    EXPECT_TRUE(whenAsked(click(QMessageBox::Cancel), [this] { window->files().saveAs(); }));
    EXPECT_EQ(openPlanFile(path)->plan.box.length, Plan{}.box.length);
    const auto replace = [](QDialog* dialog) {
        auto* box = qobject_cast<QMessageBox*>(dialog);
        for (QAbstractButton* button : box->buttons())
            if (box->buttonRole(button) == QMessageBox::DestructiveRole)
                QTest::mouseClick(button, Qt::LeftButton);
    };
    EXPECT_TRUE(whenAsked(replace, [this] { window->files().saveAs(); }));
    EXPECT_EQ(openPlanFile(path)->plan.box.length, 301);
}

TEST_F(Files, AFileChangedBySomethingElseIsNotReplacedUnasked)
{
    const QString path = saved("one.lidplan", "One");
    ASSERT_TRUE(window->files().openPath(path));
    edit(300);
    Plan theirs;
    theirs.sheet.title = "Theirs";
    ASSERT_FALSE(savePlanFile(theirs, path));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    ASSERT_TRUE(
        file.setFileTime(QDateTime::currentDateTime().addSecs(60), QFileDevice::FileModificationTime));
    file.close();
    EXPECT_TRUE(whenAsked(click(QMessageBox::Cancel), [this] { window->files().save(); }));
    EXPECT_EQ(openPlanFile(path)->plan.sheet.title, "Theirs");
    EXPECT_TRUE(document().modified());
}

TEST_F(Files, LostWorkIsOfferedAndRestored)
{
    const QString path = saved("one.lidplan", "One");
    // What a session that ended badly has left: an autosave whose owner is gone.
    {
        PlanDocument lost;
        Autosave autosave(lost, recovery());
        lost.reset(openPlanFile(path)->plan, path);
        lost.edit({{"box.length", 311.0}}, QStringLiteral("length"));
        autosave.keepNow();
    }
    window->offerLeftOvers();
    ASSERT_EQ(notices().size(), 1);
    EXPECT_TRUE(notices().first().contains(QLatin1String("one.lidplan")));
    const auto buttons = window->notices().findChildren<QPushButton*>();
    ASSERT_EQ(buttons.size(), 2);
    QTest::mouseClick(buttons[0], Qt::LeftButton);
    EXPECT_EQ(document().plan().box.length, 311);
    EXPECT_EQ(document().filePath(), path);
    EXPECT_TRUE(document().modified()) << "it is not in the file yet";
    EXPECT_EQ(openPlanFile(path)->plan.box.length, Plan{}.box.length);
    EXPECT_TRUE(window->files().save());
    EXPECT_EQ(openPlanFile(path)->plan.box.length, 311);
    EXPECT_TRUE(Autosave::leftOvers(recovery()).empty());
}

TEST_F(Files, LostWorkCanBeDiscarded)
{
    {
        PlanDocument lost;
        Autosave autosave(lost, recovery());
        lost.edit({{"box.length", 311.0}}, QStringLiteral("length"));
        autosave.keepNow();
    }
    window->offerLeftOvers();
    QTest::mouseClick(window->notices().findChildren<QPushButton*>().at(1), Qt::LeftButton);
    EXPECT_TRUE(notices().isEmpty());
    EXPECT_TRUE(Autosave::leftOvers(recovery()).empty());
    EXPECT_EQ(document().plan(), Plan{});
}

TEST_F(Files, ClosingInOrderLeavesNothingToRestore)
{
    edit(300);
    window->autosave().keepNow();
    EXPECT_TRUE(whenAsked(click(QMessageBox::Discard), [this] { window->close(); }));
    window.reset();
    EXPECT_TRUE(Autosave::leftOvers(recovery()).empty());
}

}  // namespace
}  // namespace lidwright
