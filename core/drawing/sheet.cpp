#include "core/drawing/sheet.h"

#include "core/drawing/lettering.h"

namespace lidwright {
namespace {

constexpr double kWide = 0.5;     // mm, ISO 128-2 line group 0.5
constexpr double kNarrow = 0.25;  // mm, half of the wide line
constexpr double kBorder = 0.7;   // mm, ISO 5457

template <typename... Ts>
struct Overloaded : Ts... {
    using Ts::operator()...;
};
template <typename... Ts>
Overloaded(Ts...) -> Overloaded<Ts...>;

}  // namespace

double lineWidth(LineKind kind)
{
    if (kind == LineKind::Frame) return kBorder;
    return kind == LineKind::Visible ? kWide : kNarrow;
}

std::vector<double> dashPattern(LineKind kind)
{
    // Element lengths in line widths by ISO 128-20: dash 12, long dash 24, gap 3, dot 0.5.
    constexpr double d = kNarrow;
    switch (kind) {
        case LineKind::Hidden:
            return {12 * d, 3 * d};
        case LineKind::Centre:
            return {24 * d, 3 * d, 0.5 * d, 3 * d};
        case LineKind::Phantom:
            return {24 * d, 3 * d, 0.5 * d, 3 * d, 0.5 * d, 3 * d};
        case LineKind::Visible:
        case LineKind::Narrow:
        case LineKind::Cut:
        case LineKind::Mark:
        case LineKind::Frame:
            break;
    }
    return {};
}

const char* word(LineKind kind)
{
    switch (kind) {
        case LineKind::Visible:
            return "visible";
        case LineKind::Narrow:
            return "narrow";
        case LineKind::Hidden:
            return "hidden";
        case LineKind::Centre:
            return "centre";
        case LineKind::Phantom:
            return "phantom";
        case LineKind::Cut:
            return "cut";
        case LineKind::Frame:
            return "frame";
        case LineKind::Mark:
            return "mark";
    }
    return "";
}

const char* word(FillKind kind)
{
    switch (kind) {
        case FillKind::Paper:
            return "paper";
        case FillKind::Wood:
            return "wood";
        case FillKind::WoodAcross:
            return "wood-across";
        case FillKind::WoodEnd:
            return "wood-end";
        case FillKind::CutThrough:
            return "cut-through";
        case FillKind::Engraved:
            return "engraved";
        case FillKind::Bridge:
            return "bridge";
        case FillKind::Fretboard:
            return "fretboard";
        case FillKind::Backing:
            return "backing";
        case FillKind::Block:
            return "block";
        case FillKind::Warning:
            return "warning";
    }
    return "";
}

Bounds elementBounds(const Element& element, double paper)
{
    return std::visit(Overloaded{[](const Stroke& s) { return bounds(s.points); },
                                 [](const Fill& f) { return bounds(f.ring); },
                                 [&](const Text& t) { return bounds(textOutline(t, paper)); },
                                 [&](const Dimension& d) {
                                     Bounds all;
                                     for (const Element& e : dimensionElements(d, element.part, paper))
                                         all.include(elementBounds(e, paper));
                                     return all;
                                 }},
                      element.what);
}

Element moved(Element element, Point by)
{
    const auto shift = [by](std::vector<Point>& points) {
        for (Point& p : points)
            p = p + by;
    };
    std::visit(Overloaded{[&](Stroke& s) { shift(s.points); }, [&](Fill& f) { shift(f.ring); },
                          [&](Text& t) { t.at = t.at + by; },
                          [&](Dimension& d) {
                              d.a = d.a + by;
                              d.b = d.b + by;
                          }},
               element.what);
    return element;
}

}  // namespace lidwright
