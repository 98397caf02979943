#include "app/window/folding_side.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QToolButton>
#include <QVBoxLayout>

namespace lidwright {

namespace {
constexpr int kStrip = 28;  // px: room for a 24 px target (WCAG 2.2, 2.5.8)
}

FoldingSide::FoldingSide(const QString& name, Edge edge, QWidget* content, QWidget* parent)
    : QFrame(parent),
      m_name(name),
      m_edge(edge),
      m_content(content),
      m_fold(new QToolButton),
      m_title(new QLabel(name))
{
    m_fold->setAutoRaise(true);
    m_fold->setMinimumSize(24, 24);
    m_fold->setFocusPolicy(Qt::TabFocus);
    connect(m_fold, &QToolButton::clicked, this, [this] { setFolded(!m_folded); });
    QFont heading = m_title->font();
    heading.setBold(true);
    m_title->setFont(heading);

    auto* head = new QHBoxLayout;
    head->setContentsMargins(2, 2, 2, 0);
    if (edge == Edge::Left) {
        head->addSpacing(6);
        head->addWidget(m_title, 1);
        head->addWidget(m_fold);
    } else {
        head->addWidget(m_fold);
        head->addWidget(m_title, 1);
    }
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addLayout(head);
    column->addWidget(content, 1);
    column->addStretch(0);
    setAccessibleName(name);
    arrange();
}

void FoldingSide::setFolded(bool folded)
{
    if (folded == m_folded) return;
    // The keyboard must not be left in something that cannot be seen.
    if (folded && m_content->isAncestorOf(window()->focusWidget())) m_fold->setFocus();
    if (folded && isVisible()) m_openWidth = width();
    m_folded = folded;
    arrange();
    Q_EMIT foldedChanged(folded);
}

void FoldingSide::arrange()
{
    m_content->setVisible(!m_folded);
    m_title->setVisible(!m_folded);
    const bool pointsLeft = (m_edge == Edge::Left) != m_folded;
    m_fold->setArrowType(pointsLeft ? Qt::LeftArrow : Qt::RightArrow);
    const QString text = m_folded ? tr("Unfold: %1").arg(m_name) : tr("Fold away: %1").arg(m_name);
    m_fold->setAccessibleName(text);
    m_fold->setToolTip(text);
    setMinimumWidth(m_folded ? kStrip : 0);
    setMaximumWidth(m_folded ? kStrip : QWIDGETSIZE_MAX);
    update();
}

void FoldingSide::changeEvent(QEvent* event)
{
    QFrame::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) update();
}

void FoldingSide::paintEvent(QPaintEvent* event)
{
    QFrame::paintEvent(event);
    if (!m_folded) return;
    QPainter painter(this);
    painter.setPen(palette().color(QPalette::WindowText));
    // The name reads upward on the left side and downward on the right, as on a drawing's edges.
    if (m_edge == Edge::Left) {
        painter.translate(0, height());
        painter.rotate(-90);
        painter.drawText(QRectF(8, 0, height() - 48, width()), Qt::AlignRight | Qt::AlignVCenter, m_name);
    } else {
        painter.translate(width(), 0);
        painter.rotate(90);
        painter.drawText(QRectF(40, 0, height() - 48, width()), Qt::AlignLeft | Qt::AlignVCenter, m_name);
    }
}

}  // namespace lidwright
