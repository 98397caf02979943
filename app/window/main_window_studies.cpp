#include "app/board/board_widget.h"
#include "app/studies/study_panel.h"
#include "app/window/main_window.h"
#include "app/window/notice_bar.h"

#include <QComboBox>
#include <QDockWidget>
#include <QTabBar>

// Tables and plots below the board.

namespace lidwright {

void MainWindow::openBelow(QDockWidget& dock, int height)
{
    // The board needs the height: what is open below it shares one place.
    for (QDockWidget* other : findChildren<QDockWidget*>(QString(), Qt::FindDirectChildrenOnly))
        if (other != &dock && other->isVisible()) tabifyDockWidget(other, &dock);
    dock.show();
    resizeDocks({&dock}, {height}, Qt::Vertical);
    dock.raise();
    // The window makes the tabs itself, without a word for those who do not see them.
    for (QTabBar* tabs : findChildren<QTabBar*>(QString(), Qt::FindDirectChildrenOnly)) {
        tabs->setAccessibleName(tr("Below the board"));
        tabs->setToolTip(tr("Which table stands in front; Left and Right choose"));
    }
}

void MainWindow::wireStudies()
{
    m_studies = new StudyPanel(m_document);
    auto* dock = new QDockWidget(tr("Studies"), this);
    dock->setObjectName(QStringLiteral("studies"));
    dock->setFeatures(QDockWidget::DockWidgetClosable);
    dock->setWidget(m_studies);
    addDockWidget(Qt::BottomDockWidgetArea, dock);
    dock->hide();
    QAction* action = m_actions->at(Command::Studies);
    connect(action, &QAction::triggered, this, [this, dock](bool on) {
        if (!on) return dock->hide();
        constexpr int kFirstHeight = 290;
        openBelow(*dock, kFirstHeight);
        m_studies->subject().setFocus(Qt::ShortcutFocusReason);
    });
    connect(dock, &QDockWidget::visibilityChanged, action, &QAction::setChecked);
    connect(m_studies, &StudyPanel::placesWanted, m_board, &BoardWidget::showPlacesClose);
    connect(m_studies, &StudyPanel::pictureWanted, m_board, &BoardWidget::showPicture);
    connect(m_studies, &StudyPanel::told, this,
            [this](const QString& message) { m_notices->show(message, QStringLiteral("studies")); });
}

}  // namespace lidwright
