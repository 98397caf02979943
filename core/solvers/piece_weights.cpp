#include "core/solvers/piece_weights.h"

#include "core/layout/sound_opening.h"
#include "core/materials/material.h"
#include "core/solvers/string_loads.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// Nickel silver, 18 % nickel (from memory: 8.7 g/cm3).
constexpr double kFretWireDensity_kg_m3 = 8700;
constexpr double kKilogramsPerMm3 = 1e-9;  // of 1 kg/m3

class Sum {
public:
    void solid(const std::string& part, const std::string& name, double volume, double density, double x,
               double z)
    {
        if (!(volume > 0) || !(density > 0) || !std::isfinite(x) || !std::isfinite(z)) return;
        m_out.pieces.push_back({part, name, volume * density * kKilogramsPerMm3, volume, x, z});
    }
    void weighed(const std::string& part, const std::string& name, double mass, double x, double z)
    {
        if (mass > 0 && std::isfinite(x) && std::isfinite(z))
            m_out.pieces.push_back({part, name, mass, 0, x, z});
    }
    WeightSum take()
    {
        for (const PieceWeight& piece : m_out.pieces) {
            m_out.mass_kg += piece.mass_kg;
            m_out.x += piece.mass_kg * piece.x;
            m_out.z += piece.mass_kg * piece.z;
        }
        if (m_out.mass_kg > 0) {
            m_out.x /= m_out.mass_kg;
            m_out.z /= m_out.mass_kg;
        }
        std::stable_sort(m_out.pieces.begin(), m_out.pieces.end(),
                         [](const PieceWeight& a, const PieceWeight& b) { return a.mass_kg > b.mass_kg; });
        return std::move(m_out);
    }

private:
    WeightSum m_out;
};

void addPrism(Sum& sum, const std::string& part, const std::string& name, const Region& footprint, double low,
              double high, double density)
{
    const double size = area(footprint);
    if (size > 0)
        sum.solid(part, name, size * (high - low), density, centroid(footprint).x, (low + high) / 2);
}

void addBody(const Plan& plan, const Layout& l, Sum& sum)
{
    const double density = materialDensity_kg_m3(plan.box.material);
    const Region outer = l.boxOuter.empty() ? Region{} : Region{{l.boxOuter}};
    const Region inner = l.boxInner.empty() ? Region{} : Region{{l.boxInner}};
    // The base lies between the walls or under them: the box's outside is all that is known of it.
    addPrism(sum, "box", "Walls", subtract(outer, inner), l.walls.low, l.walls.high, density);
    addPrism(sum, "box", "Base", inner, l.base.low, l.base.high, density);

    Region lid = l.lidOutline.empty() ? Region{} : Region{{l.lidOutline}};
    std::vector<Region> cuts{lidCutOuts(l)};
    for (const Ring& ring : l.fixings)
        cuts.push_back(Region{{ring}});
    lid = subtract(lid, unite(cuts));
    addPrism(sum, "lid", "Lid", lid, l.lid.low, l.lid.high, materialDensity_kg_m3(plan.lid.material));
    if (const auto stack = backingStack(plan); stack && !l.backing.outline.empty()) {
        constexpr double kSquareMillimetresPerMetre = 1e6;
        sum.weighed("backing.1", "Backing",
                    stack->areaWeight_kg_m2 * area(l.backing.outline) / kSquareMillimetresPerMetre,
                    centroid(l.backing.outline).x, l.lid.low - l.backing.thickness / 2);
    }
}

/// A profile in x and z, `width` across.
void addProfile(Sum& sum, const std::string& part, const std::string& name, const Ring& ring, double width,
                double density, const Layout& l)
{
    const Region region = fill({ring}, FillRule::NonZero);
    const double size = area(region);
    if (!(size > 0)) return;
    const Point middle = centroid(region);
    sum.solid(part, name, size * width, density, middle.x, middle.y + l.neckRise(middle.x));
}

void addStick(const Plan& plan, const Layout& l, Sum& sum)
{
    const double density = materialDensity_kg_m3(plan.neck.wood);
    // In the stick's own heights; the head as the head's own outline has it.
    Ring head = l.head.lower;
    head.push_back({l.nutX, l.neckZ.low});
    head.insert(head.end(), l.head.upper.begin(), l.head.upper.end());
    addProfile(sum, "head", "Head", head, l.head.width, density, l);
    Ring stick{{l.nutX, l.neckZ.low}, {l.tailEndX, l.neckZ.low}};
    std::vector<Point> top = stickTopProfile(plan, l, l.nutX, l.tailEndX);
    for (auto p = top.rbegin(); p != top.rend(); ++p)
        stick.push_back({p->x, p->y - l.neckRise(p->x)});
    addProfile(sum, "neck", "Stick", stick, plan.neck.width, density, l);

    if (!l.fretboardOutline.empty())
        addPrism(sum, "fretboard", "Fretboard", Region{{l.fretboardOutline}}, l.fretboardZ.low,
                 l.fretboardZ.high, materialDensity_kg_m3(plan.fretboard.wood));
    const double nutHeight = std::max(0.0, l.head.nutZ - l.neckZ.high);
    sum.solid("scale", "Nut", kNutWidth * plan.fretboard.widthAtNut * nutHeight,
              materialDensity_kg_m3(plan.bridge.wood), l.nutEdgeX - kNutWidth / 2,
              l.neckZ.high + nutHeight / 2);
    if (plan.frets.kind != FretKind::Wire) return;
    const Frets& wire = plan.frets;
    const double section = kPi / 4 * wire.crownWidth * wire.crownHeight + wire.tang * wire.tangThickness;
    double volume = 0, moment = 0;
    for (const FretLine& fret : l.frets.lines) {
        const double one = section * distance(fret.bass, fret.treble);
        volume += one;
        moment += one * fret.bass.x;
    }
    if (volume > 0)
        sum.solid("frets", "Frets", volume, kFretWireDensity_kg_m3, moment / volume, l.fretboardZ.high);
}

void addHardware(const Plan& plan, const Layout& l, Sum& sum)
{
    if (!l.bridgeOutline.empty())
        addPrism(sum, "bridge", "Bridge", Region{{l.bridgeOutline}}, l.bridgeZ.low, l.bridgeZ.high,
                 materialDensity_kg_m3(plan.bridge.wood));
    for (const BlockLayout& block : l.blocks) {
        if (block.outline.empty()) continue;
        const bool corner = block.part == "corner-blocks";
        const std::string& wood =
            corner ? plan.cornerBlocks.wood
                   : plan.blocks[static_cast<std::size_t>(std::stoi(block.part.substr(6)) - 1)].wood;
        addPrism(sum, block.part, corner ? "Corner block" : "Wall block", Region{{block.outline}},
                 block.z.low, block.z.high, materialDensity_kg_m3(wood));
    }
    for (std::size_t i = 0; i < l.bars.size(); ++i)
        addPrism(sum, l.bars[i].part, "Bar", Region{{l.bars[i].outline}}, l.bars[i].low, l.bars[i].high,
                 materialDensity_kg_m3(plan.bars[i].wood));
    double x = 0;
    for (const HeadPost& post : l.head.posts)
        x += post.middle.x;
    const double count = static_cast<double>(l.head.posts.size());
    if (count > 0) {
        x /= count;
        sum.weighed("tuners", "Tuners", count * plan.tuners.mass_kg, x, l.neckZ.high + l.neckRise(x));
    }
    const auto strings = playedStrings(plan, l);
    double mass = 0;
    for (const PlayedString& string : strings)
        if (string.ok()) mass += string.body.mass_kg_m * (l.tailEndX - l.headEndX) / 1000;
    sum.weighed("strings", "Strings", mass, (l.tailEndX + l.headEndX) / 2, l.bridgeZ.high);
}

}  // namespace

WeightSum pieceWeights(const Plan& plan, const Layout& layout)
{
    Sum sum;
    addBody(plan, layout, sum);
    addStick(plan, layout, sum);
    addHardware(plan, layout, sum);
    return sum.take();
}

}  // namespace lidwright
