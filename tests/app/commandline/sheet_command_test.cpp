#include "tests/app/commandline/program.h"
#include "tests/app/paper/pdf_words.h"

#include <QDir>
#include <QFile>

namespace lidwright {
namespace {

using testing::run;

class SheetCommand : public testing::ProgramTest {};

QString word(const char* text)
{
    return QString::fromLatin1(text);
}

TEST_F(SheetCommand, WritesOnePageThatHoldsAll)
{
    const auto ran = run({word("sheet"), word("--fineness=coarse"), word("-o"), path("build.html")});
    EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
    QFile file(path("build.html"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray page = file.readAll();
    EXPECT_TRUE(page.startsWith("<!DOCTYPE html>"));
    EXPECT_TRUE(page.contains("Openings in the end walls"));
    EXPECT_TRUE(page.contains("fineness is called coarse"));
    EXPECT_TRUE(page.contains("<svg"));
}

TEST_F(SheetCommand, IsReckonedFinelyWhereNothingElseIsSaid)
{
    const auto ran = run({word("sheet"), word("-o"), path("build.html")});
    EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
    QFile file(path("build.html"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll().contains("fineness is called fine"));
}

TEST_F(SheetCommand, WritesAPdfThatCanBeReadBack)
{
    for (const auto& [size, points] : {std::pair{"a4", 595.0}, std::pair{"letter", 612.0}}) {
        const auto ran = run({word("sheet"), word("--fineness"), word("coarse"), word("--size"), word(size),
                              word("-o"), path("build.pdf")});
        EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
        const auto pages = testing::wordsOf(path("build.pdf"));
        ASSERT_GE(pages.size(), 5u);
        EXPECT_NEAR(pages[0].width, points, 0.5);
        EXPECT_TRUE(pages[0].text(1e9).contains(word("Build sheet")));
    }
}

TEST_F(SheetCommand, RefusesWhatItCannotWrite)
{
    EXPECT_EQ(run({word("sheet")}).code, 2);
    EXPECT_TRUE(run({word("sheet"), word("-o"), path("build.txt")}).says("end the name in .html or .pdf"));
    EXPECT_EQ(
        run({word("sheet"), word("--fineness=coarse"), word("-o"), path("no/such/folder/build.html")}).code,
        2);
    EXPECT_EQ(run({word("sheet"), word("nothing.lidplan"), word("-o"), path("build.html")}).code, 2);
    EXPECT_TRUE(run({word("sheet"), word("--fineness=very"), word("-o"), path("build.html")})
                    .says("known are coarse, usual and fine"));
    for (const char* size : {"--size=a7", "--size=roll"})
        EXPECT_TRUE(run({word("sheet"), word(size), word("-o"), path("build.pdf")})
                        .says("known are a4, letter, a3 and tabloid"));
}

}  // namespace
}  // namespace lidwright
