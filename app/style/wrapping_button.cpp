#include "app/style/wrapping_button.h"

#include <QKeyEvent>
#include <QStyleOptionButton>
#include <QStylePainter>

#include <algorithm>

namespace lidwright {
namespace {

constexpr int kSideMargin = 8;
constexpr int kTopMargin = 4;
constexpr int kLeastTarget = 24;  // pixels; WCAG 2.2, success criterion 2.5.8
constexpr int kFlags = Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap;

}  // namespace

WrappingButton::WrappingButton(const QString& text, QWidget* parent) : QPushButton(text, parent)
{
    // A fixed height would hold the button to one line; layouts take what the width asks for.
    QSizePolicy policy(QSizePolicy::Maximum, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setAutoDefault(false);
}

int WrappingButton::heightForWidth(int width) const
{
    const QRect room(0, 0, std::max(1, width - 2 * kSideMargin), 100000);
    return std::max(kLeastTarget, fontMetrics().boundingRect(room, kFlags, text()).height() + 2 * kTopMargin);
}

QSize WrappingButton::sizeHint() const
{
    // A pixel more than the text, since its advance is rounded.
    const int width = fontMetrics().horizontalAdvance(text()) + 2 * kSideMargin + 1;
    return {width, std::max(kLeastTarget, fontMetrics().height() + 2 * kTopMargin)};
}

QSize WrappingButton::minimumSizeHint() const
{
    int widest = 0;
    for (const QString& word : text().split(QLatin1Char(' ')))
        widest = std::max(widest, fontMetrics().horizontalAdvance(word));
    return {widest + 2 * kSideMargin, kLeastTarget};
}

void WrappingButton::paintEvent(QPaintEvent*)
{
    QStylePainter painter(this);
    QStyleOptionButton option;
    initStyleOption(&option);
    option.text.clear();
    painter.drawControl(QStyle::CE_PushButton, option);
    const QRect room = rect().adjusted(kSideMargin, kTopMargin, -kSideMargin, -kTopMargin);
    painter.drawItemText(room, kFlags, palette(), isEnabled(), text(), QPalette::ButtonText);
}

void WrappingButton::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (!event->isAutoRepeat()) click();
            return;
        case Qt::Key_Up:
        case Qt::Key_Down:
        case Qt::Key_Home:
        case Qt::Key_End:
            // These belong to the list that the button stands in.
            event->ignore();
            return;
        default:
            QPushButton::keyPressEvent(event);
    }
}

}  // namespace lidwright
