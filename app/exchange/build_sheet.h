#pragma once

#include "app/paper/paper_job.h"

#include "core/base/result.h"
#include "core/io/build/build_pages.h"

#include <QSizeF>
#include <QString>

#include <optional>

namespace lidwright {

/// True where the path's ending names a kind of build sheet: .html, .htm or .pdf.
bool isBuildSheetPath(const QString& path);

/// What the program itself knows of a sheet: its version and today.
BuildSheetInput sheetOfToday(Fineness fineness = Fineness::Usual);

/// Width and height of the paper, mm; of a roll those of A4, since these pages are read and not cut out.
QSizeF benchPaper(PaperSize size);

/// Writes a sheet for the bench by the path's ending: one HTML page, or a PDF on that paper with the same
/// text, tables and drawings. A PDF needs a QGuiApplication. Returns what went wrong; an existing file is
/// replaced only by a whole one.
std::optional<Error> writeBenchSheet(const BenchSheet& sheet, PaperSize size, const QString& path);

}  // namespace lidwright
