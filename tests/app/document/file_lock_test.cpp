#include "app/document/file_lock.h"

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QFile>
#include <QTemporaryDir>

#include <functional>

namespace lidwright {
namespace {

class FileLocks : public ::testing::Test {
protected:
    void SetUp() override
    {
        QFile file(plan);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    }
    QTemporaryDir dir;
    QString plan = dir.filePath(QStringLiteral("a plan.lidplan"));
};

/// Runs the function in a process of its own; its answer is the exit code.
int inOtherProcess(const std::function<int()>& act)
{
    const pid_t child = ::fork();
    if (child == 0) ::_exit(act());
    int status = 0;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

TEST_F(FileLocks, AnotherProcessIsToldWhoHasIt)
{
    FileLock ours;
    ASSERT_EQ(ours.take(plan), FileLock::Answer::Held);
    EXPECT_EQ(ours.take(plan), FileLock::Answer::Held) << "asking twice does no harm";
    const qint64 us = ::getpid();
    EXPECT_EQ(inOtherProcess([&] {
                  FileLock theirs;
                  if (theirs.take(plan) != FileLock::Answer::Elsewhere) return 1;
                  return theirs.holder().contains(QString::number(us)) ? 0 : 2;
              }),
              0);
    ours.release();
    EXPECT_EQ(inOtherProcess([&] { return FileLock().take(plan) == FileLock::Answer::Held ? 0 : 1; }), 0);
}

TEST_F(FileLocks, ALockOfADeadProcessIsTakenOver)
{
    ASSERT_EQ(inOtherProcess([&] {
                  auto* left = new FileLock;  // never released: the process ends without cleaning up
                  return left->take(plan) == FileLock::Answer::Held ? 0 : 1;
              }),
              0);
    ASSERT_TRUE(QFile::exists(FileLock::lockPath(plan)));
    FileLock ours;
    EXPECT_EQ(ours.take(plan), FileLock::Answer::Held);
}

TEST_F(FileLocks, TwoNamesOfOneFileShareTheLock)
{
    const QString link = dir.filePath(QStringLiteral("link.lidplan"));
    ASSERT_TRUE(QFile::link(plan, link));
    EXPECT_EQ(FileLock::lockPath(plan), FileLock::lockPath(link));
}

TEST_F(FileLocks, AFailedTakeKeepsTheOneHeld)
{
    const QString other = dir.filePath(QStringLiteral("other.lidplan"));
    FileLock a, b;
    ASSERT_EQ(a.take(plan), FileLock::Answer::Held);
    ASSERT_EQ(b.take(other), FileLock::Answer::Held);
    EXPECT_EQ(b.take(plan), FileLock::Answer::Elsewhere);
    EXPECT_TRUE(QFile::exists(FileLock::lockPath(other)));
    EXPECT_EQ(a.take(other), FileLock::Answer::Elsewhere);
    b.release();
    EXPECT_EQ(a.take(other), FileLock::Answer::Held);
    EXPECT_FALSE(QFile::exists(FileLock::lockPath(plan))) << "the one held before is let go";
}

TEST_F(FileLocks, WhereNoLockCanStandNothingIsInTheWay)
{
    EXPECT_EQ(FileLock().take(QStringLiteral("/no/such/folder/a.lidplan")), FileLock::Answer::Impossible);
}

}  // namespace
}  // namespace lidwright
