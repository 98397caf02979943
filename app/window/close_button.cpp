#include "app/window/close_button.h"

#include "app/style/verdict_mark.h"

#include <QEvent>

namespace lidwright {

namespace {
constexpr int kTarget = 24;  // px, WCAG 2.2, success criterion 2.5.8
}

CloseButton::CloseButton(const QString& what, QWidget* parent) : QToolButton(parent)
{
    setAutoRaise(true);
    setMinimumSize(kTarget, kTarget);
    setFocusPolicy(Qt::TabFocus);
    setAccessibleName(what);
    setToolTip(what);
    setIcon(tintedIcon(QStringLiteral("act_close"), palette()));
}

void CloseButton::changeEvent(QEvent* event)
{
    QToolButton::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) setIcon(tintedIcon(QStringLiteral("act_close"), palette()));
}

}  // namespace lidwright
