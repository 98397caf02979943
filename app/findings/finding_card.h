#pragma once

#include "core/checks/finding.h"

#include <QFrame>

#include <vector>

class QLabel;
class QVBoxLayout;

namespace lidwright {

class WrappingButton;

/// One finding: mark, word and sentence, what was measured and what is needed, and a button for each way out.
/// The card stays while its finding changes, so that keyboard and eye keep their place.
class FindingCard final : public QFrame {
    Q_OBJECT
public:
    explicit FindingCard(QWidget* parent = nullptr);

    /// Shows the finding. Where its remedies are still being sought, those shown before stay, disabled.
    void setFinding(const Finding& finding, const UnitStyle& style, bool remediesPending);

    const Finding& finding() const { return m_finding; }
    const std::vector<WrappingButton*>& buttons() const { return m_buttons; }

    /// The entry that the arrow keys start from.
    void setCurrent(bool current);
    bool isCurrent() const { return m_current; }

Q_SIGNALS:
    void chosen();  ///< by mouse, Enter or the space bar
    void remedyChosen(const Remedy& remedy);
    void remedyPointed(const Remedy& remedy);  ///< by pointer or keyboard: it may be shown
    void remedyLeft();
    /// The maker wants to live with it, or no longer.
    void acceptWanted(bool on);
    void stepWanted(int direction);  ///< arrow keys: -1 up, 1 down; -2 first, 2 last

protected:
    void contextMenuEvent(QContextMenuEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void changeEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void rebuildButtons(const UnitStyle& style);
    void paintQuiet();
    void fitFont();
    int markSide() const;

    Finding m_finding;
    QVBoxLayout* m_lines;
    QLabel* m_sentence;
    QLabel* m_measures;
    std::vector<WrappingButton*> m_buttons;
    std::vector<QString> m_shownRemedies;
    bool m_current = false;
};

/// Lets screen readers meet cards as entries of a list. Called once by whoever shows cards.
void installCardAccess();

}  // namespace lidwright
