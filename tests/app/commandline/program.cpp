#include "tests/app/commandline/program.h"

#include <QFile>
#include <QJsonDocument>
#include <QProcess>

namespace lidwright::testing {

QJsonObject Ran::json() const
{
    QJsonParseError error;
    const QJsonDocument document = QJsonDocument::fromJson(out, &error);
    EXPECT_EQ(error.error, QJsonParseError::NoError) << error.errorString().toStdString() << " at "
                                                     << error.offset << " of " << out.left(400).toStdString();
    EXPECT_TRUE(document.isObject());
    return document.object();
}

Ran run(const QStringList& arguments)
{
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM", "XDG_RUNTIME_DIR"})
        environment.remove(QLatin1String(name));
    process.setProcessEnvironment(environment);
    process.start(QStringLiteral(LIDWRIGHT_PROGRAM), arguments);
    Ran ran;
    // The pipe to its standard input stays open: a program that reads there would wait for ever.
    if (!process.waitForFinished(120'000)) {
        ADD_FAILURE() << "the program did not end: " << arguments.join(QLatin1Char(' ')).toStdString();
        process.kill();
        process.waitForFinished();
        return ran;
    }
    EXPECT_EQ(process.exitStatus(), QProcess::NormalExit);
    ran.code = process.exitCode();
    ran.out = process.readAllStandardOutput();
    ran.err = process.readAllStandardError();
    return ran;
}

QString ProgramTest::file(const char* name, const QByteArray& content) const
{
    QFile out(path(name));
    EXPECT_TRUE(out.open(QIODevice::WriteOnly));
    EXPECT_EQ(out.write(content), content.size());
    return out.fileName();
}

QString ProgramTest::squareFile() const
{
    return file("square.svg",
                "<svg xmlns='http://www.w3.org/2000/svg' width='60mm' height='60mm' viewBox='0 0 60 60'>"
                "<path d='M0 0H60V60H0Z' fill='#000'/></svg>");
}

}  // namespace lidwright::testing
