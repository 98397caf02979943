#include "app/settings/setting.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QStringList>
#include <QTemporaryDir>

namespace lidwright {
namespace {

const Setting<int> kWidth{"panel/width", 300};
const Setting<QStringList> kNames{"names", {}};
const Setting<bool> kOn{"on", true};

TEST(Settings, RemembersAcrossSessionsAndWritesNoFallback)
{
    const QTemporaryDir dir;
    const QString file = dir.filePath(QStringLiteral("a.ini"));
    {
        Settings settings(file);
        EXPECT_EQ(settings.read(kWidth), 300);
        EXPECT_TRUE(settings.read(kOn));
        settings.write(kWidth, 250);
        settings.write(kOn, false);
        settings.write(kNames, QStringList{QStringLiteral("one, two"), QStringLiteral("\u00e9")});
    }
    {
        Settings settings(file);
        EXPECT_EQ(settings.read(kWidth), 250);
        EXPECT_FALSE(settings.read(kOn));
        EXPECT_EQ(settings.read(kNames), (QStringList{QStringLiteral("one, two"), QStringLiteral("\u00e9")}));
        settings.write(kWidth, 300);
        settings.write(kNames, QStringList{QStringLiteral("alone")});
    }
    Settings settings(file);
    EXPECT_EQ(settings.read(kNames), QStringList{QStringLiteral("alone")});
    QFile text(file);
    ASSERT_TRUE(text.open(QIODevice::ReadOnly));
    EXPECT_FALSE(text.readAll().contains("width")) << "a value at its fallback is not kept";
}

TEST(Settings, NonsenseInTheFileGivesTheFallbackAndForeignKeysStay)
{
    const QTemporaryDir dir;
    const QString file = dir.filePath(QStringLiteral("a.ini"));
    QFile text(file);
    ASSERT_TRUE(text.open(QIODevice::WriteOnly));
    text.write("[panel]\nwidth=wide\n[later]\nthing=7\n");
    text.close();
    {
        Settings settings(file);
        EXPECT_EQ(settings.read(kWidth), 300);
        settings.write(kWidth, 200);
    }
    ASSERT_TRUE(text.open(QIODevice::ReadOnly));
    EXPECT_TRUE(text.readAll().contains("thing=7"));
}

TEST(Settings, LiveInTheConfigurationFolder)
{
    EXPECT_TRUE(Settings::standardFile().endsWith(QLatin1String("/lidwright/lidwright.ini")));
}

}  // namespace
}  // namespace lidwright
