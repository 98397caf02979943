#include "tests/app/commandline/program.h"
#include "tests/app/paper/pdf_tools.h"

#include <QFile>

namespace lidwright {
namespace {

using testing::run;

class PaperCommand : public testing::ProgramTest {
protected:
    testing::Ran paper(QStringList words)
    {
        words = QStringList{QStringLiteral("paper"), QStringLiteral("-o"), path("t.pdf")} + words;
        return run(words);
    }
};

TEST_F(PaperCommand, WritesWithoutADisplay)
{
    const auto ran = paper({QStringLiteral("--size"), QStringLiteral("a4")});
    EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
    EXPECT_EQ(ran.err, "");
    EXPECT_TRUE(ran.out.contains("lp -o print-scaling=none")) << ran.out.toStdString();
    EXPECT_EQ(testing::runTool(QStringLiteral("qpdf"), {QStringLiteral("--check"), path("t.pdf")}).code, 0);
    const auto strokes = testing::strokesOf(path("t.pdf"), 1);
    EXPECT_GE(testing::countOf(strokes, 100, true), 1);
    EXPECT_GE(testing::countOf(strokes, 100, false), 1);
}

TEST_F(PaperCommand, TakesTheChosenTemplatesPaperAndCorrection)
{
    EXPECT_EQ(paper({QStringLiteral("--size"), QStringLiteral("letter"), QStringLiteral("--only"),
                     QStringLiteral("head-wall"), QStringLiteral("--correct-x"), QStringLiteral("1.01"),
                     QStringLiteral("--correct-y"), QStringLiteral("0.99")})
                  .code,
              0);
    const auto boxes = testing::mediaBoxes(path("t.pdf"));
    ASSERT_EQ(boxes.size(), 2U) << "a cover and one wall";
    EXPECT_NEAR(boxes[0].x, 612, 0.5);
    EXPECT_NEAR(boxes[0].y, 792, 0.5);
    const auto strokes = testing::strokesOf(path("t.pdf"), 1);
    EXPECT_GE(testing::countOf(strokes, 101, true), 1);
    EXPECT_GE(testing::countOf(strokes, 99, false), 1);

    EXPECT_EQ(paper({QStringLiteral("--size"), QStringLiteral("roll"), QStringLiteral("--only"),
                     QStringLiteral("tail-wall,lid")})
                  .code,
              0);
    EXPECT_EQ(testing::mediaBoxes(path("t.pdf")).size(), 2U) << "a roll has no cover";
}

TEST_F(PaperCommand, WarnsWhenSomethingIsWrongWithThePlan)
{
    const auto ran = paper({QStringLiteral("--art"), squareFile() + QStringLiteral(",x=200,y=0")});
    EXPECT_EQ(ran.code, 0);
    EXPECT_TRUE(ran.says("something is wrong")) << ran.err.toStdString();
}

TEST_F(PaperCommand, RefusesBadWords)
{
    EXPECT_TRUE(paper({QStringLiteral("--size"), QStringLiteral("leter")}).says("did you mean letter?"));
    EXPECT_TRUE(
        paper({QStringLiteral("--only"), QStringLiteral("lid,headwall")}).says("did you mean head-wall?"));
    for (const QStringList& words : {QStringList{QStringLiteral("--size"), QStringLiteral("a0")},
                                     QStringList{QStringLiteral("--only"), QString()},
                                     QStringList{QStringLiteral("--overlap"), QStringLiteral("1 m")},
                                     QStringList{QStringLiteral("--overlap"), QStringLiteral("x")},
                                     QStringList{QStringLiteral("--correct-x"), QStringLiteral("0.5")},
                                     QStringList{QStringLiteral("--correct-y"), QStringLiteral("nan")},
                                     QStringList{path("no.lidplan")}}) {
        const auto ran = paper(words);
        EXPECT_EQ(ran.code, 2) << words.join(QLatin1Char(' ')).toStdString();
        EXPECT_FALSE(ran.err.isEmpty());
        EXPECT_FALSE(QFile::exists(path("t.pdf"))) << words.join(QLatin1Char(' ')).toStdString();
    }
    EXPECT_EQ(run({QStringLiteral("paper")}).code, 2);
    EXPECT_EQ(run({QStringLiteral("paper"), QStringLiteral("-o"), path("no/folder/t.pdf")}).code, 2);
}

}  // namespace
}  // namespace lidwright
