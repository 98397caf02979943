#pragma once

#include "core/base/sentence.h"
#include "core/drawing/sheet.h"

#include <string>
#include <variant>
#include <vector>

namespace lidwright {

/// A paragraph.
struct BenchWords {
    enum class Look {
        Plain,
        Small,     ///< 9 pt at least; for what is looked up, not worked by
        Strong,    ///< bold: what must be read before anything is cut
        Caution,   ///< in a frame, told apart without colour; neighbours share one
        Indented,  ///< belongs to the paragraph above
        Heading    ///< within a section
    };
    Look look = Look::Plain;
    Sentence words;
    std::string lead = {};  ///< marked English, bold, in front: "wrong"; may be empty
    std::string name = {};  ///< as it is, behind the lead: a rule's id; may be empty
};

struct BenchCell {
    Sentence words;
    bool write = false;   ///< room to write what came out, by hand
    bool number = false;  ///< stands at the right
};

struct BenchTable {
    std::vector<BenchCell> head;
    std::vector<std::vector<BenchCell>> rows;  ///< each as long as the head
};

/// A drawing, to be shown as wide as its extent / its paper says, mm: then its words have their heights.
struct BenchPicture {
    Sheet sheet;
    std::string caption;  ///< marked English

    double width() const { return sheet.extent.width() / sheet.paper; }
    double height() const { return sheet.extent.height() / sheet.paper; }
};

using BenchBlock = std::variant<BenchWords, BenchTable, BenchPicture>;

struct BenchSection {
    std::string id;         ///< stable word, once in a sheet
    std::string title;      ///< marked English; may be empty
    int number = 0;         ///< before the title; 0 for none
    bool tick = false;      ///< a box to tick before the title
    bool newPage = false;   ///< begins a page
    bool together = false;  ///< not broken over two pages where one holds it
    std::vector<BenchBlock> blocks;
};

/// Pages for the bench, kept apart from how they are set: the window prints them, benchHtml() writes them.
struct BenchSheet {
    std::string title;     ///< as the plan has it, or marked English
    Sentence below;        ///< the line under the title
    std::string footer;    ///< as it is, at the foot of every page: "Plan 0123456789abcdef, Lidwright 1.0"
    UnitStyle style;       ///< in which its measures are spoken
    bool lying = false;    ///< its tables want paper that lies on its side
    bool stopped = false;  ///< it was given up before it was whole
    std::vector<BenchSection> sections;
};

/// Room for a picture between the margins of A4 and Letter alike, mm: 210 less twice 12.
inline constexpr double kBenchWidth = 186;

}  // namespace lidwright
