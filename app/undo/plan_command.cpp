#include "app/undo/plan_command.h"

#include "app/document/plan_document.h"

#include <utility>

namespace lidwright {

namespace {
constexpr int kPlanCommandId = 1;
}

PlanCommand::PlanCommand(PlanDocument& document, Plan next, const QString& text, const QString& mergeKey)
    : QUndoCommand(text), m_document(document), m_other(std::move(next)), m_mergeKey(mergeKey)
{}

int PlanCommand::id() const
{
    return m_mergeKey.isEmpty() ? -1 : kPlanCommandId;
}

bool PlanCommand::mergeWith(const QUndoCommand* newer)
{
    const auto* next = dynamic_cast<const PlanCommand*>(newer);
    if (!next || next->m_mergeKey != m_mergeKey) return false;
    // The newer step has been done already: the document holds its plan, this step its own start.
    setText(next->text());
    setObsolete(m_other == m_document.plan());
    return true;
}

void PlanCommand::swap()
{
    // A preview is no plan of the maker's: a step that came in between starts from before the drag.
    m_document.dropDrag();
    Plan current = m_document.plan();
    m_document.assign(m_other);
    m_other = std::move(current);
}

}  // namespace lidwright
