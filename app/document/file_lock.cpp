#include "app/document/file_lock.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>

namespace lidwright {

FileLock::~FileLock() = default;

FileLock::Answer FileLock::take(const QString& planPath)
{
    const QString path = lockPath(planPath);
    m_holder.clear();
    if (m_lock && m_path == path) return Answer::Held;
    auto lock = std::make_unique<QLockFile>(path);
    // Never stale by age alone (a plan may be open for days); a dead owner is recognised all the same.
    lock->setStaleLockTime(0);
    if (lock->tryLock(0)) {
        m_lock = std::move(lock);
        m_path = path;
        return Answer::Held;
    }
    if (lock->error() != QLockFile::LockFailedError) return Answer::Impossible;
    qint64 process = 0;
    QString host, program;
    lock->getLockInfo(&process, &host, &program);
    m_holder = QCoreApplication::translate("FileLock", "process %1 on %2").arg(process).arg(host);
    return Answer::Elsewhere;
}

void FileLock::release()
{
    m_lock.reset();
    m_path.clear();
}

QString FileLock::lockPath(const QString& planPath)
{
    const QFileInfo info(planPath);
    // The file that is meant, not the link to it: two names of one file share one lock.
    const QFileInfo target(info.exists() ? info.canonicalFilePath() : info.absoluteFilePath());
    return target.dir().filePath(QStringLiteral(".%1.lock").arg(target.fileName()));
}

}  // namespace lidwright
