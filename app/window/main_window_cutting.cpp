#include "app/board/board_widget.h"
#include "app/document/plan_members.h"
#include "app/exchange/backing_stock_list.h"
#include "app/exchange/cut_file_dialog.h"
#include "app/studies/thin_panel.h"
#include "app/text/texts.h"
#include "app/window/main_window.h"
#include "app/window/notice_bar.h"

#include <QDockWidget>
#include <QInputDialog>

#include <cmath>

// The lid's artwork on its way to the cutter: table of thin places, backing, the cutter's file.

namespace lidwright {

namespace {

/// What shops have, each with the open part of its area, and an own size at the end.
std::optional<BackingLayer> askedLayer(QWidget* window)
{
    const std::vector<StockLayer> stock = stockLayers();
    QStringList names;
    for (const StockLayer& s : stock)
        names << MainWindow::tr("%1 (%2 % open)").arg(shown(s.name)).arg(std::lround(100 * s.openFraction));
    names << MainWindow::tr("another size: typed in the form");
    bool taken = false;
    const QString chosen = QInputDialog::getItem(
        window, MainWindow::tr("Add backing"),
        MainWindow::tr("What a hardware shop has; every measure can be changed afterwards:"), names, 1, false,
        &taken);
    if (!taken) return std::nullopt;
    const auto index = static_cast<std::size_t>(std::max<qsizetype>(0, names.indexOf(chosen)));
    return index < stock.size() ? stock[index].layer : BackingLayer{};
}

}  // namespace

void MainWindow::wireCutting()
{
    askForLayer = [this] { return askedLayer(this); };
    m_thin = new ThinPanel(m_document);
    auto* dock = new QDockWidget(tr("Thin places"), this);
    dock->setObjectName(QStringLiteral("thin-places"));
    dock->setFeatures(QDockWidget::DockWidgetClosable);
    dock->setWidget(m_thin);
    addDockWidget(Qt::BottomDockWidgetArea, dock);
    dock->hide();
    QAction* action = m_actions->at(Command::ThinPlaces);
    connect(action, &QAction::triggered, this, [this, dock](bool on) {
        constexpr int kFirstHeight = 200;
        on ? openBelow(*dock, kFirstHeight) : dock->hide();
    });
    connect(dock, &QDockWidget::visibilityChanged, action, &QAction::setChecked);
    connect(m_thin, &ThinPanel::placesWanted, m_board, &BoardWidget::showPlacesClose);
    connect(m_thin, &ThinPanel::told, this,
            [this](const QString& message) { m_notices->show(message, QStringLiteral("thin-places")); });

    on(Command::CutFile, [this] {
        CutFileDialog dialog(m_document.plan(), m_document.layout(), m_document.filePath(), this);
        dialog.exec();
    });
    on(Command::AddBacking, [this] {
        std::optional<Plan> next = withBackingLayer(m_document.plan());
        if (next) {
            const std::optional<BackingLayer> layer = askForLayer();
            if (!layer) return;
            next->backingLayers.back() = *layer;
        }
        addStructure(std::move(next),
                     QStringLiteral("backing.%1").arg(m_document.plan().backingLayers.size() + 1),
                     tr("Add a layer of backing"));
    });
}

}  // namespace lidwright
