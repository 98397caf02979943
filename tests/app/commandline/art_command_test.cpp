#include "tests/app/commandline/program.h"

#include <QFileInfo>
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

TEST_F(ArtCommand, DrawsTextWithTheFontsOfThisComputer)
{
    const QString sign = file("sign.svg",
                              "<svg xmlns='http://www.w3.org/2000/svg' width='60mm' height='60mm' "
                              "viewBox='0 0 60 60'><text x='5' y='40' font-family='DejaVu Sans' "
                              "font-size='20'>Lid</text></svg>");
    const auto ran = run({QStringLiteral("art"), sign, QStringLiteral("--json")});
    EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
    // L, i, its dot, d and the hole in it.
    EXPECT_EQ(ran.json()[QStringLiteral("outlines")].toArray().size(), 5);
    EXPECT_TRUE(ran.says("1 piece of text (\"Lid\") was drawn with the font DejaVu Sans of this computer"))
        << ran.err.toStdString();

    // Several drawings with text, and a picture painted after them: each opens and closes what Qt needs.
    const QString picture = path("lid.png");
    const auto painted = run({QStringLiteral("picture"), QStringLiteral("--art"), sign,
                              QStringLiteral("--art"), sign, QStringLiteral("-o"), picture});
    EXPECT_EQ(painted.code, 0) << painted.err.toStdString();
    EXPECT_TRUE(painted.says("was drawn with the font")) << painted.err.toStdString();
    EXPECT_GT(QFileInfo(picture).size(), 1000);
    const auto paper =
        run({QStringLiteral("paper"), QStringLiteral("--art"), sign, QStringLiteral("-o"), path("lid.pdf")});
    EXPECT_EQ(paper.code, 0) << paper.err.toStdString();
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

TEST_F(ArtCommand, ReadsDxfInItsOwnUnitOrTheOneThatIsSaid)
{
    // A square of 2 units, without a unit in the file.
    const QByteArray square =
        "0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\ncut\n90\n4\n70\n1\n"
        "10\n0\n20\n0\n10\n2\n20\n0\n10\n2\n20\n2\n10\n0\n20\n2\n0\nENDSEC\n0\nEOF\n";
    const QString path = file("square.DXF", square);
    const auto width = [&](const QStringList& more) {
        const auto ran = run(QStringList{QStringLiteral("art"), path, QStringLiteral("--json")} + more);
        EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
        return ran.json()[QStringLiteral("size")].toObject()[QStringLiteral("width")].toDouble();
    };
    EXPECT_NEAR(width({}), 2, 1e-6);
    EXPECT_NEAR(width({QStringLiteral("--per-inch"), QStringLiteral("1")}), 50.8, 1e-6);
    EXPECT_NEAR(width({QStringLiteral("--wide"), QStringLiteral("80 mm")}), 80, 1e-6);
    EXPECT_TRUE(run({QStringLiteral("art"), path}).says("does not say how large"));
}

TEST_F(ArtCommand, ListsThinPlacesForTheLidThatIsNamed)
{
    const QString path =
        file("slots.svg",
             "<svg xmlns='http://www.w3.org/2000/svg' width='60mm' height='40mm' viewBox='0 0 60 40'>"
             "<path d='M5 5h40v10h-40z M5 17h40v10h-40z'/></svg>");
    const auto web = [&](const QStringList& more) {
        const auto ran = run(QStringList{QStringLiteral("art"), path, QStringLiteral("--json")} + more);
        EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
        const QJsonArray webs = ran.json()[QStringLiteral("webs")].toArray();
        EXPECT_EQ(webs.size(), 1);
        return webs.first().toObject();
    };
    const QJsonObject thick = web({QStringLiteral("--lid-thickness"), QStringLiteral("4 mm"),
                                   QStringLiteral("--material"), QStringLiteral("sitka-spruce")});
    const QJsonObject thin = web({QStringLiteral("--lid-thickness"), QStringLiteral("2 mm"),
                                  QStringLiteral("--material"), QStringLiteral("sitka-spruce")});
    EXPECT_NEAR(thick[QStringLiteral("width")].toDouble(), 2, 1e-3);
    EXPECT_GT(thick[QStringLiteral("factorOfSafety")].toDouble(),
              thin[QStringLiteral("factorOfSafety")].toDouble());
    const QJsonObject across = web({QStringLiteral("--grain"), QStringLiteral("across")});
    EXPECT_NEAR(across[QStringLiteral("angleToGrain")].toDouble(), 90, 0.01);
    EXPECT_EQ(
        run({QStringLiteral("art"), path, QStringLiteral("--material"), QStringLiteral("moonwood")}).code, 2);
}

}  // namespace
}  // namespace lidwright
