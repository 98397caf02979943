#pragma once

#include <gtest/gtest.h>

#include <QByteArray>
#include <QJsonObject>
#include <QStringList>
#include <QTemporaryDir>

/// Runs the built program as a shell without a display would.
namespace lidwright::testing {

struct Ran {
    int code = -1;
    QByteArray out;
    QByteArray err;

    bool says(const char* words) const { return err.contains(words); }
    /// The output as JSON; the test fails when it is none. Read by Qt's parser, not by the one that wrote it.
    QJsonObject json() const;
};

/// No DISPLAY, no WAYLAND_DISPLAY, no platform chosen; the standard input stays open and says nothing.
Ran run(const QStringList& arguments);

/// A folder with files in it.
class ProgramTest : public ::testing::Test {
protected:
    QString path(const char* name) const { return m_folder.filePath(QLatin1String(name)); }
    QString file(const char* name, const QByteArray& content) const;
    /// A 60 mm square with its size in the file.
    QString squareFile() const;

    QTemporaryDir m_folder;
};

}  // namespace lidwright::testing
