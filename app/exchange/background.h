#pragma once

#include <QObject>
#include <QThreadPool>

#include <functional>
#include <memory>
#include <mutex>
#include <utility>

namespace lidwright {

/// Work of one kind off the window's thread. Only the answer to the newest question is handed over, on the
/// thread of `context`; an answer that nobody wants any more is dropped. Going away never waits for the work.
template <typename Answer>
class Background {
public:
    Background(QObject* context, std::function<void(Answer)> take)
        : m_desk(std::make_shared<Desk>()), m_take(std::move(take))
    {
        m_desk->context = context;
    }
    ~Background()
    {
        const std::lock_guard lock(m_desk->mutex);
        m_desk->context = nullptr;
    }
    Background(const Background&) = delete;
    Background& operator=(const Background&) = delete;

    /// `work` holds copies of all that it reads.
    void ask(std::function<Answer()> work)
    {
        const int number = ++m_newest;
        m_busy = true;
        QThreadPool::globalInstance()->start([this, desk = m_desk, number, work = std::move(work)] {
            Answer answer = work();
            const std::lock_guard lock(desk->mutex);
            if (!desk->context) return;
            // Queued for the context: handed over after this lock is gone, and not at all if it goes first.
            QMetaObject::invokeMethod(
                desk->context,
                [this, desk, number, answer = std::move(answer)]() mutable {
                    if (!desk->context || number != m_newest) return;
                    m_busy = false;
                    m_take(std::move(answer));
                },
                Qt::QueuedConnection);
        });
    }
    /// No answer is wanted any more.
    void dismiss()
    {
        ++m_newest;
        m_busy = false;
    }
    bool busy() const { return m_busy; }

private:
    struct Desk {
        std::mutex mutex;
        QObject* context = nullptr;
    };
    std::shared_ptr<Desk> m_desk;
    std::function<void(Answer)> m_take;
    int m_newest = 0;
    bool m_busy = false;
};

}  // namespace lidwright
