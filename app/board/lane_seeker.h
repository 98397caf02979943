#pragma once

#include "core/checks/bridge_lane.h"

#include <QObject>
#include <QThread>
#include <QTimer>

#include <atomic>
#include <memory>
#include <vector>

namespace lidwright {

/// Asks core for the bridge lane on a thread of its own, a moment after the last change, so that the window
/// never waits. An answer to anything but the newest question is dropped.
class LaneSeeker : public QObject {
    Q_OBJECT
public:
    /// How long the plan has to rest before the lane is sought.
    static constexpr int kRest_ms = 60;

    explicit LaneSeeker(QObject* parent = nullptr);
    ~LaneSeeker() override;

    /// Asks for the plan's lane; takes the place of an earlier question.
    void ask(const Plan& plan);
    /// True from ask() until the answer is there.
    bool pending() const { return m_pending; }

Q_SIGNALS:
    void found(const std::vector<lidwright::LaneRun>& runs);

private:
    void start();

    QTimer m_rest;
    std::shared_ptr<const Plan> m_next;
    std::shared_ptr<std::atomic<int>> m_newest;  ///< number of the newest question, shared with the worker
    std::unique_ptr<PlacedArtCache> m_cache;     ///< touched by the worker thread only
    bool m_pending = false;
    QThread m_thread;
    QObject* m_worker;  ///< lives on m_thread; deleted when that ends
};

}  // namespace lidwright
