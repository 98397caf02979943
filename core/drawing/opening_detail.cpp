#include "core/drawing/opening_detail.h"

#include <algorithm>

namespace lidwright {
namespace {

// All in mm on the sheet.
constexpr double kWidth = 34;
constexpr double kWoodLeft = 9;   // wood at the left of the corner
constexpr double kWoodUnder = 7;  // and under it
constexpr double kLeastGap = 2;   // between saw and line, so that both can be told apart
constexpr double kWords = 42;     // where the words begin, from the detail's left side

void add(std::vector<Element>& out, const char* part, const char* layer, decltype(Element::what) what)
{
    out.push_back({part, layer, std::move(what)});
}

}  // namespace

int detailScale(double sanding)
{
    for (const int scale : {2, 5, 10, 20})
        if (sanding * scale >= kLeastGap) return scale;
    return 50;
}

std::vector<Element> openingDetail(Point corner, double sanding, double fit, const UnitStyle& style)
{
    const int scale = detailScale(sanding);
    // What would not fit the detail is drawn as far as it reaches.
    const double saw = std::min(sanding * scale, kDetailHeight - kWoodUnder - 4);
    const double air = std::min(fit * scale, kWidth - kWoodLeft - 2);
    const double right = corner.x + kWidth, top = corner.y + kDetailHeight;
    const Point line = corner + Point{kWoodLeft, kWoodUnder};
    const Point stays = line + Point{saw, saw};
    std::vector<Element> out;
    add(out, "box", "detail",
        Fill{{corner, {right, corner.y}, {right, line.y}, line, {line.x, top}, {corner.x, top}},
             FillKind::Wood});
    add(out, "box", "detail",
        Fill{{stays, {right, stays.y}, {right, top}, {stays.x, top}}, FillKind::Engraved});
    add(out, "box", "detail", Stroke{{{line.x, top}, line, {right, line.y}}, false, LineKind::Cut});
    add(out, "box", "detail", Stroke{{{stays.x, top}, stays, {right, stays.y}}, false, LineKind::Mark});
    if (air > 0)
        add(out, "neck", "detail",
            Stroke{{{line.x + air, top}, {line.x + air, line.y}}, false, LineKind::Phantom});
    add(out, "box", "detail",
        Stroke{{corner, {right, corner.y}, {right, top}, {corner.x, top}}, true, LineKind::Narrow});

    const auto say = [&](double y, Point to, const std::string& words) {
        add(out, "box", "detail",
            Stroke{{{corner.x + kWords - 1, y + 1.25}, {right, y + 1.25}, to}, false, LineKind::Narrow});
        add(out, "box", "words", Text{{corner.x + kWords, y}, words, 2.5, 0, Anchor::Left});
    };
    add(out, "box", "words",
        Text{{corner.x + kWords, top - 2.5},
             std::string(kDetailLetter) + ", " + std::to_string(scale) + " : 1",
             2.5,
             0,
             Anchor::Left});
    const double pitch = 5;
    say(top - 2.5 - pitch, {stays.x + 8, stays.y + 9}, "waste");
    say(top - 2.5 - 2 * pitch, {right - 4, stays.y}, "saw in the waste, leave this line");
    say(top - 2.5 - 3 * pitch, {right - 2, line.y},
        "sand to this line, " + lengthWithUnit(sanding, style) + " farther");
    if (fit > 0)
        add(out, "neck", "words",
            Text{{corner.x + kWords, top - 2.5 - 4 * pitch},
                 "double-dotted: the neck, " + lengthWithUnit(fit, style) + " of air on each side",
                 2.5,
                 0,
                 Anchor::Left});
    return out;
}

}  // namespace lidwright
