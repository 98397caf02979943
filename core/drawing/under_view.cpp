#include "core/drawing/board_views.h"
#include "core/drawing/inside_views.h"
#include "core/drawing/ring_split.h"
#include "core/drawing/sheet_furniture.h"

namespace lidwright {

void drawUnderView(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    const bool letIn = in.plan.lid.seat == LidSeat::LetIn;
    // The land that the walls are glued to stands out by its own grain; the rest of the underside lies in it.
    pen.area("lid", "lid", l.lidOutline, letIn ? lidWood(in.plan) : FillKind::Backing, LineKind::Visible);
    if (!letIn) pen.area("box", "box", l.boxInner, lidWood(in.plan), LineKind::Narrow);
    drawCutOuts(pen, in);
    drawAddedWood(pen, l);
    for (const Ring& ring : l.backing.outline.rings)
        pen.area("backing-fit", "backing", ring, FillKind::Backing, LineKind::Visible);
    if (!l.backing.outline.empty())
        for (std::size_t i = 0; i < l.art.size(); ++i)
            for (const Ring& ring : l.art[i]->cut.rings)
                pen.outline("art." + std::to_string(i + 1), "hidden", ring, LineKind::Hidden);
    pen.outline("bridge", "bridge", l.bridgeOutline, LineKind::Hidden);
    pen.line("bridge", "bridge", {l.saddleFrom, l.saddleTo}, LineKind::Hidden);
    for (const BlockLayout& block : l.blocks)
        pen.area(block.part, "blocks", block.outline, FillKind::Block, LineKind::Visible);
    drawInsideUnder(pen, in);
    pen.area("neck", "neck", l.neckOutline, FillKind::Wood, LineKind::Visible);
    drawInsideOverNeck(pen, in);
    drawHeadUnder(pen, in);
    drawFixingsAndTies(pen, in);

    // What the neck covers from this side.
    const double half = in.plan.neck.width / 2;
    const Bounds strip{l.headEndX, l.neckY - half, l.tailEndX, l.neckY + half};
    for (std::size_t i = 0; i < l.art.size(); ++i)
        if (l.art[i] && l.art[i]->bounds.touches(strip))
            for (const Ring& ring : l.art[i]->cut.rings)
                if (bounds(ring).touches(strip))
                    pen.outline("art." + std::to_string(i + 1), "hidden", ring, LineKind::Hidden);

    const double over = pen.paper(kCentreOverrun);
    pen.line("neck", "centre", {{l.headEndX - over, l.neckY}, {l.tailEndX + over, l.neckY}},
             LineKind::Centre);
    drawStationDimensions(pen, in);
    drawSelectedDimensions(pen, in);

    const double clear = pen.paper(12);
    // The view's y runs down the sheet.
    const Point label =
        in.stationSide == Side::Above
            ? Point{l.headEndX, std::max(l.body.maxY, l.neckY + half + clear)}
            : Point{l.headEndX, std::min(l.body.minY, l.neckY - half - clear) + pen.paper(3.5)};
    pen.text("", "words", label, "Underside", 3.5, Anchor::Left);
}

}  // namespace lidwright
