#include "app/document/safe_write.h"

#include "tests/support/short_disk.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

namespace lidwright {
namespace {

QByteArray content(const QString& path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray("(none)");
}

TEST(SafeWrite, WritesAndReadsBack)
{
    const QTemporaryDir dir;
    const QString path = dir.filePath(QStringLiteral("a"));
    EXPECT_FALSE(writeFileSafely(path, "one"));
    EXPECT_EQ(content(path), "one");
    EXPECT_FALSE(writeFileSafely(path, {}));
    EXPECT_EQ(content(path), "");
}

TEST(SafeWrite, AFullDiskKeepsTheOldFile)
{
    const QTemporaryDir dir;
    const QString path = dir.filePath(QStringLiteral("a"));
    ASSERT_FALSE(writeFileSafely(path, "good"));
    {
        const testing::ShortDisk full(4096);
        // One large write, of which the disk takes the beginning: the case that QSaveFile does not notice.
        const auto error = writeFileSafely(path, QByteArray(100'000, 'x'));
        ASSERT_TRUE(error);
        EXPECT_FALSE(error->what.empty());
        EXPECT_FALSE(error->mend.empty());
    }
    EXPECT_EQ(content(path), "good");
    EXPECT_EQ(QDir(dir.path()).entryList(QDir::Files | QDir::Hidden).size(), 1) << "no partial file stays";
}

TEST(SafeWrite, APlaceThatCannotBeWrittenIsSaid)
{
    for (const char* path : {"/proc/no-such-folder/a", "/dev/null/a", "/no/such/folder/a"}) {
        const auto error = writeFileSafely(QLatin1String(path), "text");
        ASSERT_TRUE(error) << path;
        EXPECT_NE(error->text().find(path), std::string::npos);
    }
    const QTemporaryDir dir;
    EXPECT_TRUE(writeFileSafely(dir.path(), "text")) << "a folder is no file";
}

TEST(SafeWrite, LinksAreFollowedAndRightsKept)
{
    const QTemporaryDir dir;
    const QString real = dir.filePath(QStringLiteral("real")), link = dir.filePath(QStringLiteral("link"));
    ASSERT_FALSE(writeFileSafely(real, "one"));
    ASSERT_TRUE(QFile::setPermissions(real, QFile::ReadOwner | QFile::WriteOwner));
    ASSERT_TRUE(QFile::link(real, link));
    ASSERT_FALSE(writeFileSafely(link, "two"));
    EXPECT_EQ(content(real), "two");
    EXPECT_TRUE(QFileInfo(link).isSymLink());
    struct stat status {};
    ASSERT_EQ(::stat(real.toLocal8Bit().constData(), &status), 0);
    EXPECT_EQ(status.st_mode & 0777, 0600u);
}

TEST(ReadWhole, TakesOrdinaryFilesWithinTheLimitOnly)
{
    const QTemporaryDir dir;
    const QString path = dir.filePath(QStringLiteral("a"));
    ASSERT_FALSE(writeFileSafely(path, "12345"));
    EXPECT_EQ(*readWholeFile(path, 5), "12345");
    EXPECT_FALSE(readWholeFile(path, 4));
    EXPECT_FALSE(readWholeFile(dir.path(), 100));
    EXPECT_FALSE(readWholeFile(dir.filePath(QStringLiteral("none")), 100));
    EXPECT_FALSE(readWholeFile(QStringLiteral("/dev/zero"), 100));
    // Opening a pipe that nobody writes to would wait for ever.
    const QString pipe = dir.filePath(QStringLiteral("pipe"));
    ASSERT_EQ(::mkfifo(pipe.toLocal8Bit().constData(), 0600), 0);
    EXPECT_FALSE(readWholeFile(pipe, 100));
}

}  // namespace
}  // namespace lidwright
