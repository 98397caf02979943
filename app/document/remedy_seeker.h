#pragma once

#include "core/checks/check.h"

#include <QObject>
#include <QThread>
#include <QTimer>

#include <atomic>
#include <memory>
#include <vector>

namespace lidwright {

/// Seeks the remedies of findings on a thread of its own, a moment after the last question, so that the
/// window never waits. An answer to anything but the newest question is dropped.
class RemedySeeker : public QObject {
    Q_OBJECT
public:
    /// How long the plan has to rest before remedies are sought.
    static constexpr int kRest_ms = 150;

    explicit RemedySeeker(QObject* parent = nullptr);
    ~RemedySeeker() override;

    /// Asks for the remedies of each of the plan's findings; takes the place of an earlier question.
    void ask(int question, const Plan& plan, const std::vector<Finding>& findings);
    /// No answer is wanted any more.
    void dismiss();

Q_SIGNALS:
    /// Remedies per finding, in the order of the question's findings.
    void found(int question, const std::vector<std::vector<lidwright::Remedy>>& remedies);

private:
    void start();

    struct Question {
        int number = 0;
        Plan plan;
        std::vector<Finding> findings;
    };

    QTimer m_rest;
    std::shared_ptr<const Question> m_next;
    std::shared_ptr<std::atomic<int>> m_newest;  ///< shared with the worker
    std::unique_ptr<PlacedArtCache> m_cache;     ///< touched by the worker thread only
    QThread m_thread;
    QObject* m_worker;  ///< lives on m_thread; deleted when that ends
};

}  // namespace lidwright
