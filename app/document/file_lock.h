#pragma once

#include <QLockFile>
#include <QString>

#include <memory>

namespace lidwright {

/// Tells other running copies of the program that a plan file is being worked on: a small hidden file beside
/// it. One left behind by a program that has died is taken over.
class FileLock {
public:
    enum class Answer {
        Held,        ///< ours now
        Elsewhere,   ///< another running program has it, see holder()
        Impossible,  ///< no lock can stand there (a folder that cannot be written); nothing is locked
    };

    ~FileLock();

    /// Tries to hold the lock of this plan file; on Held the one held before is let go, otherwise it stays.
    Answer take(const QString& planPath);
    void release();
    /// Who has the lock that the last take() asked for: "process 4711 on bench".
    QString holder() const { return m_holder; }

    static QString lockPath(const QString& planPath);

private:
    std::unique_ptr<QLockFile> m_lock;
    QString m_path;
    QString m_holder;
};

}  // namespace lidwright
