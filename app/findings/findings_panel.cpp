#include "app/findings/findings_panel.h"

#include "app/document/plan_document.h"
#include "app/findings/count_strip.h"
#include "app/findings/finding_card.h"
#include "app/style/wrapping_button.h"
#include "app/text/texts.h"

#include <QApplication>
#include <QInputDialog>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace lidwright {
namespace {

constexpr int kLeastTarget = 24;  // pixels; WCAG 2.2, success criterion 2.5.8

/// Lays out at once what would be laid out when control returns, so that scrolling can start from true
/// places.
void settleLayouts()
{
    QApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
}

}  // namespace

FindingsPanel::FindingsPanel(PlanDocument& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_counts(new CountStrip(this)),
      m_calm(new QLabel),
      m_fold(new QToolButton),
      m_scroll(new QScrollArea(this)),
      m_lines(nullptr)
{
    askForReason = [this](const QString& sentence) {
        return QInputDialog::getText(
                   this, tr("Live with it"),
                   tr("%1\nWhy it is lived with (stands on the build sheet):").arg(sentence))
            .trimmed();
    };
    installCardAccess();
    auto* list = new QWidget;
    list->setBackgroundRole(QPalette::Base);
    list->setAutoFillBackground(true);
    m_lines = new QVBoxLayout(list);
    m_lines->setContentsMargins(0, 0, 0, 0);
    m_lines->setSpacing(0);
    m_calm->setWordWrap(true);
    m_calm->setMargin(8);
    m_calm->setText(tr("Nothing to mend: everything that could be judged is good."));
    m_fold->setCheckable(true);
    m_fold->setAutoRaise(true);
    m_fold->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    m_fold->setArrowType(Qt::RightArrow);
    m_fold->setMinimumHeight(kLeastTarget);
    m_fold->setToolTip(tr("Unfold or fold away the findings that are good"));
    m_lines->addWidget(m_calm);
    m_lines->addWidget(m_fold);
    m_lines->addStretch();

    m_scroll->setWidget(list);
    m_scroll->setWidgetResizable(true);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setAccessibleName(tr("Findings"));
    m_scroll->setWhatsThis(
        tr("What the plan's checks say, gravest first. The arrow keys go from one finding to the "
           "next, Enter shows its place on the board, Tab reaches its ways out."));
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->setSpacing(0);
    whole->addWidget(m_counts);
    whole->addWidget(m_scroll, 1);

    connect(m_fold, &QToolButton::toggled, this, [this](bool open) {
        m_fold->setArrowType(open ? Qt::DownArrow : Qt::RightArrow);
        refresh();
    });
    connect(&m_document, &PlanDocument::changed, this, &FindingsPanel::refresh);
    connect(&m_document, &PlanDocument::remediesReady, this, &FindingsPanel::refresh);
    refresh();
}

FindingCard* FindingsPanel::makeCard()
{
    auto* card = new FindingCard(m_scroll->widget());
    connect(card, &FindingCard::chosen, this, [this, card] { choose(card); });
    connect(card, &FindingCard::stepWanted, this, [this, card](int direction) { step(card, direction); });
    connect(card, &FindingCard::remedyChosen, this, &FindingsPanel::apply);
    connect(card, &FindingCard::acceptWanted, this, [this, card](bool on) { accept(card->finding(), on); });
    connect(card, &FindingCard::remedyPointed, this, &FindingsPanel::previewWanted);
    connect(card, &FindingCard::remedyLeft, this, &FindingsPanel::previewDone);
    return card;
}

void FindingsPanel::accept(const Finding& finding, bool on)
{
    Plan next = m_document.plan();
    if (on) {
        const QString reason = askForReason(shown(finding.sentence, m_document.style()));
        if (reason.isEmpty() || static_cast<int>(next.accepted.size()) >= kMostPieces) return;
        next.accepted.push_back({acceptanceName(finding), reason.toStdString()});
    } else {
        std::erase_if(next.accepted, [&](const Acceptance& a) { return isMeant(a, finding); });
    }
    m_document.replace(next, on ? tr("Live with a finding") : tr("Live with a finding no longer"));
}

std::vector<FindingCard*> FindingsPanel::wantedCards()
{
    std::vector<FindingCard*> wanted;
    std::map<std::string, FindingCard*> kept;
    std::map<std::string, int> equals;
    for (const Finding& finding : m_document.findings()) {
        if (finding.verdict == Verdict::Good && !m_fold->isChecked()) continue;
        const std::string name = finding.rule + "|" + finding.part;
        const std::string key = name + "|" + std::to_string(equals[name]++);
        const auto known = m_cards.find(key);
        FindingCard* card = known == m_cards.end() ? makeCard() : known->second;
        card->setFinding(finding, m_document.style(), m_document.remediesPending());
        kept[key] = card;
        wanted.push_back(card);
    }
    for (const auto& [key, card] : m_cards) {
        if (kept.contains(key)) continue;
        m_focusWanted = m_focusWanted || card->hasFocus() || card->isAncestorOf(QApplication::focusWidget());
        card->hide();
        card->deleteLater();
    }
    m_cards = std::move(kept);
    return wanted;
}

int FindingsPanel::anchorOffset(FindingCard** anchor) const
{
    // What the eye rests on: the current entry where it is in sight, otherwise the first that is.
    const int top = m_scroll->verticalScrollBar()->value();
    const int bottom = top + m_scroll->viewport()->height();
    FindingCard* first = nullptr;
    for (FindingCard* card : m_order) {
        const bool inSight = card->geometry().bottom() > top && card->y() < bottom;
        if (!inSight) continue;
        if (first == nullptr || card->isCurrent()) first = card;
    }
    *anchor = first;
    return first == nullptr ? 0 : first->y() - top;
}

void FindingsPanel::refresh()
{
    FindingCard* anchor = nullptr;
    const int offset = anchorOffset(&anchor);
    m_focusWanted = false;
    m_counts->setFindings(m_document.findings(), !m_document.dragging());
    const auto isCurrent = [](const FindingCard* card) { return card->isCurrent(); };
    const auto place = std::find_if(m_order.begin(), m_order.end(), isCurrent) - m_order.begin();
    arrange(wantedCards());
    keepCurrent(static_cast<std::size_t>(place));
    // An entry that went away with the keyboard hands it on within the list.
    if (m_focusWanted && m_cards.contains(m_current)) m_cards.at(m_current)->setFocus(Qt::OtherFocusReason);
    if (!m_document.dragging()) orderTabs();

    const auto good = std::count_if(m_document.findings().begin(), m_document.findings().end(),
                                    [](const Finding& f) { return f.verdict == Verdict::Good; });
    m_fold->setText(tr("%n good", nullptr, static_cast<int>(good)));
    m_fold->setAccessibleName(
        tr("%1, %2").arg(m_fold->text(), m_fold->isChecked() ? tr("unfolded") : tr("folded")));
    m_fold->setVisible(good > 0);
    m_calm->setVisible(good > 0 && good == static_cast<long>(m_document.findings().size()));

    const bool anchorStays =
        anchor != nullptr && std::find(m_order.begin(), m_order.end(), anchor) != m_order.end();
    if (anchorStays && m_scroll->isVisible()) {
        settleLayouts();
        m_scroll->verticalScrollBar()->setValue(anchor->y() - offset);
    }
}

void FindingsPanel::arrange(std::vector<FindingCard*> wanted)
{
    const auto isGood = [](const FindingCard* card) { return card->finding().verdict == Verdict::Good; };
    const auto firstGood = std::find_if(wanted.begin(), wanted.end(), isGood) - wanted.begin();
    if (wanted == m_order && firstGood == m_firstGood) return;
    for (FindingCard* card : m_order)
        m_lines->removeWidget(card);
    m_order = std::move(wanted);
    m_firstGood = firstGood;
    // The calm line stands first, the fold before the good ones, the stretch last.
    m_lines->removeWidget(m_fold);
    int at = 1;
    bool foldPlaced = false;
    for (FindingCard* card : m_order) {
        if (card->finding().verdict == Verdict::Good && !foldPlaced) {
            m_lines->insertWidget(at++, m_fold);
            foldPlaced = true;
        }
        m_lines->insertWidget(at++, card);
        card->show();
    }
    if (!foldPlaced) m_lines->insertWidget(at, m_fold);
}

void FindingsPanel::orderTabs()
{
    QWidget* before = nullptr;
    const auto append = [&before](QWidget* next) {
        if (before != nullptr) setTabOrder(before, next);
        before = next;
    };
    bool foldPlaced = false;
    for (FindingCard* card : m_order) {
        if (card->finding().verdict == Verdict::Good && !foldPlaced) {
            append(m_fold);
            foldPlaced = true;
        }
        append(card);
        for (WrappingButton* button : card->buttons())
            append(button);
    }
    if (!foldPlaced) append(m_fold);
}

void FindingsPanel::keepCurrent(std::size_t formerPlace)
{
    const auto current = m_cards.find(m_current);
    if (current != m_cards.end()) {
        makeCurrent(current->second);
        return;
    }
    m_current.clear();
    if (m_order.empty()) return;
    // The entry is gone, mostly because it was mended: the one that moved into its place follows.
    makeCurrent(m_order[std::min(formerPlace, m_order.size() - 1)]);
}

void FindingsPanel::makeCurrent(FindingCard* card)
{
    for (const auto& [key, other] : m_cards) {
        other->setCurrent(other == card);
        if (other == card) m_current = key;
    }
}

void FindingsPanel::choose(FindingCard* card)
{
    makeCurrent(card);
    card->setFocus(Qt::OtherFocusReason);
    m_scroll->ensureWidgetVisible(card, 0, 0);
    const std::vector<Place> places = card->finding().places;
    m_document.select(QString::fromStdString(card->finding().part));
    Q_EMIT placesWanted(places);
}

void FindingsPanel::step(FindingCard* from, int direction)
{
    const auto at = std::find(m_order.begin(), m_order.end(), from);
    if (at == m_order.end()) return;
    const auto last = static_cast<int>(m_order.size()) - 1;
    const int here = static_cast<int>(at - m_order.begin());
    const int there = direction == -2 ? 0 : direction == 2 ? last : std::clamp(here + direction, 0, last);
    choose(m_order[static_cast<std::size_t>(there)]);
}

void FindingsPanel::apply(const Remedy& remedy)
{
    m_document.edit(remedy.edits, shown(remedy.label, m_document.style()));
}

}  // namespace lidwright
