#pragma once

#include "core/base/sentence.h"
#include "core/layout/layout.h"
#include "core/solvers/fineness.h"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace lidwright {

/// One column of a table of results, or one axis of a plot.
struct StudyColumn {
    std::string heading;  ///< marked English
    Quantity quantity = Quantity::Text;
    /// Figures after the mark where its numbers are plain ones that are not rounded as the quantity is: 2 of
    /// money.
    std::optional<int> decimals = {};

    bool operator==(const StudyColumn&) const = default;
};

/// Nothing, a number in the inside unit of its column's quantity, or words (marked English or a name).
using StudyCell = std::variant<std::monostate, double, std::string>;

struct StudyTable {
    std::vector<StudyColumn> columns;
    std::vector<std::vector<StudyCell>> rows;  ///< each as long as the columns
    /// Of each row its place in plan view, to be shown on the board; may be shorter than the rows.
    std::vector<std::optional<Point>> places;

    bool operator==(const StudyTable&) const = default;
};

/// One line of a plot.
struct StudySeries {
    std::string name;           ///< marked English
    std::vector<Point> points;  ///< in the inside units of the axes, by rising x
    bool dots = false;          ///< separate values, drawn as dots that are joined thinly

    bool operator==(const StudySeries&) const = default;
};

struct StudyPlot {
    std::string title;  ///< marked English
    StudyColumn across, up;
    std::vector<StudySeries> series;
    /// Upright lines that say where something is: "Head-end wall".
    std::vector<std::pair<double, std::string>> guides;

    bool operator==(const StudyPlot&) const = default;
};

/// Lines to be drawn over the top view: where a lid rings, and how much.
struct StudyPicture {
    std::string title;  ///< marked English
    struct Line {
        double level = 0;  ///< share of the largest, -1 to 1
        Polyline points;   ///< plan view, mm

        bool operator==(const Line&) const = default;
    };
    std::vector<Line> lines;

    bool operator==(const StudyPicture&) const = default;
};

/// A subject with its figures: composed once for the window, the command line, files and paper.
struct Study {
    std::string id;     ///< stable word: "frets"
    std::string title;  ///< marked English
    StudyTable table;
    std::vector<StudyPlot> plots;
    std::vector<StudyPicture> pictures;
    std::vector<Sentence> notes;   ///< what the figures stand on and where the model ends
    std::optional<Error> problem;  ///< why there are no figures

    bool operator==(const Study&) const = default;
};

/// The cell as a maker reads it; empty for nothing.
std::string spoken(const StudyCell& cell, const StudyColumn& column, const UnitStyle& style);

/// A table as RFC 4180 has it: comma, CRLF, a head line with units, numbers with a point in inside units to
/// full precision. Cells that a spreadsheet would take for a formula begin with an apostrophe.
std::string csvOf(const StudyTable& table);

/// The same for spreadsheets of a locale with the decimal comma: semicolons between the cells, numbers with a
/// comma, and the UTF-8 mark in front, by which a spreadsheet knows the letters.
std::string csvWithDecimalComma(const StudyTable& table);

struct PlateWatch;

/// The subjects of a plan in the order in which the work goes. Each is reckoned when it is asked for.
struct StudyEntry {
    const char* id;     ///< stable word
    const char* title;  ///< marked English
    Study (*reckon)(const Plan&, const Layout&);
    /// Of a subject that takes its time: by any fineness, watched; reckon() then is the coarse one. From any
    /// thread. Null of the quick ones.
    Study (*slowly)(const Plan&, const Layout&, Fineness, const PlateWatch&) = nullptr;
};
const std::vector<StudyEntry>& studies();

}  // namespace lidwright
