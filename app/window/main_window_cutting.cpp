#include "app/board/board_widget.h"
#include "app/document/plan_members.h"
#include "app/exchange/cut_file_dialog.h"
#include "app/studies/thin_panel.h"
#include "app/window/main_window.h"
#include "app/window/notice_bar.h"

#include <QDockWidget>

// The lid's artwork on its way to the cutter: table of thin places, backing, the cutter's file.

namespace lidwright {

void MainWindow::wireCutting()
{
    m_thin = new ThinPanel(m_document);
    auto* dock = new QDockWidget(tr("Thin places"), this);
    dock->setObjectName(QStringLiteral("thin-places"));
    dock->setFeatures(QDockWidget::DockWidgetClosable);
    dock->setWidget(m_thin);
    addDockWidget(Qt::BottomDockWidgetArea, dock);
    dock->hide();
    QAction* action = m_actions->at(Command::ThinPlaces);
    connect(action, &QAction::triggered, dock, &QDockWidget::setVisible);
    connect(dock, &QDockWidget::visibilityChanged, action, &QAction::setChecked);
    connect(m_thin, &ThinPanel::placesWanted, m_board, &BoardWidget::showPlaces);
    connect(m_thin, &ThinPanel::told, this,
            [this](const QString& message) { m_notices->show(message, QStringLiteral("thin-places")); });

    on(Command::CutFile, [this] {
        CutFileDialog dialog(m_document.plan(), m_document.layout(), m_document.filePath(), this);
        dialog.exec();
    });
    on(Command::AddBacking, [this] {
        addStructure(withBackingLayer(m_document.plan()),
                     QStringLiteral("backing.%1").arg(m_document.plan().backingLayers.size() + 1),
                     tr("Add a layer of backing"));
    });
}

}  // namespace lidwright
