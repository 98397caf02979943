#pragma once

#include "app/document/plan_document.h"
#include "app/properties/parts_panel.h"
#include "tests/support/plans.h"

#include <QAccessible>
#include <QApplication>
#include <QKeyEvent>
#include <QTest>
#include <QVBoxLayout>

namespace lidwright::testing {

/// Shows a widget in an active window, so that keys reach what has the focus.
class ActiveWindow : public QWidget {
public:
    explicit ActiveWindow(QWidget* content, QSize size = {320, 740})
    {
        auto* lines = new QVBoxLayout(this);
        lines->setContentsMargins(0, 0, 0, 0);
        lines->addWidget(content);
        resize(size);
        show();
        activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(this));
    }
};

/// A plan that has a member in every list.
inline Plan fullPlan()
{
    Plan plan;
    plan.art.push_back(pieceOf(Region{{circleRing({0, 0}, 20)}}));
    plan.art.back().x = 80;
    plan.art.back().y = -60;
    plan.holes.resize(2);
    plan.holes[1].x = 250;
    plan.blocks.resize(1);
    return plan;
}

/// The parts panel on a document with a full plan.
struct PanelWindow {
    explicit PanelWindow(const Plan& plan = fullPlan()) : panel(new PartsPanel(document)), window(panel)
    {
        document.reset(plan, {});
    }

    /// The control of a parameter, with the keyboard in it.
    QWidget* control(const std::string& key)
    {
        panel->focusParameter(QString::fromStdString(key));
        return panel->findChild<QWidget*>(QString::fromStdString(key));
    }
    ParameterValue now(const std::string& key) const
    {
        const auto ref = findParameter(document.plan(), key);
        EXPECT_TRUE(ref.ok()) << key;
        return get(document.plan(), *ref);
    }

    PlanDocument document;
    PartsPanel* panel;
    ActiveWindow window;
};

/// Presses the keys of a text one after the other; signs beyond ASCII as a keyboard that has them sends them.
inline void press(QWidget* control, const QString& text)
{
    for (const uint sign : text.toUcs4()) {
        const char32_t one[] = {sign};
        if (sign < 0x7f) {
            QTest::keyClick(control, static_cast<char>(sign));
            continue;
        }
        for (const QEvent::Type way : {QEvent::KeyPress, QEvent::KeyRelease}) {
            QKeyEvent key(way, Qt::Key_unknown, Qt::NoModifier, QString::fromUcs4(one, 1));
            QApplication::sendEvent(control, &key);
        }
    }
}

/// Types over what stands in the control and presses Enter.
inline void type(QWidget* control, const QString& text)
{
    QTest::keyClick(control, Qt::Key_A, Qt::ControlModifier);
    if (text.isEmpty())
        QTest::keyClick(control, Qt::Key_Delete);
    else
        press(control, text);
    QTest::keyClick(control, Qt::Key_Return);
}

/// Names of the visible controls below `root` that a screen reader could not name.
inline QStringList unnamedControls(QWidget* root)
{
    QStringList unnamed;
    for (QWidget* widget : root->findChildren<QWidget*>()) {
        if (!widget->isVisibleTo(root) || widget->focusPolicy() == Qt::NoFocus) continue;
        QAccessibleInterface* face = QAccessible::queryAccessibleInterface(widget);
        if (face == nullptr || face->text(QAccessible::Name).trimmed().isEmpty())
            unnamed << QString::fromLatin1(widget->metaObject()->className()) + QLatin1Char(' ') +
                           widget->objectName();
    }
    return unnamed;
}

}  // namespace lidwright::testing
