#include "core/drawing/template_views.h"

#include "core/base/units.h"
#include "core/drawing/lettering.h"
#include "core/drawing/sheet_furniture.h"
#include "core/geometry/arc.h"

#include <algorithm>
#include <limits>

namespace lidwright {
namespace {

// All in mm on paper; common practice, no source, where no standard is named.
constexpr double kLetters = 2.5;     // ISO 3098
constexpr double kNames = 3.5;       // of views, ISO 3098
constexpr double kFanStep = 3.8;     // between upright words: their height, descenders and air
constexpr double kLead = 5;          // of the lines that lead to them
constexpr double kOverLead = 1;      // words to the leader's end
constexpr double kBaseline = 0.95;   // of upright words beside the leader, so that it meets their middle
constexpr double kOrigin = 1;        // radius of the ring at the origin
constexpr double kTick = 3;          // oblique strokes, as of dimensions
constexpr double kRow = 4.75;        // of a table: 1.9 letters, ISO 3098
constexpr double kColumnGap = 4;     // between columns
constexpr double kBetweenViews = 7;  // bare paper between views
constexpr double kGrainLength = 24;

std::vector<double> fanPlaces(std::vector<PlacedWords>& places)
{
    std::stable_sort(places.begin(), places.end(),
                     [](const PlacedWords& a, const PlacedWords& b) { return a.at < b.at; });
    std::vector<double> at;
    for (const PlacedWords& place : places)
        at.push_back(place.at);
    return keptApart(at, kFanStep);
}

/// No-break spaces for blanks.
std::string unbroken(std::string words)
{
    for (std::size_t at = words.find(' '); at != std::string::npos; at = words.find(' ', at))
        words.replace(at, 1, "\xC2\xA0");
    return words;
}

void moveOn(ViewPen& pen, ViewPen& view, Point by)
{
    std::vector<Element> elements;
    for (Element& e : view.take())
        elements.push_back(moved(std::move(e), by));
    pen.addSheetElements(std::move(elements));
}

}  // namespace

std::vector<double> keptApart(const std::vector<double>& at, double step)
{
    // Less the steps taken, the places need only not to fall.
    struct Pool {
        double mean;
        std::size_t count;
    };
    std::vector<Pool> pools;
    for (std::size_t i = 0; i < at.size(); ++i) {
        pools.push_back({at[i] - step * static_cast<double>(i), 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean > pools.back().mean) {
            const Pool last = pools.back();
            pools.pop_back();
            Pool& before = pools.back();
            const double all = static_cast<double>(before.count + last.count);
            before.mean = (before.mean * static_cast<double>(before.count) +
                           last.mean * static_cast<double>(last.count)) /
                          all;
            before.count += last.count;
        }
    }
    std::vector<double> out;
    for (const Pool& pool : pools)
        for (std::size_t k = 0; k < pool.count; ++k)
            out.push_back(pool.mean + step * static_cast<double>(out.size()));
    return out;
}

void addFan(ViewPen& pen, const std::string& part, std::vector<PlacedWords> places, double from, Side side)
{
    const double out = side == Side::Below ? -1 : 1;
    const std::vector<double> fan = fanPlaces(places);
    for (std::size_t i = 0; i < places.size(); ++i) {
        pen.line(part, "words", {{places[i].at, from}, {fan[i], from + out * kLead}}, LineKind::Narrow);
        pen.text(part, "words", {fan[i] + kBaseline, from + out * (kLead + kOverLead)}, places[i].words,
                 kLetters, side == Side::Below ? Anchor::Right : Anchor::Left, 90);
    }
}

Bounds fanReach(std::vector<PlacedWords> places)
{
    Bounds out;
    double longest = 0;
    for (const double at : fanPlaces(places)) {
        out.include(Point{at - kFanStep / 2, 0});
        out.include(Point{at + kFanStep / 2, 0});
    }
    for (const PlacedWords& place : places)
        longest = std::max(longest, textWidth(place.words, kLetters));
    if (!places.empty()) out.include(Point{out.minX, kLead + kOverLead + longest});
    return out;
}

void addRunning(ViewPen& pen, const std::string& part, double origin, std::vector<PlacedWords> places,
                double line, Side side)
{
    double low = origin, high = origin;
    const double slant = kTick / 2 / std::sqrt(2.0);
    for (const PlacedWords& place : places) {
        low = std::min(low, place.at);
        high = std::max(high, place.at);
        if (place.at == origin) continue;
        pen.line(part, "running", {{place.at - slant, line - slant}, {place.at + slant, line + slant}},
                 LineKind::Visible);
    }
    pen.line(part, "running", {{low, line}, {high, line}}, LineKind::Narrow);
    pen.outline(part, "origin", circleRing({origin, line}, kOrigin), LineKind::Narrow);
    addFan(pen, part, std::move(places), line, side);
}

std::vector<Element> tableElements(const std::string& part, const SheetTable& table)
{
    std::vector<double> widths;
    for (std::size_t k = 0; k < table.heads.size(); ++k) {
        double widest = textWidth(table.heads[k], kLetters);
        for (const auto& row : table.rows)
            if (k < row.size()) widest = std::max(widest, textWidth(row[k], kLetters));
        widths.push_back(widest);
    }
    double whole = 0;
    for (const double width : widths)
        whole += width + kColumnGap;
    std::vector<Element> out;
    double y = 0;
    const auto write = [&](const std::vector<std::string>& row) {
        double x = 0;
        y -= kRow;
        for (std::size_t k = 0; k < std::min(row.size(), widths.size()); ++k) {
            if (!row[k].empty())
                out.push_back({part, "table", Text{{x, y + 1.2}, row[k], kLetters, 0, Anchor::Left}});
            x += widths[k] + kColumnGap;
        }
    };
    const auto rule = [&] {
        out.push_back({part, "table", Stroke{{{0, y}, {whole - kColumnGap, y}}, false, LineKind::Narrow}});
    };
    write(table.heads);
    rule();
    for (const auto& row : table.rows)
        write(row);
    rule();
    return out;
}

void addBreak(ViewPen& pen, const std::string& part, double x, double low, double high)
{
    const double middle = (low + high) / 2;
    pen.line(part, "break",
             {{x, low - 2},
              {x, middle - 1.5},
              {x + 1.5, middle - 0.75},
              {x - 1.5, middle + 0.75},
              {x, middle + 1.5},
              {x, high + 2}},
             LineKind::Narrow);
}

double RoundGroove::halfMouth() const
{
    const double r = width / 2, over = floor + r - top;
    return over > 0 ? std::sqrt(std::max(0.0, r * r - over * over)) : r;
}

Polyline RoundGroove::line(double scale) const
{
    const double r = width / 2, middle = floor + r;
    const bool deep = top > middle;
    // How far the round comes up on each side of the floor.
    const double up = deep ? kPi / 2 : std::acos(std::clamp((middle - top) / r, -1.0, 1.0));
    Polyline out;
    if (deep) out.push_back(scale * Point{x - r, top});
    appendArc(out, scale * Point{x, middle}, scale * r, 1.5 * kPi - up, 2 * up, 0.01);
    if (deep) out.push_back(scale * Point{x + r, top});
    return out;
}

void addViewName(ViewPen& pen, const std::string& part, const std::string& words, GrainShown grain)
{
    const Bounds all = pen.extent();
    if (all.empty()) return;
    const Point at{all.minX, all.maxY + 4};
    pen.text(part, "words", at, words, kNames, Anchor::Left);
    if (grain == GrainShown::No) return;
    const Point arrow{at.x + textWidth(words, kNames) + kBetweenViews + kGrainLength / 2, at.y + kNames / 2};
    pen.addAt(arrow, grainArrow(part, kGrainLength, 1));
    pen.text(part, "grain", {arrow.x + kGrainLength / 2 + 3, arrow.y - kLetters / 2}, "grain", kLetters,
             Anchor::Left);
}

void stackBelow(ViewPen& pen, ViewPen& view)
{
    const Bounds above = pen.extent(), own = view.extent();
    moveOn(pen, view, {0, above.empty() || own.empty() ? 0 : above.minY - kBetweenViews - own.maxY});
}

void stackFlush(ViewPen& pen, ViewPen& view, double left)
{
    const Bounds above = pen.extent(), own = view.extent();
    if (own.empty()) return;
    moveOn(pen, view, {left - own.minX, above.empty() ? 0 : above.minY - kBetweenViews - own.maxY});
}

void placeRight(ViewPen& pen, ViewPen& view)
{
    const Bounds left = pen.extent(), own = view.extent();
    moveOn(pen, view, {left.empty() || own.empty() ? 0 : left.maxX + kBetweenViews - own.minX, 0});
}

void placeBesideOrBelow(ViewPen& pen, ViewPen& view)
{
    const Bounds all = pen.extent(), own = view.extent();
    if (all.empty() || own.empty())
        moveOn(pen, view, {});
    else if (all.width() + kBetweenViews + own.width() > kPageViews)
        stackFlush(pen, view, all.minX);
    else
        moveOn(pen, view, {all.maxX + kBetweenViews - own.minX, all.maxY - own.maxY});
}

std::string gaugeWords(double mm, const UnitStyle& style)
{
    return unbroken(spoken(Measure{mm, Quantity::Gauge}, style));
}

std::string wholeLength(double mm, const UnitStyle& style)
{
    return unbroken(lengthWithUnit(mm, style));
}

std::string scaleWords(int scale)
{
    return std::to_string(scale) + " : 1";
}

}  // namespace lidwright
