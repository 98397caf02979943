#include "core/drawing/wiring_sheet.h"

#include "core/drawing/lettering.h"
#include "core/drawing/sheet_furniture.h"
#include "core/drawing/wiring_symbols.h"
#include "core/layout/wire_runs.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

// All in mm on the sheet.
constexpr double kWidth = 178;   // of the whole: A4 between margins of 16 mm
constexpr double kAround = 4;    // bare paper around it
constexpr double kRow = 38;      // from one symbol to the one under it
constexpr double kPickupX = 27;  // middles of the three columns
constexpr double kPotX = 88;
constexpr double kSocketX = 150;
constexpr double kHotX = 54;  // upright hot wires, one for each pot, and the one to the sockets
constexpr double kHotStep = 5;
constexpr double kTipX = 122;
constexpr double kGroundOver = 20;   // ground wire over the highest symbols
constexpr double kGroundBeside = 7;  // beside a symbol
constexpr double kUnderLugs = 4;     // hot wires under a pot's lugs
constexpr std::size_t kMostTitle = 48;

/// A length that no line is broken in.
std::string unbroken(double mm, const UnitStyle& style)
{
    std::string words = lengthWithUnit(mm, style);
    for (std::size_t at = words.find(' '); at != std::string::npos; at = words.find(' ', at))
        words.replace(at, 1, "\xC2\xA0");
    return words;
}

/// The diagram, with (0, 0) in the middle of its highest symbols' row at the left.
class Diagram {
public:
    Diagram(const Plan& plan, const std::vector<WireRun>& runs) : m_plan(plan), m_runs(runs)
    {
        for (std::size_t i = 0; i < plan.wiring.size(); ++i) {
            const DeviceKind kind = plan.wiring[i].kind;
            std::vector<std::size_t>& list = kind == DeviceKind::Pot      ? m_pots
                                             : kind == DeviceKind::Socket ? m_sockets
                                                                          : m_pickups;
            if (list.size() < kMostDrawn)
                list.push_back(i);
            else
                ++m_left;
        }
    }

    std::vector<Element> draw()
    {
        symbols();
        for (const WireRun& run : m_runs)
            wire(run);
        grounds();
        return m_pen.take();
    }
    /// Parts that are listed only.
    std::size_t left() const { return m_left; }
    /// From the ground wire down to the lowest wire or word.
    double height() const
    {
        const std::size_t rows =
            std::max({m_pickups.size(), m_pots.size(), m_sockets.size(), std::size_t{1}});
        return kGroundOver + kRow * static_cast<double>(rows - 1) + kLugEnd + 3 * kUnderLugs;
    }

private:
    const Plan& m_plan;
    const std::vector<WireRun>& m_runs;
    WiringPen m_pen;
    std::vector<std::size_t> m_pickups, m_pots, m_sockets;
    std::size_t m_left = 0;
    double m_lowestTip = 0;  ///< where the upright wire to the sockets ends so far

    static std::ptrdiff_t rowIn(const std::vector<std::size_t>& list, std::size_t device)
    {
        const auto at = std::find(list.begin(), list.end(), device);
        return at == list.end() ? -1 : at - list.begin();
    }
    static double y(std::ptrdiff_t row) { return -kRow * static_cast<double>(row); }
    static double lugsY(std::ptrdiff_t row) { return y(row) - kLugEnd - kUnderLugs; }
    std::string partOf(std::size_t device) const { return "wiring." + std::to_string(device + 1); }
    std::string label(std::size_t device) const
    {
        return std::to_string(device + 1) + " " + deviceName(m_plan.wiring[device].kind);
    }

    void symbols()
    {
        const auto each = [](const std::vector<std::size_t>& list, const auto& draw) {
            for (std::size_t k = 0; k < list.size(); ++k)
                draw(list[k], y(static_cast<std::ptrdiff_t>(k)));
        };
        each(m_pickups, [&](std::size_t i, double at) {
            m_pen.pickup(partOf(i), m_plan.wiring[i].kind, {kPickupX, at});
            m_pen.words({kPickupX, at - 12}, label(i), Anchor::Middle);
        });
        each(m_pots, [&](std::size_t i, double at) {
            m_pen.pot(partOf(i), {kPotX, at});
            m_pen.words({kPotX, at + kPotRadius + 2}, label(i), Anchor::Middle);
        });
        each(m_sockets, [&](std::size_t i, double at) {
            m_pen.socket(partOf(i), {kSocketX, at});
            m_pen.words({kSocketX, at - kSocketRadius - 5}, label(i), Anchor::Middle);
            m_pen.words({kSocketX - kSocketRadius - 2, at - 4}, "tip", Anchor::Right);
            m_pen.words({kSocketX + kSocketRadius + 1, at - 4}, "sleeve", Anchor::Left);
        });
    }

    void wire(const WireRun& run)
    {
        if (run.end == WireEnd::Strings) return;
        const std::ptrdiff_t pickup = rowIn(m_pickups, run.from), fromPot = rowIn(m_pots, run.from);
        const std::ptrdiff_t toPot = rowIn(m_pots, run.to), toSocket = rowIn(m_sockets, run.to);
        const std::ptrdiff_t fromSocket = rowIn(m_sockets, run.from);
        const std::string part = partOf(run.from);
        const Point tip{kSocketX - kSocketRadius, y(toSocket)};
        if (pickup >= 0 && toPot >= 0) {
            const double bus = kHotX + kHotStep * static_cast<double>(toPot);
            const Point lug{kPotX - kLugPitch, y(toPot) - kLugEnd};
            m_pen.hot(part, {{kPickupX + kPickupHalf, y(pickup)},
                             {bus, y(pickup)},
                             {bus, lugsY(toPot)},
                             {lug.x, lugsY(toPot)},
                             lug});
            // A second pickup of the same pot joins the upright wire of the first.
            if (pickup > toPot) m_pen.joint({bus, std::max(y(pickup), lugsY(toPot))});
        } else if (pickup >= 0 && toSocket >= 0) {
            m_pen.hot(part, {{kPickupX + kPickupHalf, y(pickup)}, {kTipX, y(pickup)}, {kTipX, tip.y}, tip});
            if (pickup > 0) m_pen.joint({kTipX, tip.y});
            m_lowestTip = std::min(m_lowestTip, y(pickup));
        } else if (fromPot >= 0 && toSocket >= 0) {
            const double low = lugsY(fromPot) - kUnderLugs;
            m_pen.hot(part, {{kPotX, y(fromPot) - kLugEnd}, {kPotX, low}, {kTipX, low}, {kTipX, tip.y}, tip});
            if (fromPot > 0) m_pen.joint({kTipX, lugsY(fromPot - 1) - kUnderLugs});
            m_lowestTip = std::min(m_lowestTip, low);
        } else if (fromSocket >= 0 && toSocket >= 0) {
            m_pen.hot(part, {{kTipX, y(fromSocket)}, {kTipX, tip.y}, tip});
            if (tip.y > m_lowestTip) m_pen.joint({kTipX, tip.y});
        }
    }

    /// Everything's ground on the one wire over the symbols.
    void grounds()
    {
        const double bus = kGroundOver;
        std::vector<double> at;
        const auto up = [&](const std::string& part, Point from, double x, bool lowest) {
            m_pen.ground(part, {from, {x, from.y}, {x, bus}});
            if (!lowest) m_pen.joint({x, from.y});
            at.push_back(x);
        };
        const auto all = [&](const std::vector<std::size_t>& list, double from, double x) {
            for (std::size_t k = 0; k < list.size(); ++k)
                up(partOf(list[k]), {from, y(static_cast<std::ptrdiff_t>(k))}, x, k + 1 == list.size());
        };
        all(m_pickups, kPickupX - kPickupHalf, 0);
        all(m_pots, kPotX + kPotRadius, kPotX + kPotRadius + kGroundBeside);
        all(m_sockets, kSocketX + kSocketRadius, kSocketX + kSocketRadius + 2 * kGroundBeside);
        for (const WireRun& run : m_runs)
            if (run.end == WireEnd::Strings) {
                const double x = kHotX + 4;
                m_pen.ground("anchor", {{x, bus}, {x, bus + 6}});
                m_pen.words({x + 2, bus + 4}, "to the bridge or what holds the strings, bare metal");
                at.push_back(x);
                break;
            }
        if (at.empty()) return;
        std::sort(at.begin(), at.end());
        at.erase(std::unique(at.begin(), at.end()), at.end());
        m_pen.ground("", {{at.front(), bus}, {at.back(), bus}});
        for (std::size_t i = 1; i + 1 < at.size(); ++i)
            m_pen.joint({at[i], bus});
    }
};

double roundedUp(double mm)
{
    constexpr double kStep = 10;
    return std::ceil(mm / kStep) * kStep;
}

std::string whereWords(const Device& device, const UnitStyle& style)
{
    const auto mm = [&](double value) { return unbroken(std::abs(value), style); };
    const auto across = [&](double value) -> std::string {
        if (value == 0) return "on the centre line";
        return mm(value) + (value < 0 ? " to the bass side" : " to the treble side");
    };
    std::string out = device.place == DevicePlace::Neck ? "stick's top" : placeName(device.place);
    switch (device.place) {
        case DevicePlace::Lid:
        case DevicePlace::Neck:
            return out + ", " + mm(device.along) + " from the head-end wall, " + across(device.aside);
        case DevicePlace::HeadWall:
        case DevicePlace::TailWall:
            out += ", " + across(device.along);
            break;
        case DevicePlace::BassWall:
        case DevicePlace::TrebleWall:
            out += ", " + mm(device.along) + " from the head-end wall";
            break;
    }
    return out + ", " + mm(device.down) + " below the top edge";
}

std::vector<NoteLine> listOf(const Plan& plan, const std::vector<WireRun>& runs, const UnitStyle& style)
{
    std::vector<NoteLine> out{{"Parts", 3.5}};
    for (std::size_t i = 0; i < plan.wiring.size(); ++i) {
        const Device& device = plan.wiring[i];
        std::string words =
            std::to_string(i + 1) + " " + deviceName(device.kind) + ": " + whereWords(device, style) + ".";
        if (device.hole > 0) words += " Hole " + unbroken(device.hole, style) + ".";
        if (device.bush > 0) words += " Bush " + unbroken(device.bush, style) + " long.";
        for (const WireRun& run : runs)
            if (run.from == i)
                words += (run.end == WireEnd::Strings ? std::string(" Ground wire to the strings")
                                                      : " Two wires to " + std::to_string(run.to + 1)) +
                         ", about " + unbroken(roundedUp(run.length), style) + ".";
        out.push_back({words, 2.5});
    }
    out.push_back({"Wires are reckoned along the walls with " + unbroken(kWireSpare, style) +
                       " to spare; try them with a thread before they are cut.",
                   2.5});
    return out;
}

std::vector<NoteLine> howTo(const Plan& plan, std::size_t left)
{
    const auto has = [&](DeviceKind kind) {
        return std::any_of(plan.wiring.begin(), plan.wiring.end(),
                           [&](const Device& device) { return device.kind == kind; });
    };
    const bool pickup =
        has(DeviceKind::DiscPickup) || has(DeviceKind::RodPickup) || has(DeviceKind::MagneticPickup);
    std::vector<NoteLine> out{
        {"Wide lines: hot. Dashed lines: ground. A dot joins wires; without one they only cross. Pot and "
         "socket are "
         "seen from behind, the pot's lugs down.",
         2.5}};
    if (has(DeviceKind::Pot))
        out.push_back(
            {"Pot: hot comes to lug 1 and leaves from lug 2, the wiper; lug 3 goes to the case, which is "
             "ground. If it works the wrong way round, change 1 and 3.",
             2.5});
    if (!has(DeviceKind::Socket))
        out.push_back({"The plan has no output socket yet: the signal ends at the loose wires.", 2.5});
    if (!pickup) out.push_back({"The plan has no pickup yet.", 2.5});
    if (left > 0)
        out.push_back({"Parts that are listed but not drawn (" + std::to_string(left) +
                           ") are joined beside those of their kind.",
                       2.5});
    return out;
}

std::vector<NoteLine> cautions()
{
    return {
        {"Before you solder", 3.5},
        {"The iron's tip is some 350 \xC2\xB0"
         "C (common practice): a stand for it, nothing that burns near it, unplug it when you leave. Heat "
         "pickups and lugs no longer than the solder needs to flow.",
         2.5},
        {"Fume: open a window or draw it off, keep your face out of it. Eyes: goggles, solder spits and wire "
         "ends fly. Wash your hands before you eat, solder may hold lead.",
         2.5},
        {"A battery, where a part needs one: the right way round, never shorted, out of the box when it is "
         "put "
         "away; spent ones to their collection.",
         2.5},
        {"Nothing of this wiring is ever joined to the mains. Amplifiers and all mains-powered equipment "
         "only by "
         "their makers' instructions; inside them only who is licensed for it.",
         2.5}};
}

}  // namespace

Sheet wiringSheet(const Plan& plan, const Layout& layout, const UnitStyle& style)
{
    const std::vector<WireRun> runs = wireRuns(plan, layout);
    Diagram diagram(plan, runs);
    std::vector<Element> out;
    double y = 0;
    const auto say = [&](const std::vector<NoteLine>& lines) {
        for (const NoteLine& line : wrapped(lines, kWidth)) {
            y -= (out.empty() ? 1 : kLinePitch) * line.height;
            out.push_back({"sheet", "words", Text{{0, y}, line.words, line.height, 0, Anchor::Left}});
        }
    };
    say({{shortened(plan.sheet.title, kMostTitle), 5}, {"Wiring: diagram and list. Not to scale.", 3.5}});
    y -= 13 + kGroundOver;
    for (Element& e : diagram.draw())
        out.push_back(moved(std::move(e), {0, y}));
    y -= diagram.height() - kGroundOver;
    say(howTo(plan, diagram.left()));
    y -= 3;
    say(listOf(plan, runs, style));
    y -= 3;
    say(cautions());

    Sheet sheet;
    sheet.title = plan.sheet.title + ": wiring";
    for (const Element& e : out)
        sheet.extent.include(elementBounds(e, 1));
    sheet.extent = sheet.extent.grown(kAround);
    sheet.elements = std::move(out);
    return sheet;
}

}  // namespace lidwright
