#include "app/window/file_flow.h"

#include "app/document/plan_document.h"
#include "app/properties/typed_edit.h"
#include "app/text/texts.h"

#include <QApplication>
#include <QDir>
#include <QFileInfo>
#include <QMessageBox>
#include <QPushButton>
#include <QScopeGuard>

namespace lidwright {

FileFlow::FileFlow(PlanDocument& document, Settings& settings, Autosave& autosave, PathQuestions& questions,
                   QWidget* window)
    : QObject(window),
      m_document(document),
      m_recent(settings),
      m_autosave(autosave),
      m_questions(questions),
      m_window(window)
{}

void FileFlow::newPlan()
{
    if (mayLeave()) begin({}, {}, {});
}

void FileFlow::open()
{
    const QString path = m_questions.planToOpen();
    if (!path.isEmpty()) openPath(path);
}

bool FileFlow::openPath(const QString& path)
{
    if (!mayLeave()) return false;
    QApplication::setOverrideCursor(Qt::BusyCursor);
    const auto calm = qScopeGuard([] { QApplication::restoreOverrideCursor(); });
    auto opened = openPlanFile(path);
    if (!opened) {
        m_recent.remove(path);
        Q_EMIT told(tr("The plan was not opened. %1").arg(shown(opened.error())), QStringLiteral("open"));
        return false;
    }
    const QString whole = QFileInfo(path).absoluteFilePath();
    const auto lock = m_lock.take(whole);
    if (lock == FileLock::Answer::Elsewhere) {
        begin(std::move(opened->plan), {}, opened->notes);
        Q_EMIT told(tr("\u201c%1\u201d is being worked on elsewhere (%2). This is a copy: save it under a "
                       "name of its own.")
                        .arg(QFileInfo(path).fileName(), m_lock.holder()),
                    QStringLiteral("lock"));
        return true;
    }
    begin(std::move(opened->plan), whole, opened->notes);
    m_recent.add(whole);
    if (!QFileInfo(whole).isWritable())
        Q_EMIT told(tr("\u201c%1\u201d cannot be written. Changes can be saved under another name.")
                        .arg(QFileInfo(path).fileName()),
                    QStringLiteral("lock"));
    return true;
}

bool FileFlow::openSample(const QString& resourcePath)
{
    if (!mayLeave()) return false;
    auto opened = openPlanFile(resourcePath);
    if (!opened) {
        Q_EMIT told(tr("The sample was not opened. %1").arg(shown(opened.error())), QStringLiteral("open"));
        return false;
    }
    begin(std::move(opened->plan), {}, opened->notes);
    return true;
}

void FileFlow::begin(Plan plan, const QString& path, const QStringList& notes)
{
    if (path.isEmpty()) m_lock.release();
    m_onDisk = path.isEmpty() ? QDateTime() : QFileInfo(path).lastModified();
    m_document.reset(std::move(plan), path);
    Q_EMIT started();
    if (!notes.isEmpty()) Q_EMIT told(notes.join(QLatin1Char('\n')), QStringLiteral("notes"));
}

bool FileFlow::save()
{
    commitTyping();
    if (m_document.filePath().isEmpty()) return saveAs();
    return mayReplaceChanged(m_document.filePath()) && saveTo(m_document.filePath());
}

bool FileFlow::saveAs()
{
    commitTyping();
    QString suggested = m_document.filePath();
    if (suggested.isEmpty()) {
        // A title may hold what a file name must not.
        QString name = QString::fromStdString(m_document.plan().sheet.title).simplified();
        for (const QChar bad : QStringLiteral("/\\:*?\"<>|"))
            name.replace(bad, QLatin1Char('-'));
        while (name.startsWith(QLatin1Char('.')))
            name.remove(0, 1);
        suggested =
            withPlanSuffix((name.isEmpty() ? tr("plan") : name.left(80)) + QStringLiteral(".lidplan"));
    }
    const QString path = m_questions.planToSave(suggested);
    return !path.isEmpty() && saveTo(QFileInfo(withPlanSuffix(path)).absoluteFilePath());
}

bool FileFlow::saveTo(const QString& path)
{
    const QString before = m_document.filePath();
    if (m_lock.take(path) == FileLock::Answer::Elsewhere &&
        !ask(tr("\u201c%1\u201d is being worked on elsewhere.").arg(QFileInfo(path).fileName()),
             tr("%1 has it open. Whoever saves last wins.").arg(m_lock.holder()), tr("&Replace it")))
        return false;
    QApplication::setOverrideCursor(Qt::BusyCursor);
    const auto failed = savePlanFile(m_document.plan(), path);
    QApplication::restoreOverrideCursor();
    if (failed) {
        if (before.isEmpty())
            m_lock.release();
        else
            m_lock.take(before);
        Q_EMIT saveFailed(tr("The plan was not saved. %1").arg(shown(*failed)));
        return false;
    }
    m_onDisk = QFileInfo(path).lastModified();
    m_document.markSaved(path);
    m_recent.add(path);
    return true;
}

bool FileFlow::mayReplaceChanged(const QString& path)
{
    const QFileInfo info(path);
    if (!info.exists() || !m_onDisk.isValid() || info.lastModified() == m_onDisk) return true;
    return ask(tr("\u201c%1\u201d has been changed by something else since it was opened here.")
                   .arg(info.fileName()),
               tr("Its present content would stay beside it as \u201c%1\u201d.")
                   .arg(QFileInfo(backupPath(path)).fileName()),
               tr("&Replace it"));
}

bool FileFlow::mayLeave()
{
    m_document.endDrag();
    commitTyping();
    if (!m_document.modified()) return true;
    QMessageBox box(QMessageBox::Warning, tr("Unsaved work"),
                    tr("Save the changes to \u201c%1\u201d?").arg(m_document.displayName()),
                    QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, m_window);
    box.setInformativeText(tr("What is not saved is lost."));
    box.setDefaultButton(QMessageBox::Save);
    switch (box.exec()) {
        case QMessageBox::Save:
            return save();
        case QMessageBox::Discard:
            return true;
        default:
            return false;
    }
}

bool FileFlow::restore(LeftOver& leftOver)
{
    if (!mayLeave()) return false;
    auto opened = openPlanFile(leftOver.planFile);
    if (!opened) {
        Q_EMIT told(tr("The kept plan cannot be restored. %1").arg(shown(opened.error())),
                    QStringLiteral("restore"));
        return false;
    }
    QString path = leftOver.originalPath;
    if (!path.isEmpty() && (!QFileInfo(path).isFile() || m_lock.take(path) == FileLock::Answer::Elsewhere))
        path.clear();
    begin(std::move(opened->plan), path, opened->notes);
    m_autosave.adopt(std::move(leftOver));
    m_document.markUnsaved();
    return true;
}

void FileFlow::close()
{
    m_autosave.discard();
    m_lock.release();
}

void FileFlow::commitTyping()
{
    // A value that cannot be read stays marked in its field; it is no change yet and holds nobody up.
    Q_EMIT aboutToRead();
    if (auto* edit = qobject_cast<TypedEdit*>(QApplication::focusWidget())) edit->commit();
}

bool FileFlow::ask(const QString& question, const QString& detail, const QString& yes)
{
    QMessageBox box(QMessageBox::Warning, tr("Save the plan"), question, QMessageBox::Cancel, m_window);
    box.setInformativeText(detail);
    const auto* go = box.addButton(yes, QMessageBox::DestructiveRole);
    box.setDefaultButton(QMessageBox::Cancel);
    box.exec();
    return box.clickedButton() == go;
}

}  // namespace lidwright
