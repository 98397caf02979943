#include "tests/app/commandline/program.h"

#include <QJsonArray>

namespace lidwright {
namespace {

using testing::run;

class ArtCommand : public testing::ProgramTest {};

TEST_F(ArtCommand, GivesSizeAreasAndUses)
{
    const auto ran = run({QStringLiteral("art"), squareFile(), QStringLiteral("--json")});
    EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
    const QJsonObject json = ran.json();
    EXPECT_NEAR(json[QStringLiteral("size")][QStringLiteral("width")].toDouble(), 60, 1e-3);
    EXPECT_NEAR(json[QStringLiteral("cutArea")][QStringLiteral("value")].toDouble(), 3600, 0.5);
    EXPECT_EQ(json[QStringLiteral("cutArea")][QStringLiteral("unit")].toString(), QStringLiteral("mm2"));
    EXPECT_EQ(json[QStringLiteral("outlines")].toArray().size(), 1);
    EXPECT_EQ(json[QStringLiteral("paints")].toArray().size(), 1);
    EXPECT_EQ(json[QStringLiteral("paints")].toArray()[0].toObject()[QStringLiteral("use")].toString(),
              QStringLiteral("cut"));
    EXPECT_TRUE(json[QStringLiteral("sizeFromFile")].toBool());
    EXPECT_EQ(ran.err, "") << "nothing to remark on";
}

TEST_F(ArtCommand, TellsAnIslandFromAnOutline)
{
    const QString ring =
        file("ring.svg",
             "<svg xmlns='http://www.w3.org/2000/svg' width='60mm' height='60mm' viewBox='0 0 60 60'>"
             "<path fill-rule='evenodd' d='M0 0H60V60H0Z M20 20H40V40H20Z'/></svg>");
    const QJsonObject json = run({QStringLiteral("art"), ring, QStringLiteral("--json")}).json();
    EXPECT_NEAR(json[QStringLiteral("cutArea")][QStringLiteral("value")].toDouble(), 3600 - 400, 0.5);
    int islands = 0;
    for (const QJsonValue& outline : json[QStringLiteral("outlines")].toArray())
        if (outline[QStringLiteral("island")].toBool()) ++islands;
    EXPECT_EQ(islands, 1);
}

TEST_F(ArtCommand, WithoutPhysicalSizeTakesAndNames96PerInch)
{
    const QString bare = file("bare.svg",
                              "<svg xmlns='http://www.w3.org/2000/svg' width='192' height='96'>"
                              "<rect width='192' height='96'/></svg>");
    const auto usual = run({QStringLiteral("art"), bare, QStringLiteral("--json")});
    EXPECT_NEAR(usual.json()[QStringLiteral("size")][QStringLiteral("width")].toDouble(), 50.8, 1e-3);
    EXPECT_TRUE(usual.says("96 units per inch")) << usual.err.toStdString();
    EXPECT_TRUE(usual.says("50.8")) << usual.err.toStdString();
    EXPECT_FALSE(usual.json()[QStringLiteral("sizeFromFile")].toBool());

    const auto at72 = run({QStringLiteral("art"), bare, QStringLiteral("--per-inch"), QStringLiteral("72"),
                           QStringLiteral("--json")});
    EXPECT_NEAR(at72.json()[QStringLiteral("size")][QStringLiteral("width")].toDouble(), 192.0 / 72 * 25.4,
                1e-3);
    EXPECT_EQ(at72.err, "");
    const auto wide = run({QStringLiteral("art"), bare, QStringLiteral("--wide"), QStringLiteral("3 1/2 in"),
                           QStringLiteral("--json")});
    EXPECT_NEAR(wide.json()[QStringLiteral("size")][QStringLiteral("width")].toDouble(), 88.9, 1e-3);
}

TEST_F(ArtCommand, RefusesWhatIsNoDrawing)
{
    for (const QByteArray& content :
         {QByteArray(), QByteArray("no drawing"), QByteArray("<svg"), QByteArray("<html/>"),
          QByteArray("<svg xmlns='http://www.w3.org/2000/svg'/>"), QByteArray(1000, '\0')}) {
        const auto ran = run({QStringLiteral("art"), file("bad.svg", content)});
        EXPECT_EQ(ran.code, 2) << content.toStdString();
        EXPECT_TRUE(ran.says("bad.svg")) << ran.err.toStdString();
        EXPECT_EQ(ran.out, "");
    }
    EXPECT_EQ(run({QStringLiteral("art")}).code, 2);
    EXPECT_EQ(
        run({QStringLiteral("art"), squareFile(), QStringLiteral("--per-inch"), QStringLiteral("0")}).code,
        2);
    EXPECT_EQ(
        run({QStringLiteral("art"), squareFile(), QStringLiteral("--per-inch"), QStringLiteral("many")}).code,
        2);
    EXPECT_EQ(run({QStringLiteral("art"), squareFile(), QStringLiteral("--wide"), QStringLiteral("-3")}).code,
              2);
}

}  // namespace
}  // namespace lidwright
