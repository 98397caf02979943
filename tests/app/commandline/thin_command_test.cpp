#include "tests/app/commandline/program.h"

#include <QFile>
#include <QJsonArray>

namespace lidwright {
namespace {

using testing::run;

class ThinCommand : public testing::ProgramTest {
protected:
    /// Two slots 2 mm apart, 40 mm long, and a ring whose middle falls out; in millimetres.
    QString drawing() const
    {
        return file(
            "thin.svg",
            "<svg xmlns='http://www.w3.org/2000/svg' width='120mm' height='40mm' viewBox='0 0 120 40'>"
            "<path d='M5 5h40v10h-40z M5 17h40v10h-40z'/>"
            "<path fill-rule='evenodd' d='M70 20a15 15 0 1 0 30 0a15 15 0 1 0-30 0z M75 20a10 10 0 1 0 20 "
            "0a10 "
            "10 0 1 0-20 0z'/></svg>");
    }
};

TEST_F(ThinCommand, ListsWebsAndPiecesThatFallOut)
{
    const auto ran = run({QStringLiteral("thin"), QStringLiteral("--art"),
                          drawing() + QStringLiteral(",x=150,y=62"), QStringLiteral("--json")});
    EXPECT_EQ(ran.code, 1) << ran.err.toStdString();
    const QJsonObject json = ran.json();
    const QJsonArray webs = json[QStringLiteral("webs")].toArray();
    ASSERT_EQ(webs.size(), 1);
    EXPECT_NEAR(webs[0][QStringLiteral("width")].toDouble(), 2, 1e-3);
    EXPECT_EQ(webs[0][QStringLiteral("verdict")].toString(), QStringLiteral("wrong"));
    EXPECT_NEAR(webs[0][QStringLiteral("angleToGrain")].toDouble(), 0, 1e-6);
    EXPECT_GT(webs[0][QStringLiteral("breaksAt")][QStringLiteral("value")].toDouble(), 0);
    const QJsonArray drops = json[QStringLiteral("dropOuts")].toArray();
    ASSERT_EQ(drops.size(), 1);
    EXPECT_NEAR(drops[0][QStringLiteral("loose")][QStringLiteral("value")].toDouble(), 3.14159265 * 100, 1);
    EXPECT_TRUE(json[QStringLiteral("kerfClosings")].isArray());
}

TEST_F(ThinCommand, MendedItFindsNothing)
{
    const auto ran = run({QStringLiteral("thin"), QStringLiteral("--art"),
                          drawing() + QStringLiteral(",x=150,y=62,strengthen=8 mm,ties=2"),
                          QStringLiteral("--set"), QStringLiteral("cutter.tie-width=9 mm")});
    EXPECT_EQ(ran.code, 0) << ran.out.toStdString() << ran.err.toStdString();
    EXPECT_TRUE(ran.out.startsWith("no wood is thinner than")) << ran.out.toStdString();
}

TEST_F(ThinCommand, CsvHasAHeadAndARowForEach)
{
    const auto ran = run({QStringLiteral("thin"), QStringLiteral("--art"),
                          drawing() + QStringLiteral(",x=150,y=62"), QStringLiteral("--csv")});
    const QList<QByteArray> lines = ran.out.trimmed().split('\n');
    ASSERT_EQ(lines.size(), 3);
    const auto columns = lines[0].count(',');
    for (const QByteArray& line : lines)
        EXPECT_EQ(line.count(','), columns);
}

class LidCommand : public ThinCommand {};

TEST_F(LidCommand, WritesEveryFormatAndRefusesOthers)
{
    for (const char* name : {"lid.svg", "lid.dxf", "lid.pdf"}) {
        const QString out = path(name);
        const auto ran = run({QStringLiteral("lid"), QStringLiteral("--art"),
                              drawing() + QStringLiteral(",x=150,y=62"), QStringLiteral("-o"), out});
        EXPECT_EQ(ran.code, 0) << name << ran.err.toStdString();
        EXPECT_GT(QFile(out).size(), 1000) << name;
    }
    EXPECT_EQ(run({QStringLiteral("lid"), QStringLiteral("-o"), path("lid.bmp")}).code, 2);
    EXPECT_EQ(run({QStringLiteral("lid")}).code, 2);
    EXPECT_EQ(run({QStringLiteral("lid"), QStringLiteral("-o"), path("a.svg"), QStringLiteral("--preset"),
                   QStringLiteral("no such shop")})
                  .code,
              2);
    EXPECT_EQ(run({QStringLiteral("lid"), QStringLiteral("-o"), path("a.dxf"), QStringLiteral("--dxf"),
                   QStringLiteral("r14")})
                  .code,
              2);
}

TEST_F(LidCommand, PresetsArePrintedEditedAndRead)
{
    const auto printed = run({QStringLiteral("lid"), QStringLiteral("--print-presets")});
    ASSERT_EQ(printed.code, 0);
    QByteArray table = printed.out;
    ASSERT_TRUE(table.contains("#ff0000"));
    table.replace("#ff0000", "#12ab9f");
    const QString presets = file("own.csv", table);
    const QString out = path("own.svg");
    const auto ran =
        run({QStringLiteral("lid"), QStringLiteral("--presets"), presets, QStringLiteral("-o"), out});
    EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
    QFile svg(out);
    ASSERT_TRUE(svg.open(QIODevice::ReadOnly));
    EXPECT_TRUE(svg.readAll().contains("#12ab9f"));
    const auto bad = run({QStringLiteral("lid"), QStringLiteral("--presets"),
                          file("bad.csv", "preset,operation\na,b\n"), QStringLiteral("-o"), out});
    EXPECT_EQ(bad.code, 2);
    EXPECT_TRUE(bad.says("bad.csv"));
}

}  // namespace
}  // namespace lidwright
