#include "core/drawing/view_pen.h"

#include "core/base/length_text.h"

#include <cctype>

namespace lidwright {

ViewPen::ViewPen(View view, bool mirrored, const ViewInput& input)
    : m_plan(input.plan),
      m_style(input.options.style),
      m_paper(input.options.paper),
      m_dimensions(input.options.dimensions)
{
    m_placed.view = view;
    m_placed.mirrored = mirrored;
}

std::vector<Point> ViewPen::mapped(const std::vector<Point>& points) const
{
    std::vector<Point> out;
    out.reserve(points.size());
    for (const Point p : points) {
        // What the plan leaves no room for has empty bounds; nothing is drawn of it.
        if (!std::isfinite(p.x) || !std::isfinite(p.y)) return {};
        out.push_back(m_placed.toSheet(m_slope == 0 ? p : Point{p.x, p.y + m_slope * (p.x - m_about)}));
    }
    return out;
}

void ViewPen::lean(double slope, double about)
{
    m_slope = slope;
    m_about = about;
}

void ViewPen::fill(const std::string& part, const std::string& layer, const Ring& ring, FillKind kind)
{
    if (std::vector<Point> on = mapped(ring); on.size() >= 3)
        m_elements.push_back({part, layer, Fill{std::move(on), kind}});
}

void ViewPen::outline(const std::string& part, const std::string& layer, const Ring& ring, LineKind kind)
{
    if (std::vector<Point> on = mapped(ring); on.size() >= 2)
        m_elements.push_back({part, layer, Stroke{std::move(on), true, kind}});
}

void ViewPen::area(const std::string& part, const std::string& layer, const Ring& ring, FillKind fillKind,
                   LineKind lineKind)
{
    fill(part, layer, ring, fillKind);
    outline(part, layer, ring, lineKind);
}

void ViewPen::line(const std::string& part, const std::string& layer, const Polyline& points, LineKind kind)
{
    if (std::vector<Point> on = mapped(points); on.size() >= 2)
        m_elements.push_back({part, layer, Stroke{std::move(on), false, kind}});
}

void ViewPen::text(const std::string& part, const std::string& layer, Point at, const std::string& words,
                   double height, Anchor anchor, double angle, bool boxed)
{
    m_elements.push_back({part, layer, Text{m_placed.toSheet(at), words, height, angle, anchor, boxed}});
}

void ViewPen::dimension(const std::string& part, Point a, Point b, double offset, const std::string& key)
{
    if (!m_dimensions || !(distance(a, b) > 0) || !std::isfinite(distance(a, b))) return;
    Dimension d;
    d.a = m_placed.toSheet(a);
    d.b = m_placed.toSheet(b);
    // Left of a->b becomes right of it where one axis runs backwards.
    d.offset = m_placed.mirrored ? -offset : offset;
    d.words = words(distance(a, b));
    d.key = editable(key);
    d.boxed = true;
    d.american = american(m_style);
    m_elements.push_back({part, "dimensions", std::move(d)});
}

void ViewPen::row(DimensionRows& rows, const std::string& part, Point a, Point b,
                  const std::string& key) const
{
    const Point sa = m_placed.toSheet(a);
    const Point sb = m_placed.toSheet(b);
    rows.add(part, sa, sb, words(rows.measure(sa, sb)), editable(key));
}

void ViewPen::add(const DimensionRows& rows)
{
    if (m_dimensions) addSheetElements(rows.place());
}

void ViewPen::addSheetElements(std::vector<Element> elements)
{
    for (Element& e : elements) {
        if (auto* d = std::get_if<Dimension>(&e.what)) d->american = american(m_style);
        m_elements.push_back(std::move(e));
    }
}

void ViewPen::addAt(Point at, std::vector<Element> elements)
{
    for (Element& e : elements)
        m_elements.push_back(moved(std::move(e), m_placed.toSheet(at)));
}

std::string ViewPen::words(double mm) const
{
    return dimensionWords(mm, m_style);
}

std::string ViewPen::editable(const std::string& key) const
{
    if (key.empty()) return {};
    const auto ref = findParameter(m_plan, key);
    return ref.ok() && active(m_plan, *ref) ? key : std::string{};
}

Bounds ViewPen::extent() const
{
    Bounds all;
    for (const Element& e : m_elements)
        all.include(elementBounds(e, m_paper));
    return all;
}

std::string dimensionWords(double mm, const UnitStyle& style)
{
    std::string words = formatLength(mm, style, false).text;
    // Inches have no zero before the point (ASME Y14.5).
    const std::size_t zero = words.find("0.");
    const bool leads = zero != std::string::npos &&
                       (zero == 0 || std::isdigit(static_cast<unsigned char>(words[zero - 1])) == 0);
    if (leads && style.unit == LengthUnit::InchDecimal) words.erase(zero, 1);
    return words;
}

std::string unitNote(const UnitStyle& style)
{
    return style.unit == LengthUnit::Millimetre ? "Measures in millimetres" : "Measures in inches";
}

}  // namespace lidwright
