#pragma once

#include "core/checks/check.h"
#include "core/checks/handles.h"

#include <QObject>
#include <QString>
#include <QUndoStack>

#include <memory>
#include <optional>
#include <vector>

namespace lidwright {

class RemedySeeker;

/// The only door for changes. Owns the plan, what is derived from it, the undo stack, the file name and the
/// clean mark, and tells everybody through few signals. Views read from here and never write to the plan.
class PlanDocument : public QObject {
    Q_OBJECT
public:
    explicit PlanDocument(QObject* parent = nullptr);
    ~PlanDocument() override;

    const Plan& plan() const { return m_plan; }
    const Layout& layout() const { return m_layout; }
    /// Gravest first; remedies are filled in a moment after the last change (see remediesReady).
    const std::vector<Finding>& findings() const { return m_findings; }
    /// True while the remedies of the present findings are still being sought.
    bool remediesPending() const { return m_remediesPending; }
    UnitStyle style() const { return unitStyle(m_plan); }
    QUndoStack& undoStack() { return m_undo; }

    // Edits. Each is one undo step unless it merges.

    /// Applies the edits; consecutive calls with the same non-empty mergeKey become one step. On error
    /// nothing changes and refused() is emitted; returns whether it was applied.
    bool edit(const std::vector<Edit>& edits, const QString& undoText, const QString& mergeKey = {});
    /// Structural change (artwork or blocks added or removed, uses of paints): the whole next plan.
    void replace(Plan next, const QString& undoText);

    // Dragging: previews are not undo steps; endDrag makes one of the whole way, cancelDrag goes back.
    void beginDrag();
    bool dragging() const { return m_dragStart.has_value(); }
    const Plan& dragStartPlan() const { return *m_dragStart; }
    const Layout& dragStartLayout() const { return m_dragStartLayout; }
    void previewDrag(const Drag& drag);
    void endDrag();
    void cancelDrag();

    // Selection: a part key ("bridge", "art.1"), empty for none; and a station pointed at (x), for the
    // hairline.
    QString selectedPart() const { return m_selected; }
    void select(const QString& part);

    // File.
    QString filePath() const { return m_filePath; }  ///< empty for an untitled plan
    QString displayName() const;
    bool modified() const { return !m_undo.isClean(); }
    /// Starts over with a plan that has no file (new, sample) or came from `filePath`.
    void reset(Plan plan, const QString& filePath);
    void markSaved(const QString& filePath);
    /// The present plan is on no disk (it came from a recovery file): it counts as modified until it is
    /// saved.
    void markUnsaved();

Q_SIGNALS:
    /// Plan, layout and findings have changed (also during a drag).
    void changed();
    /// The remedies of findings() are now filled in.
    void remediesReady();
    void selectionChanged(const QString& part);
    void fileChanged();  ///< path or clean mark
    void refused(const QString& message);

private:
    friend class PlanCommand;
    void assign(const Plan& plan);
    void dropDrag();  ///< back to the plan before the drag without a word
    void push(Plan next, const QString& text, const QString& mergeKey);
    void refresh();
    void takeRemedies(int question, const std::vector<std::vector<Remedy>>& remedies);

    Plan m_plan;
    Layout m_layout;
    std::vector<Finding> m_findings;
    PlacedArtCache m_cache;
    QUndoStack m_undo;
    QString m_selected;
    QString m_filePath;
    std::optional<Plan> m_dragStart;
    Layout m_dragStartLayout;
    QString m_dragText;
    int m_mergeRun = 0;  ///< goes up where a run of merging steps ends
    std::unique_ptr<RemedySeeker> m_seeker;
    int m_question = 0;  ///< number of the question that the present findings are
    bool m_remediesPending = false;
};

}  // namespace lidwright
