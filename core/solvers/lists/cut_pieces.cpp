#include "core/solvers/lists/cut_pieces.h"

#include "core/materials/panel.h"
#include "core/materials/wood.h"
#include "core/solvers/piece_weights.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

class Pieces {
public:
    explicit Pieces(const Shop& shop) : m_shop(shop) {}

    /// The piece just added, to say more of it; nothing is added of a piece without size.
    CutPiece* add(CutPiece piece)
    {
        for (const double size : {piece.length, piece.width, piece.thickness})
            if (!(size > 0) || !std::isfinite(size)) return nullptr;
        piece.overWidth = m_shop.overWidth;
        piece.roughLength = piece.length + m_shop.overLength;
        piece.roughWidth = piece.width + m_shop.overWidth;
        const Panel* panel = findPanel(piece.material);
        piece.planed = panel == nullptr;
        if (panel != nullptr) piece.grain = panel->isotropic() ? GrainRun::None : GrainRun::FaceAlong;
        m_all.push_back(std::move(piece));
        return &m_all.back();
    }
    std::vector<CutPiece> take() { return std::move(m_all); }

private:
    const Shop& m_shop;
    std::vector<CutPiece> m_all;
};

CutPiece made(const char* part, const char* name, const std::string& material, double length, double width,
              double thickness, const char* direction, Point at)
{
    CutPiece piece;
    piece.part = part;
    piece.name = name;
    piece.material = material;
    piece.length = length;
    piece.width = width;
    piece.thickness = thickness;
    piece.direction = direction;
    piece.at = at;
    return piece;
}

constexpr const char* kAlongNeck = "along the neck";
constexpr const char* kAcrossNeck = "across the neck";

double lengthAround(const Ring& ring)
{
    double sum = 0;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
        sum += distance(ring[j], ring[i]);
    return sum;
}

void addBox(const Plan& plan, const Layout& l, Pieces& out)
{
    const Box& box = plan.box;
    const auto add = [&](CutPiece piece, int count) {
        if (CutPiece* added = out.add(std::move(piece))) {
            added->count = count;
            added->ofBox = true;
        }
    };
    const Point head{l.headWall.outerX, 0};
    const Bounds room = bounds(l.boxInner);
    if (box.shape == BoxShape::Rectangle) {
        add(made("box", "End wall", box.material, box.width, box.height, box.endWall, kAcrossNeck, head), 2);
        add(made("box", "Side wall", box.material, box.length - 2 * box.endWall, box.height, box.sideWall,
                 kAlongNeck, {l.body.centre().x, l.body.minY}),
            2);
    } else if (!l.boxOuter.empty()) {
        add(made("box", "Wall, bent", box.material, lengthAround(l.boxOuter), box.height, box.sideWall,
                 "around the box", head),
            1);
    }
    add(made("box", "Base", box.material, room.width(), room.height(), box.base, kAlongNeck, room.centre()),
        1);
}

void addLid(const Plan& plan, const Layout& l, Pieces& out)
{
    const Bounds lid = bounds(l.lidOutline);
    const bool along = plan.lid.grain == LidGrain::Along;
    out.add(made("lid", "Lid", plan.lid.material, along ? lid.width() : lid.height(),
                 along ? lid.height() : lid.width(), plan.lid.thickness, along ? kAlongNeck : kAcrossNeck,
                 lid.centre()));
    const std::vector<Bounds> sheets = backingSheets(l);
    for (std::size_t i = 0; i < plan.backingLayers.size(); ++i) {
        const BackingLayer& layer = plan.backingLayers[i];
        if (layer.kind != BackingKind::Panel) continue;
        const std::string part = "backing." + std::to_string(i + 1);
        for (const Bounds& sheet : sheets)
            out.add(made(part.c_str(), "Backing panel", plan.lid.material,
                         along ? sheet.width() : sheet.height(), along ? sheet.height() : sheet.width(),
                         layer.thickness, along ? kAlongNeck : kAcrossNeck, sheet.centre()));
    }
}

void addStick(const Plan& plan, const Layout& l, Pieces& out)
{
    out.add(made("neck", plan.head.shape == HeadShape::Scarfed ? "Stick, with the head's piece" : "Stick",
                 plan.neck.wood, l.neckNeeded, std::max(plan.neck.width, l.head.width), plan.neck.thickness,
                 kAlongNeck, {l.nutX, l.neckY}));
    const Fretboard& board = plan.fretboard;
    if (!l.fretboardOutline.empty())
        out.add(made("fretboard", "Fretboard", board.wood, l.fretboardCut,
                     std::max(board.widthAtNut, board.widthAtEnd), board.thickness, kAlongNeck,
                     {(l.nutEdgeX + l.fretboardEndX) / 2, l.neckY}));
    const Bridge& bridge = plan.bridge;
    if (CutPiece* nut = out.add(made("scale", "Nut", bridge.wood, board.widthAtNut,
                                     l.head.nutZ - l.neckZ.high + nutOverStrings(plan), kNutWidth,
                                     kAcrossNeck, {l.nutEdgeX, l.neckY})))
        nut->turnedToo = true;
    out.add(made("bridge", "Bridge", bridge.wood, bridge.length, bridge.width, bridge.height, kAcrossNeck,
                 {l.saddleX, l.neckY}));
}

void addInside(const Plan& plan, const Layout& l, Pieces& out)
{
    const auto add = [&](CutPiece piece, int count) {
        if (CutPiece* added = out.add(std::move(piece))) {
            added->count = count;
            added->turnedToo = true;
        }
    };
    std::vector<Point> corners;
    for (const BlockLayout& block : l.blocks)
        if (block.part == "corner-blocks") corners.push_back(bounds(block.outline).centre());
    const CornerBlocks& corner = plan.cornerBlocks;
    if (!corners.empty())
        add(made("corner-blocks", "Corner block", corner.wood, corner.height, corner.alongEnd,
                 corner.alongSide, "upright", corners.front()),
            static_cast<int>(corners.size()));
    for (std::size_t i = 0; i < plan.blocks.size(); ++i) {
        const WallBlock& block = plan.blocks[i];
        const std::string part = "block." + std::to_string(i + 1);
        const auto laid = std::find_if(l.blocks.begin(), l.blocks.end(),
                                       [&](const BlockLayout& b) { return b.part == part; });
        const Bounds box = laid == l.blocks.end() ? Bounds{} : bounds(laid->outline);
        add(made(part.c_str(), "Wall block", block.wood, block.length, block.height, block.depth,
                 "along the wall", box.empty() ? Point{} : box.centre()),
            1);
    }
    for (std::size_t i = 0; i < plan.bars.size(); ++i) {
        const LidBar& bar = plan.bars[i];
        const std::string part = "bar." + std::to_string(i + 1);
        add(made(part.c_str(), "Bar", bar.wood, bar.length, bar.height, bar.width, "along the bar",
                 {bar.x, bar.y}),
            1);
    }
}

}  // namespace

std::vector<CutPiece> cutPieces(const Plan& plan, const Layout& layout)
{
    Pieces out(plan.shop);
    addBox(plan, layout, out);
    addLid(plan, layout, out);
    addStick(plan, layout, out);
    addInside(plan, layout, out);
    return out.take();
}

double nutOverStrings(const Plan& plan)
{
    double thickest = 0;
    for (const GuitarString& string : plan.stringSet)
        thickest = std::max(thickest, string.gauge);
    return thickest / 2;
}

std::vector<Bounds> backingSheets(const Layout& layout)
{
    std::vector<Bounds> out;
    for (const Ring& ring : layout.backing.outline.rings)
        if (signedArea(ring) > 0) out.push_back(bounds(ring));
    return out;
}

}  // namespace lidwright
