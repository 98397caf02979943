#include "tests/app/commandline/program.h"

#include <QJsonArray>

namespace lidwright {
namespace {

using testing::run;

class FindingsCommand : public testing::ProgramTest {
protected:
    static QStringList withJson(QStringList words)
    {
        words.prepend(QStringLiteral("findings"));
        words.append(QStringLiteral("--json"));
        return words;
    }
};

QString verdictOf(const QJsonObject& json, const char* rule)
{
    for (const QJsonValue& finding : json[QStringLiteral("findings")].toArray())
        if (finding[QStringLiteral("rule")].toString() == QLatin1String(rule))
            return finding[QStringLiteral("verdict")].toString();
    return {};
}

TEST_F(FindingsCommand, TheBuiltInPlanHasNothingWrong)
{
    const auto ran = run({QStringLiteral("findings")});
    EXPECT_EQ(ran.code, 0) << ran.out.toStdString();
    EXPECT_TRUE(ran.out.contains("0 wrong")) << ran.out.toStdString();
    const auto json = run(withJson({})).json();
    EXPECT_EQ(json[QStringLiteral("counts")][QStringLiteral("wrong")].toInt(), 0);
    EXPECT_GT(json[QStringLiteral("counts")][QStringLiteral("good")].toInt(), 5);
    EXPECT_EQ(json[QStringLiteral("plan")].toString(), QStringLiteral("built-in plan"));
}

TEST_F(FindingsCommand, AWrongPlanGivesOneAndRemediesThatWork)
{
    // The drawing lies under the bridge: saddle at 235 mm from the head-end wall in the built-in plan.
    const QStringList wrong{QStringLiteral("--art"), squareFile() + QStringLiteral(",x=200,y=0")};
    const auto ran = run(withJson(wrong));
    EXPECT_EQ(ran.code, 1) << ran.err.toStdString();
    const QJsonObject json = ran.json();
    EXPECT_EQ(verdictOf(json, "bridge.art"), QStringLiteral("wrong"));
    int remedies = 0;
    for (const QJsonValue& finding : json[QStringLiteral("findings")].toArray()) {
        EXPECT_FALSE(finding[QStringLiteral("sentence")].toString().isEmpty());
        EXPECT_FALSE(finding[QStringLiteral("sentence")].toString().contains(
            QRegularExpression(QStringLiteral("%[1-9]"))));
        EXPECT_TRUE(finding.toObject().contains(QStringLiteral("measured")));
        EXPECT_TRUE(finding.toObject().contains(QStringLiteral("required")));
        EXPECT_TRUE(finding[QStringLiteral("places")].isArray());
        if (finding[QStringLiteral("rule")].toString() != QStringLiteral("bridge.art")) continue;
        EXPECT_EQ(finding[QStringLiteral("measured")][QStringLiteral("unit")].toString(),
                  QStringLiteral("mm"));
        for (const QJsonValue& remedy : finding[QStringLiteral("remedies")].toArray()) {
            EXPECT_FALSE(remedy[QStringLiteral("label")].toString().isEmpty());
            QStringList mended = wrong;
            for (const QJsonValue& edit : remedy[QStringLiteral("edits")].toArray()) {
                ASSERT_TRUE(edit.toObject().contains(QStringLiteral("set")));
                mended << QStringLiteral("--set") << edit[QStringLiteral("set")].toString();
            }
            const auto after = run(withJson(mended));
            EXPECT_NE(verdictOf(after.json(), "bridge.art"), QStringLiteral("wrong"))
                << remedy[QStringLiteral("label")].toString().toStdString() << after.err.toStdString();
            ++remedies;
        }
    }
    EXPECT_GE(remedies, 1);
}

TEST_F(FindingsCommand, SettingsAreDoneInOrderAfterTheDrawings)
{
    const QString art = squareFile() + QStringLiteral(",x=200,y=0");
    EXPECT_EQ(run({QStringLiteral("findings"), QStringLiteral("--set"), QStringLiteral("art.1.x=80 mm"),
                   QStringLiteral("--art"), art, QStringLiteral("--set"), QStringLiteral("art.1.y=0")})
                  .code,
              0);
    EXPECT_EQ(run({QStringLiteral("findings"), QStringLiteral("--art"), art, QStringLiteral("--set"),
                   QStringLiteral("art.1.x=80"), QStringLiteral("--set"), QStringLiteral("art.1.x=200")})
                  .code,
              1);
}

TEST_F(FindingsCommand, ADrawingLandsOnTheFreePart)
{
    const auto json = run(withJson({QStringLiteral("--art"), squareFile()})).json();
    EXPECT_EQ(verdictOf(json, "bridge.art"), QStringLiteral("good"));
    EXPECT_EQ(json[QStringLiteral("counts")][QStringLiteral("wrong")].toInt(), 0);
}

TEST_F(FindingsCommand, SpeaksThePlansUnit)
{
    const auto mm = run({QStringLiteral("findings")});
    const auto inch = run(
        {QStringLiteral("findings"), QStringLiteral("--set"), QStringLiteral("sheet.unit=inch-fraction")});
    EXPECT_TRUE(mm.out.contains("635 mm"));
    EXPECT_TRUE(inch.out.contains("25 in")) << inch.out.toStdString();
}

}  // namespace
}  // namespace lidwright
