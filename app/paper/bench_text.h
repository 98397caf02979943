#pragma once

#include "app/paper/bench_objects.h"

#include <QPaintDevice>
#include <QTextCursor>
#include <QTextDocument>

#include <vector>

class QTextTable;

namespace lidwright {

/// Sizes of the letters, points. At a bench they are read from farther off than at a desk.
inline constexpr double kBenchText = 11;
inline constexpr double kBenchSmall = 9.5;
inline constexpr double kBenchFooter = 9;

/// A sheet for the bench as rich text, laid out for a paint device and broken into pages.
class BenchText {
public:
    /// `width`, `height`: of a page's text, mm. Sheet and device must outlive this: the drawings and the
    /// letters' widths are theirs.
    BenchText(const BenchSheet& sheet, QPaintDevice& device, double width, double height);

    QTextDocument& document() { return m_document; }
    double dotsPerMm() const { return m_dotsPerMm; }

private:
    /// What page breaks mind: a heading with what is under it. Cursors, since tables that are split move what
    /// comes after them.
    struct Passage {
        QTextCursor heading;
        QTextCursor with;  ///< in the last paragraph that must not be parted from the heading
        QTextCursor end;
        bool newPage = false;   ///< begins a page
        bool together = false;  ///< stays on one where that has room for it
    };
    /// Of a column, mm: with every cell's words in one line, and with no word broken.
    struct Widths {
        double whole = 0, least = 0;
    };
    /// Rows of a table as they stand in one piece. Qt would tear a row in two at a page's end and paint the
    /// repeated head over it.
    struct TablePart {
        QTextTable* table = nullptr;
        const BenchTable* given = nullptr;
        std::vector<std::size_t> columns;
        std::vector<Widths> widths;
        double points = 0;
        std::size_t first = 0;      ///< row of `given`
        bool underHeading = false;  ///< nothing stands between it and a heading
    };

    void write();
    void add(const BenchSection& section);
    // Each returns the place down to which it stays with what is before it.
    QTextCursor add(const BenchWords& words);
    QTextCursor add(const BenchTable& table);
    QTextCursor add(const BenchPicture& picture);
    QTextCursor addCautions(const std::vector<const BenchWords*>& all);
    Widths widthsOf(const BenchTable& table, std::size_t column, double points) const;
    QTextCursor addPart(TablePart part);
    /// Makes the part's table where the cursor is.
    void insertPart(QTextCursor cursor, TablePart& part) const;

    QTextCursor last() const;
    /// A new paragraph at the end of everything; spaces in mm.
    QTextCursor paragraph(double above, double below, double indent = 0);
    void say(QTextCursor& cursor, const BenchWords& words, double points, bool bold = false,
             bool italic = false) const;
    QTextCharFormat letters(double points, bool bold = false, bool italic = false) const;
    /// Of a length in mm, what QTextFormat takes for it.
    double units(double mm) const;

    void breakPages();
    void breakBefore(const Passage& passage);
    /// Ends the table where its page ends; true where there is more of it for the next page.
    bool endAtPage(TablePart& part);
    double pageOf(double y) const;
    double top(const QTextCursor& place) const;     ///< of its paragraph, dots from the document's top
    double bottom(const QTextCursor& place) const;  ///< the same

    const BenchSheet& m_sheet;
    QPaintDevice& m_device;
    double m_width, m_height;  ///< mm
    double m_dotsPerMm;
    QTextDocument m_document;
    BenchObjects* m_objects;
    std::vector<Passage> m_passages;
    std::vector<TablePart> m_tables;
    std::vector<std::pair<bool, std::size_t>> m_order;  ///< of both, as they come: true for a table
    bool m_underHeading = false;
    bool m_empty = true;
    QTextTable* m_lastTable = nullptr;  ///< where nothing stands behind it yet
};

}  // namespace lidwright
