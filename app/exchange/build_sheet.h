#pragma once

#include "core/base/result.h"
#include "core/checks/finding.h"
#include "core/layout/layout.h"

#include <QString>

#include <optional>
#include <vector>

namespace lidwright {

/// True where the path's ending names a kind of build sheet: .html, .htm or .pdf.
bool isBuildSheetPath(const QString& path);

/// Writes the build sheet by the path's ending: one HTML page with the board's drawing, or a PDF on A4
/// without it (text and tables are all that Qt's rich text takes of the page). A PDF needs a QGuiApplication.
/// Returns what went wrong; an existing file is replaced only by a whole one.
std::optional<Error> writeBuildSheet(const Plan& plan, const Layout& layout,
                                     const std::vector<Finding>& findings, const QString& path);

}  // namespace lidwright
