#include "app/findings/finding_card.h"

#include "app/style/contrast.h"
#include "app/style/fonts.h"
#include "app/style/palette.h"
#include "app/style/verdict_mark.h"
#include "app/style/wrapping_button.h"
#include "app/text/texts.h"
#include "app/text/unbroken.h"

#include <QContextMenuEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QMenu>
#include <QMouseEvent>
#include <QVBoxLayout>

#include <algorithm>

namespace lidwright {
namespace {

/// What is asked for, alone.
QString boundText(Bound bound)
{
    switch (bound) {
        case Bound::AtMost:
            return FindingCard::tr("May be %1 at most");
        case Bound::Exactly:
            return FindingCard::tr("Should be %1");
        case Bound::AtLeast:
            break;
    }
    return FindingCard::tr("Needs at least %1");
}

/// Measured and required value in one line.
QString measuredBoundText(Bound bound)
{
    switch (bound) {
        case Bound::AtMost:
            return FindingCard::tr("Is %1, may be %2 at most");
        case Bound::Exactly:
            return FindingCard::tr("Is %1, should be %2");
        case Bound::AtLeast:
            break;
    }
    return FindingCard::tr("Is %1, needs at least %2");
}

/// The numbers behind the verdict; empty where the finding has none.
QString measuresText(const Finding& finding, const UnitStyle& style)
{
    if (!finding.measured && !finding.required) return {};
    if (!finding.measured) return boundText(finding.bound).arg(shown(*finding.required, style));
    if (!finding.required) return FindingCard::tr("Is %1").arg(shown(*finding.measured, style));
    QString text;
    // A clearance below nothing is an overlap: makers do not speak of minus 3 mm.
    if (finding.bound == Bound::AtLeast && finding.measured->value < 0) {
        Measure overlap = *finding.measured;
        overlap.value = -overlap.value;
        text = FindingCard::tr("Overlaps by %1, needs at least %2 clear")
                   .arg(shown(overlap, style), shown(*finding.required, style));
    } else {
        text = measuredBoundText(finding.bound)
                   .arg(shown(*finding.measured, style), shown(*finding.required, style));
    }
    if (finding.verdict == Verdict::Tight && finding.comfortable)
        text += (finding.bound == Bound::AtMost ? FindingCard::tr("; good up to %1")
                                                : FindingCard::tr("; good from %1"))
                    .arg(shown(*finding.comfortable, style));
    return text;
}

constexpr int kMarkLeft = 10;
constexpr int kMarkGap = 8;
constexpr int kTop = 7;
constexpr int kBar = 3;         // width of the bar beside the current entry
constexpr double kTint = 0.10;  // share of the highlight in the current entry's ground
constexpr double kSmall = 0.9;

QString withCapital(QString text)
{
    if (!text.isEmpty()) text[0] = text.at(0).toUpper();
    return text;
}

}  // namespace

FindingCard::FindingCard(QWidget* parent)
    : QFrame(parent),
      m_lines(new QVBoxLayout(this)),
      m_sentence(new QLabel(this)),
      m_measures(new QLabel(this))
{
    setFocusPolicy(Qt::ClickFocus);
    m_lines->setSpacing(3);
    m_sentence->setTextFormat(Qt::RichText);
    m_measures->setTextFormat(Qt::PlainText);
    for (QLabel* label : {m_sentence, m_measures}) {
        label->setWordWrap(true);
        m_lines->addWidget(label);
    }
    fitFont();
    setToolTip(tr("Enter shows the place on the board; its menu takes note that you live with it"));
    paintQuiet();
}

void FindingCard::contextMenuEvent(QContextMenuEvent* event)
{
    if (m_finding.verdict != Verdict::Tight && m_finding.verdict != Verdict::Wrong) return;
    QMenu menu(this);
    const bool on = m_finding.accepted.empty();
    menu.addAction(on ? tr("Live with it, for a reason...") : tr("Live with it no longer"), this,
                   [this, on] { Q_EMIT acceptWanted(on); });
    menu.exec(event->globalPos());
}

void FindingCard::setFinding(const Finding& finding, const UnitStyle& style, bool remediesPending)
{
    m_finding = finding;
    const QString word = withCapital(shown(finding.verdict));
    const QString sentence = shown(finding.sentence, style);
    //: a finding: its verdict and its sentence
    m_sentence->setText(tr("<b>%1.</b> %2").arg(word.toHtmlEscaped(), unbroken(sentence).toHtmlEscaped()));
    QString measures = measuresText(finding, style);
    if (!finding.accepted.empty()) {
        if (!measures.isEmpty()) measures += QLatin1Char('\n');
        measures += tr("Accepted: %1").arg(QString::fromStdString(finding.accepted));
    }
    m_measures->setText(unbroken(measures));
    m_measures->setVisible(!measures.isEmpty());
    QString name = tr("%1: %2").arg(word, sentence);
    if (!measures.isEmpty()) name += QStringLiteral(" ") + measures + QStringLiteral(".");
    setAccessibleName(name);

    if (remediesPending && finding.verdict != Verdict::Good) {
        for (WrappingButton* button : m_buttons) {
            if (button->hasFocus()) setFocus(Qt::OtherFocusReason);
            button->setEnabled(false);
        }
    } else {
        rebuildButtons(style);
    }
    update();
}

void FindingCard::rebuildButtons(const UnitStyle& style)
{
    std::vector<QString> labels;
    for (const Remedy& remedy : m_finding.remedies)
        labels.push_back(shown(remedy.label, style));
    if (labels != m_shownRemedies) {
        for (WrappingButton* button : m_buttons) {
            if (button->hasFocus()) setFocus(Qt::OtherFocusReason);
            // One of them may be the sender of what led here.
            button->hide();
            m_lines->removeWidget(button);
            button->deleteLater();
        }
        m_buttons.clear();
        m_shownRemedies = labels;
        for (std::size_t i = 0; i < labels.size(); ++i) {
            auto* button = new WrappingButton(unbroken(labels[i]), this);
            button->setAccessibleName(labels[i]);
            button->setToolTip(
                tr("Shown on the board while pointed at; pressed, it is applied and can be undone"));
            connect(button, &WrappingButton::clicked, this, [this, i] {
                if (i < m_finding.remedies.size()) Q_EMIT remedyChosen(Remedy(m_finding.remedies[i]));
            });
            button->installEventFilter(this);
            m_lines->addWidget(button);
            m_buttons.push_back(button);
        }
    }
    for (WrappingButton* button : m_buttons)
        button->setEnabled(true);
}

bool FindingCard::eventFilter(QObject* watched, QEvent* event)
{
    const auto at = std::find(m_buttons.begin(), m_buttons.end(), watched);
    if (at != m_buttons.end()) {
        const auto index = static_cast<std::size_t>(at - m_buttons.begin());
        const QEvent::Type type = event->type();
        if ((type == QEvent::Enter || type == QEvent::FocusIn) && (*at)->isEnabled() &&
            index < m_finding.remedies.size())
            Q_EMIT remedyPointed(Remedy(m_finding.remedies[index]));
        if (type == QEvent::Leave || type == QEvent::FocusOut || type == QEvent::Hide) Q_EMIT remedyLeft();
    }
    return QFrame::eventFilter(watched, event);
}

void FindingCard::setCurrent(bool current)
{
    m_current = current;
    // One entry of the list takes part in the Tab order; the arrow keys reach the others.
    setFocusPolicy(current ? Qt::StrongFocus : Qt::ClickFocus);
    update();
}

void FindingCard::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    const QColor base = palette().color(QPalette::Base);
    const QColor highlight = palette().color(QPalette::Highlight);
    painter.fillRect(rect(), m_current ? mixed(base, highlight, kTint) : base);
    painter.fillRect(QRect(0, height() - 1, width(), 1), palette().color(QPalette::AlternateBase));
    const QColor ring = withContrast(highlight, {base}, kMarkContrast);
    if (m_current) painter.fillRect(QRect(0, 0, kBar, height()), ring);
    if (hasFocus()) {
        painter.setPen(QPen(ring, 2));
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
    paintMark(painter, QRectF(kMarkLeft, kTop, markSide(), markSide()), m_finding.verdict, palette());
}

void FindingCard::mousePressEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton) Q_EMIT chosen();
    QFrame::mousePressEvent(event);
}

void FindingCard::keyPressEvent(QKeyEvent* event)
{
    // Keys that a button of the card does not use arrive here too.
    switch (event->key()) {
        case Qt::Key_Up:
            Q_EMIT stepWanted(-1);
            return;
        case Qt::Key_Down:
            Q_EMIT stepWanted(1);
            return;
        case Qt::Key_Home:
            Q_EMIT stepWanted(-2);
            return;
        case Qt::Key_End:
            Q_EMIT stepWanted(2);
            return;
        case Qt::Key_Return:
        case Qt::Key_Enter:
        case Qt::Key_Space:
            Q_EMIT chosen();
            return;
        default:
            QFrame::keyPressEvent(event);
    }
}

void FindingCard::focusInEvent(QFocusEvent* event)
{
    QFrame::focusInEvent(event);
    update();
}

void FindingCard::focusOutEvent(QFocusEvent* event)
{
    QFrame::focusOutEvent(event);
    update();
}

int FindingCard::markSide() const
{
    return fontMetrics().height();
}

void FindingCard::fitFont()
{
    m_measures->setFont(scaledFont(font(), kSmall));
    m_lines->setContentsMargins(kMarkLeft + markSide() + kMarkGap, kTop, 8, kTop);
}

void FindingCard::paintQuiet()
{
    QPalette text = palette();
    text.setColor(QPalette::WindowText, palette().color(QPalette::Text));
    m_sentence->setPalette(text);
    text.setColor(QPalette::WindowText, quietText(palette()));
    m_measures->setPalette(text);
}

void FindingCard::changeEvent(QEvent* event)
{
    QFrame::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) paintQuiet();
    if (event->type() == QEvent::FontChange) fitFont();
}

}  // namespace lidwright
