#include "app/studies/study_panel.h"

#include "app/document/plan_document.h"
#include "app/studies/plot_box.h"
#include "app/studies/plot_view.h"
#include "app/studies/study_table.h"
#include "app/text/texts.h"
#include "app/text/unbroken.h"

#include "core/solvers/plate/plate_problem.h"

#include <QComboBox>
#include <QFileDialog>
#include <QHeaderView>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QTableWidget>
#include <QTimer>
#include <QVBoxLayout>

namespace lidwright {
namespace {

/// Milliseconds between two looks at how far the work is.
constexpr int kLook = 100;

}  // namespace

StudyPanel::StudyPanel(PlanDocument& document, const std::vector<StudyEntry>& subjects, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_subjects(subjects),
      m_pause(new QTimer(this)),
      m_subject(new QComboBox),
      m_export(new QPushButton(tr("Write as &table (CSV)..."))),
      m_print(new QPushButton(tr("&Print table..."))),
      m_problem(new QLabel),
      m_figures(new QSplitter(Qt::Horizontal)),
      m_table(new QTableWidget),
      m_notes(new QLabel),
      m_notesRoom(new QScrollArea),
      m_plotRow(new QSplitter(Qt::Horizontal)),
      m_plotRoom(new QScrollArea),
      m_fineness(new QComboBox),
      m_state(new QLabel),
      m_progress(new QProgressBar),
      m_stop(new QPushButton(tr("St&op"))),
      m_look(new QTimer(this)),
      m_work(this, [this](Answer answer) { take(std::move(answer)); })
{
    askForFile = [this](const QString& suggestion, const QString& kinds) {
        return QFileDialog::getSaveFileName(this, tr("Write figures"), suggestion, kinds);
    };
    m_pause->setSingleShot(true);
    m_pause->setInterval(kPause);
    prepareTable();
    m_problem->setWordWrap(true);
    m_problem->setAlignment(Qt::AlignTop | Qt::AlignLeading);
    m_problem->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_problem->hide();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(6, 4, 6, 6);
    column->addWidget(head());
    column->addWidget(m_problem, 1);
    column->addWidget(figures(), 1);

    m_look->setInterval(kLook);
    connect(m_look, &QTimer::timeout, this, &StudyPanel::tellState);
    connect(m_stop, &QPushButton::clicked, this, [this] {
        giveUp();
        tellState();
    });
    connect(m_fineness, &QComboBox::currentIndexChanged, this, [this] {
        m_stale = true;
        if (seen()) reckon();
    });
    connect(&m_document, &PlanDocument::changed, this, [this] {
        m_stale = true;
        // What is reckoned now is of an earlier plan.
        giveUp();
        tellState();
        if (seen()) m_pause->start();
    });
    connect(m_pause, &QTimer::timeout, this, &StudyPanel::reckon);
    connect(m_subject, &QComboBox::currentIndexChanged, this, [this] {
        m_stale = true;
        m_shownRow = -1;
        giveUp();
        Q_EMIT pictureWanted({});
        if (seen()) reckon();
    });
    connect(m_table, &QTableWidget::itemSelectionChanged, this, &StudyPanel::showChosen);
    connect(m_export, &QPushButton::clicked, this, &StudyPanel::exportCsv);
    connect(m_print, &QPushButton::clicked, this, &StudyPanel::print);
    auto* copy = new QShortcut(QKeySequence::Copy, m_table);
    copy->setContext(Qt::WidgetShortcut);
    connect(copy, &QShortcut::activated, this, &StudyPanel::copyChosen);
}

QWidget* StudyPanel::head()
{
    for (const StudyEntry& entry : m_subjects)
        m_subject->addItem(shown(entry.title), QString::fromLatin1(entry.id));
    m_subject->setAccessibleName(tr("Subject"));
    m_subject->setToolTip(tr("What the figures are about; Up and Down choose"));
    m_subject->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_export->setToolTip(tr("Write all rows into a file that spreadsheets read"));
    m_export->setAutoDefault(false);
    m_print->setToolTip(tr("Look at the table and its notes as pages and print them"));
    m_print->setAutoDefault(false);
    auto* label = new QLabel(tr("Su&bject:"));
    label->setBuddy(m_subject);
    auto* head = new QWidget;
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(label);
    row->addWidget(m_subject);
    for (const auto& [name, fineness] :
         {std::pair{tr("Usual"), Fineness::Usual}, std::pair{tr("Fine"), Fineness::Fine}})
        m_fineness->addItem(name, static_cast<int>(fineness));
    m_fineness->setAccessibleName(tr("Fineness"));
    m_fineness->setToolTip(tr("How finely lid and air are reckoned; fine takes some seconds"));
    m_state->setAccessibleName(tr("State of the figures"));
    m_state->setToolTip(tr("Whether the figures belong to the plan as it is now"));
    m_progress->setRange(0, 100);
    m_progress->setTextVisible(false);
    m_progress->setMaximumWidth(8 * fontMetrics().averageCharWidth() + 40);
    m_progress->setAccessibleName(tr("Progress"));
    m_progress->setToolTip(tr("How far the finer figures are"));
    m_stop->setToolTip(tr("Give up the finer figures and keep those that are shown"));
    m_stop->setAutoDefault(false);
    row->addWidget(m_fineness);
    row->addWidget(m_state);
    row->addWidget(m_progress);
    row->addWidget(m_stop);
    row->addStretch(1);
    row->addWidget(m_export);
    row->addWidget(m_print);
    return head;
}

void StudyPanel::prepareTable()
{
    m_table->setToolTip(tr("Choose a row to see its place on the board; %1 copies the chosen cells")
                            .arg(QKeySequence(QKeySequence::Copy).toString(QKeySequence::NativeText)));
    m_table->setSelectionMode(QAbstractItemView::ExtendedSelection);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setTabKeyNavigation(false);
    m_table->setAlternatingRowColors(true);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(m_table->fontMetrics().height() + 8);
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setHighlightSections(false);
}

QWidget* StudyPanel::figures()
{
    m_notes->setWordWrap(true);
    m_notes->setAlignment(Qt::AlignTop | Qt::AlignLeading);
    m_notes->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    m_notes->setAccessibleName(tr("Notes on the figures"));
    m_notes->setToolTip(tr("What the figures stand on and where they end"));
    m_notes->setContentsMargins(2, 2, 2, 2);
    const auto prepare = [](QScrollArea* room, QWidget* content) {
        room->setWidget(content);
        room->setWidgetResizable(true);
        room->setFrameShape(QFrame::NoFrame);
        room->setFocusPolicy(Qt::NoFocus);  // what lies in it has the keyboard
    };
    prepare(m_notesRoom, m_notes);
    prepare(m_plotRoom, m_plotRow);
    m_plotRow->setChildrenCollapsible(false);
    auto* words = new QSplitter(Qt::Vertical);
    words->addWidget(m_table);
    words->addWidget(m_notesRoom);
    words->setStretchFactor(0, 1);
    words->setChildrenCollapsible(false);
    words->setSizes({1000, 3 * fontMetrics().lineSpacing() + 6});
    m_figures->addWidget(words);
    m_figures->addWidget(m_plotRoom);
    m_figures->setStretchFactor(0, 1);
    m_figures->setStretchFactor(1, 1);
    m_figures->setChildrenCollapsible(false);
    m_figures->setSizes({1200, 1000});
    return m_figures;
}

std::vector<PlotView*> StudyPanel::plots() const
{
    std::vector<PlotView*> views;
    for (std::size_t i = 0; i < m_study.plots.size() && i < m_boxes.size(); ++i)
        views.push_back(&m_boxes[i]->view());
    return views;
}

bool StudyPanel::choose(const std::string& id)
{
    const int index = m_subject->findData(QString::fromStdString(id));
    if (index >= 0) m_subject->setCurrentIndex(index);
    return index >= 0;
}

bool StudyPanel::seen() const
{
    // A dock behind another one's tab is not hidden: it lies outside the window.
    return isVisible() && !visibleRegion().isEmpty();
}

void StudyPanel::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    if (m_stale) reckon();
}

void StudyPanel::paintEvent(QPaintEvent* event)
{
    QWidget::paintEvent(event);
    if (m_stale && !m_pause->isActive()) m_pause->start();
}

void StudyPanel::hideEvent(QHideEvent* event)
{
    QWidget::hideEvent(event);
    giveUp();
    Q_EMIT pictureWanted({});
}

void StudyPanel::reckon()
{
    m_stale = !seen();
    const int index = m_subject->currentIndex();
    if (m_stale || index < 0) return;
    m_pause->stop();
    giveUp();
    const StudyEntry& entry = m_subjects[static_cast<std::size_t>(index)];
    if (entry.slowly != nullptr) {
        if (m_study.id != entry.id) {
            // Nothing of another subject stays while the first figures are awaited.
            m_study = {entry.id, entry.title, {}, {}, {}, {}, {}};
            m_shownFineness.reset();
            fill();
        }
        m_stale = true;
        ask(Fineness::Coarse);
        return;
    }
    m_shownFineness.reset();
    m_study = entry.reckon(m_document.plan(), m_document.layout());
    fill();
    tellState();
}

bool StudyPanel::stale() const
{
    return m_stale;
}

Fineness StudyPanel::wanted() const
{
    return static_cast<Fineness>(m_fineness->currentData().toInt());
}

void StudyPanel::ask(Fineness fineness)
{
    const int index = m_subject->currentIndex();
    m_run = std::make_shared<Run>();
    m_work.ask([slowly = m_subjects[static_cast<std::size_t>(index)].slowly, plan = m_document.plan(),
                layout = m_document.layout(), run = m_run, fineness] {
        PlateWatch watch;
        watch.cancelled = [run] { return run->stop.load(); };
        watch.progress = [run](double share) { run->percent = static_cast<int>(100 * share); };
        return Answer{slowly(plan, layout, fineness, watch), fineness};
    });
    m_look->start();
    tellState();
}

void StudyPanel::take(Answer answer)
{
    m_study = std::move(answer.study);
    m_shownFineness = answer.fineness;
    m_stale = false;
    fill();
    if (m_study.problem || answer.fineness == wanted() || !seen())
        giveUp();
    else
        ask(wanted());
    tellState();
}

void StudyPanel::giveUp()
{
    if (m_run) m_run->stop = true;
    m_run.reset();
    m_work.dismiss();
    m_look->stop();
}

void StudyPanel::tellState()
{
    const int index = m_subject->currentIndex();
    const bool slow = index >= 0 && m_subjects[static_cast<std::size_t>(index)].slowly != nullptr;
    m_fineness->setVisible(slow);
    m_state->setVisible(slow);
    m_progress->setVisible(slow && busy());
    m_stop->setVisible(slow && busy());
    if (!slow) return;
    m_progress->setValue(m_run ? m_run->percent.load() : 0);
    if (m_stale)
        m_state->setText(m_shownFineness ? tr("Stale: of an earlier plan") : tr("Reckoning..."));
    else if (busy())
        m_state->setText(tr("Coarse, finer figures follow"));
    else
        m_state->setText(m_shownFineness == Fineness::Coarse  ? tr("Coarse")
                         : m_shownFineness == Fineness::Usual ? tr("Up to date")
                                                              : tr("Up to date, fine"));
}

void StudyPanel::fill()
{
    m_problem->setVisible(m_study.problem.has_value());
    m_problem->setText(m_study.problem ? shown(*m_study.problem) : QString());
    m_figures->setVisible(!m_study.problem);
    m_export->setEnabled(!m_study.problem && !m_study.table.columns.empty());
    m_print->setEnabled(m_export->isEnabled());
    fillTable();
    QStringList notes;
    for (const Sentence& note : m_study.notes)
        notes << unbroken(shown(note, m_document.style()));
    m_notes->setText(notes.join(QLatin1Char('\n')));
    m_notesRoom->setVisible(!notes.isEmpty());
    fillPlots();
}

void StudyPanel::fillTable()
{
    const QSignalBlocker quiet(m_table);
    m_table->setAccessibleName(shown(m_study.title));
    fillStudyTable(*m_table, m_study.table, m_document.style());
}

void StudyPanel::fillPlots()
{
    m_plotRoom->setVisible(!m_study.plots.empty());
    while (m_boxes.size() < m_study.plots.size()) {
        auto* box = new PlotBox;
        const std::size_t index = m_boxes.size();
        connect(box, &PlotBox::pictureWanted, this, [this, index] { exportPicture(index); });
        m_plotRow->addWidget(box);
        m_boxes.push_back(box);
    }
    for (std::size_t i = 0; i < m_boxes.size(); ++i) {
        m_boxes[i]->setVisible(i < m_study.plots.size());
        m_boxes[i]->setPlot(i < m_study.plots.size() ? m_study.plots[i] : StudyPlot{}, m_document.style());
    }
}

void StudyPanel::showChosen()
{
    const int row = m_table->selectedRanges().isEmpty() ? -1 : m_table->currentRow();
    if (row == m_shownRow) return;
    m_shownRow = row;
    const auto index = static_cast<std::size_t>(row);
    Q_EMIT pictureWanted(row >= 0 && index < m_study.pictures.size() ? m_study.pictures[index]
                                                                     : StudyPicture{});
    if (row < 0 || index >= m_study.table.places.size() || !m_study.table.places[index]) return;
    constexpr double kAround = 10;  // mm shown on each side of the place
    Bounds box;
    box.include(*m_study.table.places[index]);
    Q_EMIT placesWanted({Place{View::Top, box.grown(kAround)}});
}

}  // namespace lidwright
