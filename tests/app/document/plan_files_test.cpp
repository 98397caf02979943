#include "app/document/plan_files.h"

#include "app/document/safe_write.h"
#include "tests/support/plans.h"
#include "tests/support/random_plan.h"
#include "tests/support/short_disk.h"

#include "core/io/plan/plan_file.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>

namespace lidwright {
namespace {

class PlanFiles : public ::testing::Test {
protected:
    QString at(const char* name) const { return m_dir.filePath(QLatin1String(name)); }
    static Plan titled(const std::string& title)
    {
        Plan plan;
        plan.sheet.title = title;
        plan.art = {testing::pieceOf({{circleRing({0, 0}, 20)}})};
        return plan;
    }
    static std::string titleIn(const QString& path)
    {
        const auto opened = openPlanFile(path);
        return opened ? opened->plan.sheet.title : "(" + opened.error().text() + ")";
    }
    QTemporaryDir m_dir;
};

TEST_F(PlanFiles, ASavedPlanOpensAsTheSamePlan)
{
    testing::RandomPlans random(7);
    for (int i = 0; i < 20; ++i) {
        const Plan plan = random.next();
        const auto failed = savePlanFile(plan, at("a.lidplan"));
        ASSERT_FALSE(failed) << failed->text();
        const auto opened = openPlanFile(at("a.lidplan"));
        ASSERT_TRUE(opened.ok()) << opened.error().text();
        EXPECT_EQ(opened->plan, plan);
    }
}

TEST_F(PlanFiles, TheLastVersionStaysBesideTheFile)
{
    ASSERT_FALSE(savePlanFile(titled("first"), at("a.lidplan")));
    EXPECT_FALSE(QFileInfo::exists(at("a.lidplan~"))) << "there is no last version yet";
    ASSERT_FALSE(savePlanFile(titled("second"), at("a.lidplan")));
    ASSERT_FALSE(savePlanFile(titled("third"), at("a.lidplan")));
    EXPECT_EQ(titleIn(at("a.lidplan")), "third");
    EXPECT_EQ(titleIn(at("a.lidplan~")), "second");
    EXPECT_EQ(QDir(m_dir.path()).entryList(QDir::Files | QDir::Hidden).size(), 2);
}

TEST_F(PlanFiles, AFailingSaveLeavesTheFileAsItWas)
{
    ASSERT_FALSE(savePlanFile(titled("first"), at("a.lidplan")));
    ASSERT_FALSE(savePlanFile(titled("second"), at("a.lidplan")));
    {
        // Enough for the backup of the small file, too little for the large one.
        const auto room = static_cast<rlim_t>(QFileInfo(at("a.lidplan")).size() + 100);
        const testing::ShortDisk full(room);
        Plan large = titled("third");
        large.sheet.notes = std::string(15'000, 'n');
        const auto failed = savePlanFile(large, at("a.lidplan"));
        ASSERT_TRUE(failed);
        EXPECT_NE(failed->text().find("a.lidplan"), std::string::npos);
    }
    EXPECT_EQ(titleIn(at("a.lidplan")), "second");
    EXPECT_EQ(titleIn(at("a.lidplan~")), "second");
    {
        const testing::ShortDisk full(10);
        ASSERT_TRUE(savePlanFile(titled("fourth"), at("a.lidplan")));
        ASSERT_TRUE(savePlanFile(titled("fourth"), at("new.lidplan")));
    }
    EXPECT_EQ(titleIn(at("a.lidplan")), "second");
    EXPECT_FALSE(QFileInfo::exists(at("new.lidplan")));
    EXPECT_EQ(QDir(m_dir.path()).entryList(QDir::Files | QDir::Hidden).size(), 2) << "nothing lies about";
}

TEST_F(PlanFiles, WhatIsNoPlanIsRefusedUntouched)
{
    const std::pair<const char*, QByteArray> cases[] = {
        {"empty", ""},
        {"text", "hello"},
        {"cut short", QByteArray::fromStdString(writePlan(titled("x"))).left(200)},
        {"other format", R"({"format":"something else","schemaVersion":1})"},
        {"newer", QByteArray::fromStdString(writePlan(titled("x")))
                      .replace("\"version\": 1", "\"version\": 99")
                      .replace("\"formatVersion\": 1", "\"formatVersion\": 99")},
        {"bytes", QByteArray(2000, '\0')},
    };
    for (const auto& [name, bytes] : cases) {
        if (std::string_view(name) == "newer" && !bytes.contains("99")) continue;
        ASSERT_FALSE(writeFileSafely(at("bad.lidplan"), bytes));
        const auto opened = openPlanFile(at("bad.lidplan"));
        ASSERT_FALSE(opened.ok()) << name;
        EXPECT_NE(opened.error().text().find("bad.lidplan"), std::string::npos) << opened.error().text();
        EXPECT_EQ(*readWholeFile(at("bad.lidplan"), 1 << 20), bytes);
    }
    EXPECT_FALSE(openPlanFile(at("none.lidplan")));
    EXPECT_FALSE(openPlanFile(m_dir.path()));
}

TEST_F(PlanFiles, AFileBeyondTheLimitIsRefusedUnread)
{
    QFile file(at("huge.lidplan"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    ASSERT_TRUE(file.resize(static_cast<qint64>(kPlanFileLimit) + 1));  // sparse: takes no room
    file.close();
    const auto opened = openPlanFile(at("huge.lidplan"));
    ASSERT_FALSE(opened.ok());
    EXPECT_NE(opened.error().text().find("256"), std::string::npos) << opened.error().text();
}

TEST_F(PlanFiles, NamesGetTheEndingWhenTheyHaveNone)
{
    EXPECT_EQ(withPlanSuffix(QStringLiteral("/a/b")), "/a/b.lidplan");
    EXPECT_EQ(withPlanSuffix(QStringLiteral("/a/b.lidplan")), "/a/b.lidplan");
    EXPECT_EQ(withPlanSuffix(QStringLiteral("/a/b.json")), "/a/b.json");
    EXPECT_EQ(withPlanSuffix({}), "");
}

}  // namespace
}  // namespace lidwright
