#include "core/layout/values.h"

#include "core/geometry/sharpness.h"
#include "core/layout/head_values.h"
#include "core/layout/sound_opening.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace lidwright {
namespace {

class List {
public:
    void length(std::string key, std::string label, double value)
    {
        add(std::move(key), std::move(label), value + 0.0, Quantity::Length);  // + 0.0: no minus zero
    }
    void add(std::string key, std::string label, double value, Quantity quantity)
    {
        m_values.push_back({std::move(key), std::move(label), {value, quantity}});
    }
    void add(std::vector<DerivedValue> values)
    {
        m_values.insert(m_values.end(), std::make_move_iterator(values.begin()),
                        std::make_move_iterator(values.end()));
    }
    std::vector<DerivedValue> take() { return std::move(m_values); }

private:
    std::vector<DerivedValue> m_values;
};

void boxValues(const Layout& l, List& out)
{
    out.length("box.body-length", "Body on the centre line", l.bodyLength);
    out.length("box.wall-top", "Walls' top edge below the lid's top", -l.walls.high);
    out.length("box.inside-depth", "Lid's underside to base", l.lid.low - l.base.high);
    out.add("box.inside-area", "Inside area in plan", std::max(0.0, signedArea(l.boxInner)), Quantity::Area);
    out.add("box.inside-volume", "Inside volume of the empty box",
            std::max(0.0, signedArea(l.boxInner)) * std::max(0.0, l.lid.low - l.base.high), Quantity::Volume);
    out.length("box.overall-height", "Overall height with the lid", -l.walls.low);
    out.add("lid.area", "Lid's area before cutting", std::max(0.0, signedArea(l.lidOutline)), Quantity::Area);
    const Bounds lid = bounds(l.lidOutline);
    out.length("lid.length", "Lid's length", lid.width());
    out.length("lid.width", "Lid's width", lid.height());
}

void artValues(const Plan& plan, const Layout& l, List& out)
{
    double all = 0;
    for (std::size_t i = 0; i < l.art.size(); ++i) {
        const std::string key = "art." + std::to_string(i + 1);
        const std::string name = plan.art[i].name;
        const double cut = area(l.art[i]->cut);
        all += cut;
        out.add(key + ".cut-area", name + ": area cut through", cut, Quantity::Area);
        out.add(key + ".engraved-area", name + ": area engraved", area(l.art[i]->engraved), Quantity::Area);
        if (plan.art[i].strengthen > 0 || plan.art[i].ties > 0) {
            out.add(key + ".added-area", name + ": wood given back by strengthening and ties",
                    std::max(0.0, area(l.art[i]->added)), Quantity::Area);
            out.add(key + ".strengthened-places", name + ": places strengthened",
                    l.art[i]->strengthenedPlaces, Quantity::Count);
            out.add(key + ".tied-pieces", name + ": pieces held by ties", l.art[i]->tiedPieces,
                    Quantity::Count);
        }
        const Sharpness sharp = sharpness(l.art[i]->cut);
        out.add(key + ".corners", name + ": sharp corners of its cuts", sharp.corners, Quantity::Count);
        if (std::isfinite(sharp.radius))
            out.length(key + ".smallest-radius", name + ": smallest radius of its cuts", sharp.radius);
        out.length(key + ".length", name + ": length along the neck", l.art[i]->bounds.width());
        out.length(key + ".width", name + ": width across the neck", l.art[i]->bounds.height());
        out.add(key + ".outlines", name + ": closed outlines",
                static_cast<double>(l.art[i]->cut.rings.size() + l.art[i]->engraved.rings.size()),
                Quantity::Count);
    }
    for (std::size_t i = 0; i < l.holes.size(); ++i) {
        const double a = std::max(0.0, signedArea(l.holes[i]));
        all += a;
        out.add("hole." + std::to_string(i + 1) + ".area", "Plain hole " + std::to_string(i + 1) + ": area",
                a, Quantity::Area);
    }
    out.add("lid.open-area", "All openings of the lid", all, Quantity::Area);
}

void soundValues(const Plan& plan, const Layout& l, List& out)
{
    const SoundOpening open = soundOpening(plan, l);
    out.add("sound-hole.behind-neck", "Openings over the neck", open.behindNeck, Quantity::Area);
    out.add("sound-hole.behind-blocks", "Openings over blocks", open.behindBlocks, Quantity::Area);
    out.add("sound-hole.free", "Free openings, without backing", open.freeArea, Quantity::Area);
    out.add("sound-hole.net", "Sound hole left", open.net, Quantity::Area);
    out.length("sound-hole.diameter", "Round hole of the same area", roundHoleDiameter(open.net));
    if (plan.backingLayers.empty()) return;
    out.add("sound-hole.net-least", "Sound hole left at least", open.netLeast, Quantity::Area);
    out.add("sound-hole.net-most", "Sound hole left at most", open.netMost, Quantity::Area);
    out.add("backing.open-fraction", "Open part of the backing", open.fraction, Quantity::Ratio);
    out.add("backing.area", "Area of the backing", std::max(0.0, area(l.backing.outline)), Quantity::Area);
    out.add("backing.pieces", "Pieces of the backing", static_cast<double>(l.backing.outline.rings.size()),
            Quantity::Count);
    out.length("backing.thickness", "Thickness of the backing", l.backing.thickness);
    out.length("backing.gap-over-neck", "Air between lid and neck", l.backing.gapOverNeck);
    if (const auto stack = backingStack(plan)) {
        constexpr double kSquareMillimetresPerMetre = 1e6;
        out.add("backing.weight", "Weight of the backing, a panel's opening counted as solid",
                stack->areaWeight_kg_m2 * std::max(0.0, area(l.backing.outline)) / kSquareMillimetresPerMetre,
                Quantity::Mass);
    }
}

void wallValues(const std::string& key, const std::string& name, const EndWallLayout& wall, List& out)
{
    out.length(key + ".outside", name + ": outer face", wall.outerX);
    out.length(key + ".inside", name + ": inner face", wall.innerX);
    out.length(key + ".opening-centre", name + ": opening's centre from the centre line", wall.openingCentre);
    out.length(key + ".opening-width", name + ": opening's width", wall.openingWidth);
    out.length(key + ".opening-depth", name + ": opening's floor below the top edge",
               wall.wall.high - wall.opening.low);
    out.length(key + ".opening-height", name + ": opening's height", wall.opening.size());
    out.length(key + ".strip-above", name + ": wood left above", wall.stripAbove);
    out.length(key + ".left-under", name + ": wood left under", wall.leftUnder);
    out.length(key + ".left-bass", name + ": wood left on the bass side", wall.leftBass);
    out.length(key + ".left-treble", name + ": wood left on the treble side", wall.leftTreble);
}

/// What glue has to hold on to: the faces of blocks on walls and lid, and of bars on the lid.
void glueValues(const Plan& plan, const Layout& l, List& out)
{
    const auto face = [](const Ring& ring) { return std::abs(signedArea(ring)); };
    const CornerBlocks& corner = plan.cornerBlocks;
    bool corners = false;
    for (const BlockLayout& block : l.blocks) {
        if (block.part == "corner-blocks") {
            if (corners) continue;
            corners = true;
            out.add("corner-blocks.glue-on-walls", "Corner block: glued to the walls, each",
                    (corner.alongEnd + corner.alongSide) * block.z.size(), Quantity::Area);
            out.add("corner-blocks.glue-on-lid", "Corner block: against the lid, each", face(block.outline),
                    Quantity::Area);
            continue;
        }
        const auto i = static_cast<std::size_t>(std::stoi(block.part.substr(block.part.find('.') + 1))) - 1;
        const std::string name = "Wall block " + std::to_string(i + 1);
        out.add(block.part + ".glue-on-wall", name + ": glued to the wall",
                plan.blocks[i].length * block.z.size(), Quantity::Area);
        out.add(block.part + ".glue-on-lid", name + ": against the lid", face(block.outline), Quantity::Area);
    }
    for (std::size_t i = 0; i < l.bars.size(); ++i)
        out.add(l.bars[i].part + ".glue-on-lid", "Bar " + std::to_string(i + 1) + ": glued to the lid",
                face(l.bars[i].outline), Quantity::Area);
}

void reliefValues(const Plan& plan, const Layout& l, List& out)
{
    double thinnest = plan.neck.thickness, wood = 0;
    const Bounds room = bounds(l.boxInner);
    if (!room.empty())
        for (const Point p : stickTopProfile(plan, l, room.minX, room.maxX))
            thinnest = std::min(thinnest, p.y - stickUnderside(l, p.x));
    out.length("neck.under-lid-thickness", "Stick's least thickness under the lid", thinnest);
    out.length("neck.air-under-lid", "Most air between lid and stick", airOverStick(plan, l));
    out.length("relief.head-land-left", "Land at the head-end wall", l.relief.headLand);
    out.length("relief.tail-land-left", "Land at the tail-end wall", l.relief.tailLand);
    for (const ReliefCut& cut : l.relief.cuts)
        wood += cut.sectionArea() * plan.neck.width;
    if (l.relief.pad) {
        out.length("relief.pad-front", "Pad's front edge from the head-end wall", l.relief.padFrom);
        out.length("relief.pad-back", "Pad's back edge from the head-end wall", l.relief.padTo);
        wood +=
            (l.relief.padTo - l.relief.padFrom) * (plan.neck.width - l.relief.padWidth) * plan.relief.depth;
    }
    out.add("relief.wood", "Wood taken out of the stick under the lid", wood, Quantity::Volume);
    if (plan.shop.pass > 0)
        out.add("relief.passes", "Router passes to the relief's depth",
                plan.relief.cut ? std::ceil(plan.relief.depth / plan.shop.pass - 1e-9) : 0, Quantity::Count);
}

void neckValues(const Plan& plan, const Layout& l, List& out)
{
    out.length("scale.measured", "Nut to saddle", l.saddleX - l.nutX);
    out.length("nut.x", "Nut from the head-end wall", l.nutX);
    out.length("nut.edge-x", "Nut's front edge from the head-end wall", l.nutEdgeX);
    out.length("nut.to-box", "Nut to box", l.headWall.outerX - l.nutX);
    out.length("saddle.x", "Saddle from the head-end wall", l.saddleX - l.headWall.outerX);
    out.length("saddle.to-tail", "Saddle to tail-end wall", l.tailWall.outerX - l.saddleX);
    out.length("neck.needed", "Stick needed, finished", l.neckNeeded);
    out.length("neck.left-over", "Stick left over after two saw cuts",
               plan.neck.blankLength - l.neckNeeded - 2 * plan.shop.kerf);
    out.length("neck.head-end", "Headstock's end", l.headEndX);
    out.length("neck.tail-end", "Tail's end", l.tailEndX);
    out.length("neck.top-z", "Stick's top above the lid's top", l.neckZ.high);
    out.length("neck.seat-depth", "Lid seat's depth", l.seatDepth);
    reliefValues(plan, l, out);
    wallValues("head-wall", "Head-end wall", l.headWall, out);
    wallValues("tail-wall", "Tail-end wall", l.tailWall, out);
}

void topValues(const Plan& plan, const Layout& l, List& out)
{
    out.length("fretboard.cut-length", "Fretboard, finished length", l.fretboardCut);
    out.length("fretboard.left-over", "Fretboard left over after the saw cut",
               plan.fretboard.blankLength - l.fretboardCut - plan.shop.kerf);
    out.length("fretboard.top-z", "Fretboard's top above the lid's top", l.fretboardZ.high);
    const Bounds bridge = bounds(l.bridgeOutline);
    out.length("bridge.front", "Bridge's front edge from the head-end wall", bridge.minX - l.headWall.outerX);
    out.length("bridge.back", "Bridge's back edge from the head-end wall", bridge.maxX - l.headWall.outerX);
    double nearest = std::numeric_limits<double>::infinity();
    for (const PlacedArtPtr& art : l.art)
        for (const SegmentTree* tree : {&art->cutTree, &art->engravedTree})
            if (!tree->empty()) nearest = std::min(nearest, signedClearance(*tree, l.bridgeOutline).distance);
    for (const Ring& hole : l.holes)
        nearest = std::min(nearest, signedClearance(SegmentTree({hole}), l.bridgeOutline).distance);
    if (std::isfinite(nearest))
        out.length("bridge.art-clearance", "Bridge to the nearest artwork or hole", nearest);
    // Of courses from the first string of one to the first of the next.
    const auto next = static_cast<std::size_t>(plan.strings.perCourse);
    if (l.strings.size() > next) {
        out.length("strings.pitch-at-nut", "String to string at the nut",
                   l.strings[0].first.y - l.strings[next].first.y);
        out.length("strings.pitch-at-saddle", "String to string at the saddle",
                   l.strings[0].second.y - l.strings[next].second.y);
    }
}

}  // namespace

std::vector<DerivedValue> values(const Plan& plan, const Layout& layout)
{
    List out;
    boxValues(layout, out);
    artValues(plan, layout, out);
    soundValues(plan, layout, out);
    neckValues(plan, layout, out);
    glueValues(plan, layout, out);
    out.add(headValues(plan, layout));
    topValues(plan, layout, out);
    for (const Station& s : layout.stations)
        out.length("station." + s.id, s.label, s.x);
    return out.take();
}

}  // namespace lidwright
