#include "tests/app/commandline/program.h"

#include "core/io/plan/plan_file.h"
#include "core/layout/layout.h"
#include "core/solvers/plate/plate_problem.h"
#include "core/solvers/study.h"

#include <QJsonArray>
#include <QJsonDocument>

namespace lidwright {
namespace {

using testing::run;

QString word(const char* text)
{
    return QString::fromLatin1(text);
}

class StudyCommand : public testing::ProgramTest {};

TEST_F(StudyCommand, ListsItsSubjects)
{
    const auto ran = run({word("study")});
    EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
    for (const StudyEntry& entry : studies()) {
        EXPECT_TRUE(ran.out.contains(entry.id));
        EXPECT_TRUE(ran.out.contains(entry.title));
    }
    const auto wrong = run({word("study"), word("no-such-subject")});
    EXPECT_EQ(wrong.code, 2);
    EXPECT_TRUE(wrong.out.isEmpty());
    EXPECT_TRUE(wrong.says("no-such-subject"));
    for (const StudyEntry& entry : studies())
        EXPECT_TRUE(wrong.says(entry.title)) << wrong.err.toStdString();
    std::string slip = studies().front().id;
    slip.pop_back();
    EXPECT_TRUE(run({word("study"), QString::fromStdString(slip)}).says("did you mean"));
}

TEST_F(StudyCommand, APlanAloneGivesTheSlowOnes)
{
    Plan plan;
    plan.holes.resize(1);
    const QString plain = file("a.lidplan", QByteArray::fromStdString(writePlan(plan)));
    const auto json = run({word("study"), plain, word("--fineness"), word("coarse"), word("--json")});
    ASSERT_EQ(json.code, 0) << json.err.toStdString();
    const QJsonArray all = QJsonDocument::fromJson(json.out).array();
    ASSERT_EQ(all.size(), 2);
    EXPECT_EQ(all[0].toObject()[word("subject")].toString(), word("lid"));
    EXPECT_EQ(all[1].toObject()[word("subject")].toString(), word("air"));
    EXPECT_EQ(run({word("study"), plain, word("--csv")}).code, 2) << "CSV is one table";
    EXPECT_EQ(run({word("study"), path("none.lidplan")}).code, 2);
}

TEST_F(StudyCommand, GivesTheFiguresOfTheBuiltInPlan)
{
    const Plan plan;
    const Layout layout = derive(plan);
    for (const StudyEntry& entry : studies()) {
        SCOPED_TRACE(entry.id);
        const Study study = entry.slowly != nullptr ? entry.slowly(plan, layout, Fineness::Usual, {})
                                                    : entry.reckon(plan, layout);
        const auto text = run({word("study"), word(entry.id)});
        const auto csv = run({word("study"), word(entry.id), word("--csv")});
        const auto json = run({word("study"), word(entry.id), word("--json")});
        if (study.problem) {
            for (const auto* ran : {&text, &csv, &json}) {
                EXPECT_EQ(ran->code, 2);
                EXPECT_TRUE(ran->out.isEmpty());
            }
            continue;
        }
        EXPECT_EQ(text.code, 0) << text.err.toStdString();
        // Title, an empty line, heads, rows, an empty line, notes.
        const QList<QByteArray> lines = text.out.trimmed().split('\n');
        ASSERT_GE(static_cast<std::size_t>(lines.size()), 3 + study.table.rows.size());
        EXPECT_EQ(lines[0].toStdString(), study.title);
        EXPECT_TRUE(lines[2].contains(QByteArray::fromStdString(study.table.columns.front().heading)));
        for (const Sentence& note : study.notes)
            EXPECT_TRUE(text.out.contains(QByteArray::fromStdString(spoken(note, unitStyle(plan)))));
        EXPECT_EQ(csv.out.toStdString(), csvOf(study.table));
        const QJsonObject object = json.json();
        EXPECT_EQ(object[word("subject")].toString(), word(entry.id));
        EXPECT_EQ(static_cast<std::size_t>(object[word("columns")].toArray().size()),
                  study.table.columns.size());
        EXPECT_EQ(static_cast<std::size_t>(object[word("plots")].toArray().size()), study.plots.size());
        EXPECT_EQ(static_cast<std::size_t>(object[word("notes")].toArray().size()), study.notes.size());
        const QJsonArray rows = object[word("rows")].toArray();
        ASSERT_EQ(static_cast<std::size_t>(rows.size()), study.table.rows.size());
        for (std::size_t r = 0; r < study.table.rows.size(); ++r)
            for (std::size_t c = 0; c < study.table.rows[r].size(); ++c) {
                const QJsonValue cell = rows[static_cast<qsizetype>(r)].toArray()[static_cast<qsizetype>(c)];
                if (const auto* number = std::get_if<double>(&study.table.rows[r][c]))
                    EXPECT_EQ(cell.toDouble(), *number) << "to the last bit";
                else if (const auto* text2 = std::get_if<std::string>(&study.table.rows[r][c]))
                    EXPECT_EQ(cell.toString().toStdString(), *text2);
                else
                    EXPECT_TRUE(cell.isNull());
            }
    }
}

TEST_F(StudyCommand, TakesAPlanAndChanges)
{
    const auto as = [](double scale) {
        return run({word("study"), word("frets"), word("--csv"), word("--set"),
                    QStringLiteral("scale.length=%1 mm").arg(scale)});
    };
    EXPECT_NE(as(600).out, as(640).out);
    EXPECT_EQ(run({word("study"), word("frets"), path("none.lidplan")}).code, 2);
    EXPECT_EQ(run({word("study"), word("frets"), word("--set"), word("no.such=1")}).code, 2);
    const auto many = run({word("study"), word("frets"), word("a"), word("b")});
    EXPECT_EQ(many.code, 2);
    EXPECT_TRUE(many.says("one word too many"));
    EXPECT_TRUE(run({word("help"), word("study")}).out.contains("SUBJECT"));
}

TEST_F(StudyCommand, ColumnsStandUnderTheirHeads)
{
    const auto ran = run({word("study"), word("strings")});
    ASSERT_EQ(ran.code, 0) << ran.err.toStdString();
    // In characters: two spaces or a line's end behind every cell, and heads that end where the numbers end.
    const QStringList lines = QString::fromUtf8(ran.out).split(QLatin1Char('\n'));
    ASSERT_GE(lines.size(), 5);
    EXPECT_TRUE(lines[1].isEmpty());
    const Study study = studies().front().reckon(Plan{}, derive(Plan{}));
    for (std::size_t c = 0; c < study.table.columns.size(); ++c) {
        const Quantity quantity = study.table.columns[c].quantity;
        if (quantity == Quantity::Text || quantity == Quantity::Pitch) continue;
        const QString head = QString::fromStdString(study.table.columns[c].heading);
        const qsizetype end = lines[2].indexOf(head) + head.size();
        const QString cell =
            QString::fromStdString(spoken(study.table.rows[0][c], study.table.columns[c], unitStyle(Plan{})));
        if (cell.size() > head.size() || cell.isEmpty()) continue;
        EXPECT_EQ(lines[3].mid(end - cell.size(), cell.size()), cell) << head.toStdString();
    }
}

}  // namespace
}  // namespace lidwright
