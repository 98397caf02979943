#include "tests/app/commandline/program.h"

#include "core/layout/layout.h"
#include "core/solvers/lists/shop_lists.h"

#include <QDir>
#include <QFile>
#include <QJsonArray>

namespace lidwright {
namespace {

using testing::run;

QString word(const char* text)
{
    return QString::fromLatin1(text);
}

QByteArray contentOf(const QString& path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

class ListsCommand : public testing::ProgramTest {};

TEST_F(ListsCommand, SaysWhichThereAre)
{
    const auto ran = run({word("lists")});
    EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
    for (const StudyEntry& entry : shopLists()) {
        EXPECT_TRUE(ran.out.contains(entry.id));
        EXPECT_TRUE(ran.out.contains(entry.title));
    }
    const auto wrong = run({word("lists"), word("cut-lsit")});
    EXPECT_EQ(wrong.code, 2);
    EXPECT_TRUE(wrong.out.isEmpty());
    EXPECT_TRUE(wrong.says("did you mean cut-list?"));
}

TEST_F(ListsCommand, GivesEachInEveryFormat)
{
    const Plan plan;
    const Layout layout = derive(plan);
    for (const StudyEntry& entry : shopLists()) {
        SCOPED_TRACE(entry.id);
        const Study study = entry.reckon(plan, layout);
        const auto text = run({word("lists"), word(entry.id)});
        EXPECT_EQ(text.code, 0) << text.err.toStdString();
        EXPECT_TRUE(text.out.startsWith(entry.title));
        for (const Sentence& note : study.notes)
            EXPECT_TRUE(text.out.contains(QByteArray::fromStdString(spoken(note, unitStyle(plan)))));
        EXPECT_EQ(run({word("lists"), word(entry.id), word("--csv")}).out.toStdString(), csvOf(study.table));
        EXPECT_EQ(run({word("lists"), word(entry.id), word("--decimal-comma")}).out.toStdString(),
                  csvWithDecimalComma(study.table));
        const QJsonObject json = run({word("lists"), word(entry.id), word("--json")}).json();
        EXPECT_EQ(json[word("subject")].toString(), word(entry.id));
        EXPECT_EQ(static_cast<std::size_t>(json[word("rows")].toArray().size()), study.table.rows.size());
    }
}

TEST_F(ListsCommand, TakesAPlanAndChanges)
{
    const auto as = [](const char* setting) {
        return run({word("lists"), word("cut-list"), word("--csv"), word("--set"), word(setting)}).out;
    };
    EXPECT_NE(as("box.length=300 mm"), as("box.length=340 mm"));
    EXPECT_EQ(run({word("lists"), word("cut-list"), path("none.lidplan")}).code, 2);
}

TEST_F(ListsCommand, WritesAllIntoAFolder)
{
    const QString folder = path("new/lists");
    const auto ran = run({word("lists"), word("--all"), folder});
    EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
    const Plan plan;
    const Layout layout = derive(plan);
    std::vector<StudyEntry> all = shopLists();
    for (const StudyEntry& entry : studies())
        if (std::string_view(entry.id) == "frets" || std::string_view(entry.id) == "strings")
            all.push_back(entry);
    EXPECT_EQ(static_cast<std::size_t>(QDir(folder).entryList(QDir::Files).size()), all.size());
    for (const StudyEntry& entry : all)
        EXPECT_EQ(contentOf(folder + QLatin1Char('/') + word(entry.id) + word(".csv")).toStdString(),
                  csvOf(entry.reckon(plan, layout).table))
            << entry.id;
    EXPECT_EQ(run({word("lists"), word("--all"), folder, word("--decimal-comma")}).code, 0);
    EXPECT_TRUE(contentOf(folder + word("/cut-list.csv")).startsWith("\xEF\xBB\xBFPiece;How many;"));
    EXPECT_EQ(run({word("lists"), word("--all"), folder, word("--json")}).code, 0);
    EXPECT_TRUE(contentOf(folder + word("/holes.json")).startsWith('{'));
}

TEST_F(ListsCommand, RefusesWhatItCannotWrite)
{
    const QString taken = file("taken", "not a folder");
    const auto ran = run({word("lists"), word("--all"), taken});
    EXPECT_EQ(ran.code, 2);
    EXPECT_TRUE(ran.says("the folder cannot be made")) << ran.err.toStdString();
    EXPECT_EQ(contentOf(taken), "not a folder");
    EXPECT_EQ(run({word("lists"), word("a"), word("b"), word("--all"), path("x")}).code, 2);
}

}  // namespace
}  // namespace lidwright
