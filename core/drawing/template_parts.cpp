#include "core/drawing/template_parts.h"

#include "core/base/length_text.h"
#include "core/drawing/lettering.h"

namespace lidwright {
namespace {

constexpr double kAround = 6;       // mm of bare paper around a template
constexpr double kAboveNotes = 8;   // mm
constexpr double kCheckLine = 100;  // mm, measured on the print
constexpr double kCheckTick = 2.5;  // mm to each side of the check line's ends

}  // namespace

std::vector<NoteLine> wrapped(const std::vector<NoteLine>& lines, double width)
{
    std::vector<NoteLine> out;
    for (const NoteLine& line : lines) {
        std::string now;
        std::size_t from = 0;
        while (from < line.words.size()) {
            std::size_t to = line.words.find(' ', from);
            if (to == std::string::npos) to = line.words.size();
            const std::string next = line.words.substr(from, to - from);
            const std::string longer = now.empty() ? next : now + " " + next;
            if (!now.empty() && textWidth(longer, line.height) > width) {
                out.push_back({now, line.height});
                now = next;
            } else {
                now = longer;
            }
            from = to + 1;
        }
        if (!now.empty()) out.push_back({now, line.height});
    }
    return out;
}

void addNotes(ViewPen& pen, double left, const std::vector<NoteLine>& lines)
{
    const Bounds drawn = pen.extent();
    double y = drawn.minY - kAboveNotes;
    if (!std::isfinite(y)) y = 0;
    // Flush with everything: further right they would reach on to another page sooner.
    if (std::isfinite(drawn.minX)) left = drawn.minX;
    std::vector<Element> notes;
    for (const NoteLine& line : wrapped(lines, kMostNotes)) {
        y -= notes.empty() ? line.height : kLinePitch * line.height;
        notes.push_back({"sheet", "notes", Text{{left, y}, line.words, line.height, 0, Anchor::Left}});
    }
    y -= 3 * kCheckTick;
    const auto line = [&](Point a, Point b) {
        notes.push_back({"", "check", Stroke{{a, b}, false, LineKind::Mark}});
    };
    line({left, y}, {left + kCheckLine, y});
    for (const double x : {left, left + kCheckLine})
        line({x, y - kCheckTick}, {x, y + kCheckTick});
    notes.push_back(
        {"", "check",
         Text{{left + kCheckLine + 3, y - 1.25}, "100 mm: measure before cutting", 2.5, 0, Anchor::Left}});
    pen.addSheetElements(std::move(notes));
}

Sheet templateOf(ViewPen& pen, const std::string& title)
{
    Sheet sheet;
    sheet.title = title;
    sheet.extent = pen.extent().grown(kAround);
    sheet.elements = pen.take();
    return sheet;
}

std::string lengthWithUnit(double mm, const UnitStyle& style)
{
    return formatLength(mm, style).text;
}

}  // namespace lidwright
