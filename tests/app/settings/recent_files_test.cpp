#include "app/settings/recent_files.h"

#include <gtest/gtest.h>

#include <QTemporaryDir>

namespace lidwright {
namespace {

TEST(RecentFiles, NewestFirstOnceEachAndNotTooMany)
{
    const QTemporaryDir dir;
    Settings settings(dir.filePath(QStringLiteral("a.ini")));
    RecentFiles recent(settings);
    EXPECT_TRUE(recent.paths().isEmpty());
    for (int i = 0; i < kMostRecentFiles + 5; ++i)
        recent.add(QStringLiteral("/plans/%1.lidplan").arg(i));
    EXPECT_EQ(recent.paths().size(), kMostRecentFiles);
    EXPECT_EQ(recent.paths().first(), QStringLiteral("/plans/%1.lidplan").arg(kMostRecentFiles + 4));
    recent.add(QStringLiteral("/plans/10.lidplan"));
    EXPECT_EQ(recent.paths().first(), "/plans/10.lidplan");
    EXPECT_EQ(recent.paths().count(QStringLiteral("/plans/10.lidplan")), 1);
    recent.remove(QStringLiteral("/plans/10.lidplan"));
    EXPECT_FALSE(recent.paths().contains(QStringLiteral("/plans/10.lidplan")));
    recent.clear();
    EXPECT_TRUE(recent.paths().isEmpty());
}

}  // namespace
}  // namespace lidwright
