#include "app/studies/plot_box.h"

#include "app/style/verdict_mark.h"
#include "app/text/texts.h"

#include <QAction>
#include <QEvent>
#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

namespace lidwright {

PlotBox::PlotBox(QWidget* parent)
    : QWidget(parent), m_title(new QLabel(this)), m_picture(new QToolButton(this)), m_view(new PlotView(this))
{
    QFont bold = m_title->font();
    bold.setBold(true);
    m_title->setFont(bold);
    m_title->setWordWrap(true);
    m_title->setBuddy(m_view);
    auto* write = new QAction(tr("Write as picture..."), this);
    connect(write, &QAction::triggered, this, &PlotBox::pictureWanted);
    m_view->addAction(write);
    m_view->setContextMenuPolicy(Qt::ActionsContextMenu);
    m_picture->setAutoRaise(true);
    m_picture->setFocusPolicy(Qt::TabFocus);
    m_picture->setToolTip(tr("Write this plot as a scalable drawing (SVG) or a picture (PNG)"));
    connect(m_picture, &QToolButton::clicked, this, &PlotBox::pictureWanted);
    auto* head = new QHBoxLayout;
    head->addWidget(m_title, 1);
    head->addWidget(m_picture, 0, Qt::AlignTop);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(4, 0, 0, 0);
    column->setSpacing(2);
    column->addLayout(head);
    column->addWidget(m_view, 1);
    setTabOrder(m_view, m_picture);
    tint();
}

void PlotBox::setPlot(const StudyPlot& plot, const UnitStyle& style)
{
    // A title is a text, not a mnemonic.
    m_title->setText(shown(plot.title).replace(QLatin1Char('&'), QLatin1String("&&")));
    m_picture->setAccessibleName(tr("Write %1 as picture").arg(shown(plot.title)));
    m_view->setPlot(plot, style);
}

void PlotBox::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) tint();
}

void PlotBox::tint()
{
    m_picture->setIcon(tintedIcon(QStringLiteral("act_export_picture"), palette()));
}

}  // namespace lidwright
