#include "app/window/main_window.h"

#include "app/board/board_widget.h"
#include "app/findings/findings_panel.h"
#include "app/properties/parts_panel.h"
#include "app/settings/all_settings.h"
#include "app/window/first_steps.h"
#include "app/window/folding_side.h"
#include "app/window/notice_bar.h"
#include "app/window/status_strip.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDir>
#include <QDropEvent>
#include <QFileInfo>
#include <QLocale>
#include <QMenu>
#include <QMenuBar>
#include <QMimeData>
#include <QScreen>
#include <QSplitter>
#include <QStatusBar>
#include <QTimer>
#include <QToolBar>
#include <QVBoxLayout>

#include <algorithm>

namespace lidwright {

namespace {

constexpr int kPartsWidth = 300;  // px, first start
constexpr int kFindingsWidth = 300;

/// The first local file of a drag that this window can take; empty for none.
QString usableFile(const QMimeData* data)
{
    for (const QUrl& url : data->urls()) {
        const QString path = url.toLocalFile();
        const QString suffix = QFileInfo(path).suffix().toLower();
        if (suffix == QLatin1String("svg") || suffix == QLatin1String("dxf") ||
            suffix == QLatin1String("lidplan"))
            return path;
    }
    return {};
}

}  // namespace

MainWindow::MainWindow(Settings& settings, const QString& recoveryFolder)
    : m_settings(settings),
      m_questions(fileDialogs(this, settings)),
      m_actions(new ActionSet(this)),
      m_autosave(new Autosave(m_document, recoveryFolder, this)),
      m_files(new FileFlow(m_document, settings, *m_autosave, m_questions, this)),
      m_notices(new NoticeBar),
      m_steps(new FirstSteps(m_document)),
      m_parts(new PartsPanel(m_document)),
      m_board(new BoardWidget(m_document)),
      m_findings(new FindingsPanel(m_document)),
      m_partsSide(new FoldingSide(tr("Parts"), FoldingSide::Edge::Left, m_parts)),
      m_findingsSide(new FoldingSide(tr("Findings"), FoldingSide::Edge::Right, m_findings)),
      m_splitter(new QSplitter(Qt::Horizontal)),
      m_status(new StatusStrip(*statusBar(), m_document, m_actions->at(Command::Snapping)))
{
    arrange();
    wireFile();
    wireEdit();
    wireView();
    wireAdd();
    wireHelp();
    wireViews();
    wireCutting();
    wireStudies();
    wireSheets();
    wireStrings();
    wireInside();
    wireSide(*m_partsSide, Command::PartsSide, kPartsFolded, 0);
    wireSide(*m_findingsSide, Command::FindingsSide, kFindingsFolded, 2);
    showTitle();
    showCommands();
}

MainWindow::~MainWindow()
{
    // The views listen to the document, which goes before the widgets that are children of this window.
    delete takeCentralWidget();
    disconnect(&m_document, nullptr, this, nullptr);
    disconnect(&m_document.undoStack(), nullptr, this, nullptr);
    delete m_autosave;
    delete statusBar();
}

void MainWindow::arrange()
{
    setObjectName(QStringLiteral("main"));
    setAcceptDrops(true);
    m_actions->fill(*menuBar());
    auto* tools = addToolBar(tr("Tools"));
    tools->setObjectName(QStringLiteral("tools"));
    tools->setMovable(false);
    tools->setIconSize({20, 20});
    m_actions->fill(*tools);

    m_splitter->addWidget(m_partsSide);
    m_splitter->addWidget(m_board);
    m_splitter->addWidget(m_findingsSide);
    m_splitter->setStretchFactor(1, 1);
    m_splitter->setChildrenCollapsible(false);
    m_board->setMinimumWidth(240);

    auto* middle = new QWidget;
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_notices);
    column->addWidget(m_steps);
    column->addWidget(m_splitter, 1);
    setCentralWidget(middle);

    const QRect room = screen()->availableGeometry();
    if (!restoreGeometry(m_settings.read(kWindowGeometry)))
        resize(QSize(1280, 800).boundedTo(room.size() - QSize(40, 60)));
    if (!m_splitter->restoreState(m_settings.read(kPanelSizes)))
        m_splitter->setSizes(
            {kPartsWidth, std::max(240, width() - kPartsWidth - kFindingsWidth), kFindingsWidth});
    showFirstSteps(!m_settings.read(kFirstStepsDismissed));
}

void MainWindow::offerLeftOvers()
{
    for (LeftOver& found : Autosave::leftOvers(QFileInfo(m_autosave->planFile()).absolutePath()))
        offer(std::make_shared<LeftOver>(std::move(found)));
}

void MainWindow::offer(const std::shared_ptr<LeftOver>& left)
{
    QString name = left->originalPath.isEmpty() ? left->title : QFileInfo(left->originalPath).fileName();
    if (name.isEmpty()) name = tr("Untitled");
    const NoticeAnswer restore{tr("&Restore it"), [this, left] {
                                   // Whoever goes back from the question about the present plan is asked
                                   // again.
                                   if (!m_files->restore(*left)) offer(left);
                               }};
    const NoticeAnswer discard{tr("&Discard it"), [left] { left->discard(); }};
    m_notices->show(tr("\u201c%1\u201d was not saved before the program ended. It was kept on %2.")
                        .arg(name, QLocale().toString(left->when, QLocale::ShortFormat)),
                    left->planFile, {restore, discard});
}

void MainWindow::openAny(const QString& path)
{
    const QString suffix = QFileInfo(path).suffix().toLower();
    if (suffix == QLatin1String("svg") || suffix == QLatin1String("dxf"))
        importArtwork(path);
    else
        m_files->openPath(path);
}

void MainWindow::closeEvent(QCloseEvent* event)
{
    if (!m_files->mayLeave()) {
        event->ignore();
        return;
    }
    m_files->close();
    m_settings.write(kWindowGeometry, saveGeometry());
    m_settings.write(kPanelSizes, m_splitter->saveState());
    m_settings.sync();
    event->accept();
}

void MainWindow::changeEvent(QEvent* event)
{
    QMainWindow::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) m_actions->tint(palette());
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event)
{
    if (!usableFile(event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event)
{
    const QString path = usableFile(event->mimeData());
    if (path.isEmpty()) return;
    event->acceptProposedAction();
    // The program that the file comes from waits for this event: questions come after it.
    QTimer::singleShot(0, this, [this, path] {
        activateWindow();
        openAny(path);
    });
}

}  // namespace lidwright
