#include "app/style/palette.h"

#include "app/style/contrast.h"

namespace lidwright {
namespace {

// Colours are ours. Those that carry a meaning start from Okabe and Ito's set (from memory), which people
// with any common colour vision tell apart; tests hold the contrast of every pair that meets on the sheet.
const PaperTheme kLight = [] {
    PaperTheme t;
    t.paper = QColor(0xfd, 0xfc, 0xf8);
    t.text = QColor(0x1b, 0x1f, 0x22);
    t.visible = QColor(0x16, 0x1a, 0x1d);
    t.narrow = QColor(0x45, 0x4c, 0x52);
    t.hidden = QColor(0x54, 0x5b, 0x61);
    t.centre = QColor(0x00, 0x5a, 0x8e);
    t.phantom = QColor(0x5c, 0x55, 0x70);
    t.cut = QColor(0xa8, 0x35, 0x00);
    t.mark = QColor(0x45, 0x4c, 0x52);
    t.wood = QColor(0xf1, 0xe3, 0xc8);
    t.woodAcross = QColor(0xea, 0xd7, 0xb4);
    t.woodEnd = QColor(0xe2, 0xca, 0xa0);
    t.grain = QColor(0xdc, 0xc4, 0x98);
    t.cutThrough = QColor(0x3a, 0x38, 0x36);
    t.engraved = QColor(0xcf, 0xb3, 0x82);
    t.bridge = QColor(0xc9, 0xa8, 0x84);
    t.fretboard = QColor(0xb9, 0x9a, 0x7c);
    t.backing = QColor(0xc6, 0xd2, 0xd8);
    t.block = QColor(0xdf, 0xcf, 0xa9);
    t.warning = QColor(0xb0, 0x3a, 0x00);
    t.selection = QColor(0x00, 0x5f, 0x99);
    t.handle = QColor(0x00, 0x5f, 0x99);
    return t;
}();

const PaperTheme kDark = [] {
    PaperTheme t;
    t.paper = QColor(0x1f, 0x23, 0x27);
    t.text = QColor(0xec, 0xed, 0xea);
    t.visible = QColor(0xf2, 0xf2, 0xee);
    t.narrow = QColor(0xb9, 0xc0, 0xc6);
    t.hidden = QColor(0xb0, 0xb7, 0xbd);
    t.centre = QColor(0x6f, 0xc0, 0xee);
    t.phantom = QColor(0xc4, 0xb6, 0xda);
    t.cut = QColor(0xff, 0xa2, 0x66);
    t.mark = QColor(0xb9, 0xc0, 0xc6);
    t.wood = QColor(0x4a, 0x40, 0x30);
    t.woodAcross = QColor(0x50, 0x44, 0x31);
    t.woodEnd = QColor(0x57, 0x49, 0x33);
    t.grain = QColor(0x5c, 0x4f, 0x3a);
    t.cutThrough = QColor(0x0c, 0x0d, 0x0e);
    t.engraved = QColor(0x5f, 0x4c, 0x2c);
    t.bridge = QColor(0x5e, 0x4a, 0x36);
    t.fretboard = QColor(0x52, 0x40, 0x30);
    t.backing = QColor(0x36, 0x43, 0x4a);
    t.block = QColor(0x4c, 0x44, 0x2e);
    t.warning = QColor(0xff, 0xa2, 0x66);
    t.selection = QColor(0x8c, 0xd0, 0xff);
    t.handle = QColor(0x8c, 0xd0, 0xff);
    return t;
}();

}  // namespace

bool isDark(const QPalette& palette)
{
    return palette.color(QPalette::Window).lightness() < palette.color(QPalette::WindowText).lightness();
}

QPalette withReadableHighlight(QPalette palette)
{
    const QColor base = palette.color(QPalette::Active, QPalette::Base);
    const QColor window = palette.color(QPalette::Active, QPalette::Window);
    const QColor wanted = isDark(palette) ? QColor(0x7c, 0xc4, 0xf2) : QColor(0x00, 0x5f, 0x99);
    const QColor highlight = withContrast(wanted, {base, window}, kMarkContrast);
    const QColor text = withContrast(base, {highlight}, kTextContrast);
    for (const QPalette::ColorGroup group : {QPalette::Active, QPalette::Inactive}) {
        palette.setColor(group, QPalette::Highlight, highlight);
        palette.setColor(group, QPalette::HighlightedText, text);
    }
    return palette;
}

QColor quietText(const QPalette& palette)
{
    const QColor text = palette.color(QPalette::Active, QPalette::WindowText);
    const QColor window = palette.color(QPalette::Active, QPalette::Window);
    return withContrast(mixed(text, window, 0.35), {window, palette.color(QPalette::Active, QPalette::Base)},
                        kTextContrast);
}

const PaperTheme& paperTheme(bool dark)
{
    return dark ? kDark : kLight;
}

QColor lineColour(const PaperTheme& theme, LineKind kind)
{
    switch (kind) {
        case LineKind::Visible:
        case LineKind::Frame:
            return theme.visible;
        case LineKind::Narrow:
            return theme.narrow;
        case LineKind::Hidden:
            return theme.hidden;
        case LineKind::Centre:
            return theme.centre;
        case LineKind::Phantom:
            return theme.phantom;
        case LineKind::Cut:
            return theme.cut;
        case LineKind::Mark:
            return theme.mark;
    }
    return theme.visible;
}

QColor fillColour(const PaperTheme& theme, FillKind kind)
{
    switch (kind) {
        case FillKind::Paper:
            return theme.paper;
        case FillKind::Wood:
            return theme.wood;
        case FillKind::WoodAcross:
            return theme.woodAcross;
        case FillKind::WoodEnd:
            return theme.woodEnd;
        case FillKind::CutThrough:
            return theme.cutThrough;
        case FillKind::Engraved:
            return theme.engraved;
        case FillKind::Bridge:
            return theme.bridge;
        case FillKind::Fretboard:
            return theme.fretboard;
        case FillKind::Backing:
            return theme.backing;
        case FillKind::Block:
            return theme.block;
        case FillKind::Warning:
            return theme.warning;
    }
    return theme.paper;
}

}  // namespace lidwright
