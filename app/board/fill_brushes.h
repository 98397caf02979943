#pragma once

#include "app/board/sheet_colours.h"

#include "core/drawing/sheet.h"

#include <QBrush>

#include <map>

namespace lidwright {

/// The brushes that show on the screen what an area is: plain tints, and hatches as textures that cost no
/// more than a tint, keep their density at any zoom and are made when first asked for. Grain along a face is
/// no texture: core's fillPattern() draws it.
class FillBrushes {
public:
    /// `deviceRatio`: device pixels per logical pixel of what is painted on.
    FillBrushes(const SheetColours& colours, double deviceRatio);

    const QBrush& of(FillKind kind);

private:
    QBrush make(FillKind kind) const;

    SheetColours m_colours;
    double m_ratio;
    std::map<FillKind, QBrush> m_made;
};

}  // namespace lidwright
