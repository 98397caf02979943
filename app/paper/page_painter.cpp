#include "app/paper/page_painter.h"

#include <QPageSize>

namespace lidwright {

namespace {

// Dark enough to find, light enough that nobody cuts to it: 3.9:1 on white.
const QColor kFurnitureGrey(0x80, 0x80, 0x80);
const QColor kWordsGrey(0x55, 0x55, 0x55);
// Black with little alpha: what lies below stays as dark as it is.
const QColor kWasteTint(0, 0, 0, 20);

SheetColours furnitureColours()
{
    SheetColours colours = printColours();
    colours.theme.mark = colours.theme.hidden = colours.theme.narrow = kFurnitureGrey;
    colours.theme.text = kWordsGrey;
    return colours;
}

/// The content's box in painter units.
QRectF boxOf(const Bounds& b, double dotsPerMm)
{
    return {b.minX * dotsPerMm, -b.maxY * dotsPerMm, b.width() * dotsPerMm, b.height() * dotsPerMm};
}

}  // namespace

void paintPage(QPainter& painter, const PaperPage& page, double dotsPerMm, Surface surface)
{
    painter.save();
    // Now the painter's origin is the content's; y still points down, which paintSheet() knows.
    painter.translate(page.margin * dotsPerMm, (page.height - page.margin) * dotsPerMm);
    painter.scale(page.correctionX, page.correctionY);

    PaintLook look;
    look.surface = surface;
    look.scale = dotsPerMm;
    // Grey beside a drawing, so that nobody takes it for a line to cut; black where nothing else is.
    look.colours = page.drawing ? furnitureColours() : printColours();
    if (page.drawing) {
        painter.save();
        painter.setClipRect(boxOf(page.window, dotsPerMm));
        PaintLook onSheet = look;
        onSheet.origin = Point{} - page.offset;
        // A line's width and a text's height reach beyond their points.
        onSheet.visible = Bounds{page.window.minX - page.offset.x, page.window.minY - page.offset.y,
                                 page.window.maxX - page.offset.x, page.window.maxY - page.offset.y}
                              .grown(5);
        if (page.checks) paintSheet(painter, *page.checks, onSheet);
        onSheet.colours = printColours();
        paintSheet(painter, *page.drawing, onSheet);
        painter.restore();
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(kWasteTint);
    for (const Bounds& band : page.waste)
        painter.drawRect(boxOf(band, dotsPerMm));
    paintSheet(painter, page.furniture, look);
    painter.restore();
}

QPageLayout pageLayoutOf(const PaperPage& page)
{
    // Qt wants the size upright and the orientation apart, or it turns the page's name and its size
    // differently.
    const bool lying = page.width > page.height;
    const QSizeF upright(std::min(page.width, page.height), std::max(page.width, page.height));
    const QPageSize size(upright, QPageSize::Millimeter, {}, QPageSize::FuzzyMatch);
    return {size, lying ? QPageLayout::Landscape : QPageLayout::Portrait, QMarginsF(),
            QPageLayout::Millimeter};
}

}  // namespace lidwright
