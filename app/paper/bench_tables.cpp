#include "app/paper/bench_text.h"
#include "app/text/texts.h"

#include <QFontMetricsF>
#include <QRegularExpression>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextTable>

#include <algorithm>

// The tables of a sheet for the bench, and its cautions, whose frame is a table as well.

namespace lidwright {
namespace {

// mm.
constexpr double kLine = 0.27;  // thinner ones Qt leaves out
constexpr double kCautionBar = 2;
constexpr double kCellSide = 1.4;
constexpr double kCellAbove = 0.6;
constexpr double kWriteAbove = 1.6;  // a hand writes in about 8 mm (common practice, no source)
constexpr double kWriteWidth = 30;
constexpr double kAround = 1.5;

/// A number stays with its unit.
QString wordsOf(const BenchCell& cell, const UnitStyle& style)
{
    QString words = shown(cell.words, style);
    return cell.number ? words.replace(QLatin1Char(' '), QChar(QChar::Nbsp)) : words;
}

}  // namespace

QTextCursor BenchText::addCautions(const std::vector<const BenchWords*>& all)
{
    QTextCursor cursor(&m_document);
    cursor.movePosition(QTextCursor::End);
    QTextTableFormat format;
    format.setBorderCollapse(true);
    format.setBorder(units(kLine));
    format.setBorderBrush(Qt::black);
    format.setBorderStyle(QTextFrameFormat::BorderStyle_Solid);
    format.setCellPadding(0);
    format.setTopMargin(units(kAround));
    format.setBottomMargin(units(kAround));
    format.setWidth(QTextLength(QTextLength::PercentageLength, 100));
    format.setColumnWidthConstraints(
        {QTextLength(QTextLength::FixedLength, units(kCautionBar)), QTextLength()});
    QTextTable* table = cursor.insertTable(1, 2, format);
    // A bar at the left is seen without colours.
    QTextTableCellFormat bar;
    bar.setBackground(Qt::black);
    table->cellAt(0, 0).setFormat(bar);
    QTextTableCell cell = table->cellAt(0, 1);
    QTextTableCellFormat inside;
    inside.setLeftPadding(units(kCellSide));
    inside.setRightPadding(units(kCellSide));
    inside.setTopPadding(units(kCellAbove));
    inside.setBottomPadding(units(kCellAbove));
    inside.setBorder(units(kLine));
    inside.setBorderBrush(Qt::black);
    inside.setBorderStyle(QTextFrameFormat::BorderStyle_Solid);
    cell.setFormat(inside);
    QTextCursor in = cell.firstCursorPosition();
    for (std::size_t i = 0; i < all.size(); ++i) {
        QTextBlockFormat block;
        block.setTopMargin(i > 0 ? units(kCellAbove) : 0);
        if (i > 0)
            in.insertBlock(block);
        else
            in.setBlockFormat(block);
        say(in, *all[i], kBenchText);
    }
    m_lastTable = table;
    return in;
}

BenchText::Widths BenchText::widthsOf(const BenchTable& table, std::size_t column, double points) const
{
    constexpr double kSpare = 0.6;  // mm, for what the layout rounds
    const double around = 2 * kCellSide + kLine + kSpare;
    Widths out;
    const auto include = [&](const BenchCell& cell, bool bold) {
        const QFontMetricsF metrics(letters(points, bold).font(), &m_device);
        const QString words = wordsOf(cell, m_sheet.style);
        for (const QString& line : words.split(QLatin1Char('\n')))
            out.whole = std::max(out.whole, metrics.horizontalAdvance(line) / m_dotsPerMm + around);
        // No word is broken.
        for (const QString& word : words.split(QRegularExpression(QStringLiteral("[ \\n]"))))
            out.least = std::max(out.least, metrics.horizontalAdvance(word) / m_dotsPerMm + around);
        if (cell.write) out.least = std::max(out.least, kWriteWidth);
    };
    include(table.head[column], true);
    for (const auto& row : table.rows)
        if (column < row.size()) include(row[column], false);
    out.whole = std::max(out.whole, out.least);
    return out;
}

QTextCursor BenchText::add(const BenchTable& table)
{
    const std::size_t count = table.head.size();
    if (count == 0) return last();
    std::vector<Widths> widths(count);
    double points = 0;
    for (const double size : {kBenchText, 10.0, kBenchSmall, kBenchFooter}) {
        points = size;
        double least = 0;
        for (std::size_t c = 0; c < count; ++c) {
            widths[c] = widthsOf(table, c, points);
            least += widths[c].least;
        }
        if (least <= m_width) break;
    }
    // What is still too wide goes under one another, each with the first column to know the rows by.
    std::vector<std::size_t> columns;
    double least = 0;
    std::optional<QTextCursor> kept;
    const auto flush = [&] {
        const QTextCursor own = addPart({nullptr, &table, columns, widths, points, 0, m_underHeading});
        if (!kept) kept = own;
        m_underHeading = false;
    };
    for (std::size_t c = 0; c < count; ++c) {
        if (columns.size() > 1 && least + widths[c].least > m_width) {
            flush();
            columns = {0};
            least = widths[0].least;
        }
        columns.push_back(c);
        least += widths[c].least;
    }
    flush();
    return *kept;
}

QTextCursor BenchText::addPart(TablePart part)
{
    QTextCursor end(&m_document);
    end.movePosition(QTextCursor::End);
    insertPart(end, part);
    m_lastTable = part.table;
    m_order.emplace_back(true, m_tables.size());
    // The first row stays with the head.
    QTextCursor kept = part.table->cellAt(part.table->rows() > 1 ? 1 : 0, 0).lastCursorPosition();
    m_tables.push_back(std::move(part));
    return kept;
}

void BenchText::insertPart(QTextCursor cursor, TablePart& part) const
{
    const BenchTable& given = *part.given;
    const std::vector<std::size_t>& columns = part.columns;
    QTextTableFormat format;
    format.setBorderCollapse(true);
    format.setBorder(units(kLine));
    format.setBorderBrush(Qt::black);
    format.setBorderStyle(QTextFrameFormat::BorderStyle_Solid);
    format.setTopMargin(units(kAround));
    format.setBottomMargin(units(kAround));
    // As wide as they are where all have room; otherwise what is left over goes to those that want more.
    double least = 0, whole = 0;
    for (const std::size_t c : columns) {
        least += part.widths[c].least;
        whole += part.widths[c].whole;
    }
    const double share = whole <= m_width ? 1 : std::max(0.0, m_width - least) / (whole - least);
    QList<QTextLength> lengths;
    for (const std::size_t c : columns) {
        const Widths& own = part.widths[c];
        lengths << QTextLength(QTextLength::FixedLength, units(own.least + share * (own.whole - own.least)));
    }
    format.setColumnWidthConstraints(lengths);
    const std::size_t rows = given.rows.size() - std::min(part.first, given.rows.size());
    part.table = cursor.insertTable(static_cast<int>(rows) + 1, static_cast<int>(columns.size()), format);
    const auto fill = [&](int row, int column, const BenchCell& cell, bool head) {
        QTextTableCell at = part.table->cellAt(row, column);
        // The cell's format is that of the letters in it as well.
        QTextTableCellFormat inside;
        inside.setFont(letters(part.points, head).font());
        inside.setLeftPadding(units(kCellSide));
        inside.setRightPadding(units(kCellSide));
        // The whole row is as high as where one writes.
        inside.setTopPadding(units(cell.write ? kWriteAbove : kCellAbove));
        inside.setBottomPadding(units(cell.write ? kWriteAbove : kCellAbove));
        inside.setVerticalAlignment(QTextCharFormat::AlignMiddle);
        inside.setBorder(units(kLine));
        inside.setBorderBrush(Qt::black);
        inside.setBorderStyle(QTextFrameFormat::BorderStyle_Solid);
        at.setFormat(inside);
        QTextCursor in = at.firstCursorPosition();
        QTextBlockFormat block;
        if (cell.number) block.setAlignment(Qt::AlignRight);
        in.setBlockFormat(block);
        in.insertText(wordsOf(cell, m_sheet.style).replace(QLatin1Char('\n'), QChar(QChar::LineSeparator)),
                      letters(part.points, head));
    };
    for (std::size_t i = 0; i < columns.size(); ++i) {
        fill(0, static_cast<int>(i), given.head[columns[i]], true);
        for (std::size_t row = 0; row < rows; ++row) {
            const auto& cells = given.rows[part.first + row];
            if (columns[i] < cells.size())
                fill(static_cast<int>(row) + 1, static_cast<int>(i), cells[columns[i]], false);
        }
    }
}

}  // namespace lidwright
