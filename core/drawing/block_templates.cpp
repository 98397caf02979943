#include "core/base/length_text.h"
#include "core/base/units.h"
#include "core/drawing/lettering.h"
#include "core/drawing/sheet_furniture.h"
#include "core/drawing/template_parts.h"
#include "core/materials/material.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

// mm.
constexpr double kSheet = 180;      // pieces are set beside one another up to this width
constexpr double kBetween = 8;      // pieces, and a piece's two faces
constexpr double kLeastWords = 78;  // width that a piece's words have at least
constexpr double kMostGrain = 40;   // length of a grain arrow

/// One block or bar, or several alike, lying as it is drawn: `length` to the right, `depth` up in its face,
/// `height` up in its side.
struct Piece {
    std::string part;
    std::string name;
    std::size_t count = 1;
    std::string wood;
    std::string where;
    double length = 0, depth = 0, height = 0;
    bool uprightGrain = false;  ///< along its height; otherwise along its length
};

/// "60 mm to the treble side of the centre line".
std::string aside(double y, const UnitStyle& style)
{
    constexpr double kNothing = 0.005;
    if (std::abs(y) < kNothing) return "on the box's centre line";
    return lengthWithUnit(std::abs(y), style) + " to the " + (y > 0 ? "treble" : "bass") +
           " side of the box's centre line";
}

std::string onWall(const WallBlock& block, const UnitStyle& style)
{
    switch (block.wall) {
        case BoxWall::HeadEnd:
            return "On the head-end wall, its middle " + aside(block.at, style);
        case BoxWall::TailEnd:
            return "On the tail-end wall, its middle " + aside(block.at, style);
        case BoxWall::BassSide:
        case BoxWall::TrebleSide:
            break;
    }
    return std::string(block.wall == BoxWall::BassSide ? "On the bass side wall"
                                                       : "On the treble side wall") +
           ", its middle " + lengthWithUnit(block.at, style) + " from the head-end wall's outer face";
}

std::string underLid(const LidBar& bar, const UnitStyle& style)
{
    const double across = std::abs(std::remainder(bar.turn - 90, 180));
    const double along = std::abs(std::remainder(bar.turn, 180));
    constexpr double kStraight = 1e-6;  // degrees
    std::string lies = "turned " + decimalNumber(bar.turn, 1, style.decimalMark) +
                       "\xC2\xB0 from the neck's direction, counter-clockwise seen from above";
    if (across < kStraight) lies = "across the neck";
    if (along < kStraight) lies = "along the neck";
    return "Under the lid, its middle " + lengthWithUnit(bar.x, style) +
           " from the head-end wall's outer face, " + aside(bar.y, style) + "; " + lies;
}

std::vector<Piece> piecesOf(const ViewInput& in)
{
    const Plan& plan = in.plan;
    const UnitStyle& style = in.options.style;
    std::vector<Piece> out;
    const auto corners =
        std::count_if(in.layout.blocks.begin(), in.layout.blocks.end(),
                      [](const BlockLayout& b) { return b.part == "corner-blocks" && !b.outline.empty(); });
    if (corners > 0)
        out.push_back(
            {"corner-blocks", "Corner block", static_cast<std::size_t>(corners), plan.cornerBlocks.wood,
             "In the inside corners, against the lid; the first measure along the side wall",
             plan.cornerBlocks.alongSide, plan.cornerBlocks.alongEnd, plan.cornerBlocks.height, true});
    for (std::size_t i = 0; i < plan.blocks.size(); ++i) {
        const WallBlock& block = plan.blocks[i];
        const std::string number = std::to_string(i + 1);
        out.push_back({"block." + number, "Block " + number, 1, block.wood,
                       onWall(block, style) + "; against the lid", block.length, block.depth, block.height,
                       false});
    }
    for (std::size_t i = 0; i < plan.bars.size(); ++i) {
        const LidBar& bar = plan.bars[i];
        const std::string number = std::to_string(i + 1);
        out.push_back({"bar." + number, "Bar " + number, 1, bar.wood, underLid(bar, style), bar.length,
                       bar.width, bar.height, false});
    }
    return out;
}

Ring upright(double length, double low, double high)
{
    return {{0, low}, {length, low}, {length, high}, {0, high}};
}

void drawGrain(ViewPen& pen, const Piece& piece, double low, double high, bool side)
{
    const Point middle{piece.length / 2, (low + high) / 2};
    if (!piece.uprightGrain) {
        pen.addAt(middle, grainArrow(piece.part, std::min(kMostGrain, 0.6 * piece.length), 1));
    } else if (side) {
        pen.addAt(middle, turnedUpright(grainArrow(piece.part, std::min(kMostGrain, 0.6 * (high - low)), 1)));
    } else {
        constexpr double height = 2.5;
        for (const char* words : {"end grain", "end"})
            if (textWidth(words, height) + 2 <= piece.length && height + 2 <= high - low) {
                pen.text(piece.part, "grain", middle - Point{0, height / 2}, words, height, Anchor::Middle);
                return;
            }
    }
}

/// The face that the lid lies on, under it the side; above both what it is. The upper left corner of all is
/// at the sheet's (0, 0), the words' first base line some way under it.
std::vector<Element> drawnPiece(const ViewInput& in, const Piece& piece)
{
    ViewPen pen(View::Top, false, in);
    const double faceLow = piece.height + kBetween;
    const double faceHigh = faceLow + piece.depth;
    pen.outline(piece.part, "face", upright(piece.length, faceLow, faceHigh), LineKind::Cut);
    pen.outline(piece.part, "side", upright(piece.length, 0, piece.height), LineKind::Cut);
    drawGrain(pen, piece, faceLow, faceHigh, false);
    drawGrain(pen, piece, 0, piece.height, true);
    DimensionRows below(Side::Below, 0, 1), right(Side::Right, piece.length, 1);
    pen.row(below, piece.part, {0, 0}, {piece.length, 0}, "");
    pen.row(right, piece.part, {piece.length, 0}, {piece.length, piece.height}, "");
    pen.row(right, piece.part, {piece.length, faceLow}, {piece.length, faceHigh}, "");
    pen.add(below);
    pen.add(right);

    std::vector<NoteLine> lines{{piece.name + ": make " + std::to_string(piece.count), 3.5},
                                {materialName(piece.wood), 2.5},
                                {piece.where + ".", 2.5}};
    lines = wrapped(lines, std::clamp(pen.extent().width(), kLeastWords, kMostNotes));
    double height = 0;
    for (const NoteLine& line : lines)
        height += kLinePitch * line.height;
    double y = pen.extent().maxY + 2 + height;
    const double left = std::min(0.0, pen.extent().minX);
    for (const NoteLine& line : lines) {
        y -= kLinePitch * line.height;
        pen.text(piece.part, "words", {left, y}, line.words, line.height, Anchor::Left);
    }
    const Bounds all = pen.extent();
    std::vector<Element> out;
    for (Element& element : pen.take())
        out.push_back(moved(std::move(element), {-all.minX, -all.maxY}));
    return out;
}

}  // namespace

Sheet blockTemplates(const ViewInput& in)
{
    ViewPen pen(View::Top, false, in);
    const std::string title = in.plan.sheet.title + ": blocks and bars";
    const std::vector<Piece> pieces = piecesOf(in);
    double x = 0, y = 0, rowHeight = 0;
    for (const Piece& piece : pieces) {
        std::vector<Element> drawn = drawnPiece(in, piece);
        Bounds size;
        for (const Element& element : drawn)
            size.include(elementBounds(element, 1));
        if (x > 0 && x + size.width() > kSheet) {
            y -= rowHeight + kBetween;
            x = rowHeight = 0;
        }
        pen.addAt({x, y}, std::move(drawn));
        x += size.width() + kBetween;
        rowHeight = std::max(rowHeight, size.height());
    }
    std::vector<NoteLine> notes{{in.plan.sheet.title, 5}, {"Blocks and bars. Full size.", 3.5}};
    if (pieces.empty()) {
        notes.push_back({"The plan has no blocks and no bars.", 3.5});
    } else {
        notes.push_back({unitNote(in.options.style) +
                             ". Of each the face to the lid, under it the side. Grain along the arrows.",
                         2.5});
        notes.push_back(
            {"Saw outside the lines, leave the lines; plane the faces that are glued. Dry fit, then glue.",
             2.5});
        notes.push_back(
            {"Small pieces: saw them off a longer strip, clamped, fingers away from the blade; eye "
             "protection.",
             2.5});
    }
    addNotes(pen, 0, wrapped(notes, kLeastNotes));
    return templateOf(pen, title);
}

}  // namespace lidwright
