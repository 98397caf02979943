#include "app/actions/action_table.h"

#include <gtest/gtest.h>

#include <QFile>

#include <map>
#include <set>

namespace lidwright {
namespace {

TEST(ActionTable, EveryCommandStandsOnceAndIsComplete)
{
    std::set<Command> commands;
    std::set<std::string> ids;
    for (const ActionEntry& entry : actionTable()) {
        EXPECT_TRUE(commands.insert(entry.command).second) << entry.id;
        EXPECT_TRUE(ids.insert(entry.id).second) << entry.id;
        EXPECT_STRNE(entry.text, "") << entry.id;
        EXPECT_STRNE(entry.help, "") << entry.id;
        EXPECT_FALSE(QString::fromUtf8(entry.help).endsWith(QLatin1Char('.'))) << entry.id;
        if (*entry.icon)
            EXPECT_TRUE(QFile::exists(QStringLiteral(":/icons/%1.svg").arg(QLatin1String(entry.icon))))
                << entry.id;
    }
    EXPECT_EQ(commands.size(), static_cast<std::size_t>(Command::About) + 1);
}

TEST(ActionTable, NoTwoCommandsShareKeys)
{
    std::map<QString, std::string> taken;
    for (const ActionEntry& entry : actionTable()) {
        for (const QKeySequence& keys : keysOf(entry)) {
            const auto [at, fresh] = taken.emplace(keys.toString(QKeySequence::PortableText), entry.id);
            EXPECT_TRUE(fresh) << entry.id << " and " << at->second << " share " << at->first.toStdString();
        }
    }
    EXPECT_GT(taken.size(), 20u);
}

TEST(ActionTable, EveryCommandCanBeFoundInAMenuAndMnemonicsDiffer)
{
    std::set<Command> found;
    for (const MenuEntry& menu : menuTable()) {
        std::set<QChar> mnemonics;
        for (const MenuItem& item : menu.items) {
            if (item.kind != MenuItem::Kind::Action) continue;
            found.insert(item.command);
            for (const ActionEntry& entry : actionTable()) {
                if (entry.command != item.command) continue;
                const QString text = QString::fromUtf8(entry.text);
                const qsizetype amp = text.indexOf(QLatin1Char('&'));
                ASSERT_GE(amp, 0) << entry.id;
                EXPECT_TRUE(mnemonics.insert(text.at(amp + 1).toLower()).second)
                    << menu.title << ": " << entry.id << " shares its mnemonic";
            }
        }
    }
    EXPECT_EQ(found.size(), actionTable().size());
}

}  // namespace
}  // namespace lidwright
