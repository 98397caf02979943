#include "app/board/sheet_colours.h"

#include "app/style/contrast.h"

namespace lidwright {

SheetColours boardColours(const QPalette& palette)
{
    const bool dark = isDark(palette);
    SheetColours c;
    c.theme = paperTheme(dark);
    const PaperTheme& t = c.theme;
    c.table = mixed(t.paper, dark ? Qt::black : QColor(0x6e, 0x6a, 0x60), dark ? 0.4 : 0.22);
    c.paperEdge = mixed(t.paper, t.narrow, 0.6);
    c.endGrain = mixed(t.woodEnd, t.grain, dark ? 0.9 : 0.6);
    c.endGrain = mixed(c.endGrain, t.narrow, 0.12);
    c.hatch = withContrast(t.engraved, {t.engraved, t.wood}, kMarkContrast);
    c.hairline = withContrast(dark ? QColor(0xff, 0x8a, 0x3c) : QColor(0xd5, 0x5e, 0x00), {t.paper, t.wood},
                              kMarkContrast);
    return c;
}

SheetColours printColours()
{
    SheetColours c;
    const QColor none(255, 255, 255, 0);
    PaperTheme& t = c.theme;
    t.paper = Qt::white;
    t.text = t.visible = t.narrow = t.hidden = t.centre = t.phantom = t.cut = t.mark = Qt::black;
    t.wood = t.woodAcross = t.woodEnd = t.grain = none;
    t.bridge = t.fretboard = t.backing = t.block = none;
    t.cutThrough = QColor(0xe6, 0xe6, 0xe6);
    t.engraved = t.warning = none;
    t.selection = t.handle = Qt::black;
    c.table = Qt::white;
    c.paperEdge = c.endGrain = none;
    c.hatch = QColor(0x70, 0x70, 0x70);
    c.hairline = Qt::black;
    return c;
}

}  // namespace lidwright
