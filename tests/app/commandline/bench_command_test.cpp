#include "tests/app/commandline/program.h"

#include "core/io/plan/plan_file.h"

#include <QDir>
#include <QFile>

namespace lidwright {
namespace {

using testing::run;

class BenchCommand : public testing::ProgramTest {
protected:
    QString planFile()
    {
        Plan plan;
        plan.holes.resize(1);
        return file("a.lidplan", QByteArray::fromStdString(writePlan(plan)));
    }
};

TEST_F(BenchCommand, WritesEverythingIntoOneFolder)
{
    const auto ran = run({QStringLiteral("bench"), planFile(), QStringLiteral("-o"), path("out/bench"),
                          QStringLiteral("--fineness"), QStringLiteral("coarse"),
                          QStringLiteral("--decimal-comma"), QStringLiteral("--size"), QStringLiteral("a4")});
    ASSERT_EQ(ran.code, 0) << ran.err.toStdString();
    const QStringList files = QDir(path("out/bench")).entryList(QDir::Files);
    EXPECT_EQ(files.size(), 12) << files.join(QLatin1Char(' ')).toStdString();
    for (const QString& name : files)
        EXPECT_TRUE(ran.out.contains(name.toUtf8())) << name.toStdString();
    QFile list(path("out/bench/cut-list.csv"));
    ASSERT_TRUE(list.open(QIODevice::ReadOnly));
    EXPECT_TRUE(list.readLine().contains(';'));
}

TEST_F(BenchCommand, SaysWhatIsMissing)
{
    const QString plan = planFile();
    EXPECT_EQ(run({QStringLiteral("bench"), plan}).code, 2);
    EXPECT_TRUE(run({QStringLiteral("bench"), plan, QStringLiteral("-o"), plan}).says("cannot be made"));
    EXPECT_TRUE(run({QStringLiteral("bench"), plan, QStringLiteral("-o"), path("b"), QStringLiteral("--size"),
                     QStringLiteral("roll")})
                    .says("known are"));
    EXPECT_FALSE(QDir(path("b")).exists()) << "nothing is made before all is known";
}

}  // namespace
}  // namespace lidwright
