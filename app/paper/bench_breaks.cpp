#include "app/paper/bench_text.h"

#include <QAbstractTextDocumentLayout>
#include <QTextBlock>
#include <QTextTable>

#include <algorithm>
#include <cmath>

// Where the pages of a sheet for the bench end.

namespace lidwright {

namespace {

void breakBeforeBlock(QTextCursor place)
{
    QTextBlockFormat format = place.blockFormat();
    format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
    place.setBlockFormat(format);
}

/// Two tables have an empty paragraph between them: that one begins the page then, or it would begin one of
/// its own.
void breakBeforeTable(QTextTable& table)
{
    QTextCursor before = table.cellAt(0, 0).firstCursorPosition();
    before.setPosition(table.firstPosition() - 1);
    if (before.block().length() == 1) return breakBeforeBlock(before);
    QTextTableFormat format = table.format();
    format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
    table.setFormat(format);
}

/// Space below a table could reach into the next page, which would stay empty where what follows begins one.
void closeUp(QTextTable& table)
{
    QTextTableFormat format = table.format();
    format.setBottomMargin(0);
    table.setFormat(format);
}

}  // namespace

double BenchText::top(const QTextCursor& place) const
{
    return m_document.documentLayout()->blockBoundingRect(place.block()).top();
}

double BenchText::bottom(const QTextCursor& place) const
{
    return m_document.documentLayout()->blockBoundingRect(place.block()).bottom();
}

double BenchText::pageOf(double y) const
{
    return std::floor(y / m_document.pageSize().height());
}

void BenchText::breakBefore(const Passage& passage)
{
    // More than this of a page is not left empty for the sake of what comes after it.
    constexpr double kMostEmpty = 0.5;
    const double page = m_document.pageSize().height();
    const double from = top(passage.heading);
    const double into = from - page * pageOf(from);
    const auto breaks = [&](const QTextCursor& place) { return pageOf(bottom(place) - 1) > pageOf(from); };
    const bool whole = passage.together && breaks(passage.end) && bottom(passage.end) - from < page &&
                       page - into < kMostEmpty * page;
    // The first of its page is that already, though space below a table may stand over it.
    const QTextBlock before = passage.heading.block().previous();
    const bool first = !before.isValid() || pageOf(bottom(QTextCursor(before)) - 1) < pageOf(from);
    if (first || (!passage.newPage && !whole && !breaks(passage.with))) return;
    if (QTextTable* table = QTextCursor(before).currentTable()) closeUp(*table);
    breakBeforeBlock(passage.heading);
}

bool BenchText::endAtPage(TablePart& part)
{
    // A table that would begin so far down goes to the next page as a whole, where that holds it.
    constexpr double kLeastRoom = 0.3;
    const double page = m_document.pageSize().height();
    const QRectF frame = m_document.documentLayout()->frameBoundingRect(part.table);
    const double from = top(part.table->cellAt(0, 0).firstCursorPosition());
    const int rows = part.table->rows();
    // Qt wants the padding below a cell twice before it leaves a row on a page, and where a table ends within
    // a hair of that, takes the next page for begun.
    constexpr double kSpare = 1.5;  // mm
    int fit = 0;
    for (int row = 0; row < rows; ++row) {
        double end = 0;
        for (int column = 0; column < part.table->columns(); ++column) {
            const QTextTableCell cell = part.table->cellAt(row, column);
            const double padding = cell.format().toTableCellFormat().bottomPadding() / units(1);
            end = std::max(end, bottom(cell.lastCursorPosition()) + (2 * padding + kSpare) * m_dotsPerMm);
        }
        if (pageOf(end) > pageOf(from)) break;
        fit = row + 1;
    }
    if (fit == rows) return false;
    const double into = from - page * pageOf(from);
    // The head alone is no table.
    const bool nothing = fit < 2;
    const bool late = page - into < kLeastRoom * page && frame.height() < page && !part.underHeading;
    if (nothing || late) {
        if (into < 0.1 * page) return false;  // higher than a page: it is torn
        breakBeforeTable(*part.table);
        return false;
    }
    // Laid out once, when all is moved.
    QTextCursor whole(&m_document);
    whole.beginEditBlock();
    part.table->removeRows(fit, rows - fit);
    TablePart rest = part;
    rest.first = part.first + static_cast<std::size_t>(fit) - 1;
    rest.underHeading = false;
    QTextCursor behind(&m_document);
    behind.setPosition(part.table->lastPosition() + 1);
    insertPart(behind, rest);
    QTextTableFormat format = rest.table->format();
    format.setBottomMargin(part.table->format().bottomMargin());
    rest.table->setFormat(format);
    closeUp(*part.table);
    breakBeforeTable(*rest.table);
    whole.endEditBlock();
    part = rest;
    return true;
}

void BenchText::breakPages()
{
    for (const auto& [isTable, index] : m_order) {
        // Qt lays out as far as it is asked about and takes what lies beyond a change for done: all of it
        // first.
        m_document.pageCount();
        if (!isTable)
            breakBefore(m_passages[index]);
        else
            while (endAtPage(m_tables[index]))
                m_document.pageCount();
    }
}

}  // namespace lidwright
