#include "app/document/plan_document.h"
#include "app/document/safe_write.h"
#include "app/studies/plot_picture.h"
#include "app/studies/study_panel.h"
#include "app/studies/study_table.h"
#include "app/text/texts.h"

#include <QClipboard>
#include <QDir>
#include <QGuiApplication>

// What is shown, on its way out: to the clipboard, into files and on paper.

namespace lidwright {

void StudyPanel::copyChosen()
{
    const QString text = chosenText(*m_table);
    if (!text.isEmpty()) QGuiApplication::clipboard()->setText(text);
}

void StudyPanel::exportCsv()
{
    const QString path =
        askForFile(QString::fromStdString(m_study.id) + QStringLiteral(".csv"), tr("Tables (*.csv)"));
    if (path.isEmpty()) return;
    const auto error = writeFileSafely(path, QByteArray::fromStdString(csvOf(m_study.table)));
    Q_EMIT told(error ? shown(*error) : tr("The table was written: %1").arg(QDir::toNativeSeparators(path)));
}

void StudyPanel::print()
{
    if (m_stale || m_study.problem || m_study.table.columns.empty())
        Q_EMIT told(tr("There are no figures of the plan as it is now yet; print them when they are there."));
    else
        Q_EMIT printWanted(m_study);
}

void StudyPanel::exportPicture(std::size_t plot)
{
    if (plot >= m_study.plots.size()) return;
    // What was asked for is what is written, whatever changes while the question is open.
    const StudyPlot wanted = m_study.plots[plot];
    const QString name = m_study.plots.size() == 1
                             ? QString::fromStdString(m_study.id)
                             : QStringLiteral("%1-%2").arg(QString::fromStdString(m_study.id)).arg(plot + 1);
    const QString path =
        askForFile(name + QStringLiteral(".svg"), tr("Scalable drawings (*.svg);;Pictures (*.png)"));
    if (path.isEmpty()) return;
    const auto error = writePlotPicture(wanted, m_document.style(), font(), path);
    Q_EMIT told(error ? shown(*error)
                      : tr("The picture was written: %1").arg(QDir::toNativeSeparators(path)));
}

}  // namespace lidwright
