#pragma once

#include "core/geometry/point.h"

#include <gtest/gtest.h>

#include <QByteArray>
#include <QImage>
#include <QString>
#include <QStringList>

#include <vector>

/// Other people's programs that read what we wrote: poppler-utils and qpdf.
namespace lidwright::testing {

/// What a program gave back.
struct Output {
    int code = -1;
    QByteArray out;
    QByteArray err;
};

/// Runs a program of the packages poppler-utils or qpdf; the test fails in clear words when it is not there.
Output runTool(const QString& program, const QStringList& arguments);

/// A straight stroke in a page, in mm of the page, y down.
struct Segment {
    Point a, b;
    double width = 0;  ///< of the pen, mm
    double length() const { return distance(a, b); }
    bool level() const { return std::abs(a.y - b.y) < 0.005; }
    bool upright() const { return std::abs(a.x - b.x) < 0.005; }
};

/// Every straight stroke of one page (counted from 1), as pdftocairo reads it.
std::vector<Segment> strokesOf(const QString& pdf, int page);

/// How many strokes of the page are `length` long to within `tolerance` mm, level or upright.
int countOf(const std::vector<Segment>& strokes, double length, bool level, double tolerance = 0.005);

/// The pages as pdftoppm paints them, grey, at `dpi`.
std::vector<QImage> paintedPages(const QString& pdf, int dpi);

/// Width and height of each page's media box, points, as pdfinfo reads it.
std::vector<Point> mediaBoxes(const QString& pdf);

}  // namespace lidwright::testing
