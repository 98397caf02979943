#include "core/layout/base_fastening.h"
#include "core/layout/fittings_layout.h"
#include "core/layout/wire_runs.h"
#include "core/materials/material.h"
#include "core/materials/string_kind.h"
#include "core/solvers/fret_wire.h"
#include "core/solvers/lists/shop_lists.h"
#include "core/solvers/lists/stock_packing.h"

#include <algorithm>
#include <map>
#include <set>

namespace lidwright {
namespace {

constexpr double kMillimetresPerMetre = 1000;
/// Figures after the mark of a price.
constexpr int kCents = 2;

struct Item {
    std::string what;
    StudyCell count, length, width, thickness;
    std::string purpose;
    double price = 0;  ///< of one; 0 where the plan has none
};

/// Length of a string from its hold at the tail to the post, with its windings.
double stringLength(const Plan& plan, const Layout& l, std::size_t i)
{
    const auto& [nut, saddle] = l.strings[i];
    const double behind = plan.anchor.kind == AnchorKind::TailEnd    ? l.tailEndX - saddle.x
                          : plan.anchor.kind == AnchorKind::WallPins ? l.tailWall.outerX - saddle.x
                                                                     : plan.anchor.behind;
    double sum = distance(nut, saddle) + std::max(0.0, behind);
    const auto& way = l.head.strings[i].way;
    for (std::size_t k = 1; k < way.size(); ++k)
        sum += std::hypot(distance(way[k - 1].at, way[k].at), way[k].z - way[k - 1].z);
    return sum + plan.tuners.windings * kPi * (plan.tuners.post + plan.stringSet[i].gauge);
}

class Shopping {
public:
    Shopping(const Plan& plan, const Layout& layout) : m_plan(plan), m_layout(layout) {}

    void strings()
    {
        const auto count = static_cast<double>(m_plan.stringSet.size());
        add({"Tuner", count, {}, {}, m_plan.tuners.hole, "head, diameter of its hole"});
        for (std::size_t i = 0; i < m_plan.stringSet.size(); ++i) {
            const GuitarString& string = m_plan.stringSet[i];
            add({"String " + std::to_string(i + 1) + ": " + stringKindName(string.kind),
                 1.0,
                 stringLength(m_plan, m_layout, i),
                 {},
                 string.gauge,
                 spoken(Measure{string.pitch, Quantity::Pitch}, {}) + ", at least so long"});
        }
        if (m_plan.head.shape == HeadShape::Tree)
            add({"String tree", 1.0, {}, {}, {}, "head, holds the strings down"});
        if (m_plan.anchor.kind == AnchorKind::Tailpiece)
            add({"Tailpiece", 1.0, {}, {}, {}, "lid, behind the bridge"});
        else
            add({m_plan.anchor.kind == AnchorKind::WallPins ? "Pin or screw" : "Ferrule, if wanted",
                 count,
                 {},
                 {},
                 {},
                 "holds a string at the tail"});
    }

    void frets()
    {
        const WireBoard board{
            m_plan.fretboard.widthAtNut, m_plan.fretboard.widthAtEnd, m_layout.fretboardCut, {}};
        const auto need = wireNeed(m_layout.frets.scale, board, {m_plan.frets.overhang});
        if (m_plan.frets.kind == FretKind::Wire && need && !need->pieces.empty())
            add({"Fret wire",
                 {},
                 need->toBuy,
                 m_plan.frets.crownWidth,
                 m_plan.frets.crownHeight,
                 "in all, with waste; width and height of its crown"});
        if (m_layout.frets.markerDiameter > 0 && !m_layout.frets.markers.empty())
            add({"Marker dot",
                 static_cast<double>(m_layout.frets.markers.size()),
                 {},
                 {},
                 m_layout.frets.markerDiameter,
                 "fretboard"});
    }

    void lid()
    {
        std::map<std::pair<FixingKind, double>, int> fixings;
        for (const LidFixing& fixing : m_plan.fixings)
            ++fixings[{fixing.kind, fixing.diameter}];
        for (const auto& [key, count] : fixings)
            add({key.first == FixingKind::Screw ? "Wood screw" : "Pin",
                 static_cast<double>(count),
                 {},
                 {},
                 key.second,
                 "lid, diameter of its hole"});
        if (m_plan.box.baseFastening != BaseFastening::Glued)
            add({m_plan.box.baseFastening == BaseFastening::Screwed ? "Wood screw" : "Nail",
                 static_cast<double>(baseFixings(m_plan, m_layout).size()),
                 {},
                 {},
                 {},
                 "base, through the walls into its edge"});
        const std::vector<Bounds> sheets = backingSheets(m_layout);
        for (const BackingLayer& layer : m_plan.backingLayers) {
            if (layer.kind == BackingKind::Panel) continue;
            for (const Bounds& sheet : sheets)
                add({backingName(layer), 1.0, sheet.width(), sheet.height(),
                     layer.kind == BackingKind::WireCloth ? layer.wire : layer.thickness,
                     "backing under the artwork"});
        }
    }

    void wiring()
    {
        std::map<DeviceKind, int> kinds;
        for (const Device& device : m_plan.wiring)
            ++kinds[device.kind];
        for (const auto& [kind, count] : kinds)
            add({deviceName(kind), static_cast<double>(count), {}, {}, {}, "wiring"});
        double wire = 0;
        for (const WireRun& run : wireRuns(m_plan, m_layout))
            wire += (run.end == WireEnd::Device ? 2 : 1) * run.length;
        if (wire > 0) add({"Hook-up wire", {}, wire, {}, {}, "wiring, in all, about"});
        if (!kinds.empty()) add({"Solder", {}, {}, {}, {}, "as needed"});
    }

    void fittings()
    {
        const Fittings& given = m_plan.fittings;
        const FittingsLayout laid = fittingsLayout(m_plan, m_layout);
        if (!laid.feet.empty())
            add({"Foot",
                 static_cast<double>(laid.feet.size()),
                 given.footHeight,
                 {},
                 given.footDiameter,
                 "base, its height and diameter"});
        if (!laid.straps.empty())
            add({"Strap button with screw",
                 static_cast<double>(laid.straps.size()),
                 given.strapScrewLength,
                 {},
                 given.strapScrew,
                 "stick, its screw"});
        add({"Wood glue", {}, {}, {}, {}, "as needed"});
        add({"Abrasive paper", {}, {}, {}, {}, "as needed"});
        add({"Finish", {}, {}, {}, {}, "as needed"});
    }

    void wood()
    {
        const std::vector<CutPiece> pieces = cutPieces(m_plan, m_layout);
        const StockPacking packing = packStock(pieces, m_plan.stock, m_plan.shop.kerf);
        std::map<std::size_t, int> bought;
        for (const UsedStock& used : packing.used)
            if (m_plan.stock[used.stock].price > 0) ++bought[used.stock];
        for (const auto& [s, count] : bought) {
            const StockPiece& stock = m_plan.stock[s];
            add({materialName(stock.material), static_cast<double>(count), stock.length, stock.width,
                 stock.thickness, "stock " + std::to_string(s + 1), stock.price});
        }
        std::map<std::size_t, int> missing;
        for (const MissingPiece& piece : packing.missing)
            ++missing[piece.piece];
        for (const auto& [p, count] : missing) {
            const CutPiece& piece = pieces[p];
            add({materialName(piece.material), static_cast<double>(count), piece.roughLength,
                 piece.roughWidth, piece.thickness,
                 piece.name + (piece.ofBox ? ", unless the box is there" : "") + ", rough size"});
        }
    }

    /// The rows and, below them, the sum.
    std::vector<std::vector<StudyCell>> take()
    {
        m_rows.push_back({std::string("all that has a price"),
                          {},
                          {},
                          {},
                          {},
                          std::string(),
                          {},
                          m_priced ? StudyCell{m_sum} : StudyCell{}});
        return std::move(m_rows);
    }

    /// Prices entered for what is not in the list.
    std::vector<std::string> unknownPrices() const
    {
        std::vector<std::string> out;
        for (const Price& p : m_plan.prices)
            if (p.each > 0 && !m_found.contains(p.item)) out.push_back(p.item);
        return out;
    }

private:
    std::string backingName(const BackingLayer& layer) const
    {
        const UnitStyle style = unitStyle(m_plan);
        if (layer.kind == BackingKind::WireCloth)
            return spoken({layer.weave == BackingWeave::Woven ? "Wire cloth, woven, openings of %1"
                                                              : "Wire cloth, welded, openings of %1",
                           {Measure{layer.opening, Quantity::Gauge}}},
                          style);
        return spoken({layer.holes == BackingHoles::Square ? "Perforated sheet, square holes of %1 every %2"
                                                           : "Perforated sheet, round holes of %1 every %2",
                       {Measure{layer.hole, Quantity::Gauge}, Measure{layer.pitch, Quantity::Gauge}}},
                      style);
    }

    /// The price entered for what begins with its words, the longest such words first; 0 for none.
    double entered(const std::string& what)
    {
        const Price* best = nullptr;
        for (const Price& p : m_plan.prices)
            if (!p.item.empty() && what.starts_with(p.item) &&
                (best == nullptr || p.item.size() > best->item.size()))
                best = &p;
        if (best == nullptr) return 0;
        m_found.insert(best->item);
        return best->each;
    }

    void add(const Item& item)
    {
        std::vector<StudyCell> row{item.what,      item.count,   item.length, item.width,
                                   item.thickness, item.purpose, {},          {}};
        const double price = item.price > 0 ? item.price : entered(item.what);
        // What has no number is sold by the metre; what has neither, as one.
        const auto* count = std::get_if<double>(&item.count);
        const auto* length = std::get_if<double>(&item.length);
        if (price > 0) {
            const double sum = price * (count != nullptr    ? *count
                                        : length != nullptr ? *length / kMillimetresPerMetre
                                                            : 1);
            row[6] = price;
            row[7] = sum;
            m_sum += sum;
            m_priced = true;
        }
        m_rows.push_back(std::move(row));
    }

    const Plan& m_plan;
    const Layout& m_layout;
    std::vector<std::vector<StudyCell>> m_rows;
    double m_sum = 0;
    bool m_priced = false;
    std::set<std::string> m_found;  ///< entered prices that were of use
};

}  // namespace

Study hardwareList(const Plan& plan, const Layout& layout)
{
    Study out{"hardware", "Hardware and shopping", {}, {}, {}, {}, {}};
    out.table.columns = {{"What", Quantity::Text},
                         {"How many", Quantity::Count},
                         {"Length", Quantity::Length},
                         {"Width", Quantity::Length},
                         {"Diameter or thickness", Quantity::Gauge},
                         {"For", Quantity::Text},
                         {"Price of one", Quantity::Ratio, kCents},
                         {"Price", Quantity::Ratio, kCents}};
    Shopping shopping(plan, layout);
    shopping.strings();
    shopping.frets();
    shopping.lid();
    shopping.wiring();
    shopping.fittings();
    shopping.wood();
    out.table.rows = shopping.take();
    out.notes = {
        {"Prices are those entered with the stock and under Prices, in your own money; stock without a price "
         "lies in the shop already. What has no number is reckoned by the metre. What has no price is not in "
         "the sum.",
         {}},
        {"Strings: from where they are held to the post, with its windings and nothing to spare. Fret wire "
         "with a tenth of waste; hook-up wire with %1 at each run (common practice, no source).",
         {mm(kWireSpare)}},
        {"Wood that no stock has room for is listed at its rough size, as finished in thickness.", {}},
        {"Solder, glue and finish: fresh air, and their makers' instructions.", {}}};
    for (const std::string& item : shopping.unknownPrices())
        out.notes.push_back({"A price is entered for \"%1\", but nothing in the list begins so.", {item}});
    return out;
}

}  // namespace lidwright
