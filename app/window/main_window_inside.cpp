#include "app/document/plan_members.h"
#include "app/properties/parts_panel.h"
#include "app/text/texts.h"
#include "app/window/main_window.h"

#include <QInputDialog>

// What goes into the box: hollows of the stick, bars, wiring.

namespace lidwright {

namespace {

constexpr DeviceKind kKinds[] = {DeviceKind::DiscPickup, DeviceKind::RodPickup, DeviceKind::MagneticPickup,
                                 DeviceKind::Pot, DeviceKind::Socket};

std::optional<DeviceKind> askedDevice(QWidget* window)
{
    QStringList names;
    for (const DeviceKind kind : kKinds)
        names << shown(deviceName(kind));
    bool taken = false;
    const QString chosen = QInputDialog::getItem(
        window, MainWindow::tr("Add part of the wiring"),
        MainWindow::tr("It comes with ordinary sizes; measure the one in your hand and type them over:"),
        names, 0, false, &taken);
    const qsizetype index = names.indexOf(chosen);
    if (!taken || index < 0) return std::nullopt;
    return kKinds[index];
}

}  // namespace

void MainWindow::wireInside()
{
    askForDevice = [this] { return askedDevice(this); };
    const auto next = [](const char* list, std::size_t count) {
        return QStringLiteral("%1.%2").arg(QLatin1String(list)).arg(count + 1);
    };
    on(Command::AddHollow, [this, next] {
        addStructure(withHollow(m_document.plan()), next("hollow", m_document.plan().hollows.size()),
                     tr("Add a hollow"));
    });
    on(Command::AddBar, [this, next] {
        addStructure(withBar(m_document.plan(), m_document.layout()),
                     next("bar", m_document.plan().bars.size()), tr("Add a bar"));
    });
    const auto wiring = [this, next] {
        const std::optional<DeviceKind> kind = askForDevice();
        if (!kind) return;
        addStructure(withDevice(m_document.plan(), m_document.layout(), *kind),
                     next("wiring", m_document.plan().wiring.size()),
                     tr("Add %1 to the wiring").arg(shown(deviceName(*kind)).toLower()));
    };
    on(Command::AddWiring, wiring);
    connect(m_parts, &PartsPanel::addWiringWanted, this, wiring);
}

}  // namespace lidwright
