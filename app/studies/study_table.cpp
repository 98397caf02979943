#include "app/studies/study_table.h"

#include "app/text/texts.h"

#include <QTableWidget>

#include <set>

namespace lidwright {

QString shown(const StudyCell& cell, const StudyColumn& column, const UnitStyle& style)
{
    if (const auto* words = std::get_if<std::string>(&cell)) return shown(*words);
    return QString::fromStdString(spoken(cell, column, style));
}

void fillStudyTable(QTableWidget& widget, const StudyTable& table, const UnitStyle& style)
{
    widget.setColumnCount(static_cast<int>(table.columns.size()));
    widget.setRowCount(static_cast<int>(table.rows.size()));
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        const StudyColumn& column = table.columns[c];
        const int at = static_cast<int>(c);
        const bool number = column.quantity != Quantity::Text && column.quantity != Quantity::Pitch;
        auto* head = new QTableWidgetItem(shown(column.heading));
        head->setTextAlignment((number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
        widget.setHorizontalHeaderItem(at, head);
        for (std::size_t r = 0; r < table.rows.size(); ++r) {
            const StudyCell& cell = c < table.rows[r].size() ? table.rows[r][c] : StudyCell{};
            auto* item = new QTableWidgetItem(shown(cell, column, style));
            const bool right = number && !std::holds_alternative<std::string>(cell);
            item->setTextAlignment((right ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
            widget.setItem(static_cast<int>(r), at, item);
        }
    }
}

QString chosenText(const QTableWidget& widget)
{
    std::set<int> rows, columns;
    std::set<std::pair<int, int>> cells;
    for (const QTableWidgetSelectionRange& range : widget.selectedRanges())
        for (int r = range.topRow(); r <= range.bottomRow(); ++r)
            for (int c = range.leftColumn(); c <= range.rightColumn(); ++c) {
                rows.insert(r);
                columns.insert(c);
                cells.emplace(r, c);
            }
    if (cells.empty()) return {};
    const auto plain = [](QString words) {
        for (const char sign : {'\t', '\n', '\r'})
            words.replace(QLatin1Char(sign), QLatin1Char(' '));
        return words;
    };
    QStringList lines, head;
    for (const int c : columns)
        head << plain(widget.horizontalHeaderItem(c)->text());
    lines << head.join(QLatin1Char('\t'));
    for (const int r : rows) {
        QStringList line;
        for (const int c : columns)
            line << (cells.contains({r, c}) ? plain(widget.item(r, c)->text()) : QString());
        lines << line.join(QLatin1Char('\t'));
    }
    return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

}  // namespace lidwright
