#pragma once

#include "core/checks/finding.h"

#include <QWidget>

#include <cstddef>
#include <functional>
#include <map>

class QLabel;
class QScrollArea;
class QToolButton;
class QVBoxLayout;

namespace lidwright {

class CountStrip;
class FindingCard;
class PlanDocument;

/// The findings, gravest first, each with its mark, word, sentence, measured and required value and remedies.
class FindingsPanel : public QWidget {
    Q_OBJECT
public:
    explicit FindingsPanel(PlanDocument& document, QWidget* parent = nullptr);

    /// The entries as they stand, from the top.
    const std::vector<FindingCard*>& cards() const { return m_order; }

    /// How the reason for living with a finding is asked for; empty for none. Tests answer for themselves.
    std::function<QString(const QString& sentence)> askForReason;

Q_SIGNALS:
    void placesWanted(const std::vector<Place>& places);  ///< show these on the board
    /// A remedy is pointed at: show what it would do.
    void previewWanted(const Remedy& remedy);
    void previewDone();

private:
    void accept(const Finding& finding, bool on);
    void refresh();
    std::vector<FindingCard*> wantedCards();
    FindingCard* makeCard();
    void arrange(std::vector<FindingCard*> wanted);
    void orderTabs();
    void keepCurrent(std::size_t formerPlace);
    void choose(FindingCard* card);
    void makeCurrent(FindingCard* card);
    void step(FindingCard* from, int direction);
    void apply(const Remedy& remedy);
    int anchorOffset(FindingCard** anchor) const;

    PlanDocument& m_document;
    CountStrip* m_counts;
    QLabel* m_calm;       ///< shown when there is nothing to mend
    QToolButton* m_fold;  ///< opens and closes the good ones
    QScrollArea* m_scroll;
    QVBoxLayout* m_lines;
    std::map<std::string, FindingCard*> m_cards;  ///< by rule, part and number among equals
    std::vector<FindingCard*> m_order;
    std::ptrdiff_t m_firstGood = 0;  ///< index in m_order before which the fold stands
    std::string m_current;           ///< key of the current card
    bool m_focusWanted = false;      ///< the list had the keyboard when its entry went away
};

}  // namespace lidwright
