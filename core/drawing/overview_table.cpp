#include "core/drawing/overview_table.h"

#include "core/drawing/lettering.h"
#include "core/drawing/sheet_frame.h"
#include "core/drawing/view_pen.h"
#include "core/materials/material.h"

namespace lidwright {
namespace {

constexpr const char* kLayer = "table";

// mm of paper, own choice.
constexpr double kRow = 5.5;
constexpr double kHead = 7;
constexpr double kNames = 37;  // width of the names' part of a column
constexpr double kPad = 1.5;
constexpr double kValues = kTableColumn - kNames - 2 * kPad;
constexpr double kHeight = 2.5;      // of the rows' words, ISO 3098
constexpr double kHeadHeight = 3.5;  // of the heading

struct Row {
    std::string name;  ///< empty where the value of the row before goes on
    std::string value;
};

using Words = std::vector<std::string>;

/// "330 x 230 x 64", to be broken after a sign only.
Words times(Words measures)
{
    for (std::size_t i = 0; i + 1 < measures.size(); ++i)
        measures[i] += " \xC3\x97";
    return measures;
}

Words atBlanks(const std::string& text)
{
    Words out(1);
    for (const char c : text)
        if (c == ' ')
            out.emplace_back();
        else
            out.back() += c;
    return out;
}

class Rows {
public:
    /// The value goes on in another row where it is too wide for one.
    void add(const std::string& name, const Words& value)
    {
        m_rows.push_back({fitted(name, kHeight, kNames - kPad), {}});
        for (const std::string& word : value) {
            const std::string& now = m_rows.back().value;
            const std::string longer = now.empty() ? word : now + " " + word;
            if (!now.empty() && textWidth(longer, kHeight) > kValues)
                m_rows.push_back({{}, fitted(word, kHeight, kValues)});
            else
                m_rows.back().value = fitted(longer, kHeight, kValues);
        }
    }
    std::vector<Row> take() { return std::move(m_rows); }

private:
    std::vector<Row> m_rows;
};

std::vector<Row> rowsOf(const Plan& plan, const Layout& l, const UnitStyle& style)
{
    const auto mm = [&](double value) { return dimensionWords(value, style); };
    const Box& box = plan.box;
    Rows rows;
    rows.add("Scale length", {mm(plan.scale.length)});
    rows.add("Nut to head wall", {mm(l.headWall.outerX - l.nutX)});
    rows.add("Saddle to tail wall", {mm(l.tailWall.outerX - l.saddleX)});
    rows.add(plan.frets.kind == FretKind::Wire ? "Frets" : "Lines for frets",
             {std::to_string(l.frets.lines.size())});
    rows.add("Strings", {std::to_string(plan.stringSet.size())});
    rows.add("Box without its lid", times({mm(l.body.width()), mm(l.body.height()), mm(box.height)}));
    if (box.shape == BoxShape::Rectangle)
        rows.add("Walls; base", {mm(box.endWall) + ",", mm(box.sideWall) + ";", mm(box.base)});
    else
        rows.add("Wall; base", {mm(box.sideWall) + ";", mm(box.base)});
    rows.add("Lid's thickness", {mm(plan.lid.thickness)});
    rows.add("Lid's wood", atBlanks(materialName(plan.lid.material)));
    rows.add("Stick", times({mm(l.neckNeeded), mm(plan.neck.width), mm(plan.neck.thickness)}));
    rows.add("Stick's wood", atBlanks(materialName(plan.neck.wood)));
    if (!l.fretboardOutline.empty())
        rows.add("Fretboard's width", {mm(plan.fretboard.widthAtNut) + " to", mm(plan.fretboard.widthAtEnd)});
    rows.add("Bridge", times({mm(plan.bridge.length), mm(plan.bridge.width), mm(plan.bridge.height)}));
    return rows.take();
}

/// How many rows the first of so many columns has, so that no value is torn between two.
std::size_t rowsDeep(const std::vector<Row>& rows, std::size_t columns)
{
    std::size_t deep = (rows.size() + columns - 1) / columns;
    while (columns > 1 && deep < rows.size() && rows[deep].name.empty())
        ++deep;
    return deep;
}

}  // namespace

std::vector<Element> mainDimensionsTable(const Plan& plan, const Layout& layout, const UnitStyle& style,
                                         bool twoColumns)
{
    const std::vector<Row> rows = rowsOf(plan, layout, style);
    const std::size_t columns = twoColumns ? 2 : 1;
    const std::size_t deep = rowsDeep(rows, columns);
    const double width = kTableColumn * static_cast<double>(columns);
    const double top = kRow * static_cast<double>(deep);
    std::vector<Element> out;
    const auto line = [&](Point a, Point b) {
        out.push_back({"", kLayer, Stroke{{a, b}, false, LineKind::Narrow}});
    };
    const auto words = [&](Point at, const std::string& text, double height) {
        if (!text.empty()) out.push_back({"", kLayer, Text{at, text, height, 0, Anchor::Left}});
    };
    out.push_back(
        {"", kLayer,
         Stroke{{{0, 0}, {width, 0}, {width, top + kHead}, {0, top + kHead}}, true, LineKind::Visible}});
    words({kPad, top + (kHead - kHeadHeight) / 2}, "Main dimensions", kHeadHeight);
    line({0, top}, {width, top});
    if (twoColumns) line({kTableColumn, 0}, {kTableColumn, top});
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const double x = kTableColumn * static_cast<double>(i / deep);
        const double above = top - kRow * static_cast<double>(i % deep);
        if (i % deep > 0 && !rows[i].name.empty()) line({x, above}, {x + kTableColumn, above});
        const double y = above - (kRow + kHeight) / 2;
        words({x + kPad, y}, rows[i].name, kHeight);
        words({x + kNames + kPad, y}, rows[i].value, kHeight);
    }
    // Under the last row, where its column is the shorter one.
    const double last = top - kRow * static_cast<double>((rows.size() - 1) % deep + 1);
    if (last > 0) line({width - kTableColumn, last}, {width, last});
    return out;
}

}  // namespace lidwright
