#include "app/board/nudge_burst.h"

#include "app/document/plan_document.h"
#include "app/text/texts.h"

namespace lidwright {

NudgeBurst::NudgeBurst(PlanDocument& document, QObject* parent) : QObject(parent), m_document(document)
{
    m_pause.setSingleShot(true);
    m_pause.setInterval(kPause);
    connect(&m_pause, &QTimer::timeout, this, &NudgeBurst::end);
    // Whatever else changes the plan, the way is no longer counted from the same start.
    connect(&document, &PlanDocument::changed, this, [this] {
        if (!m_own) end();
    });
}

void NudgeBurst::end()
{
    m_what.clear();
    m_pause.stop();
}

bool NudgeBurst::step(const QString& what, Point by, const Meaning& meaning)
{
    if (m_what != what) {
        m_what = what;
        ++m_number;
        m_start = m_document.plan();
        m_startLayout = m_document.layout();
        m_way = {};
    }
    const Point way = m_way + by;
    const Drag whole = meaning(m_start, m_startLayout, way);
    if (whole.edits.empty()) return false;
    m_own = true;
    const bool done = m_document.edit(whole.edits, shown(whole.says, m_document.style()),
                                      QStringLiteral("nudge/%1/%2").arg(what).arg(m_number));
    m_own = false;
    if (done) m_way = way;
    m_pause.start();
    return done;
}

}  // namespace lidwright
