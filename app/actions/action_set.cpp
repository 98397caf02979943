#include "app/actions/action_set.h"

#include "app/style/verdict_mark.h"

#include <QCoreApplication>
#include <QMenu>
#include <QMenuBar>
#include <QToolBar>
#include <QToolButton>
#include <QWidget>

namespace lidwright {

namespace {

QString say(const char* marked)
{
    return QCoreApplication::translate("Actions", marked);
}

}  // namespace

ActionSet::ActionSet(QWidget* window) : QObject(window)
{
    for (const ActionEntry& entry : actionTable()) {
        auto* action = new QAction(say(entry.text), window);
        action->setObjectName(QLatin1String(entry.id));
        action->setShortcuts(keysOf(entry));
        action->setCheckable(entry.checkable);
        action->setStatusTip(say(entry.help));
        action->setWhatsThis(say(entry.help));
        const QString keys = action->shortcut().toString(QKeySequence::NativeText);
        action->setToolTip(keys.isEmpty() ? say(entry.help) : tr("%1 (%2)").arg(say(entry.help), keys));
        window->addAction(action);
        m_actions[entry.command] = action;
    }
    at(Command::Snapping)->setIconText(tr("Snap"));
    at(Command::Quit)->setMenuRole(QAction::QuitRole);
    at(Command::About)->setMenuRole(QAction::AboutRole);
    tint(window->palette());
}

void ActionSet::fill(QMenuBar& bar)
{
    for (const MenuEntry& entry : menuTable()) {
        QMenu* menu = bar.addMenu(say(entry.title));
        menu->setToolTipsVisible(true);
        for (const MenuItem& item : entry.items) {
            switch (item.kind) {
                case MenuItem::Kind::Action:
                    menu->addAction(at(item.command));
                    break;
                case MenuItem::Kind::Separator:
                    menu->addSeparator();
                    break;
                case MenuItem::Kind::RecentFiles:
                    m_recent = menu->addMenu(tr("Open &recent"));
                    break;
                case MenuItem::Kind::Samples:
                    m_samples = menu->addMenu(tr("Sa&mples"));
                    break;
            }
        }
    }
}

void ActionSet::fill(QToolBar& bar)
{
    for (const MenuItem& item : toolBarTable()) {
        if (item.kind == MenuItem::Kind::Separator) {
            bar.addSeparator();
            continue;
        }
        bar.addAction(at(item.command));
        if (auto* button = qobject_cast<QToolButton*>(bar.widgetForAction(at(item.command))))
            button->setFocusPolicy(Qt::TabFocus);
    }
}

void ActionSet::tint(const QPalette& palette)
{
    for (const ActionEntry& entry : actionTable())
        if (*entry.icon) at(entry.command)->setIcon(tintedIcon(QLatin1String(entry.icon), palette));
}

}  // namespace lidwright
