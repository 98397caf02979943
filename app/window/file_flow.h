#pragma once

#include "app/document/autosave.h"
#include "app/document/file_lock.h"
#include "app/document/plan_files.h"
#include "app/settings/recent_files.h"
#include "app/window/path_questions.h"

#include <QDateTime>
#include <QObject>

class QWidget;

namespace lidwright {

class PlanDocument;

/// New, open, save, close: what happens to the plan's file, and the questions that go with it. No way through
/// here loses unsaved work without asking.
class FileFlow : public QObject {
    Q_OBJECT
public:
    FileFlow(PlanDocument& document, Settings& settings, Autosave& autosave, PathQuestions& questions,
             QWidget* window);

    void newPlan();
    void open();
    bool openPath(const QString& path);
    /// A sample out of the program's resources, as an untitled copy.
    bool openSample(const QString& resourcePath);
    bool save();
    bool saveAs();
    /// Asks about unsaved work; true when the plan on the board may go.
    bool mayLeave();
    /// Puts a left-over plan on the board. The work on the board is asked about first.
    bool restore(LeftOver& leftOver);
    /// The window is going: nothing is left to be restored.
    void close();

    RecentFiles& recent() { return m_recent; }

Q_SIGNALS:
    /// Something to tell; `topic` names the notices that it takes the place of.
    void told(const QString& message, const QString& topic);
    /// A save failed; another name may help.
    void saveFailed(const QString& message);
    /// The plan is about to be written or left: what is being typed belongs to it.
    void aboutToRead();
    /// Another plan is on the board.
    void started();

private:
    void begin(Plan plan, const QString& path, const QStringList& notes);
    bool saveTo(const QString& path);
    void commitTyping();
    bool mayReplaceChanged(const QString& path);
    bool ask(const QString& question, const QString& detail, const QString& yes);

    PlanDocument& m_document;
    RecentFiles m_recent;
    Autosave& m_autosave;
    PathQuestions& m_questions;
    QWidget* m_window;
    FileLock m_lock;
    QDateTime m_onDisk;  ///< when the plan's file was last changed, as far as this session knows
};

}  // namespace lidwright
