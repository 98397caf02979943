#include "tests/app/commandline/program.h"

#include <QJsonArray>
#include <QSet>

namespace lidwright {
namespace {

using testing::run;

double value(const QJsonObject& json, const char* key)
{
    for (const QJsonValue& row : json[QStringLiteral("values")].toArray())
        if (row[QStringLiteral("key")].toString() == QLatin1String(key))
            return row[QStringLiteral("value")].toDouble();
    ADD_FAILURE() << "no " << key;
    return 0;
}

QJsonObject valuesWith(QStringList words)
{
    words.prepend(QStringLiteral("values"));
    words.append(QStringLiteral("--json"));
    const auto ran = run(words);
    EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
    return ran.json();
}

class ValuesCommand : public testing::ProgramTest {};

TEST_F(ValuesCommand, ASettingChangesWhatFollowsFromIt)
{
    const double before = value(valuesWith({}), "saddle.x");
    const double after =
        value(valuesWith({QStringLiteral("--set"), QStringLiteral("scale.length=650")}), "saddle.x");
    EXPECT_NEAR(after - before, 15, 1e-9)
        << "nut held to the box, so the saddle moves by what the scale grew";
    EXPECT_NEAR(value(valuesWith({QStringLiteral("--set"), QStringLiteral("box.length=12 1/4 in")}),
                      "box.body-length"),
                12.25 * 25.4, 1e-9);
}

TEST_F(ValuesCommand, BareNumbersAreInThePlansUnit)
{
    const QString length = QStringLiteral("--set");
    EXPECT_NEAR(value(valuesWith({length, QStringLiteral("sheet.unit=inch"), length,
                                  QStringLiteral("box.length=13")}),
                      "box.body-length"),
                13 * 25.4, 1e-9);
    EXPECT_NEAR(value(valuesWith({length, QStringLiteral("box.length=313"), length,
                                  QStringLiteral("sheet.unit=inch")}),
                      "box.body-length"),
                313, 1e-9);
}

TEST_F(ValuesCommand, KeysAreUniqueAndUnitsNamed)
{
    const QJsonObject json = valuesWith({QStringLiteral("--art"), squareFile(), QStringLiteral("--art"),
                                         squareFile() + QStringLiteral(",scale=0.5"), QStringLiteral("--set"),
                                         QStringLiteral("hole.count=1")});
    QSet<QString> keys;
    for (const QJsonValue& row : json[QStringLiteral("values")].toArray()) {
        const QString key = row[QStringLiteral("key")].toString();
        EXPECT_FALSE(keys.contains(key)) << key.toStdString();
        keys.insert(key);
        EXPECT_FALSE(row[QStringLiteral("label")].toString().isEmpty());
        EXPECT_TRUE(row[QStringLiteral("value")].isDouble()) << key.toStdString();
    }
    EXPECT_NEAR(value(json, "art.1.cut-area"), 3600, 1);
    EXPECT_NEAR(value(json, "art.2.cut-area"), 900, 1);
}

TEST_F(ValuesCommand, TheTextHasARowForEveryKey)
{
    const auto text = run({QStringLiteral("values")});
    for (const QJsonValue& row : valuesWith({})[QStringLiteral("values")].toArray())
        EXPECT_TRUE(text.out.contains(row[QStringLiteral("key")].toString().toUtf8() + ' '));
}

}  // namespace
}  // namespace lidwright
