#include "app/window/path_questions.h"

#include "app/settings/all_settings.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>

namespace lidwright {

namespace {

QString say(const char* text)
{
    return QCoreApplication::translate("PathQuestions", text);
}

QString folder(const Settings& settings)
{
    const QString last = settings.read(kLastFolder);
    return !last.isEmpty() && QFileInfo(last).isDir() ? last : QDir::homePath();
}

QString remembered(const QString& path, Settings& settings)
{
    if (!path.isEmpty()) settings.write(kLastFolder, QFileInfo(path).absolutePath());
    return path;
}

QString within(const QString& suggested, const Settings& settings)
{
    return QFileInfo(suggested).isAbsolute() ? suggested : QDir(folder(settings)).filePath(suggested);
}

}  // namespace

PathQuestions fileDialogs(QWidget* window, Settings& settings)
{
    PathQuestions questions;
    questions.planToOpen = [window, &settings] {
        const QString filter = say(QT_TRANSLATE_NOOP("PathQuestions", "Plans (*.lidplan);;All files (*)"));
        return remembered(
            QFileDialog::getOpenFileName(window, say(QT_TRANSLATE_NOOP("PathQuestions", "Open a plan")),
                                         folder(settings), filter),
            settings);
    };
    questions.planToSave = [window, &settings](const QString& suggested) {
        QFileDialog dialog(window, say(QT_TRANSLATE_NOOP("PathQuestions", "Save the plan as")),
                           within(suggested, settings),
                           say(QT_TRANSLATE_NOOP("PathQuestions", "Plans (*.lidplan)")));
        dialog.setAcceptMode(QFileDialog::AcceptSave);
        // With the ending known the dialog asks before it replaces the very file that will be written.
        dialog.setDefaultSuffix(QStringLiteral("lidplan"));
        if (!dialog.exec()) return QString();
        return remembered(dialog.selectedFiles().value(0), settings);
    };
    questions.drawing = [window, &settings] {
        const QString filter =
            say(QT_TRANSLATE_NOOP("PathQuestions", "Drawings (*.svg *.dxf);;All files (*)"));
        return remembered(
            QFileDialog::getOpenFileName(window, say(QT_TRANSLATE_NOOP("PathQuestions", "Choose a drawing")),
                                         folder(settings), filter),
            settings);
    };
    questions.picture = [window, &settings](const QString& suggested) {
        const QString filter =
            say(QT_TRANSLATE_NOOP("PathQuestions", "Pictures (*.png);;Scalable drawings (*.svg)"));
        QFileDialog dialog(window, say(QT_TRANSLATE_NOOP("PathQuestions", "Export picture")),
                           within(suggested, settings), filter);
        dialog.setAcceptMode(QFileDialog::AcceptSave);
        dialog.setDefaultSuffix(QStringLiteral("png"));
        QObject::connect(&dialog, &QFileDialog::filterSelected, &dialog, [&dialog](const QString& chosen) {
            dialog.setDefaultSuffix(chosen.contains(QLatin1String("*.svg")) ? QStringLiteral("svg")
                                                                            : QStringLiteral("png"));
        });
        if (!dialog.exec()) return QString();
        return remembered(dialog.selectedFiles().value(0), settings);
    };
    return questions;
}

}  // namespace lidwright
