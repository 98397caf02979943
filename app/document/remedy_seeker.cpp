#include "app/document/remedy_seeker.h"

#include <utility>

namespace lidwright {

RemedySeeker::RemedySeeker(QObject* parent)
    : QObject(parent),
      m_newest(std::make_shared<std::atomic<int>>(-1)),
      m_cache(std::make_unique<PlacedArtCache>()),
      m_worker(new QObject)
{
    m_rest.setSingleShot(true);
    m_rest.setInterval(kRest_ms);
    connect(&m_rest, &QTimer::timeout, this, &RemedySeeker::start);
    m_worker->moveToThread(&m_thread);
    connect(&m_thread, &QThread::finished, m_worker, &QObject::deleteLater);
    m_thread.setObjectName(QStringLiteral("remedies"));
    m_thread.start(QThread::LowPriority);
}

RemedySeeker::~RemedySeeker()
{
    dismiss();
    m_thread.quit();
    m_thread.wait();
}

void RemedySeeker::ask(int question, const Plan& plan, const std::vector<Finding>& findings)
{
    *m_newest = question;
    m_next = std::make_shared<const Question>(Question{question, plan, findings});
    m_rest.start();
}

void RemedySeeker::dismiss()
{
    *m_newest = -1;
    m_rest.stop();
    m_next.reset();
}

void RemedySeeker::start()
{
    const auto question = std::exchange(m_next, nullptr);
    if (!question) return;
    auto seek = [this, question] {
        std::vector<std::vector<Remedy>> remedies;
        for (const Finding& finding : question->findings) {
            if (*m_newest != question->number) return;
            const bool mendable = finding.verdict == Verdict::Tight || finding.verdict == Verdict::Wrong;
            remedies.push_back(mendable ? provenRemedies(question->plan, finding, m_cache.get())
                                        : std::vector<Remedy>());
        }
        QMetaObject::invokeMethod(this, [this, number = question->number, answer = std::move(remedies)] {
            if (*m_newest == number) Q_EMIT found(number, answer);
        });
    };
    // The worker ends before this object does, so `this` is good for as long as the worker runs.
    QMetaObject::invokeMethod(m_worker, seek);
}

}  // namespace lidwright
