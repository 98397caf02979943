#include "core/io/svg/svg_shapes.h"

#include "core/io/svg/svg_path.h"
#include "core/io/svg/svg_scan.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace lidwright::svg {

namespace {

void ellipse(Pen& pen, Point centre, double rx, double ry)
{
    pen.moveTo({centre.x + rx, centre.y});
    pen.arcTo(rx, ry, 0, false, true, {centre.x, centre.y + ry});
    pen.arcTo(rx, ry, 0, false, true, {centre.x - rx, centre.y});
    pen.arcTo(rx, ry, 0, false, true, {centre.x, centre.y - ry});
    pen.arcTo(rx, ry, 0, false, true, {centre.x + rx, centre.y});
    pen.close();
}

void roundedRectangle(Pen& pen, double x, double y, double w, double h, double rx, double ry)
{
    pen.moveTo({x + rx, y});
    pen.lineTo({x + w - rx, y});
    pen.arcTo(rx, ry, 0, false, true, {x + w, y + ry});
    pen.lineTo({x + w, y + h - ry});
    pen.arcTo(rx, ry, 0, false, true, {x + w - rx, y + h});
    pen.lineTo({x + rx, y + h});
    pen.arcTo(rx, ry, 0, false, true, {x, y + h - ry});
    pen.lineTo({x, y + ry});
    pen.arcTo(rx, ry, 0, false, true, {x + rx, y});
    pen.close();
}

class ShapeReader {
public:
    ShapeReader(const ShapeValue& value, const LengthContext& context) : m_value(value), m_context(context) {}

    ShapeReading read(std::string_view element)
    {
        if (element == "path") return path();
        Pen pen;
        bool broken = false;
        if (element == "rect") {
            rectangle(pen);
        } else if (element == "circle") {
            const double r = length("r", Axis::Diagonal).value_or(0);
            if (r > 0) ellipse(pen, centre(), r, r);
        } else if (element == "ellipse") {
            const auto rx = length("rx", Axis::X), ry = length("ry", Axis::Y);
            const double x = rx.value_or(ry.value_or(0)), y = ry.value_or(x);
            if (x > 0 && y > 0) ellipse(pen, centre(), x, y);
        } else if (element == "line") {
            pen.moveTo({length("x1", Axis::X).value_or(0), length("y1", Axis::Y).value_or(0)});
            pen.lineTo({length("x2", Axis::X).value_or(0), length("y2", Axis::Y).value_or(0)});
        } else if (element == "polyline" || element == "polygon") {
            broken = !points(pen, element == "polygon");
        }
        return {pen.take(), broken};
    }

private:
    const ShapeValue& m_value;
    const LengthContext& m_context;

    /// Nothing where it is not given, "auto", or no length.
    std::optional<double> length(const char* name, Axis axis) const
    {
        const auto parsed = parseLength(m_value(name));
        if (!parsed) return std::nullopt;
        const double user = m_context.user(*parsed, axis);
        return std::isfinite(user) ? std::optional(user) : std::nullopt;
    }
    Point centre() const { return {length("cx", Axis::X).value_or(0), length("cy", Axis::Y).value_or(0)}; }

    ShapeReading path() const
    {
        std::string_view data = m_value("d");
        if (data == "none") data = {};
        if (const auto inside = cssPath(data)) data = *inside;
        PathReading reading = parsePath(data);
        return {std::move(reading.outline), reading.broken};
    }
    /// The data in path("..."), as a style writes it.
    static std::optional<std::string_view> cssPath(std::string_view text)
    {
        if (!startsWith(text, "path(")) return std::nullopt;
        const std::size_t open = text.find_first_of("\"'");
        const std::size_t close = open == text.npos ? open : text.find(text[open], open + 1);
        if (close == text.npos) return std::nullopt;
        return text.substr(open + 1, close - open - 1);
    }

    void rectangle(Pen& pen) const
    {
        const double x = length("x", Axis::X).value_or(0), y = length("y", Axis::Y).value_or(0);
        const double w = length("width", Axis::X).value_or(0), h = length("height", Axis::Y).value_or(0);
        if (!(w > 0 && h > 0)) return;
        auto givenX = length("rx", Axis::X), givenY = length("ry", Axis::Y);
        if (givenX && *givenX < 0) givenX.reset();
        if (givenY && *givenY < 0) givenY.reset();
        const double rx = std::min(givenX.value_or(givenY.value_or(0)), w / 2);
        const double ry = std::min(givenY.value_or(givenX.value_or(0)), h / 2);
        if (rx > 0 && ry > 0) return roundedRectangle(pen, x, y, w, h, rx, ry);
        pen.moveTo({x, y});
        pen.lineTo({x + w, y});
        pen.lineTo({x + w, y + h});
        pen.lineTo({x, y + h});
        pen.close();
    }

    bool points(Pen& pen, bool closed) const
    {
        bool complete = false;
        const std::vector<double> list = numberList(m_value("points"), &complete);
        for (std::size_t i = 0; i + 1 < list.size(); i += 2) {
            const Point p{list[i], list[i + 1]};
            if (i == 0) {
                pen.moveTo(p);
            } else {
                pen.lineTo(p);
            }
        }
        if (closed && list.size() >= 4) pen.close();
        return complete && list.size() % 2 == 0;
    }
};

}  // namespace

ShapeReading shapeOutline(std::string_view element, const ShapeValue& value, const LengthContext& context)
{
    return ShapeReader(value, context).read(element);
}

Outline rectangleOutline(double x, double y, double width, double height)
{
    Pen pen;
    pen.moveTo({x, y});
    pen.lineTo({x + width, y});
    pen.lineTo({x + width, y + height});
    pen.lineTo({x, y + height});
    pen.close();
    return pen.take();
}

}  // namespace lidwright::svg
