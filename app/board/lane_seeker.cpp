#include "app/board/lane_seeker.h"

#include <utility>

namespace lidwright {

LaneSeeker::LaneSeeker(QObject* parent)
    : QObject(parent),
      m_newest(std::make_shared<std::atomic<int>>(0)),
      m_cache(std::make_unique<PlacedArtCache>()),
      m_worker(new QObject)
{
    m_rest.setSingleShot(true);
    m_rest.setInterval(kRest_ms);
    connect(&m_rest, &QTimer::timeout, this, &LaneSeeker::start);
    m_worker->moveToThread(&m_thread);
    connect(&m_thread, &QThread::finished, m_worker, &QObject::deleteLater);
    m_thread.setObjectName(QStringLiteral("lane"));
    m_thread.start(QThread::LowPriority);
}

LaneSeeker::~LaneSeeker()
{
    ++*m_newest;
    m_thread.quit();
    m_thread.wait();
}

void LaneSeeker::ask(const Plan& plan)
{
    ++*m_newest;
    m_next = std::make_shared<const Plan>(plan);
    m_pending = true;
    m_rest.start();
}

void LaneSeeker::start()
{
    const auto plan = std::exchange(m_next, nullptr);
    if (!plan) return;
    // The worker ends before this object does, so `this` is good for as long as the worker runs.
    auto seek = [this, plan, number = m_newest->load()] {
        if (*m_newest != number) return;
        auto runs = bridgeLane(*plan, m_cache.get());
        QMetaObject::invokeMethod(this, [this, number, answer = std::move(runs)] {
            if (*m_newest != number) return;
            m_pending = false;
            Q_EMIT found(answer);
        });
    };
    QMetaObject::invokeMethod(m_worker, seek);
}

}  // namespace lidwright
