#include "app/text/texts.h"
#include "app/window/main_window.h"

#include "core/solvers/tuning_choice.h"

#include <QInputDialog>

// Ordinary tunings with their gauges.

namespace lidwright {

namespace {

/// Which of the ordinary tunings is wanted; null to go back.
const Tuning* askedTuning(QWidget* window)
{
    QStringList names;
    for (const Tuning& tuning : tunings())
        names << (tuning.gauged() ? MainWindow::tr("%1 (%2 strings, gauges as a source has them)")
                                  : MainWindow::tr("%1 (%2 strings, gauges chosen for this scale)"))
                     .arg(shown(tuning.name))
                     .arg(tuning.strings.size());
    bool taken = false;
    const QString chosen = QInputDialog::getItem(
        window, MainWindow::tr("Take a tuning"),
        MainWindow::tr(
            "All strings are replaced, from the bass side to the treble side; every one can be changed "
            "afterwards:"),
        names, 0, false, &taken);
    const qsizetype index = names.indexOf(chosen);
    return taken && index >= 0 ? &tunings()[static_cast<std::size_t>(index)] : nullptr;
}

}  // namespace

void MainWindow::wireStrings()
{
    askForTuning = [this] { return askedTuning(this); };
    on(Command::TakeTuning, [this] {
        const Tuning* tuning = askForTuning();
        if (tuning == nullptr) return;
        Plan next = m_document.plan();
        const Layout& layout = m_document.layout();
        next.stringSet = stringsFor(*tuning, layout.saddleX - layout.nutX, next.strings.concertPitch);
        addStructure(std::move(next), QStringLiteral("strings"),
                     tr("Take the tuning %1").arg(shown(tuning->name)));
    });
}

}  // namespace lidwright
