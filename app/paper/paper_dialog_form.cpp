#include "app/paper/paper_dialog_form.h"

#include "app/paper/page_preview.h"
#include "app/paper/paper_pages.h"
#include "app/paper/paper_size.h"
#include "app/properties/length_edit.h"
#include "app/style/verdict_mark.h"

#include "core/base/length_text.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialog>
#include <QFormLayout>
#include <QGridLayout>
#include <QGroupBox>
#include <QLabel>
#include <QPrinterInfo>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace lidwright {

namespace {

QString rangeText(double least, double most, const UnitStyle& style)
{
    return QString::fromStdString(formatLength(least, style, false).text) + QStringLiteral(" \u2026 ") +
           QString::fromStdString(formatLength(most, style).text);
}

LengthEdit* lengthEdit(double least, double most, const UnitStyle& style, QWidget* parent,
                       const QString& name, const QString& tip)
{
    auto* edit = new LengthEdit(least, most, style, parent);
    edit->setAccessibleName(name);
    edit->setToolTip(tip + QLatin1Char('\n') + rangeText(least, most, style));
    return edit;
}

}  // namespace

PaperForm::PaperForm(QDialog& dialog, const UnitStyle& style)
{
    auto* columns = new QHBoxLayout;
    auto* side = new QVBoxLayout;
    buildTemplates(dialog, *side);
    buildPaper(dialog, *side, style);
    buildCorrection(dialog, *side, style);
    side->addStretch(1);
    columns->addLayout(side, 0);
    auto* middle = new QVBoxLayout;
    buildPreview(dialog, *middle);
    columns->addLayout(middle, 1);

    stateMark = new QLabel(&dialog);
    stateMark->setAccessibleName(tr("State"));
    state = new QLabel(&dialog);
    state->setWordWrap(true);
    state->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    state->setToolTip(tr("What was done, or what is the matter."));
    save = new QPushButton(tr("Save &PDF..."), &dialog);
    save->setToolTip(tr("Writes all pages into one PDF, true to size."));
    print = new QPushButton(tr("P&rint..."), &dialog);
    print->setToolTip(tr("Prints all pages. Leave every kind of fitting and scaling switched off."));
    close = new QPushButton(tr("&Close"), &dialog);
    close->setToolTip(tr("Closes this window; the plan is not changed by it."));
    save->setDefault(true);
    // Enter in a field takes the number; it must not write a file.
    for (QPushButton* button : {save, print, close, calibrate})
        button->setAutoDefault(false);
    auto* foot = new QHBoxLayout;
    foot->addWidget(stateMark);
    foot->addWidget(state, 1);
    for (QPushButton* button : {save, print, close})
        foot->addWidget(button);

    auto* whole = new QVBoxLayout(&dialog);
    whole->addLayout(columns, 1);
    whole->addLayout(foot);
}

void PaperForm::buildTemplates(QDialog& dialog, QVBoxLayout& side)
{
    auto* box = new QGroupBox(tr("Templates"), &dialog);
    auto* column = new QVBoxLayout(box);
    m_templateGrid = new QGridLayout;
    column->addLayout(m_templateGrid);
    for (const TemplateKind kind : kTemplateKinds) {
        auto* check = new QCheckBox(templateLabel(kind), box);
        check->setToolTip(tr("Whether this template is printed."));
        templates.emplace_back(kind, check);
    }
    all = new QPushButton(tr("All"), box);
    all->setToolTip(tr("Ticks every template."));
    none = new QPushButton(tr("None"), box);
    none->setToolTip(tr("Ticks no template, to choose a few then."));
    auto* row = new QHBoxLayout;
    for (QPushButton* button : {all, none}) {
        button->setAutoDefault(false);
        row->addWidget(button);
    }
    column->addLayout(row);
    side.addWidget(box);
}

void PaperForm::showTemplates(const std::vector<TemplateKind>& had)
{
    std::vector<QCheckBox*> shown;
    for (const auto& [kind, check] : templates) {
        m_templateGrid->removeWidget(check);
        const bool there = std::find(had.begin(), had.end(), kind) != had.end();
        check->setVisible(there);
        if (there) shown.push_back(check);
    }
    const int rows = (static_cast<int>(shown.size()) + 1) / 2;
    for (int i = 0; i < static_cast<int>(shown.size()); ++i)
        m_templateGrid->addWidget(shown[static_cast<std::size_t>(i)], i % rows, i / rows);
    // The order of the keyboard is that of the eye, column by column.
    for (std::size_t i = 1; i < shown.size(); ++i)
        QWidget::setTabOrder(shown[i - 1], shown[i]);
    if (!shown.empty()) QWidget::setTabOrder(shown.back(), all);
}

void PaperForm::buildPaper(QDialog& dialog, QVBoxLayout& side, const UnitStyle& style)
{
    auto* box = new QGroupBox(tr("Paper"), &dialog);
    auto* form = new QFormLayout(box);
    size = new QComboBox(box);
    for (const PaperFormat& format : paperFormats())
        size->addItem(tr(format.label), static_cast<int>(format.size));
    size->setToolTip(tr("The paper in the printer. A roll takes one page per template."));
    size->setAccessibleName(tr("Paper size"));
    form->addRow(tr("&Size"), size);
    overlap = lengthEdit(kLeastOverlap, kMostOverlap, style, box, tr("Overlap"),
                         tr("Strip that neighbouring pages share, for joining them."));
    form->addRow(tr("&Overlap"), overlap);
    margin = lengthEdit(kLeastMargin, kMostMargin, style, box, tr("Margin"),
                        tr("Kept free on all four sides, because printers do not reach the paper's edge."));
    form->addRow(tr("&Margin"), margin);
    side.addWidget(box);
}

void PaperForm::buildCorrection(QDialog& dialog, QVBoxLayout& side, const UnitStyle& style)
{
    auto* box = new QGroupBox(tr("Printer"), &dialog);
    auto* column = new QVBoxLayout(box);
    printer = new QComboBox(box);
    printer->addItem(tr("Any printer"), QString());
    for (const QString& name : QPrinterInfo::availablePrinterNames())
        printer->addItem(name, name);
    printer->setAccessibleName(tr("Printer"));
    printer->setToolTip(tr("The printer whose correction is used; each has its own for each size of paper."));
    column->addWidget(printer);

    correcting = new QGroupBox(tr("Correct what this printer &does wrong"), box);
    correcting->setCheckable(true);
    correcting->setChecked(false);
    correcting->setToolTip(tr("Stretches or shrinks the pages so that they come out true on this printer."));
    auto* form = new QFormLayout(correcting);
    // As far as a correction may go, about the longest line of the largest paper.
    constexpr double kLeastLine = 50, kMostLine = 500;
    measuredX = lengthEdit(kLeastLine, kMostLine, style, correcting, tr("Measured X"),
                           tr("Length of the measuring page's level line, as it came out on paper."));
    form->addRow(tr("Measured &X"), measuredX);
    measuredY = lengthEdit(kLeastLine, kMostLine, style, correcting, tr("Measured Y"),
                           tr("Length of the measuring page's upright line, as it came out on paper."));
    form->addRow(tr("Measured &Y"), measuredY);
    correctionText = new QLabel(correcting);
    correctionText->setWordWrap(true);
    // Its lines break where the fields end; it must not widen them.
    correctionText->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::MinimumExpanding);
    correctionText->setMinimumHeight(6 * correctionText->fontMetrics().lineSpacing());
    correctionText->setAlignment(Qt::AlignTop);
    form->addRow(correctionText);
    column->addWidget(correcting);

    calibrate = new QPushButton(tr("Save measuring &page..."), box);
    calibrate->setToolTip(tr("Writes a page with two long lines, by which the printer is measured."));
    column->addWidget(calibrate);
    side.addWidget(box);
}

void PaperForm::buildPreview(QDialog& dialog, QVBoxLayout& middle)
{
    preview = new PagePreview(&dialog);
    middle.addWidget(preview, 1);
    auto* row = new QHBoxLayout;
    auto* back = new QPushButton(tr("&Back"), &dialog);
    back->setToolTip(tr("The page before this one."));
    auto* forward = new QPushButton(tr("&Next"), &dialog);
    forward->setToolTip(tr("The page after this one."));
    for (QPushButton* button : {back, forward})
        button->setAutoDefault(false);
    pageText = new QLabel(&dialog);
    pageText->setAlignment(Qt::AlignCenter);
    row->addWidget(back);
    row->addWidget(pageText, 1);
    row->addWidget(forward);
    middle.addLayout(row);
    QObject::connect(back, &QPushButton::clicked, preview,
                     [this] { preview->showPage(preview->page() - 1); });
    QObject::connect(forward, &QPushButton::clicked, preview,
                     [this] { preview->showPage(preview->page() + 1); });
}

PaperSize PaperForm::paperSize() const
{
    return static_cast<PaperSize>(size->currentData().toInt());
}

QString PaperForm::printerName() const
{
    return printer->currentData().toString();
}

void PaperForm::setRoll(bool roll)
{
    overlap->setEnabled(!roll);
    measuredX->setEnabled(!roll);
    measuredY->setEnabled(!roll);
    calibrate->setEnabled(!roll);
}

void PaperForm::showCorrection(const PrintCorrection& correction, double nominalX, double nominalY,
                               const UnitStyle& style)
{
    QStringList lines{tr("The lines should be %1 and %2.")
                          .arg(QString::fromStdString(formatLength(nominalX, style).text),
                               QString::fromStdString(formatLength(nominalY, style).text))};
    if (!correction.none()) {
        lines << tr("Correction: X %1, Y %2, measured %3.")
                     .arg(correction.x, 0, 'f', 4)
                     .arg(correction.y, 0, 'f', 4)
                     .arg(correction.date);
    }
    const QString warningX = fittedPageWarning(correction.x);
    const QString warningY = fittedPageWarning(correction.y);
    for (const QString& warning : {warningX, warningY == warningX ? QString() : warningY})
        if (!warning.isEmpty()) lines << warning;
    correctionText->setText(lines.join(QLatin1Char('\n')));
}

void PaperForm::say(const QString& text, bool wrong)
{
    stateMark->setPixmap(markIcon(wrong ? Verdict::Wrong : Verdict::Good, state->palette()).pixmap(16, 16));
    state->setText(text);
}

}  // namespace lidwright
