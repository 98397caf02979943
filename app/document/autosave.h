#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"

#include <QDateTime>
#include <QLockFile>
#include <QObject>
#include <QThreadPool>
#include <QTimer>

#include <memory>
#include <vector>

namespace lidwright {

class PlanDocument;

/// A plan that a session left behind because it did not end in order. While this object lives no other
/// running copy of the program can offer the same plan.
struct LeftOver {
    QString planFile;      ///< where the kept plan is
    QString originalPath;  ///< file it was opened from, empty for an untitled plan
    QString title;         ///< the plan's own title
    QDateTime when;        ///< last kept
    std::unique_ptr<QLockFile> lock;

    /// Deletes what was kept.
    void discard();
};

/// Keeps unsaved work in a file of its own, away from the user's: some seconds after a change, on a thread of
/// its own. The file is deleted when the plan is saved or closed in order.
class Autosave : public QObject {
    Q_OBJECT
public:
    static constexpr int kDelay_ms = 45'000;

    Autosave(PlanDocument& document, const QString& folder, QObject* parent = nullptr);
    /// Waits for a file being written. What is kept stays, unless discard() was called.
    ~Autosave() override;

    /// lidwright/recovery in the state folder: XDG_STATE_HOME, or ~/.local/state (base directory
    /// specification 0.8).
    static QString standardFolder();
    /// What sessions that are no longer running have left in the folder, newest first.
    static std::vector<LeftOver> leftOvers(const QString& folder);

    void setDelay(int milliseconds) { m_timer.setInterval(milliseconds); }
    /// Keeps the present plan now, if it is modified.
    void keepNow();
    /// The kept file is not needed any more.
    void discard();
    /// Goes on in the file of a left-over plan that was just restored.
    void adopt(LeftOver leftOver);
    /// Where this session keeps its plan.
    QString planFile() const;

Q_SIGNALS:
    void kept();
    void failed(const QString& message);

private:
    void startTimer();
    void noteFileState();

    PlanDocument& m_document;
    QString m_folder;
    QString m_id;
    std::unique_ptr<QLockFile> m_lock;
    QTimer m_timer;
    QThreadPool m_pool;
    int m_generation = 0;  ///< goes up when what is being written is not wanted any more
    bool m_failureTold = false;
};

}  // namespace lidwright
