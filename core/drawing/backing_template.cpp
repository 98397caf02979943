#include "core/drawing/ring_split.h"
#include "core/drawing/template_parts.h"

#include <algorithm>

namespace lidwright {
namespace {

std::string layerNote(const BackingLayer& layer, const UnitStyle& style)
{
    const auto with = [&](double mm) { return lengthWithUnit(mm, style); };
    switch (layer.kind) {
        case BackingKind::WireCloth:
            return "wire cloth, opening " + with(layer.opening) + ", wire " + with(layer.wire) +
                   (layer.weave == BackingWeave::Woven ? ", woven" : ", welded");
        case BackingKind::Perforated:
            return "perforated sheet " + with(layer.thickness) + " thick, holes " + with(layer.hole) +
                   ", pitch " + with(layer.pitch);
        case BackingKind::Panel:
            break;
    }
    return "thin panel " + with(layer.thickness) + ", its opening " + with(layer.rim) +
           " larger than the artwork all round (dashed)";
}

std::vector<NoteLine> notes(const ViewInput& in)
{
    const UnitStyle& style = in.options.style;
    std::vector<NoteLine> out{{in.plan.sheet.title, 5},
                              {"Backing of the lid, seen from above. Full size.", 3.5}};
    for (std::size_t i = 0; i < in.plan.backingLayers.size(); ++i)
        out.push_back({"Layer " + std::to_string(i + 1) + (i == 0 ? ", against the lid: " : ": ") +
                           layerNote(in.plan.backingLayers[i], style) + ".",
                       2.5});
    out.push_back(
        {"Cut along the unbroken line. Double-dotted: the artwork that it backs; dashed: neck and walls. "
         "All layers have this outline.",
         2.5});
    out.push_back(
        {"Wire ends and sheet edges are sharp: gloves and eye protection; follow the glue maker's "
         "instructions.",
         2.5});
    return out;
}

void drawPanelOpenings(ViewPen& pen, const ViewInput& in)
{
    for (const BackingLayer& layer : in.plan.backingLayers) {
        if (layer.kind != BackingKind::Panel) continue;
        std::vector<Region> cuts;
        for (const PlacedArtPtr& art : in.layout.art)
            cuts.push_back(offset(art->cut, layer.rim, 0.05));
        for (const Ring& ring : intersect(unite(cuts), in.layout.backing.outline).rings)
            pen.outline("backing-fit", "openings", ring, LineKind::Hidden);
    }
}

}  // namespace

Sheet backingTemplate(const ViewInput& in)
{
    const Layout& l = in.layout;
    const std::string title = in.plan.sheet.title + ": backing";
    ViewPen pen(View::Top, false, in);
    const Bounds outline = bounds(l.backing.outline);
    if (outline.empty()) {
        addNotes(
            pen, 0,
            {{in.plan.sheet.title, 5}, {"The plan has no backing: no layer, or no artwork to back.", 3.5}});
        return templateOf(pen, title);
    }
    for (std::size_t i = 0; i < l.art.size(); ++i)
        for (const Ring& ring : l.art[i]->cut.rings)
            pen.outline("art." + std::to_string(i + 1), "artwork", ring, LineKind::Phantom);
    drawPanelOpenings(pen, in);
    const double reach = 6;
    const Ring about =
        rectangleRing(outline.centre(), outline.width() + 2 * reach, outline.height() + 2 * reach);
    for (const Polyline& line : splitByRing(l.neckOutline, about).inside)
        pen.line("neck", "hidden", line, LineKind::Hidden);
    for (const Ring& ring : l.backing.outline.rings)
        pen.outline("backing-fit", "outline", ring, LineKind::Cut);
    addNotes(pen, outline.minX, wrapped(notes(in), notesWidth(outline.width())));
    return templateOf(pen, title);
}

}  // namespace lidwright
