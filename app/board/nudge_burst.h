#pragma once

#include "core/checks/handles.h"

#include <QObject>
#include <QString>
#include <QTimer>

#include <functional>

namespace lidwright {

class PlanDocument;

/// Key presses in quick succession that move one thing: one undo step, which says the whole way.
class NudgeBurst : public QObject {
    Q_OBJECT
public:
    /// What a way (dx, dy) from the burst's start means.
    using Meaning = std::function<Drag(const Plan& start, const Layout& startLayout, Point way)>;

    explicit NudgeBurst(PlanDocument& document, QObject* parent = nullptr);

    /// One step further by `by` mm. A new burst begins after a pause, or when `what` (the thing and view
    /// moved) is another. Returns false where the thing cannot move so; then nothing has changed.
    bool step(const QString& what, Point by, const Meaning& meaning);
    /// The next step starts a new undo step.
    void end();

    /// A pause of this many milliseconds ends a burst.
    static constexpr int kPause = 1000;

private:
    PlanDocument& m_document;
    QTimer m_pause;
    QString m_what;
    int m_number = 0;
    bool m_own = false;
    Plan m_start;
    Layout m_startLayout;
    Point m_way;
};

}  // namespace lidwright
