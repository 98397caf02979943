#include "app/document/autosave.h"

#include "app/document/plan_document.h"
#include "app/document/safe_write.h"
#include "app/text/texts.h"

#include "core/io/plan/plan_file.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QStandardPaths>
#include <QUuid>

#include <utility>

namespace lidwright {

namespace {

QString planPath(const QString& folder, const QString& id)
{
    return QDir(folder).filePath(id + QStringLiteral(".lidplan"));
}

QString originPath(const QString& planFile)
{
    return planFile.chopped(8) + QStringLiteral(".origin");
}

std::unique_ptr<QLockFile> lockFor(const QString& planFile)
{
    auto lock = std::make_unique<QLockFile>(planFile.chopped(8) + QStringLiteral(".lock"));
    lock->setStaleLockTime(0);
    return lock;
}

void removeKept(const QString& planFile)
{
    QFile::remove(planFile);
    QFile::remove(originPath(planFile));
}

}  // namespace

void LeftOver::discard()
{
    removeKept(planFile);
    lock.reset();
}

Autosave::Autosave(PlanDocument& document, const QString& folder, QObject* parent)
    : QObject(parent),
      m_document(document),
      m_folder(folder),
      m_id(QUuid::createUuid().toString(QUuid::WithoutBraces))
{
    m_pool.setMaxThreadCount(1);
    m_timer.setSingleShot(true);
    m_timer.setInterval(kDelay_ms);
    connect(&m_timer, &QTimer::timeout, this, &Autosave::keepNow);
    connect(&document, &PlanDocument::changed, this, &Autosave::startTimer);
    connect(&document, &PlanDocument::fileChanged, this, &Autosave::noteFileState);
}

Autosave::~Autosave()
{
    m_pool.waitForDone();
}

QString Autosave::standardFolder()
{
    QString state = qEnvironmentVariable("XDG_STATE_HOME");
    // The specification has relative values ignored.
    if (!QDir::isAbsolutePath(state)) state = QDir::homePath() + QStringLiteral("/.local/state");
    return state + QStringLiteral("/lidwright/recovery");
}

std::vector<LeftOver> Autosave::leftOvers(const QString& folder)
{
    std::vector<LeftOver> found;
    const QDir dir(folder);
    for (const QFileInfo& info : dir.entryInfoList({QStringLiteral("*.lidplan")}, QDir::Files, QDir::Time)) {
        LeftOver left;
        left.planFile = info.absoluteFilePath();
        left.when = info.lastModified();
        left.lock = lockFor(left.planFile);
        if (!left.lock->tryLock(0)) continue;  // its session is alive
        if (const auto origin = readWholeFile(originPath(left.planFile), 64 * 1024)) {
            const QStringList lines = QString::fromUtf8(*origin).split(QLatin1Char('\n'));
            left.originalPath = lines.value(0);
            left.title = lines.value(1);
        }
        found.push_back(std::move(left));
    }
    return found;
}

QString Autosave::planFile() const
{
    return planPath(m_folder, m_id);
}

void Autosave::startTimer()
{
    // Not restarted by every change: who edits without a pause is safe too.
    if (!m_timer.isActive()) m_timer.start();
}

void Autosave::noteFileState()
{
    if (!m_document.modified()) discard();
}

void Autosave::keepNow()
{
    m_timer.stop();
    if (!m_document.modified()) return;
    if (m_document.dragging()) {
        m_timer.start();
        return;
    }
    QDir().mkpath(m_folder);
    if (!m_lock) {
        m_lock = lockFor(planFile());
        m_lock->tryLock(0);
    }
    const Plan plan = m_document.plan();
    const QString path = planFile();
    const QByteArray origin = (m_document.filePath() + QLatin1Char('\n') +
                               QString::fromStdString(plan.sheet.title) + QLatin1Char('\n'))
                                  .toUtf8();
    m_pool.start([this, plan, path, origin, generation = m_generation] {
        auto failure = writeFileSafely(originPath(path), origin);
        if (!failure) failure = writeFileSafely(path, QByteArray::fromStdString(writePlan(plan)));
        const QString message = failure ? shown(*failure) : QString();
        // The pool is emptied before this object goes, so `this` is good here.
        QMetaObject::invokeMethod(this, [this, generation, message] {
            if (generation != m_generation) return;
            if (message.isEmpty())
                Q_EMIT kept();
            else if (!std::exchange(m_failureTold, true))
                Q_EMIT failed(message);
        });
    });
}

void Autosave::discard()
{
    ++m_generation;
    m_timer.stop();
    m_pool.waitForDone();
    removeKept(planFile());
    m_lock.reset();
}

void Autosave::adopt(LeftOver leftOver)
{
    discard();
    m_id = QFileInfo(leftOver.planFile).completeBaseName();
    m_folder = QFileInfo(leftOver.planFile).absolutePath();
    m_lock = std::move(leftOver.lock);
    startTimer();
}

}  // namespace lidwright
