#include "tests/app/commandline/program.h"

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
    const auto ran = run({word("sheet"), word("-o"), path("build.html")});
    EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
    QFile file(path("build.html"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray page = file.readAll();
    EXPECT_TRUE(page.startsWith("<!DOCTYPE html>"));
    EXPECT_TRUE(page.contains("Openings in the end walls"));
    EXPECT_TRUE(page.contains("<svg"));
}

TEST_F(SheetCommand, WritesAPdfThatCanBeReadBack)
{
    const auto ran = run({word("sheet"), word("-o"), path("build.pdf")});
    EXPECT_EQ(ran.code, 0) << ran.err.toStdString();
    QFile file(path("build.pdf"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll().startsWith("%PDF-"));
}

TEST_F(SheetCommand, RefusesWhatItCannotWrite)
{
    EXPECT_EQ(run({word("sheet")}).code, 2);
    EXPECT_TRUE(run({word("sheet"), word("-o"), path("build.txt")}).says("end the name in .html or .pdf"));
    EXPECT_EQ(run({word("sheet"), word("-o"), path("no/such/folder/build.html")}).code, 2);
    EXPECT_EQ(run({word("sheet"), word("nothing.lidplan"), word("-o"), path("build.html")}).code, 2);
}

}  // namespace
}  // namespace lidwright
