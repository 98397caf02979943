#include "app/document/plan_document.h"

#include "app/document/plan_members.h"
#include "app/document/remedy_seeker.h"
#include "app/text/texts.h"
#include "app/undo/plan_command.h"

#include "core/layout/settled_edits.h"

#include <QFileInfo>

#include <utility>

namespace lidwright {

PlanDocument::PlanDocument(QObject* parent) : QObject(parent), m_seeker(std::make_unique<RemedySeeker>())
{
    connect(&m_undo, &QUndoStack::cleanChanged, this, &PlanDocument::fileChanged);
    connect(m_seeker.get(), &RemedySeeker::found, this, &PlanDocument::takeRemedies);
    refresh();
}

PlanDocument::~PlanDocument()
{
    // The stack announces its end by cleanChanged; nobody may hear it from a half-gone document.
    disconnect(&m_undo, nullptr, this, nullptr);
}

bool PlanDocument::edit(const std::vector<Edit>& edits, const QString& undoText, const QString& mergeKey)
{
    endDrag();
    auto next = applyEdits(m_plan, settled(m_plan, m_layout, edits));
    if (!next) {
        Q_EMIT refused(shown(next.error()));
        return false;
    }
    push(std::move(next).value(), undoText, mergeKey);
    return true;
}

void PlanDocument::replace(Plan next, const QString& undoText)
{
    endDrag();
    push(std::move(next), undoText, {});
}

void PlanDocument::push(Plan next, const QString& text, const QString& mergeKey)
{
    // A step that changes nothing must not throw away what could be redone.
    if (next == m_plan) return;
    const QString key =
        mergeKey.isEmpty() ? QString() : QStringLiteral("%1#%2").arg(m_mergeRun).arg(mergeKey);
    m_undo.push(new PlanCommand(*this, std::move(next), text, key));
}

void PlanDocument::beginDrag()
{
    endDrag();
    m_dragStart = m_plan;
    m_dragStartLayout = m_layout;
    m_dragText.clear();
}

void PlanDocument::previewDrag(const Drag& drag)
{
    if (!m_dragStart) return;
    auto next = applyEdits(*m_dragStart, drag.edits);
    // Where the way leaves what a plan can be, the last place that was good stays.
    if (!next) return;
    m_dragText = shown(drag.says, style());
    if (*next != m_plan) assign(*next);
}

void PlanDocument::endDrag()
{
    if (!m_dragStart) return;
    Plan next = std::exchange(m_plan, *m_dragStart);
    m_dragStart.reset();
    if (next == m_plan) {
        refresh();
        return;
    }
    push(std::move(next), m_dragText.isEmpty() ? tr("Drag") : m_dragText, {});
}

void PlanDocument::cancelDrag()
{
    if (!m_dragStart) return;
    const Plan start = *std::exchange(m_dragStart, std::nullopt);
    assign(start);
}

void PlanDocument::dropDrag()
{
    if (!m_dragStart) return;
    m_plan = *std::exchange(m_dragStart, std::nullopt);
}

void PlanDocument::select(const QString& part)
{
    const QString wanted = hasPart(m_plan, part) ? part : QString();
    if (wanted == m_selected) return;
    m_selected = wanted;
    ++m_mergeRun;
    Q_EMIT selectionChanged(m_selected);
}

QString PlanDocument::displayName() const
{
    return m_filePath.isEmpty() ? tr("Untitled") : QFileInfo(m_filePath).fileName();
}

void PlanDocument::reset(Plan plan, const QString& filePath)
{
    m_dragStart.reset();
    m_filePath = filePath;
    ++m_mergeRun;
    m_plan = std::move(plan);
    m_cache = {};
    m_undo.clear();
    m_undo.setClean();
    select({});
    refresh();
    Q_EMIT fileChanged();
}

void PlanDocument::markSaved(const QString& filePath)
{
    m_filePath = filePath;
    m_undo.setClean();
    Q_EMIT fileChanged();
}

void PlanDocument::markUnsaved()
{
    m_undo.resetClean();
    Q_EMIT fileChanged();
}

void PlanDocument::assign(const Plan& plan)
{
    m_plan = plan;
    refresh();
}

void PlanDocument::refresh()
{
    m_cache.setQuick(dragging());
    m_layout = derive(m_plan, &m_cache);
    m_findings = check(m_plan, m_layout);
    ++m_question;
    m_remediesPending = true;
    // While something is dragged the next change is at hand: the search waits for the end of the drag.
    if (m_dragStart)
        m_seeker->dismiss();
    else
        m_seeker->ask(m_question, m_plan, m_findings);
    if (!hasPart(m_plan, m_selected)) select({});
    Q_EMIT changed();
}

void PlanDocument::takeRemedies(int question, const std::vector<std::vector<Remedy>>& remedies)
{
    if (question != m_question || remedies.size() != m_findings.size()) return;
    for (std::size_t i = 0; i < remedies.size(); ++i)
        m_findings[i].remedies = remedies[i];
    m_remediesPending = false;
    Q_EMIT remediesReady();
}

}  // namespace lidwright
