#pragma once

#include "app/exchange/background.h"

#include "core/io/build/build_pages.h"

#include <QPointer>
#include <QProgressDialog>

#include <atomic>

class QTimer;

namespace lidwright {

/// Composes build sheets off the window's thread: the studies of lid and air are reckoned as finely as is
/// asked for, which takes seconds. Where it lasts, a dialog shows how far it is and gives it up on demand;
/// the window can be worked meanwhile. A new question takes the place of one that is not answered yet.
class BuildSheetWork : public QObject {
    Q_OBJECT
public:
    explicit BuildSheetWork(QWidget* window);
    ~BuildSheetWork() override;

    using Take = std::function<void(const BenchSheet&)>;
    /// `take` gets the whole sheet, on the window's thread; it is not called for one that was given up.
    void compose(const Plan& plan, const Layout& layout, const std::vector<Finding>& findings,
                 BuildSheetInput input, Take take);
    void giveUp();
    bool busy() const { return m_work.busy(); }
    /// The dialog, while it is busy; shown after kPatience.
    QProgressDialog* dialog() const { return m_dialog; }

    /// Milliseconds before the dialog shows, so that short work does not flash.
    static constexpr int kPatience = 500;

private:
    /// Read and written from both threads.
    struct Run {
        std::atomic<bool> stop{false};
        std::atomic<int> percent{0};
    };
    void closeDialog();

    QWidget* m_window;
    QTimer* m_look;
    QPointer<QProgressDialog> m_dialog;
    std::shared_ptr<Run> m_run;
    Take m_take;
    Background<BenchSheet> m_work;
};

}  // namespace lidwright
