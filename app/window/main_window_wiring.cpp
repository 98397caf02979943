#include "app/board/board_widget.h"
#include "app/document/plan_members.h"
#include "app/exchange/board_picture.h"
#include "app/exchange/box_outline_dialog.h"
#include "app/exchange/import_artwork_dialog.h"
#include "app/exchange/paint_uses_dialog.h"
#include "app/findings/findings_panel.h"
#include "app/paper/paper_dialog.h"
#include "app/properties/parts_panel.h"
#include "app/settings/all_settings.h"
#include "app/studies/study_panel.h"
#include "app/studies/thin_panel.h"
#include "app/text/texts.h"
#include "app/window/about_dialog.h"
#include "app/window/first_steps.h"
#include "app/window/folding_side.h"
#include "app/window/keys_page.h"
#include "app/window/main_window.h"
#include "app/window/notice_bar.h"
#include "app/window/status_strip.h"

#include "core/io/plan/plan_file.h"
#include "core/layout/art_place.h"

#include <QApplication>
#include <QDir>
#include <QFileInfo>
#include <QMenu>
#include <QSplitter>
#include <QWhatsThis>

#include <algorithm>
#include <utility>

// What belongs together through the window: commands, document, views.

namespace lidwright {

void MainWindow::on(Command command, std::function<void()> act)
{
    connect(m_actions->at(command), &QAction::triggered, this, [act = std::move(act)] { act(); });
}

void MainWindow::wireFile()
{
    on(Command::New, [this] { m_files->newPlan(); });
    on(Command::Open, [this] { m_files->open(); });
    on(Command::Save, [this] { m_files->save(); });
    on(Command::SaveAs, [this] { m_files->saveAs(); });
    on(Command::ExportPicture, [this] { exportPicture(); });
    on(Command::Paper, [this] { openPaper(); });
    on(Command::Quit, [this] { close(); });
    connect(m_actions->recentMenu(), &QMenu::aboutToShow, this, &MainWindow::fillRecent);
    connect(m_actions->samplesMenu(), &QMenu::aboutToShow, this, &MainWindow::fillSamples);
    connect(m_files, &FileFlow::told, this,
            [this](const QString& message, const QString& topic) { m_notices->show(message, topic); });
    connect(m_files, &FileFlow::saveFailed, this, [this](const QString& message) {
        m_notices->show(message, QStringLiteral("save"),
                        {{tr("Save &as..."), [this] { m_files->saveAs(); }}});
    });
    connect(m_files, &FileFlow::aboutToRead, m_parts, &PartsPanel::commitPending);
    connect(m_files, &FileFlow::started, this, [this] {
        // What was said about the plan before does not concern this one.
        for (const char* topic : {"open", "lock", "notes", "save", "refused"})
            m_notices->dismiss(QLatin1String(topic));
        m_steps->setStart(m_document.plan());
        m_board->fitAll();
    });
    connect(m_autosave, &Autosave::failed, this, [this](const QString& message) {
        m_notices->show(tr("Unsaved work cannot be kept aside: %1").arg(message), QStringLiteral("autosave"));
    });
    connect(&m_document, &PlanDocument::fileChanged, this, &MainWindow::showTitle);
    connect(&m_document, &PlanDocument::fileChanged, this, [this] {
        if (!m_document.modified()) m_notices->dismiss(QStringLiteral("save"));
    });
    fillRecent();
    fillSamples();
}

void MainWindow::wireEdit()
{
    QUndoStack& undo = m_document.undoStack();
    on(Command::Undo, [this] {
        if (m_document.dragging())
            m_document.cancelDrag();
        else
            m_document.undoStack().undo();
    });
    on(Command::Redo, [this] { m_document.undoStack().redo(); });
    on(Command::DeletePart, [this] { deletePart(); });
    on(Command::PaintUses, [this] { choosePaintUses(); });
    connect(&undo, &QUndoStack::indexChanged, this, &MainWindow::showCommands);
    connect(&m_document, &PlanDocument::selectionChanged, this, &MainWindow::showCommands);
    connect(&m_document, &PlanDocument::changed, this, [this] {
        if (std::exchange(m_refusalShown, false)) m_notices->dismiss(QStringLiteral("refused"));
    });
    connect(&m_document, &PlanDocument::refused, this, [this](const QString& message) {
        m_notices->show(message, QStringLiteral("refused"));
        m_refusalShown = true;
    });
}

void MainWindow::wireView()
{
    on(Command::FitAll, [this] { m_board->fitAll(); });
    on(Command::FitTop, [this] { m_board->fitView(m_board->underView() ? View::Under : View::Top); });
    on(Command::FitSection, [this] { m_board->fitView(View::Section); });
    on(Command::FitHeadEnd, [this] { m_board->fitView(View::HeadEnd); });
    on(Command::FitTailEnd, [this] { m_board->fitView(View::TailEnd); });
    on(Command::ZoomIn, [this] { m_board->zoomBy(1.25); });
    on(Command::ZoomOut, [this] { m_board->zoomBy(0.8); });
    on(Command::NextRegion, [this] { goToNextRegion(); });
    connect(m_actions->at(Command::UnderView), &QAction::toggled, m_board, &BoardWidget::setUnderView);
    connect(m_actions->at(Command::Snapping), &QAction::toggled, this, [this](bool on) {
        m_board->setSnapping(on);
        m_settings.write(kSnapping, on);
    });
    m_actions->at(Command::Snapping)->setChecked(m_settings.read(kSnapping));
    m_board->setSnapping(m_settings.read(kSnapping));
    connect(m_actions->at(Command::FirstSteps), &QAction::triggered, this, [this](bool on) {
        m_settings.write(kFirstStepsDismissed, !on);
        showFirstSteps(on);
    });
}

void MainWindow::wireAdd()
{
    const auto artwork = [this] {
        const QString path = m_questions.drawing();
        if (!path.isEmpty()) importArtwork(path);
    };
    const auto outline = [this] {
        const QString path = m_questions.drawing();
        if (!path.isEmpty()) importBoxOutline(path);
    };
    on(Command::AddArtwork, artwork);
    on(Command::BoxOutline, outline);
    connect(m_parts, &PartsPanel::addArtworkWanted, this, artwork);
    connect(m_parts, &PartsPanel::boxOutlineWanted, this, outline);
    connect(m_parts, &PartsPanel::paintUsesWanted, this, &MainWindow::choosePaintUses);
    const auto next = [](const char* list, std::size_t count) {
        return QStringLiteral("%1.%2").arg(QLatin1String(list)).arg(count + 1);
    };
    on(Command::AddHole, [this, next] {
        addStructure(withHole(m_document.plan(), HoleKind::Circle),
                     next("hole", m_document.plan().holes.size()), tr("Add a round hole"));
    });
    on(Command::AddSlot, [this, next] {
        addStructure(withHole(m_document.plan(), HoleKind::Slot),
                     next("hole", m_document.plan().holes.size()), tr("Add a slot"));
    });
    on(Command::AddFixing, [this, next] {
        addStructure(withFixing(m_document.plan()), next("fixing", m_document.plan().fixings.size()),
                     tr("Add a hole for a screw or pin"));
    });
    on(Command::AddTie, [this, next] {
        if (m_document.plan().art.empty()) {
            m_notices->show(tr("A tie belongs to artwork: add a drawing first."), QStringLiteral("ties"));
            return;
        }
        addStructure(withTie(m_document.plan(), m_document.layout(), m_document.selectedPart()),
                     next("tie", m_document.plan().ties.size()), tr("Add a tie"));
    });
    on(Command::AddBlock, [this, next] {
        addStructure(withBlock(m_document.plan()), next("block", m_document.plan().blocks.size()),
                     tr("Add a block"));
    });
}

void MainWindow::wireHelp()
{
    on(Command::KeysPage, [this] { KeysPage(this).exec(); });
    on(Command::WhatsThis, [] { QWhatsThis::enterWhatsThisMode(); });
    on(Command::About, [this] { AboutDialog(this).exec(); });
}

void MainWindow::wireViews()
{
    connect(m_board, &BoardWidget::caption, m_status, &StatusStrip::setCaption);
    connect(m_board, &BoardWidget::zoomChanged, m_status, &StatusStrip::setZoom);
    connect(m_board, &BoardWidget::partActivated, this, [this](const QString& part) {
        const auto parameters = parametersOf(m_document.plan(), part.toStdString());
        if (parameters.empty()) return;
        m_partsSide->setFolded(false);
        m_document.select(part);
        m_parts->focusParameter(QString::fromStdString(parameters.front().key()));
    });
    connect(m_findings, &FindingsPanel::placesWanted, m_board, &BoardWidget::showPlaces);
    connect(m_findings, &FindingsPanel::previewWanted, m_board, &BoardWidget::showPreview);
    connect(m_findings, &FindingsPanel::previewDone, m_board, &BoardWidget::endPreview);
    connect(m_steps, &FirstSteps::wanted, this,
            [this](FirstSteps::Step step) { goToStep(static_cast<int>(step)); });
    connect(m_steps, &FirstSteps::finished, this, [this] { showFirstSteps(false); });
    connect(m_steps, &FirstSteps::dismissed, m_actions->at(Command::FirstSteps), &QAction::trigger);
}

void MainWindow::wireSide(FoldingSide& side, Command command, const Setting<bool>& setting, int splitterIndex)
{
    QAction* action = m_actions->at(command);
    side.setFolded(m_settings.read(setting));
    action->setChecked(!side.folded());
    connect(action, &QAction::triggered, &side, [&side](bool on) { side.setFolded(!on); });
    connect(&side, &FoldingSide::foldedChanged, this,
            [this, action, setting, &side, splitterIndex](bool folded) {
                action->setChecked(!folded);
                m_settings.write(setting, folded);
                // What the side takes or gives is the board's; the other side stays as it is.
                QList<int> sizes = m_splitter->sizes();
                const int wanted = folded ? side.maximumWidth() : side.openWidth();
                const int change = wanted - std::exchange(sizes[splitterIndex], wanted);
                sizes[1] = std::max(m_board->minimumWidth(), sizes.at(1) - change);
                m_splitter->setSizes(sizes);
            });
}

void MainWindow::showTitle()
{
    setWindowTitle(tr("%1[*] \u2013 Lidwright").arg(m_document.displayName()));
    setWindowFilePath(m_document.filePath());
    setWindowModified(m_document.modified());
}

void MainWindow::showCommands()
{
    const QUndoStack& undo = m_document.undoStack();
    QAction* back = m_actions->at(Command::Undo);
    QAction* again = m_actions->at(Command::Redo);
    back->setEnabled(undo.canUndo());
    back->setText(undo.canUndo() ? tr("&Undo: %1").arg(undo.undoText()) : tr("&Undo"));
    again->setEnabled(undo.canRedo());
    again->setText(undo.canRedo() ? tr("&Redo: %1").arg(undo.redoText()) : tr("&Redo"));
    const QString part = m_document.selectedPart();
    m_actions->at(Command::DeletePart)->setEnabled(withoutMember(m_document.plan(), part).has_value());
    m_actions->at(Command::PaintUses)->setEnabled(part.startsWith(QLatin1String("art.")));
}

void MainWindow::showFirstSteps(bool show)
{
    m_steps->setVisible(show);
    m_actions->at(Command::FirstSteps)->setChecked(show);
}

void MainWindow::goToStep(int step)
{
    const auto field = [this](const char* part, const char* key) {
        m_partsSide->setFolded(false);
        m_document.select(QLatin1String(part));
        m_parts->focusParameter(QLatin1String(key));
    };
    switch (static_cast<FirstSteps::Step>(step)) {
        case FirstSteps::Step::Box:
            return field("box", "box.length");
        case FirstSteps::Step::Artwork:
            return m_actions->at(Command::AddArtwork)->trigger();
        case FirstSteps::Step::Neck:
            return field("neck", "neck.blank-length");
        case FirstSteps::Step::Bridge:
            return field("bridge", "bridge.length");
        case FirstSteps::Step::Paper:
            return m_actions->at(Command::Paper)->trigger();
    }
}

void MainWindow::goToNextRegion()
{
    std::vector<QWidget*> regions{m_partsSide, m_board, m_findingsSide};
    // Below the board what is open and in front: a dock behind another's tab lies outside the window.
    for (QWidget* below : {static_cast<QWidget*>(m_thin), static_cast<QWidget*>(m_studies)})
        if (below->isVisible() && !below->visibleRegion().isEmpty()) regions.push_back(below);
    QWidget* now = QApplication::focusWidget();
    std::size_t at = 1;
    for (std::size_t i = 0; i < regions.size(); ++i)
        if (now && (regions[i] == now || regions[i]->isAncestorOf(now))) at = i;
    QWidget* region = regions[(at + 1) % regions.size()];
    if (region->focusPolicy() & Qt::TabFocus) return region->setFocus(Qt::TabFocusReason);
    for (QWidget* next = region->nextInFocusChain(); next != region; next = next->nextInFocusChain())
        if (region->isAncestorOf(next) && next->isVisible() && next->isEnabled() &&
            (next->focusPolicy() & Qt::TabFocus))
            return next->setFocus(Qt::TabFocusReason);
}

void MainWindow::fillRecent()
{
    QMenu* menu = m_actions->recentMenu();
    menu->clear();
    const QStringList paths = m_files->recent().paths();
    for (const QString& path : paths) {
        QString shownPath = QDir::toNativeSeparators(path);
        QAction* action = menu->addAction(shownPath.replace(QLatin1Char('&'), QLatin1String("&&")));
        connect(action, &QAction::triggered, this, [this, path] { m_files->openPath(path); });
    }
    if (!paths.isEmpty()) {
        menu->addSeparator();
        QAction* clear = menu->addAction(tr("&Clear this list"));
        connect(clear, &QAction::triggered, this, [this] { m_files->recent().clear(); });
    } else {
        menu->addAction(tr("No plan opened yet"))->setEnabled(false);
    }
}

void MainWindow::fillSamples()
{
    QMenu* menu = m_actions->samplesMenu();
    menu->clear();
    const QDir samples(QStringLiteral(":/samples"));
    for (const QFileInfo& info :
         samples.entryInfoList({QStringLiteral("*.lidplan")}, QDir::Files, QDir::Name)) {
        QString name = info.completeBaseName().replace(QLatin1Char('-'), QLatin1Char(' '));
        if (!name.isEmpty()) name[0] = name.at(0).toUpper();
        QAction* action = menu->addAction(name);
        connect(action, &QAction::triggered, this,
                [this, path = info.filePath()] { m_files->openSample(path); });
    }
}

bool MainWindow::refusedAsTooLarge(const Plan& next)
{
    const std::optional<Error> error = beyondPlanLimits(next);
    if (error) m_notices->show(shown(*error), QStringLiteral("refused"));
    return error.has_value();
}

void MainWindow::addStructure(std::optional<Plan> next, const QString& part, const QString& undoText)
{
    if (!next) {
        m_notices->show(
            tr("There are %1 of these already, which is as many as a plan takes.").arg(kMostPieces),
            QStringLiteral("refused"));
        return;
    }
    if (refusedAsTooLarge(*next)) return;
    m_document.replace(std::move(*next), undoText);
    m_document.select(part);
}

void MainWindow::deletePart()
{
    const QString part = m_document.selectedPart();
    auto next = withoutMember(m_document.plan(), part);
    if (!next) return;
    const QString text = tr("Delete %1").arg(partLabel(m_document.plan(), part));
    m_document.select({});
    m_document.replace(std::move(*next), text);
}

void MainWindow::importArtwork(const QString& path)
{
    ImportArtworkDialog dialog(path, m_document.style(), this);
    if (!dialog.exec()) return;
    ArtPiece piece = dialog.piece();
    const Point place = freePlace(m_document.plan(), m_document.layout());
    piece.x = place.x;
    piece.y = place.y;
    const QString text = tr("Add artwork %1").arg(QString::fromStdString(piece.name));
    addStructure(withArtwork(m_document.plan(), std::move(piece)),
                 QStringLiteral("art.%1").arg(m_document.plan().art.size() + 1), text);
}

void MainWindow::importBoxOutline(const QString& path)
{
    BoxOutlineDialog dialog(path, m_document.plan(), this);
    if (!dialog.exec() || refusedAsTooLarge(dialog.plan())) return;
    m_document.replace(dialog.plan(), tr("Box outline from %1").arg(QFileInfo(path).fileName()));
    m_document.select(QStringLiteral("box"));
}

void MainWindow::choosePaintUses()
{
    const auto member = partMember(m_document.selectedPart());
    if (!member || member->list != QLatin1String("art") ||
        !hasPart(m_document.plan(), m_document.selectedPart()))
        return;
    Plan next = m_document.plan();
    ArtPiece& piece = next.art[static_cast<std::size_t>(member->index)];
    PaintUsesDialog dialog(piece, m_document.style(), this);
    if (!dialog.exec()) return;
    piece.uses = dialog.uses();
    m_document.replace(std::move(next),
                       tr("Uses of the paints of %1").arg(QString::fromStdString(piece.name)));
}

void MainWindow::exportPicture()
{
    const QString base =
        m_document.filePath().isEmpty() ? tr("board") : QFileInfo(m_document.filePath()).completeBaseName();
    const QString path = m_questions.picture(base + QStringLiteral(".png"));
    if (path.isEmpty()) return;
    const QString failed =
        writeBoardPicture(m_document.plan(), m_document.layout(), m_board->underView(), path);
    m_notices->show(
        failed.isEmpty() ? tr("The picture was written: %1").arg(QDir::toNativeSeparators(path)) : failed,
        QStringLiteral("picture"));
}

void MainWindow::openPaper()
{
    m_parts->commitPending();
    PaperDialog dialog(m_document.plan(), m_document.filePath(), m_settings,
                       wrongSentences(m_document.findings(), unitStyle(m_document.plan())), this);
    connect(&dialog, &PaperDialog::paperMade, m_steps, &FirstSteps::setPaperMade);
    dialog.exec();
}

}  // namespace lidwright
