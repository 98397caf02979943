#pragma once

#include "core/plan/plan.h"

#include <QString>
#include <QUndoCommand>

namespace lidwright {

class PlanDocument;

/// The one kind of undo step: it holds the other plan and swaps it with the document's. A plan's big parts
/// are shared, so holding whole plans costs little, and undo is exact by construction.
class PlanCommand final : public QUndoCommand {
public:
    /// `mergeKey`: steps with the same non-empty key that follow one another become one.
    PlanCommand(PlanDocument& document, Plan next, const QString& text, const QString& mergeKey = {});

    void undo() override { swap(); }
    void redo() override { swap(); }
    int id() const override;
    bool mergeWith(const QUndoCommand* newer) override;

private:
    void swap();

    PlanDocument& m_document;
    Plan m_other;
    QString m_mergeKey;
};

}  // namespace lidwright
