#include "core/drawing/dimension_rows.h"

#include "core/drawing/lettering.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr double kHeight = 2.5;     // of the words, ISO 3098
constexpr double kPad = 1.4;        // words to extension lines, mm on paper, common practice
constexpr double kBeside = 2.4;     // words beside a short dimension to its extension line
constexpr double kStep = 2;         // words are moved in steps of this, mm on paper
constexpr double kLeast = 0.01;     // mm; shorter dimensions say nothing
constexpr double kTouching = 1e-6;  // mm; rows may share an extension line

}  // namespace

void DimensionRows::add(const std::string& part, Point a, Point b, const std::string& words,
                        const std::string& key)
{
    Item item;
    item.part = part;
    if (level() ? a.x > b.x : a.y > b.y) std::swap(a, b);
    item.a = a;
    item.b = b;
    item.low = level() ? a.x : a.y;
    item.high = level() ? b.x : b.y;
    if (!(item.high - item.low >= kLeast) || !std::isfinite(item.high - item.low)) return;
    item.words = words;
    item.key = key;
    item.width = textWidth(words, kHeight) * m_paper;
    item.middle = (item.low + item.high) / 2;
    m_items.push_back(std::move(item));
}

bool DimensionRows::fits(const Item& item) const
{
    return item.width + 2 * kPad * m_paper <= item.high - item.low;
}

/// Where the words may stand, best first: in the middle and then off it, or beside a line too short for them.
std::vector<double> DimensionRows::placesOfWords(const Item& item) const
{
    std::vector<double> places;
    const double step = kStep * m_paper;
    const double middle = (item.low + item.high) / 2;
    if (fits(item)) {
        const double room = (item.high - item.low - item.width) / 2 - kPad * m_paper;
        places.push_back(middle);
        for (double off = step; off <= room; off += step) {
            places.push_back(middle + off);
            places.push_back(middle - off);
        }
        return places;
    }
    constexpr int kMostSteps = 12;
    const double beside = (kBeside * m_paper) + item.width / 2;
    for (int i = 0; i < kMostSteps; ++i) {
        places.push_back(item.high + beside + i * step);
        places.push_back(item.low - beside - i * step);
    }
    return places;
}

/// True when the two cannot share a row as their words stand now.
bool DimensionRows::disturbs(const Item& a, const Item& b) const
{
    const auto from = [&](const Item& i) { return std::min(i.low, i.middle - i.width / 2 - kPad * m_paper); };
    const auto to = [&](const Item& i) { return std::max(i.high, i.middle + i.width / 2 + kPad * m_paper); };
    return from(a) < to(b) - kTouching && from(b) < to(a) - kTouching;
}

void DimensionRows::assignRows(std::vector<Item>& items) const
{
    for (std::size_t i = 0; i < items.size(); ++i) {
        Item& item = items[i];
        const std::vector<double> places = placesOfWords(item);
        // Only the first place on each side counts here; clearing moves them later.
        const std::size_t tries = fits(item) ? 1 : std::min<std::size_t>(2, places.size());
        const auto placedBefore = items.begin() + static_cast<std::ptrdiff_t>(i);
        const auto free = [&](double middle) {
            item.middle = middle;
            return std::none_of(items.begin(), placedBefore, [&](const Item& other) {
                return other.row == item.row && disturbs(item, other);
            });
        };
        // Ends at the latest in a row that nothing else stands in.
        while (std::none_of(places.begin(), places.begin() + static_cast<std::ptrdiff_t>(tries), free))
            ++item.row;
    }
}

/// Moves words out of the way of extension lines that run to rows farther out.
void DimensionRows::clearWords(std::vector<Item>& items) const
{
    for (Item& item : items) {
        const auto clear = [&](double middle) {
            Item moved = item;
            moved.middle = middle;
            const double from = middle - item.width / 2 - kPad / 2 * m_paper;
            const double to = middle + item.width / 2 + kPad / 2 * m_paper;
            return std::none_of(items.begin(), items.end(), [&](const Item& other) {
                if (&other == &item) return false;
                if (other.row == item.row) return disturbs(moved, other);
                return other.row > item.row &&
                       ((other.low > from && other.low < to) || (other.high > from && other.high < to));
            });
        };
        for (const double place : placesOfWords(item))
            if (clear(place)) {
                item.middle = place;
                break;
            }
    }
}

Dimension DimensionRows::dimensionOf(const Item& item) const
{
    const bool outwardPositive = m_side == Side::Above || m_side == Side::Right;
    const double away = (kFirstRow + kNextRow * static_cast<double>(item.row)) * m_paper;
    Dimension d;
    d.a = level() ? Point{item.low, m_edge} : Point{m_edge, item.low};
    d.b = level() ? Point{item.high, m_edge} : Point{m_edge, item.high};
    // Left of a->b is up for level dimensions and to the left for upright ones.
    d.offset = (outwardPositive == level() ? 1 : -1) * away;
    const auto reach = [&](Point p) { return (m_edge - (level() ? p.y : p.x)) * (outwardPositive ? 1 : -1); };
    d.reachA = reach(item.a);
    d.reachB = reach(item.b);
    d.words = item.words;
    d.key = item.key;
    d.height = kHeight;
    d.shift = item.middle - (item.low + item.high) / 2;
    return d;
}

/// Where several start from one station, the farthest draws the line for all: lines over lines print too
/// wide.
void DimensionRows::shareExtensionLines(const std::vector<Item>& items, std::vector<Dimension>& dimensions)
{
    const auto station = [&](std::size_t end) {
        return end % 2 == 0 ? items[end / 2].low : items[end / 2].high;
    };
    const auto reach = [&](std::size_t end) -> double& {
        return end % 2 == 0 ? dimensions[end / 2].reachA : dimensions[end / 2].reachB;
    };
    for (std::size_t e = 0; e < 2 * items.size(); ++e) {
        std::size_t best = e;
        for (std::size_t f = 0; f < 2 * items.size(); ++f)
            if (std::abs(station(e) - station(f)) < kTouching && items[f / 2].row > items[best / 2].row)
                best = f;
        // Of several as far out, the first.
        for (std::size_t f = 0; f < best; ++f)
            if (std::abs(station(e) - station(f)) < kTouching && items[f / 2].row == items[best / 2].row)
                best = f;
        if (best == e) continue;
        reach(best) = std::max(reach(best), reach(e));
        (e % 2 == 0 ? dimensions[e / 2].lineA : dimensions[e / 2].lineB) = false;
    }
}

std::vector<Element> DimensionRows::place() const
{
    std::vector<Item> items = m_items;
    std::stable_sort(items.begin(), items.end(), [](const Item& a, const Item& b) {
        // Equal spans, as of mirrored parts, keep the order in which they were given, whatever their last
        // bits.
        constexpr double kPerMillimetre = 1e5;
        return std::llround((a.high - a.low) * kPerMillimetre) <
               std::llround((b.high - b.low) * kPerMillimetre);
    });
    assignRows(items);
    clearWords(items);
    std::vector<Dimension> dimensions;
    for (const Item& item : items)
        dimensions.push_back(dimensionOf(item));
    shareExtensionLines(items, dimensions);
    std::vector<Element> out;
    for (std::size_t i = 0; i < items.size(); ++i)
        out.push_back({items[i].part, "dimensions", std::move(dimensions[i])});
    return out;
}

}  // namespace lidwright
