#pragma once

#include "app/paper/bench_text.h"

#include "core/base/result.h"

#include <QBuffer>
#include <QPageLayout>
#include <QPdfWriter>

#include <memory>

class QPainter;
class QPrinter;

namespace lidwright {

/// Bare edge of a page at its left, right and top, mm; at the bottom there is the footer in it as well. Wide
/// enough for printers that do not reach the edge (common practice, no source).
inline constexpr double kBenchMargin = 12;
inline constexpr double kBenchFoot = 8;  ///< mm more at the bottom

/// A sheet for the bench, set on pages. Painted the same on a printer, in its preview and in a PDF, text as
/// text and drawings as lines. Needs a QGuiApplication.
class BenchPages {
public:
    /// `paper`: width and height, mm; at least 100 by 100 mm are taken. The letters are measured on `device`,
    /// or where there is none at the resolution of a PDF. Both must outlive this.
    BenchPages(const BenchSheet& sheet, QSizeF paper, QPaintDevice* device = nullptr);
    ~BenchPages();

    int count() const;
    /// The page from 0 on, whose upper left corner lies at the painter's (0, 0).
    void paint(QPainter& painter, int page, double dotsPerMm) const;

private:
    const BenchSheet& m_sheet;
    QSizeF m_paper;
    QBuffer m_nowhere;
    QPdfWriter m_measure;
    std::unique_ptr<BenchText> m_text;
};

/// The pages as one PDF on paper of that size, mm, which lies on its side where the sheet wants that.
Result<QByteArray> benchPdf(const BenchSheet& sheet, QSizeF upright);

/// Prints on the paper that the printer is set to: all pages, or those that it was asked for. Returns an
/// empty string, or what went wrong.
QString printBench(QPrinter& printer, const BenchSheet& sheet);

}  // namespace lidwright
