#include "app/exchange/bench_folder.h"
#include "app/exchange/build_sheet.h"
#include "app/exchange/build_sheet_work.h"
#include "app/paper/bench_printing.h"
#include "app/paper/paper_progress.h"
#include "app/paper/paper_size.h"
#include "app/studies/study_panel.h"
#include "app/text/texts.h"
#include "app/window/main_window.h"
#include "app/window/notice_bar.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>

// Pages for the bench: the build sheet and the lists, into files and on paper.

namespace lidwright {

void MainWindow::wireSheets()
{
    m_sheetWork = new BuildSheetWork(this);
    askForBuildSheet = [this](const QString& suggestion) {
        return QFileDialog::getSaveFileName(this, tr("Write the build sheet"), suggestion,
                                            tr("Pages (*.html);;PDF (*.pdf)"));
    };
    preview = [this](const BenchSheet& sheet) { return previewBench(sheet, this); };
    on(Command::BuildSheet, [this] { writeBuildSheet(); });
    on(Command::PrintBuildSheet, [this] {
        m_sheetWork->compose(m_document.plan(), m_document.layout(), m_document.findings(),
                             sheetOfToday(sheetFineness),
                             [this](const BenchSheet& sheet) { showPages(sheet); });
    });
    askForBenchFolder = [this](const QString& suggestion) {
        return QFileDialog::getExistingDirectory(this, tr("Write everything for the bench into this folder"),
                                                 suggestion);
    };
    on(Command::BenchFolder, [this] { writeEverything(); });
    on(Command::PrintList, [this] { printList(); });
    connect(m_studies, &StudyPanel::printWanted, this,
            [this](const Study& study) { showPages(figureSheet(m_document.plan(), study, sheetOfToday())); });
}

void MainWindow::writeBuildSheet()
{
    const QFileInfo plan(m_document.filePath());
    const QString name = plan.fileName().isEmpty() ? tr("build-sheet") : plan.completeBaseName();
    const QString path = askForBuildSheet(plan.dir().filePath(name + QStringLiteral(".html")));
    if (path.isEmpty()) return;
    m_sheetWork->compose(
        m_document.plan(), m_document.layout(), m_document.findings(), sheetOfToday(sheetFineness),
        [this, path](const BenchSheet& sheet) {
            const auto error = writeBenchSheet(sheet, usualPaperSize(locale()), path);
            m_notices->show(error ? shown(*error)
                                  : tr("The build sheet was written: %1").arg(QDir::toNativeSeparators(path)),
                            QStringLiteral("build-sheet"));
        });
}

void MainWindow::writeEverything()
{
    const QString folder = askForBenchFolder(QFileInfo(m_document.filePath()).dir().path());
    if (folder.isEmpty()) return;
    BenchFolder bench;
    bench.plan = m_document.plan();
    bench.layout = m_document.layout();
    bench.paper.size = usualPaperSize(locale());
    bench.decimalComma = locale().decimalPoint() == QLatin1String(",");
    bench.paper.wrong = wrongSentences(m_document.findings(), unitStyle(bench.plan));
    m_sheetWork->compose(bench.plan, bench.layout, m_document.findings(), sheetOfToday(sheetFineness),
                         [this, folder, bench](const BenchSheet& sheet) {
                             BenchFolder whole = bench;
                             whole.sheet = sheet;
                             const Result<QStringList> written = writeBenchFolder(
                                 whole, folder,
                                 shownProgress(*this, tr("Writing everything for the bench...")));
                             m_notices->show(written ? tr("%1 files were written into %2")
                                                           .arg(written->size())
                                                           .arg(QDir::toNativeSeparators(folder))
                                                     : shown(written.error()),
                                             QStringLiteral("bench-folder"));
                         });
}

void MainWindow::showPages(const BenchSheet& sheet)
{
    const QString problem = preview(sheet);
    if (!problem.isEmpty()) m_notices->show(problem, QStringLiteral("build-sheet"));
}

void MainWindow::printList()
{
    // What is printed is what is seen: the first time the command only brings the tables there.
    if (!m_studies->isVisible()) {
        m_actions->at(Command::Studies)->trigger();
        m_notices->show(tr("Choose a subject; then print it."), QStringLiteral("studies"));
        return;
    }
    m_studies->print();
}

}  // namespace lidwright
