#pragma once

#include "app/actions/action_table.h"

#include <QAction>
#include <QObject>
#include <QPalette>

#include <map>

class QMenu;
class QMenuBar;
class QToolBar;

namespace lidwright {

/// The QActions of one window, made from the action table, and the menus and tool bar that they stand in.
class ActionSet : public QObject {
    Q_OBJECT
public:
    explicit ActionSet(QWidget* window);

    QAction* at(Command command) const { return m_actions.at(command); }
    /// Fills the menu bar by the menu table; recentMenu() and samplesMenu() are there afterwards.
    void fill(QMenuBar& bar);
    void fill(QToolBar& bar);
    QMenu* recentMenu() const { return m_recent; }
    QMenu* samplesMenu() const { return m_samples; }
    /// Draws the icons anew in the palette's text colour.
    void tint(const QPalette& palette);

private:
    std::map<Command, QAction*> m_actions;
    QMenu* m_recent = nullptr;
    QMenu* m_samples = nullptr;
};

}  // namespace lidwright
