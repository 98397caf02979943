#include "app/document/autosave.h"

#include "app/document/plan_document.h"
#include "app/document/plan_files.h"

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QDir>
#include <QFileInfo>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

namespace lidwright {
namespace {

class AutosaveTest : public ::testing::Test {
protected:
    QStringList files() const { return QDir(folder).entryList(QDir::Files | QDir::Hidden, QDir::Name); }
    QTemporaryDir dir;
    QString folder = dir.filePath(QStringLiteral("state/recovery"));
    PlanDocument document;
};

TEST_F(AutosaveTest, KeepsAChangedPlanAfterAWhile)
{
    Autosave autosave(document, folder);
    EXPECT_GE(Autosave::kDelay_ms, 30'000);
    EXPECT_LE(Autosave::kDelay_ms, 60'000);
    autosave.setDelay(20);
    QSignalSpy kept(&autosave, &Autosave::kept);
    document.reset(Plan{}, QStringLiteral("/home/maker/my box.lidplan"));
    QTest::qWait(100);
    EXPECT_EQ(kept.count(), 0) << "nothing to keep while nothing is changed";
    document.edit({{"box.length", 321.0}}, QStringLiteral("shorter"));
    ASSERT_TRUE(kept.wait(10'000));
    const auto opened = openPlanFile(autosave.planFile());
    ASSERT_TRUE(opened.ok());
    EXPECT_EQ(opened->plan, document.plan());
    EXPECT_TRUE(autosave.planFile().startsWith(folder));
}

TEST_F(AutosaveTest, IsDeletedWhenThePlanIsSavedOrClosed)
{
    Autosave autosave(document, folder);
    const auto keep = [&](double length) {
        QSignalSpy kept(&autosave, &Autosave::kept);
        document.edit({{"box.length", length}}, QStringLiteral("length"));
        autosave.keepNow();
        ASSERT_TRUE(kept.wait(10'000));
        ASSERT_FALSE(files().isEmpty());
    };
    keep(301);
    document.markSaved(dir.filePath(QStringLiteral("a.lidplan")));
    EXPECT_EQ(files(), QStringList());
    keep(302);
    document.undoStack().undo();
    EXPECT_EQ(files(), QStringList()) << "back at what the file holds";
    keep(303);
    autosave.discard();
    EXPECT_EQ(files(), QStringList());
    document.edit({{"box.length", 304.0}}, QStringLiteral("length"));
    autosave.keepNow();
    autosave.discard();
    EXPECT_EQ(files(), QStringList()) << "also what was just being written";
}

TEST_F(AutosaveTest, WaitsForTheEndOfADrag)
{
    Autosave autosave(document, folder);
    document.edit({{"box.length", 300.0}}, QStringLiteral("length"));
    document.beginDrag();
    document.previewDrag({{{"box.width", 100.0}}, {}, {}});
    autosave.keepNow();
    document.cancelDrag();
    QSignalSpy kept(&autosave, &Autosave::kept);
    autosave.keepNow();
    ASSERT_TRUE(kept.wait(10'000));
    EXPECT_EQ(kept.count(), 1);
    EXPECT_EQ(openPlanFile(autosave.planFile())->plan, document.plan());
}

TEST_F(AutosaveTest, WhatAKilledProcessLeftIsOfferedOnce)
{
    const pid_t child = ::fork();
    if (child == 0) {
        // A second life of this program, cut off in the middle.
        PlanDocument lost;
        Autosave autosave(lost, folder);
        lost.reset(Plan{}, QStringLiteral("/home/maker/my box.lidplan"));
        lost.edit({{"sheet.title", std::string("Lost and found")}}, QStringLiteral("title"));
        QSignalSpy kept(&autosave, &Autosave::kept);
        autosave.keepNow();
        kept.wait(10'000);
        ::kill(::getpid(), SIGKILL);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    ASSERT_TRUE(WIFSIGNALED(status));

    auto found = Autosave::leftOvers(folder);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].originalPath, "/home/maker/my box.lidplan");
    EXPECT_EQ(found[0].title, "Lost and found");
    EXPECT_EQ(openPlanFile(found[0].planFile)->plan.sheet.title, "Lost and found");
    EXPECT_EQ(Autosave::leftOvers(folder).size(), 0u) << "it is being offered already";

    // Restored: this session goes on in the same file, and saving deletes it.
    Autosave autosave(document, folder);
    document.reset(openPlanFile(found[0].planFile)->plan, {});
    autosave.adopt(std::move(found[0]));
    document.markUnsaved();
    EXPECT_EQ(Autosave::leftOvers(folder).size(), 0u);
    EXPECT_TRUE(QFileInfo::exists(autosave.planFile()));
    document.markSaved(dir.filePath(QStringLiteral("a.lidplan")));
    EXPECT_EQ(files(), QStringList());
}

TEST_F(AutosaveTest, WhatIsDiscardedOrLeftForLater)
{
    {
        Autosave autosave(document, folder);
        document.edit({{"box.length", 300.0}}, QStringLiteral("length"));
        autosave.keepNow();
        EXPECT_EQ(Autosave::leftOvers(folder).size(), 0u) << "its session is alive";
    }
    {
        const auto later = Autosave::leftOvers(folder);
        ASSERT_EQ(later.size(), 1u);
    }
    auto found = Autosave::leftOvers(folder);
    ASSERT_EQ(found.size(), 1u) << "what nobody answered is offered again";
    found[0].discard();
    found.clear();
    EXPECT_EQ(files(), QStringList());
}

TEST_F(AutosaveTest, AFolderThatCannotBeMadeIsSaidOnce)
{
    Autosave autosave(document, QStringLiteral("/proc/no-such-folder"));
    QSignalSpy failed(&autosave, &Autosave::failed);
    document.edit({{"box.length", 300.0}}, QStringLiteral("length"));
    autosave.keepNow();
    ASSERT_TRUE(failed.wait(10'000));
    document.edit({{"box.length", 301.0}}, QStringLiteral("length"));
    autosave.keepNow();
    QTest::qWait(100);
    EXPECT_EQ(failed.count(), 1);
}

TEST(AutosaveFolder, FollowsTheStateFolder)
{
    const QByteArray before = qgetenv("XDG_STATE_HOME");
    qputenv("XDG_STATE_HOME", "/somewhere/state");
    EXPECT_EQ(Autosave::standardFolder(), "/somewhere/state/lidwright/recovery");
    qputenv("XDG_STATE_HOME", "relative/state");
    EXPECT_EQ(Autosave::standardFolder(), QDir::homePath() + "/.local/state/lidwright/recovery");
    qunsetenv("XDG_STATE_HOME");
    EXPECT_EQ(Autosave::standardFolder(), QDir::homePath() + "/.local/state/lidwright/recovery");
    if (!before.isNull()) qputenv("XDG_STATE_HOME", before);
}

}  // namespace
}  // namespace lidwright
