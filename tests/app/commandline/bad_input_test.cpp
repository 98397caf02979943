#include "tests/app/commandline/program.h"

#include <sys/stat.h>

namespace lidwright {
namespace {

using testing::run;

class BadInput : public testing::ProgramTest {};

TEST_F(BadInput, SaysWhatIsTheMatterWithAPlan)
{
    struct Case {
        QString plan;
        const char* says;
    };
    const Case cases[] = {
        {path("missing.lidplan"), "no such file"},          {m_folder.path(), "no ordinary file"},
        {file("empty.lidplan", ""), "empty.lidplan"},       {file("words.lidplan", "hello"), "words.lidplan"},
        {file("list.lidplan", "[1, 2"), "list.lidplan"},    {QStringLiteral("/dev/zero"), "no ordinary file"},
        {QStringLiteral("/dev/stdin"), "no ordinary file"}, {QStringLiteral("-"), "no such file"},
    };
    for (const Case& c : cases) {
        for (const char* command : {"findings", "values"}) {
            const auto ran = run({QLatin1String(command), c.plan});
            EXPECT_EQ(ran.code, 2) << c.plan.toStdString();
            EXPECT_EQ(ran.out, "") << c.plan.toStdString();
            EXPECT_TRUE(ran.says(c.says)) << ran.err.toStdString();
            EXPECT_TRUE(ran.err.startsWith("lidwright: ")) << ran.err.toStdString();
        }
    }
}

TEST_F(BadInput, APipeIsRefusedUnread)
{
    const QString pipe = path("pipe");
    ASSERT_EQ(mkfifo(pipe.toLocal8Bit().constData(), 0600), 0);
    EXPECT_EQ(run({QStringLiteral("findings"), pipe}).code, 2);
    EXPECT_EQ(run({QStringLiteral("art"), pipe}).code, 2);
}

TEST_F(BadInput, NearSpellingsAreOffered)
{
    EXPECT_TRUE(run({QStringLiteral("findngs")}).says("did you mean findings?"));
    EXPECT_EQ(run({QStringLiteral("findngs")}).code, 2);
    EXPECT_TRUE(run({QStringLiteral("findings"), QStringLiteral("--josn")}).says("did you mean --json?"));
    EXPECT_TRUE(run({QStringLiteral("--hlep")}).says("did you mean --help?"));
    EXPECT_TRUE(run({QStringLiteral("help"), QStringLiteral("papper")}).says("did you mean paper?"));
    const auto key =
        run({QStringLiteral("values"), QStringLiteral("--set"), QStringLiteral("box.lenght=300")});
    EXPECT_EQ(key.code, 2);
    EXPECT_TRUE(key.says("box.length")) << key.err.toStdString();
    EXPECT_TRUE(key.says("--set box.lenght=300")) << key.err.toStdString();
}

TEST_F(BadInput, SettingsThatCannotBe)
{
    for (const char* setting :
         {"box.length", "=3", "box.length=", "box.length=long", "box.length=1e9", "box.length=nan",
          "box.length=5 pigs", "lid.seat=upside-down", "strings.count=2.5", "art.1.x=3", "hole.count=9999",
          "box.shape=7", "neck.width=\xff"}) {
        const auto ran =
            run({QStringLiteral("values"), QStringLiteral("--set"), QString::fromLatin1(setting)});
        EXPECT_EQ(ran.code, 2) << setting;
        EXPECT_EQ(ran.out, "") << setting;
        EXPECT_TRUE(ran.err.startsWith("lidwright: --set ")) << ran.err.toStdString();
        EXPECT_EQ(ran.err.count('\n'), 1) << "one line: " << ran.err.toStdString();
    }
}

TEST_F(BadInput, HelpAndVersionNeedNothing)
{
    for (const QStringList& words : {QStringList{QStringLiteral("--help")}, QStringList{QStringLiteral("-h")},
                                     QStringList{QStringLiteral("help")},
                                     QStringList{QStringLiteral("findings"), QStringLiteral("--help")}}) {
        const auto ran = run(words);
        EXPECT_EQ(ran.code, 0);
        EXPECT_TRUE(ran.out.contains("findings"));
        EXPECT_EQ(ran.err, "");
    }
    const auto version = run({QStringLiteral("--version")});
    EXPECT_EQ(version.code, 0);
    EXPECT_TRUE(version.out.startsWith("Lidwright ")) << version.out.toStdString();
    for (const char* command :
         {"findings", "values", "study", "lists", "parameters", "art", "paper", "picture", "help"}) {
        const auto help = run({QStringLiteral("help"), QLatin1String(command)});
        EXPECT_EQ(help.code, 0);
        EXPECT_TRUE(help.out.startsWith(QByteArray("lidwright ") + command)) << help.out.toStdString();
    }
}

TEST_F(BadInput, DrawingsThatCannotBe)
{
    EXPECT_EQ(run({QStringLiteral("findings"), QStringLiteral("--art"), path("none.svg")}).code, 2);
    const auto key =
        run({QStringLiteral("findings"), QStringLiteral("--art"), squareFile() + QStringLiteral(",trun=3")});
    EXPECT_EQ(key.code, 2);
    EXPECT_TRUE(key.says("turn")) << key.err.toStdString();
    EXPECT_EQ(
        run({QStringLiteral("findings"), QStringLiteral("--art"), squareFile() + QStringLiteral(",x=far")})
            .code,
        2);
}

}  // namespace
}  // namespace lidwright
