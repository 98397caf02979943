#include "app/window/notice_bar.h"

#include "app/window/close_button.h"

#include <QAccessible>
#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace lidwright {

namespace {
/// More than this many at once would push the board away; the oldest goes.
constexpr int kMostNotices = 4;
}  // namespace

NoticeBar::NoticeBar(QWidget* parent) : QFrame(parent), m_rows(new QVBoxLayout(this))
{
    m_rows->setContentsMargins(0, 0, 0, 0);
    m_rows->setSpacing(1);
    setAccessibleName(tr("Notices"));
    hide();
}

void NoticeBar::show(const QString& message, const QString& topic, const std::vector<NoticeAnswer>& answers)
{
    if (!topic.isEmpty()) dismiss(topic);
    while (m_rows->count() >= kMostNotices)
        remove(m_rows->itemAt(0)->widget());

    auto* row = new QFrame(this);
    row->setObjectName(topic);
    row->setFrameShape(QFrame::StyledPanel);
    row->setAutoFillBackground(true);
    row->setBackgroundRole(QPalette::ToolTipBase);
    row->setForegroundRole(QPalette::ToolTipText);
    auto* line = new QHBoxLayout(row);
    line->setContentsMargins(8, 3, 3, 3);
    auto* text = new QLabel(message, row);
    text->setObjectName(QStringLiteral("message"));
    text->setTextFormat(Qt::PlainText);
    text->setWordWrap(true);
    text->setForegroundRole(QPalette::ToolTipText);
    text->setTextInteractionFlags(Qt::TextSelectableByMouse);
    line->addWidget(text, 1);
    for (const NoticeAnswer& answer : answers) {
        auto* button = new QPushButton(answer.label, row);
        button->setAutoDefault(false);
        button->setToolTip(message);
        connect(button, &QPushButton::clicked, this, [this, row, act = answer.act] {
            remove(row);
            if (act) act();
        });
        line->addWidget(button);
    }
    auto* close = new CloseButton(tr("Close this notice"), row);
    connect(close, &QToolButton::clicked, this, [this, row] { remove(row); });
    line->addWidget(close);
    m_rows->addWidget(row);
    setVisible(true);

    row->setAccessibleName(message);
    QAccessibleEvent event(row, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

void NoticeBar::dismiss(const QString& topic)
{
    for (int i = m_rows->count() - 1; i >= 0; --i)
        if (m_rows->itemAt(i)->widget()->objectName() == topic) remove(m_rows->itemAt(i)->widget());
}

void NoticeBar::dismissAll()
{
    while (m_rows->count() > 0)
        remove(m_rows->itemAt(0)->widget());
}

QStringList NoticeBar::messages() const
{
    QStringList list;
    for (int i = 0; i < m_rows->count(); ++i)
        list << m_rows->itemAt(i)->widget()->findChild<QLabel*>(QStringLiteral("message"))->text();
    return list;
}

void NoticeBar::remove(QWidget* row)
{
    // Not deleted at once: the click that closes it comes from one of its own buttons.
    m_rows->removeWidget(row);
    row->hide();
    row->deleteLater();
    if (m_rows->count() == 0) hide();
}

}  // namespace lidwright
