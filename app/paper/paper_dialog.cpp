#include "app/paper/paper_dialog.h"

#include "app/document/safe_write.h"
#include "app/paper/page_preview.h"
#include "app/paper/paper_dialog_form.h"
#include "app/paper/paper_progress.h"
#include "app/paper/paper_size.h"
#include "app/paper/pdf_writer.h"
#include "app/paper/printing.h"
#include "app/properties/length_edit.h"
#include "app/text/texts.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDate>
#include <QFileDialog>
#include <QFileInfo>
#include <QGroupBox>
#include <QLabel>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>

namespace lidwright {

PaperDialog::PaperDialog(const Plan& plan, const QString& suggestedPath, Settings& settings,
                         const QStringList& wrong, QWidget* parent)
    : QDialog(parent),
      m_plan(plan),
      m_suggestedPath(suggestedPath),
      m_wrong(wrong),
      m_settings(settings),
      m_style(unitStyle(plan)),
      m_form(std::make_unique<PaperForm>(*this, m_style))
{
    setWindowTitle(tr("Full-size templates on paper"));
    PaperForm& f = *m_form;
    for (const auto& [kind, box] : f.templates)
        connect(box, &QCheckBox::toggled, this, &PaperDialog::compose);
    connect(f.all, &QPushButton::clicked, this, [this] { tickAll(true); });
    connect(f.none, &QPushButton::clicked, this, [this] { tickAll(false); });
    connect(f.size, &QComboBox::currentIndexChanged, this, &PaperDialog::chooseCorrection);
    connect(f.printer, &QComboBox::currentIndexChanged, this, &PaperDialog::chooseCorrection);
    for (LengthEdit* edit : {f.overlap, f.margin}) {
        connect(edit, &TypedEdit::committed, this, [this, edit](const ParameterValue& value) {
            edit->setValue(value, m_style);
            showMeasured();
            compose();
        });
    }
    for (LengthEdit* edit : {f.measuredX, f.measuredY}) {
        connect(edit, &TypedEdit::committed, this,
                [this, edit](const ParameterValue& value) { takeMeasured(*edit, value); });
    }
    for (LengthEdit* edit : {f.overlap, f.margin, f.measuredX, f.measuredY}) {
        connect(edit, &TypedEdit::errorChanged, this,
                [this](const QString& message) { message.isEmpty() ? compose() : say(message, true); });
    }
    connect(f.correcting, &QGroupBox::toggled, this, &PaperDialog::compose);
    connect(f.preview, &PagePreview::pageShown, this,
            [this] { m_form->pageText->setText(m_form->preview->pageText()); });
    connect(f.save, &QPushButton::clicked, this, &PaperDialog::savePdf);
    connect(f.print, &QPushButton::clicked, this, &PaperDialog::print);
    connect(f.calibrate, &QPushButton::clicked, this, &PaperDialog::saveMeasuringPage);
    connect(f.close, &QPushButton::clicked, this, &QDialog::reject);

    setJob([this] {
        PaperJob usual;
        usual.size = usualPaperSize(locale());
        return usual;
    }());
}

PaperDialog::~PaperDialog() = default;

PaperJob PaperDialog::job() const
{
    const PaperForm& f = *m_form;
    PaperJob job;
    job.templates.clear();
    for (const auto& [kind, box] : f.templates)
        if (box->isChecked()) job.templates.push_back(kind);
    job.size = f.paperSize();
    job.wrong = m_wrong;
    job.margin = f.margin->millimetres();
    job.overlap = f.overlap->millimetres();
    if (f.correcting->isChecked()) {
        job.correctionX = m_correction.x;
        job.correctionY = m_correction.y;
        job.printerName = f.printerName();
        job.correctionDate = m_correction.date;
    }
    return job;
}

void PaperDialog::setJob(const PaperJob& job)
{
    PaperForm& f = *m_form;
    m_choosing = true;
    const std::vector<TemplateKind> had = templatesOf(m_plan);
    f.showTemplates(had);
    for (const auto& [kind, box] : f.templates) {
        const bool there = std::find(had.begin(), had.end(), kind) != had.end();
        box->setChecked(there &&
                        std::find(job.templates.begin(), job.templates.end(), kind) != job.templates.end());
    }
    f.margin->setValue(job.margin, m_style);
    f.overlap->setValue(job.overlap, m_style);
    f.size->setCurrentIndex(f.size->findData(static_cast<int>(job.size)));
    m_choosing = false;
    chooseCorrection();
}

void PaperDialog::tickAll(bool on)
{
    m_choosing = true;
    for (const auto& [kind, box] : m_form->templates)
        if (!box->isHidden()) box->setChecked(on);
    m_choosing = false;
    compose();
}

void PaperDialog::compose()
{
    if (m_choosing) return;
    PaperForm& f = *m_form;
    Result<PaperPages> pages = composePages(m_plan, job());
    const bool fine = pages.ok();
    f.preview->setPages(fine ? std::move(pages).value() : PaperPages{});
    f.save->setEnabled(fine);
    f.print->setEnabled(fine);
    const auto count = static_cast<int>(f.preview->pages().pages.size());
    say(fine ? (count == 1 ? tr("1 page.") : tr("%1 pages.").arg(count)) : shown(pages.error()), !fine);
}

void PaperDialog::chooseCorrection()
{
    m_correction = loadCorrection(m_settings, m_form->printerName(), m_form->paperSize());
    m_form->correcting->setChecked(!m_correction.none());
    m_form->setRoll(m_form->paperSize() == PaperSize::Roll);
    showMeasured();
    compose();
}

void PaperDialog::showMeasured()
{
    PaperForm& f = *m_form;
    const Result<CalibrationPage> page =
        calibrationPage(f.paperSize(), f.margin->millimetres(), f.printerName(), m_style);
    if (!page) return;
    m_nominalX = page->nominalX;
    m_nominalY = page->nominalY;
    f.measuredX->setValue(m_nominalX / m_correction.x, m_style);
    f.measuredY->setValue(m_nominalY / m_correction.y, m_style);
    f.showCorrection(m_correction, m_nominalX, m_nominalY, m_style);
}

void PaperDialog::takeMeasured(LengthEdit& edit, const ParameterValue& value)
{
    const bool isX = &edit == m_form->measuredX;
    const Result<double> factor = correctionFrom(isX ? m_nominalX : m_nominalY, std::get<double>(value));
    if (!factor) {
        edit.markError(factor.error());
        return;
    }
    edit.setValue(value, m_style);
    (isX ? m_correction.x : m_correction.y) = *factor;
    m_correction.date = QDate::currentDate().toString(Qt::ISODate);
    saveCorrection(m_settings, m_form->printerName(), m_form->paperSize(), m_correction);
    m_form->showCorrection(m_correction, m_nominalX, m_nominalY, m_style);
    compose();
}

bool PaperDialog::commitTyping()
{
    // A number still being typed counts: what is printed is what is seen in the fields.
    PaperForm& f = *m_form;
    bool fine = f.overlap->commit() && f.margin->commit();
    if (f.correcting->isChecked()) fine = fine && f.measuredX->commit() && f.measuredY->commit();
    return fine && !f.overlap->hasError() && !f.margin->hasError();
}

bool PaperDialog::savePdfAs(const QString& filePath)
{
    if (!commitTyping()) return false;
    const QString problem =
        writePaperPdf(m_plan, job(), filePath, shownProgress(*this, tr("Writing the pages...")));
    if (problem.isEmpty()) {
        say(tr("Written: %1. To print it from a terminal: lp -o print-scaling=none \"%1\"").arg(filePath),
            false);
        Q_EMIT paperMade();
    } else {
        say(problem, true);
    }
    return problem.isEmpty();
}

void PaperDialog::savePdf()
{
    const QString path = QFileDialog::getSaveFileName(this, tr("Save the templates as PDF"),
                                                      offeredPath(tr("templates")), tr("PDF (*.pdf)"));
    if (!path.isEmpty()) savePdfAs(path);
}

bool PaperDialog::printOn(QPrinter& printer)
{
    if (!commitTyping() || m_form->preview->pages().pages.empty()) return false;
    const QString problem = printPages(printer, m_form->preview->pages().pages,
                                       shownProgress(*this, tr("Printing the pages...")));
    say(problem.isEmpty() ? tr("Sent to the printer. Measure the first page before you cut anything.")
                          : problem,
        !problem.isEmpty());
    if (problem.isEmpty()) Q_EMIT paperMade();
    return problem.isEmpty();
}

void PaperDialog::print()
{
    if (!commitTyping() || m_form->preview->pages().pages.empty()) return;
    QPrinter printer(QPrinter::HighResolution);
    if (const QString name = m_form->printerName(); !name.isEmpty()) printer.setPrinterName(name);
    prepare(printer, m_form->preview->pages().pages.front(), QString::fromStdString(m_plan.sheet.title));
    QPrintDialog dialog(&printer, this);
    dialog.setOption(QAbstractPrintDialog::PrintPageRange);
    dialog.setMinMax(1, static_cast<int>(m_form->preview->pages().pages.size()));
    if (dialog.exec() == QDialog::Accepted) printOn(printer);
}

bool PaperDialog::saveMeasuringPageAs(const QString& filePath)
{
    const PaperForm& f = *m_form;
    const Result<CalibrationPage> page =
        calibrationPage(f.paperSize(), f.margin->millimetres(), f.printerName(), m_style);
    if (!page) {
        say(shown(page.error()), true);
        return false;
    }
    const Result<QByteArray> pdf = pdfOf({page->page}, tr("Printer measuring page"));
    if (!pdf) {
        say(shown(pdf.error()), true);
        return false;
    }
    if (const auto error = writeFileSafely(filePath, *pdf)) {
        say(shown(*error), true);
        return false;
    }
    say(tr("Written: %1. Print it at actual size, measure its two lines, and type in what you measured.")
            .arg(filePath),
        false);
    return true;
}

void PaperDialog::saveMeasuringPage()
{
    const QString path = QFileDialog::getSaveFileName(this, tr("Save the measuring page as PDF"),
                                                      offeredPath(tr("printer")), tr("PDF (*.pdf)"));
    if (!path.isEmpty()) saveMeasuringPageAs(path);
}

QString PaperDialog::offeredPath(const QString& ending) const
{
    const QFileInfo info(m_suggestedPath);
    const QString base = m_suggestedPath.isEmpty() ? QStringLiteral("lidwright") : info.completeBaseName();
    const QString name = base + QLatin1Char('-') + ending + QStringLiteral(".pdf");
    return m_suggestedPath.isEmpty() ? name : info.dir().filePath(name);
}

void PaperDialog::say(const QString& text, bool wrong)
{
    m_form->say(text, wrong);
}

}  // namespace lidwright
