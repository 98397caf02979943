#include "core/drawing/cut_marks.h"

#include "core/drawing/lettering.h"
#include "core/drawing/ring_split.h"
#include "core/drawing/stroke_font.h"
#include "core/drawing/template_parts.h"

namespace lidwright {
namespace {

constexpr double kTitleHeight = 5, kWordHeight = 2.5;  // mm (ISO 3098)
constexpr double kCheckLine = 100;                     // mm, measured on the cutter's screen and on the piece
constexpr double kCheckTick = 2.5;                     // mm to each side of its ends
/// Stroked letters are wider than those that wrapped() counts with.
constexpr double kWiderLetters = 1.25;

CutPath mark(std::vector<Point> points, bool closed = false)
{
    return {CutOperation::Mark, std::move(points), closed};
}

void appendWords(std::vector<CutPath>& marks, Point at, const std::string& words, double height)
{
    for (Polyline& stroke : strokedText({at, words, height, 0, Anchor::Left}))
        marks.push_back(mark(std::move(stroke)));
}

}  // namespace

std::vector<CutPath> lidMarks(const Layout& layout)
{
    std::vector<CutPath> marks;
    const Ring& lid = layout.lidOutline;
    const auto along = [&](double y) {
        for (const auto& [from, to] : stretchesAtY({lid}, y))
            marks.push_back(mark({{from, y}, {to, y}}));
    };
    along(0);
    if (layout.neckY != 0) along(layout.neckY);
    if (layout.neckOutline.size() >= 3)
        for (Polyline& line : splitByRing(layout.neckOutline, lid).inside)
            marks.push_back(mark(std::move(line)));
    if (layout.bridgeOutline.size() >= 3) {
        marks.push_back(mark(layout.bridgeOutline, true));
        marks.push_back(mark({layout.saddleFrom, layout.saddleTo}));
    }
    return marks;
}

std::vector<CutPath> markedWords(const std::vector<std::string>& lines, Point topLeft, double width,
                                 bool checkLine)
{
    std::vector<CutPath> marks;
    std::vector<NoteLine> notes;
    for (const std::string& line : lines)
        notes.push_back({line, notes.empty() ? kTitleHeight : kWordHeight});
    double y = topLeft.y;
    for (const NoteLine& line : wrapped(notes, width / kWiderLetters)) {
        y -= kLinePitch * line.height;
        appendWords(marks, {topLeft.x, y}, line.words, line.height);
    }
    if (!checkLine) return marks;
    y -= 3 * kCheckTick;
    const double left = topLeft.x, right = topLeft.x + kCheckLine;
    marks.push_back(mark({{left, y}, {right, y}}));
    for (const double x : {left, right})
        marks.push_back(mark({{x, y - kCheckTick}, {x, y + kCheckTick}}));
    appendWords(marks, {right + 3, y - kWordHeight / 2}, "100 mm", kWordHeight);
    return marks;
}

}  // namespace lidwright
