#include "tests/app/commandline/program.h"

#include "core/plan/catalogue.h"

#include <QJsonArray>

namespace lidwright {
namespace {

using testing::run;

TEST(ParametersCommand, ListsTheWholeCatalogue)
{
    const QJsonArray rows = run({QStringLiteral("parameters"), QStringLiteral("--json")})
                                .json()[QStringLiteral("parameters")]
                                .toArray();
    ASSERT_EQ(static_cast<std::size_t>(rows.size()), catalogue().size());
    qsizetype i = 0;
    for (const Parameter& p : catalogue()) {
        const QJsonObject row = rows[i++].toObject();
        EXPECT_EQ(row[QStringLiteral("key")].toString().toStdString(), p.key);
        EXPECT_EQ(row[QStringLiteral("help")].toString().toStdString(), p.help);
        EXPECT_TRUE(row.contains(QStringLiteral("default"))) << p.key;
        EXPECT_EQ(static_cast<std::size_t>(row[QStringLiteral("choices")].toArray().size()), p.choices.size())
            << p.key;
        if (p.quantity == Quantity::Length) {
            EXPECT_EQ(row[QStringLiteral("unit")].toString(), QStringLiteral("mm"));
            EXPECT_EQ(row[QStringLiteral("default")].toDouble(), std::get<double>(defaultValue(p)))
                << "exactly";
            EXPECT_EQ(row[QStringLiteral("least")].toDouble(), p.least);
            EXPECT_EQ(row[QStringLiteral("most")].toDouble(), p.most);
        }
    }
}

TEST(ParametersCommand, DefaultsCanBeSetAgain)
{
    // What the catalogue calls a default is what --set takes, and changes nothing.
    const auto before = run({QStringLiteral("values"), QStringLiteral("--json")});
    QStringList words{QStringLiteral("values"), QStringLiteral("--json")};
    for (const QJsonValue& row : run({QStringLiteral("parameters"), QStringLiteral("--json")})
                                     .json()[QStringLiteral("parameters")]
                                     .toArray()) {
        const QString key = row[QStringLiteral("key")].toString();
        if (key.contains(QLatin1Char('#'))) continue;
        const QJsonValue standard = row[QStringLiteral("default")];
        const QString value = standard.isString() ? standard.toString()
                              : standard.isBool() ? QString::fromLatin1(standard.toBool() ? "yes" : "no")
                                                  : QString::number(standard.toDouble(), 'g', 17);
        words << QStringLiteral("--set") << key + QLatin1Char('=') + value;
    }
    ASSERT_GT(words.size(), 40);
    const auto after = run(words);
    EXPECT_EQ(after.code, 0) << after.err.toStdString();
    EXPECT_EQ(after.out, before.out);
}

TEST(ParametersCommand, WritesAPageOfReference)
{
    const auto ran = run({QStringLiteral("parameters"), QStringLiteral("--markdown")});
    EXPECT_EQ(ran.code, 0);
    for (const PartInfo& part : parts())
        EXPECT_TRUE(ran.out.contains(QByteArray("## ") + part.label)) << part.label;
    int rows = 0;
    for (const QByteArray& line : ran.out.split('\n')) {
        if (!line.startsWith("| `")) continue;
        ++rows;
        // Six cells: seven bars that no cell brought in.
        EXPECT_EQ(line.count('|') - line.count("\\|"), 7) << line.toStdString();
    }
    EXPECT_EQ(static_cast<std::size_t>(rows), catalogue().size());
}

}  // namespace
}  // namespace lidwright
