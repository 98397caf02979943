#include "core/layout/fittings_layout.h"
#include "core/layout/head_values.h"
#include "core/layout/wiring_openings.h"
#include "core/solvers/fret_wire.h"
#include "core/solvers/lists/cut_pieces.h"
#include "core/solvers/lists/shop_lists.h"
#include "core/solvers/piece_weights.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr const char* kFromBox = "head-end wall's outer face; centre line of the box";

struct Hole {
    std::string what, in;
    int count = 1;
    StudyCell across, length, depth;  ///< diameter or width; of what is not round its other size; how deep
    StudyCell along, aside, down;
    std::string from;
    std::optional<Point> at;
};

class Holes {
public:
    Holes(const Plan& plan, const Layout& layout, StudyTable& table)
        : m_plan(plan), m_layout(layout), m_table(table)
    {}

    void head()
    {
        const HeadLayout& head = m_layout.head;
        for (std::size_t i = 0; i < head.posts.size(); ++i) {
            const HeadPost& post = head.posts[i];
            add({"Tuner post, string " + std::to_string(i + 1),
                 "Head",
                 1,
                 m_plan.tuners.hole,
                 {},
                 head.thickness,
                 fromNutEdge(m_layout, post),
                 post.face.y - m_layout.neckY,
                 {},
                 "nut's front edge along the face; centre line of the stick",
                 post.middle});
        }
        const double depth = nutOverStrings(m_plan);
        for (std::size_t i = 0; i < m_layout.strings.size(); ++i)
            add({"Nut slot, string " + std::to_string(i + 1),
                 "Nut",
                 1,
                 m_plan.stringSet[i].gauge,
                 kNutWidth,
                 depth,
                 {},
                 m_layout.strings[i].first.y - m_layout.neckY,
                 {},
                 "centre line of the stick",
                 m_layout.strings[i].first});
    }

    void fretboard()
    {
        const FretLayout& frets = m_layout.frets;
        if (m_plan.frets.kind == FretKind::Wire && !frets.lines.empty()) {
            double longest = 0;
            for (const FretLine& line : frets.lines)
                longest = std::max(longest, distance(line.bass, line.treble));
            const auto slot = plannedSlot(m_plan);
            add({"Fret slot",
                 "Fretboard",
                 static_cast<int>(frets.lines.size()),
                 m_plan.frets.slotWidth,
                 longest,
                 slot ? StudyCell{slot->depth} : StudyCell{},
                 {},
                 {},
                 {},
                 "nut's front edge, each as in the table of frets",
                 frets.lines.front().bass});
        }
        if (!(frets.markerDiameter > 0)) return;
        for (const Point& marker : frets.markers)
            add({"Marker dot",
                 "Fretboard",
                 1,
                 frets.markerDiameter,
                 {},
                 {},
                 marker.x - m_layout.nutEdgeX,
                 marker.y - m_layout.neckY,
                 {},
                 "nut's front edge; centre line of the stick",
                 marker});
    }

    void lid()
    {
        const double thick = m_plan.lid.thickness;
        for (std::size_t i = 0; i < m_layout.art.size(); ++i) {
            if (!m_layout.art[i]) continue;
            const Region& cut = m_layout.art[i]->cut;
            const auto openings = std::count_if(cut.rings.begin(), cut.rings.end(),
                                                [](const Ring& ring) { return signedArea(ring) > 0; });
            if (openings == 0) continue;
            const Bounds box = bounds(cut);
            add({"Cut artwork " + std::to_string(i + 1) + ", openings",
                 "Lid",
                 static_cast<int>(openings),
                 box.height(),
                 box.width(),
                 thick,
                 box.centre().x,
                 box.centre().y,
                 {},
                 kFromBox,
                 box.centre()});
        }
        for (const SoundHole& hole : m_plan.holes) {
            const bool slot = hole.kind == HoleKind::Slot;
            add({slot ? "Sound slot" : "Sound hole",
                 "Lid",
                 1,
                 hole.width,
                 slot ? StudyCell{std::max(hole.length, hole.width)} : StudyCell{},
                 thick,
                 hole.x,
                 hole.y,
                 {},
                 kFromBox,
                 Point{hole.x, hole.y}});
        }
        for (const LidFixing& hole : m_plan.fixings)
            add({hole.kind == FixingKind::Screw ? "Lid screw, clearance hole" : "Lid pin",
                 "Lid",
                 1,
                 hole.diameter,
                 {},
                 thick,
                 hole.x,
                 hole.y,
                 {},
                 kFromBox,
                 Point{hole.x, hole.y}});
    }

    void wiring()
    {
        for (std::size_t i = 0; i < m_plan.wiring.size(); ++i)
            device(m_plan.wiring[i], m_layout.devices[i]);
    }

    void walls()
    {
        for (const auto& [wall, name, innerX] :
             {std::tuple{&m_layout.headWall, "Head-end wall", m_layout.headWall.innerX},
              std::tuple{&m_layout.tailWall, "Tail-end wall", m_layout.tailWall.innerX}}) {
            if (!wall->crossed) continue;
            add({wall->notch ? "Notch for the stick" : "Mortise for the stick",
                 name,
                 1,
                 wall->openingWidth,
                 wall->opening.size(),
                 std::abs(wall->outerX - innerX),
                 {},
                 wall->openingCentre,
                 wall->stripAbove,
                 "wall's top edge; centre line of the box",
                 Point{wall->outerX, wall->openingCentre}});
        }
    }

    void tail()
    {
        const StringAnchor& anchor = m_plan.anchor;
        if (anchor.kind == AnchorKind::Tailpiece) return;
        const bool stick = anchor.kind == AnchorKind::TailEnd;
        for (std::size_t i = 0; i < m_layout.strings.size(); ++i) {
            const double y = m_layout.strings[i].second.y;
            add({(stick ? "String hole, string " : "String pin, string ") + std::to_string(i + 1),
                 stick ? "Stick, tail end" : "Tail-end wall",
                 1,
                 {},
                 {},
                 {},
                 {},
                 y,
                 anchor.depth,
                 "lid's top; centre line of the box",
                 Point{stick ? m_layout.tailEndX : m_layout.tailWall.outerX, y}});
        }
    }

    void straps()
    {
        for (const StrapLayout& strap : fittingsLayout(m_plan, m_layout).straps)
            add({"Strap button's screw",
                 strap.atTail ? "Stick, tail end" : "Stick, underside",
                 1,
                 m_plan.fittings.strapScrew,
                 {},
                 m_plan.fittings.strapScrewLength,
                 strap.atTail ? StudyCell{} : StudyCell{strap.x - m_layout.headWall.outerX},
                 strap.y - m_layout.neckY,
                 strap.atTail ? StudyCell{-strap.z} : StudyCell{},
                 strap.atTail ? "lid's top; centre line of the stick"
                              : "head-end wall's outer face; centre line of the stick",
                 Point{strap.x, strap.y}});
    }

private:
    void device(const Device& given, const DeviceLayout& laid)
    {
        const std::string name = deviceName(given.kind);
        if (given.place == DevicePlace::Lid || given.place == DevicePlace::Neck) {
            const bool lid = given.place == DevicePlace::Lid;
            const Bounds face = bounds(laid.face);
            if (lid && given.kind == DeviceKind::MagneticPickup)
                add({name + ", opening",
                     "Lid",
                     1,
                     face.height(),
                     face.width(),
                     m_plan.lid.thickness,
                     laid.hole.x,
                     laid.hole.y,
                     {},
                     kFromBox,
                     laid.hole});
            if (!lid && given.bodyDepth > 0)
                add({name + ", cavity",
                     "Stick",
                     1,
                     given.bodyWidth,
                     given.round() ? StudyCell{} : StudyCell{given.bodyLength},
                     given.bodyDepth,
                     given.along,
                     given.aside,
                     {},
                     kFromBox,
                     Point{given.along, given.aside}});
            if (laid.diameter > 0 && !(lid && given.kind == DeviceKind::MagneticPickup))
                add({name + ", hole",
                     lid ? "Lid" : "Stick",
                     1,
                     laid.diameter,
                     {},
                     lid ? StudyCell{m_plan.lid.thickness} : StudyCell{},
                     laid.hole.x,
                     laid.hole.y,
                     {},
                     kFromBox,
                     laid.hole});
            return;
        }
        if (!laid.reaches || !(laid.diameter > 0)) return;
        const double down = m_layout.walls.high - laid.hole.y;
        const bool end = given.place == DevicePlace::HeadWall || given.place == DevicePlace::TailWall;
        const char* wall = given.place == DevicePlace::HeadWall   ? "Head-end wall"
                           : given.place == DevicePlace::TailWall ? "Tail-end wall"
                           : given.place == DevicePlace::BassWall ? "Bass-side wall"
                                                                  : "Treble-side wall";
        add({name + ", hole",
             wall,
             1,
             laid.diameter,
             {},
             laid.through,
             end ? StudyCell{} : StudyCell{laid.hole.x},
             end ? StudyCell{laid.hole.x} : StudyCell{},
             down,
             end ? "wall's top edge; centre line of the box" : "wall's top edge; head-end wall's outer face",
             bounds(laid.body).centre()});
    }

    void add(const Hole& h)
    {
        m_table.rows.push_back({h.what, h.in, static_cast<double>(h.count), h.across, h.length, h.depth,
                                h.along, h.aside, h.down, h.from});
        m_table.places.push_back(h.at);
    }

    const Plan& m_plan;
    const Layout& m_layout;
    StudyTable& m_table;
};

}  // namespace

Study holeList(const Plan& plan, const Layout& layout)
{
    Study out{"holes", "Holes and slots", {}, {}, {}, {}, {}};
    out.table.columns = {{"What", Quantity::Text},
                         {"In", Quantity::Text},
                         {"How many", Quantity::Count},
                         {"Diameter or width", Quantity::Gauge},
                         {"Length or height", Quantity::Length},
                         {"Depth", Quantity::Gauge},
                         {"Along", Quantity::Length},
                         {"Aside to the treble side", Quantity::Length},
                         {"Down", Quantity::Length},
                         {"Measured from", Quantity::Text}};
    Holes holes(plan, layout, out.table);
    holes.head();
    holes.fretboard();
    holes.lid();
    holes.wiring();
    holes.walls();
    holes.tail();
    holes.straps();
    out.notes = {
        {"Places are those of the middle; of a notch or mortise Down is to its upper edge and its depth is "
         "the wall's thickness. A wall's opening is sawn %1 short of the line on each face and sanded to it.",
         {mm(plan.shop.sanding)}},
        {"Artwork tells how wide and long all its openings are together; their outlines are in the lid's "
         "template. Nut slots are as deep as half the thickest string (common practice, no source).",
         {}},
        {"Holes for screws that the plan does not know, those of tuners and hardware, are marked through the "
         "parts themselves. Bore for wood screws first: 70 %% of the screw's core in soft woods, 90 %% in "
         "hard "
         "ones (Wood Handbook, FPL-GTR-190 (2010), chapter 8, from memory). A string's hole at the tail is "
         "wider than the string and narrower than its ball.",
         {}},
        {"Drills and saws: clamp the work, a piece of waste behind it, eyes covered; the machine's maker's "
         "instructions decide.",
         {}}};
    return out;
}

}  // namespace lidwright
