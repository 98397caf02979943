#include "core/drawing/sheet_frame.h"

#include "core/drawing/lettering.h"
#include "core/drawing/sheet_furniture.h"

namespace lidwright {
namespace {

constexpr const char* kLayer = "frame";

// ISO 5457, mm.
constexpr double kFilingMargin = 20;
constexpr double kMargin = 10;
constexpr double kMarkOutside = 5;
constexpr double kMarkInside = 5;

// Own division of the title block, mm.
constexpr double kCheckStrip = 9;     // height of the lowest row
constexpr double kRow = 12;           // of the two above it; the title has what is left
constexpr double kPad = 1.5;          // words to the lines
constexpr double kCaption = 2.5;      // height of what names a field, ISO 3098
constexpr double kCheckLine = 100;    // length
constexpr double kCheckTick = 2;      // to each side of its ends
constexpr double kSign = 7;           // the projection sign's large diameter
constexpr double kSignField = 45;     // width
constexpr double kScaleField = 35;    // width
constexpr double kPaperField = 35;    // width
constexpr double kMakerField = 100;   // width
constexpr double kMarkBreadth = 0.7;  // a line of the border

Element stroke(std::vector<Point> points, LineKind kind, bool closed = false)
{
    return {"", kLayer, Stroke{std::move(points), closed, kind}};
}

Element words(Point at, const std::string& text, double height)
{
    return {"", kLayer, Text{at, text, height, 0, Anchor::Left}};
}

std::size_t characters(const std::string& utf8)
{
    std::size_t count = 0;
    for (const char c : utf8)
        if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++count;
    return count;
}

/// A field with its caption above the words.
void addField(std::vector<Element>& out, const Bounds& field, const std::string& caption,
              const std::string& text, double height)
{
    const double room = field.width() - 2 * kPad;
    out.push_back(words({field.minX + kPad, field.maxY - kPad - kCaption}, caption, kCaption));
    const std::string said = fitted(text, height, room);
    if (!said.empty()) out.push_back(words({field.minX + kPad, field.minY + kPad + 0.5}, said, height));
}

void addCheckLine(std::vector<Element>& out, const Bounds& strip)
{
    const double x = strip.minX + 3, y = strip.centre().y;
    out.push_back(stroke({{x, y}, {x + kCheckLine, y}}, LineKind::Mark));
    for (const double end : {x, x + kCheckLine})
        out.push_back(stroke({{end, y - kCheckTick}, {end, y + kCheckTick}}, LineKind::Mark));
    out.push_back(words({x + kCheckLine + 3, y - kCaption / 2}, "100 mm when printed to scale", kCaption));
}

}  // namespace

Bounds frameOf(Point paper)
{
    return {kFilingMargin, kMargin, paper.x - kMargin, paper.y - kMargin};
}

std::vector<Element> sheetFrame(Point paper)
{
    const Bounds f = frameOf(paper);
    std::vector<Element> out;
    out.push_back(stroke({{f.minX, f.minY}, {f.maxX, f.minY}, {f.maxX, f.maxY}, {f.minX, f.maxY}},
                         LineKind::Frame, true));
    // The marks halve the sheet, not the frame.
    const Point middle = 0.5 * paper;
    out.push_back(
        stroke({{middle.x, f.minY - kMarkOutside}, {middle.x, f.minY + kMarkInside}}, LineKind::Frame));
    out.push_back(
        stroke({{middle.x, f.maxY - kMarkInside}, {middle.x, f.maxY + kMarkOutside}}, LineKind::Frame));
    out.push_back(
        stroke({{f.minX - kMarkOutside, middle.y}, {f.minX + kMarkInside, middle.y}}, LineKind::Frame));
    out.push_back(
        stroke({{f.maxX - kMarkInside, middle.y}, {f.maxX + kMarkOutside, middle.y}}, LineKind::Frame));
    return out;
}

std::vector<Bounds> centringMarkBounds(Point paper)
{
    const Bounds f = frameOf(paper);
    const Point m = 0.5 * paper;
    constexpr double half = kMarkBreadth / 2;
    return {{m.x - half, f.minY, m.x + half, f.minY + kMarkInside},
            {m.x - half, f.maxY - kMarkInside, m.x + half, f.maxY},
            {f.minX, m.y - half, f.minX + kMarkInside, m.y + half},
            {f.maxX - kMarkInside, m.y - half, f.maxX, m.y + half}};
}

std::string fitted(const std::string& utf8, double height, double width)
{
    if (textWidth(utf8, height) <= width) return utf8;
    for (std::size_t most = characters(utf8); most > 0; --most)
        if (std::string cut = shortened(utf8, most - 1); textWidth(cut, height) <= width) return cut;
    return {};
}

std::vector<Element> titleBlockElements(const TitleBlock& block)
{
    const double left = -kTitleBlockWidth;
    const double y1 = kCheckStrip, y2 = y1 + kRow, y3 = y2 + kRow;
    std::vector<Element> out;
    out.push_back(stroke({{left, 0}, {0, 0}, {0, kTitleBlockHeight}, {left, kTitleBlockHeight}},
                         LineKind::Visible, true));
    for (const double y : {y1, y2, y3})
        out.push_back(stroke({{left, y}, {0, y}}, LineKind::Narrow));
    const double x1 = left + kScaleField, x2 = x1 + kPaperField, x3 = -kSignField;
    const double makerEnd = left + kMakerField;
    for (const double x : {x1, x2, x3})
        out.push_back(stroke({{x, y1}, {x, y2}}, LineKind::Narrow));
    out.push_back(stroke({{makerEnd, y2}, {makerEnd, y3}}, LineKind::Narrow));

    addField(out, {left, y3, 0, kTitleBlockHeight}, "Title", block.title, 5);
    addField(out, {left, y2, makerEnd, y3}, "Made by", block.maker, 3.5);
    addField(out, {makerEnd, y2, 0, y3}, "Kind of drawing", block.kind, 3.5);
    addField(out, {left, y1, x1, y2}, "Scale", block.scale, 3.5);
    addField(out, {x1, y1, x2, y2}, "Sheet", block.paper, 3.5);
    addField(out, {x2, y1, x3, y2}, "Measures in", block.units, 3.5);
    const double signX = x3 + (kSignField - kProjectionSignWidth * kSign) / 2;
    for (Element& e : projectionSign(block.projection, kSign))
        out.push_back(moved(std::move(e), {signX, y1 + (kRow - kSign) / 2}));
    addCheckLine(out, {left, 0, 0, y1});
    return out;
}

}  // namespace lidwright
