#pragma once

#include "core/solvers/study.h"

#include <QString>

class QTableWidget;

namespace lidwright {

/// A cell in the user's language and unit.
QString shown(const StudyCell& cell, const StudyColumn& column, const UnitStyle& style);

/// Puts a table of results into the widget; numbers stand to the right. What is selected and scrolled to
/// stays where the table keeps its shape.
void fillStudyTable(QTableWidget& widget, const StudyTable& table, const UnitStyle& style);

/// The selected cells with their heads, tab-separated, a line for every row; empty when nothing is selected.
QString chosenText(const QTableWidget& widget);

}  // namespace lidwright
