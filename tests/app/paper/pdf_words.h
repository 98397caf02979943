#pragma once

#include <QRectF>
#include <QString>

#include <vector>

/// What another program reads in a PDF.
namespace lidwright::testing {

struct PdfWord {
    QString text;
    QRectF box;  ///< points, y down
};
struct PdfPage {
    double width = 0, height = 0;  ///< points
    std::vector<PdfWord> words;    ///< as pdftotext puts them in order

    /// The words that lie above `below`, points, one blank between them.
    QString text(double below) const;
};

/// Every page's words with their boxes, as pdftotext -bbox gives them.
std::vector<PdfPage> wordsOf(const QString& pdf);

}  // namespace lidwright::testing
