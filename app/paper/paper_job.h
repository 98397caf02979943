#pragma once

#include "core/checks/finding.h"
#include "core/drawing/template_sheets.h"

#include <QString>
#include <QStringList>

#include <functional>
#include <iterator>
#include <vector>

namespace lidwright {

enum class PaperSize { A4, Letter, A3, Tabloid, Roll };

/// What is to be printed and how.
struct PaperJob {
    /// Those that the plan has nothing for (backing, drilled side walls, wiring) are left out by themselves
    /// where others are asked for.
    std::vector<TemplateKind> templates{std::begin(kTemplateKinds), std::end(kTemplateKinds)};
    PaperSize size = PaperSize::A4;
    double margin = 10;      ///< mm kept free on all sides
    double overlap = 15;     ///< mm shared by neighbouring tiles
    double correctionX = 1;  ///< nominal / measured on this printer and paper, 0.90 to 1.10
    double correctionY = 1;
    QString printerName;  ///< named on the sheets where a correction is used
    /// What is wrong with the plan, a sentence each; printed before the templates.
    QStringList wrong;
    QString correctionDate;  ///< when the printer was measured, as it is to be shown; may be empty
};

// What a job may ask for.
inline constexpr double kLeastMargin = 0, kMostMargin = 30;             ///< mm
inline constexpr double kLeastOverlap = 6, kMostOverlap = 50;           ///< mm
inline constexpr double kLeastCorrection = 0.9, kMostCorrection = 1.1;  ///< nominal / measured

/// The sentences for PaperJob::wrong; of findings that are lived with, with the maker's reason.
QStringList wrongSentences(const std::vector<Finding>& findings, const UnitStyle& style);

/// Empty when the job can be done, otherwise what is the matter and how to mend it.
QString problemOf(const PaperJob& job);

/// Told how much of a long piece of work is done, 0 to 1; answers whether it is to go on. Empty: it is.
using PaperGoOn = std::function<bool(double share)>;
/// The problem that whatever was stopped ends with.
QString stoppedText();

/// Writes the templates as a PDF, true to size, with /PrintScaling /None. Returns an empty string, or what
/// went wrong; an existing file is replaced only by a complete one.
QString writePaperPdf(const Plan& plan, const PaperJob& job, const QString& filePath,
                      const PaperGoOn& goOn = {});

}  // namespace lidwright
