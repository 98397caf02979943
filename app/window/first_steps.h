#pragma once

#include "core/plan/plan.h"

#include <QFrame>

#include <array>

class QLabel;
class QToolButton;

namespace lidwright {

class PlanDocument;

/// A narrow strip with the five things to do with a fresh plan. A thing counts as done when the plan differs
/// there from the one that was started with; paper when a sheet was made.
class FirstSteps : public QFrame {
    Q_OBJECT
public:
    enum class Step { Box, Artwork, Neck, Bridge, Paper };
    static constexpr int kSteps = 5;

    explicit FirstSteps(PlanDocument& document, QWidget* parent = nullptr);

    /// The plan that the maker starts from: a sample as it came, or a fresh plan.
    void setStart(const Plan& plan);
    void setPaperMade();
    bool done(Step step) const { return m_done[static_cast<std::size_t>(step)]; }
    bool allDone() const;

Q_SIGNALS:
    void wanted(lidwright::FirstSteps::Step step);
    void dismissed();
    void finished();  ///< the last of them was just done

private:
    void refresh();

    PlanDocument& m_document;
    Plan m_start;
    std::array<bool, kSteps> m_done{};
    std::array<QToolButton*, kSteps> m_buttons{};
};

}  // namespace lidwright
