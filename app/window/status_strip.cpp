#include "app/window/status_strip.h"

#include "app/document/plan_document.h"

#include <QAction>
#include <QComboBox>
#include <QLabel>
#include <QStatusBar>
#include <QToolButton>

namespace lidwright {

StatusStrip::StatusStrip(QStatusBar& bar, PlanDocument& document, QAction* snapping)
    : QObject(&bar), m_document(document), m_caption(new QLabel), m_zoom(new QLabel), m_unit(new QComboBox)
{
    m_caption->setTextFormat(Qt::PlainText);
    m_caption->setMinimumWidth(0);
    m_caption->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    bar.addWidget(m_caption, 1);

    auto* snap = new QToolButton;
    snap->setDefaultAction(snapping);
    snap->setToolButtonStyle(Qt::ToolButtonTextOnly);
    snap->setAccessibleName(tr("Snap while dragging"));
    snap->setFocusPolicy(Qt::TabFocus);
    snap->setMinimumHeight(24);
    bar.addPermanentWidget(snap);

    m_unit->addItems({tr("mm"), tr("inch, decimal"), tr("inch, fraction")});
    m_unit->setAccessibleName(tr("Unit of lengths"));
    m_unit->setToolTip(
        tr("Unit in which lengths are shown: millimetres, decimal inches or fractions of an inch. "
           "Any unit can be typed at any time."));
    bar.addPermanentWidget(m_unit);
    connect(m_unit, &QComboBox::activated, this, &StatusStrip::chooseUnit);

    m_zoom->setToolTip(tr("Size of the drawing on this screen, in percent of full size"));
    m_zoom->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    m_zoom->setMinimumWidth(m_zoom->fontMetrics().horizontalAdvance(QStringLiteral("8888.8 %")));
    bar.addPermanentWidget(m_zoom);

    connect(&document, &PlanDocument::changed, this, &StatusStrip::showUnit);
    showUnit();
}

void StatusStrip::setCaption(const QString& text)
{
    m_caption->setText(text);
    m_caption->setToolTip(text);
}

void StatusStrip::setZoom(double percentOfFullSize)
{
    //: size of the drawing in percent of full size
    m_zoom->setText(tr("%1 %").arg(percentOfFullSize, 0, 'f', percentOfFullSize < 10 ? 1 : 0));
}

void StatusStrip::showUnit()
{
    m_unit->setCurrentIndex(static_cast<int>(m_document.plan().sheet.unit));
}

void StatusStrip::chooseUnit(int index)
{
    m_document.edit({{"sheet.unit", static_cast<double>(index)}},
                    tr("Show lengths in: %1").arg(m_unit->itemText(index)));
    showUnit();
}

}  // namespace lidwright
