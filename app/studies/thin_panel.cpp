#include "app/studies/thin_panel.h"

#include "app/document/plan_document.h"
#include "app/document/safe_write.h"
#include "app/style/verdict_mark.h"
#include "app/text/texts.h"

#include <QDir>
#include <QFileDialog>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

namespace lidwright {

namespace {

enum Column { Number, Judged, Kind, Drawing, Width, Left, Run, Grain, Breaks, Factor, Columns };

QString kindText(const std::string& kind)
{
    if (kind == "web") return ThinPanel::tr("Web");
    if (kind == "tongue") return ThinPanel::tr("Tongue");
    if (kind == "drop-out") return ThinPanel::tr("Falls out");
    return ThinPanel::tr("Kerf closes it");
}

}  // namespace

ThinPanel::ThinPanel(PlanDocument& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_summary(new QLabel(this)),
      m_table(new QTableWidget(0, Columns, this)),
      m_export(new QPushButton(tr("Write as &table (CSV)..."), this))
{
    askForFile = [this] {
        return QFileDialog::getSaveFileName(this, tr("Write the table of thin places"),
                                            QStringLiteral("thin-places.csv"), tr("Tables (*.csv)"));
    };
    m_table->setHorizontalHeaderLabels({tr("No."), tr("Verdict"), tr("What"), tr("Drawing"), tr("Width"),
                                        tr("Once cut"), tr("Length"), tr("To the grain"), tr("Breaks at"),
                                        tr("Factor of safety")});
    m_table->setAccessibleName(tr("Thin places"));
    m_table->setToolTip(
        tr("Wood left thin between cuts, the weakest first; choose a row to see its place on the "
           "board"));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setTabKeyNavigation(false);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(m_table->fontMetrics().height() + 8);
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setStretchLastSection(true);
    m_summary->setWordWrap(true);
    m_export->setToolTip(tr("Write all rows into a file that spreadsheets read"));
    m_export->setAutoDefault(false);

    auto* head = new QHBoxLayout;
    head->addWidget(m_summary, 1);
    head->addWidget(m_export);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(6, 4, 6, 6);
    column->addLayout(head);
    column->addWidget(m_table, 1);

    connect(&m_document, &PlanDocument::changed, this, &ThinPanel::refresh);
    connect(m_table, &QTableWidget::itemSelectionChanged, this, &ThinPanel::showChosen);
    connect(m_export, &QPushButton::clicked, this, &ThinPanel::exportCsv);
}

void ThinPanel::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    if (m_stale) refresh();
}

void ThinPanel::refresh()
{
    m_stale = !isVisible();
    if (m_stale) return;
    m_list = thinList(m_document.plan(), m_document.layout());
    fill();
}

void ThinPanel::fill()
{
    const UnitStyle style = m_document.style();
    const auto length = [&](double mm) { return shown(Measure{mm, Quantity::Length}, style); };
    const QSignalBlocker quiet(m_table);
    m_table->setRowCount(static_cast<int>(m_list.rows.size()));
    int weak = 0;
    for (std::size_t i = 0; i < m_list.rows.size(); ++i) {
        const ThinRow& row = m_list.rows[i];
        const auto put = [&](Column column, const QString& words) {
            auto* item = new QTableWidgetItem(words);
            m_table->setItem(static_cast<int>(i), column, item);
            return item;
        };
        weak += row.verdict == Verdict::Wrong;
        put(Number, row.number > 0 ? QString::number(row.number) : QString());
        put(Judged, shown(row.verdict))
            ->setIcon(markIcon(row.verdict, palette(), m_table->fontMetrics().height()));
        put(Kind, kindText(row.kind));
        put(Drawing, QString::fromStdString(row.drawing));
        put(Width, row.kind == "drop-out" ? QString() : length(row.width));
        put(Left, row.left ? length(*row.left) : QString());
        put(Run, row.kind == "drop-out" ? shown(Measure{row.freed, Quantity::Area}, style) : length(row.run));
        const bool judged = row.factorOfSafety.has_value();
        put(Grain, judged ? shown(Measure{row.grainAngle, Quantity::Angle}, style) : QString());
        put(Breaks, judged ? shown(Measure{*row.breaksAt_N, Quantity::Force}, style) : QString());
        put(Factor, judged ? shown(Measure{*row.factorOfSafety, Quantity::Ratio}, style) : QString());
    }
    if (m_list.problem)
        m_summary->setText(shown(*m_list.problem));
    else if (m_list.rows.empty())
        m_summary->setText(tr("No wood between cuts is thinner than %1.").arg(length(m_list.searchedTo)));
    else
        m_summary->setText((m_list.rows.size() == 1 ? tr("%1 place, %2 too weak for a finger's press.")
                                                    : tr("%1 places, %2 too weak for a finger's press."))
                               .arg(m_list.rows.size())
                               .arg(weak) +
                           QLatin1Char(' ') +
                           tr("Strength is that of clear wood as a beam in a stiff surround: an estimate."));
    m_export->setEnabled(!m_list.rows.empty());
}

void ThinPanel::showChosen()
{
    const QList<QTableWidgetSelectionRange> ranges = m_table->selectedRanges();
    if (ranges.isEmpty()) return;
    const auto index = static_cast<std::size_t>(ranges.front().topRow());
    if (index >= m_list.rows.size()) return;
    const ThinRow& row = m_list.rows[index];
    Bounds box;
    box.include(row.at);
    Q_EMIT placesWanted({Place{View::Top, box.grown(std::max(2.0, row.width))}});
}

void ThinPanel::exportCsv()
{
    const QString path = askForFile();
    if (path.isEmpty()) return;
    const auto error = writeFileSafely(path, QByteArray::fromStdString(thinCsv(m_list)));
    Q_EMIT told(error ? shown(*error) : tr("The table was written: %1").arg(QDir::toNativeSeparators(path)));
}

}  // namespace lidwright
