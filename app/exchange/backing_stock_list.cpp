#include "app/exchange/backing_stock_list.h"

#include "core/materials/backing_stock.h"
#include "core/materials/open_area.h"

#include <algorithm>

namespace lidwright {

std::vector<StockLayer> stockLayers()
{
    std::vector<StockLayer> all;
    for (const StockCloth& stock : wireCloths()) {
        const WireCloth& cloth = stock.cloth;
        BackingLayer layer;
        layer.kind = BackingKind::WireCloth;
        layer.wire = cloth.wire;
        layer.opening = std::max(cloth.pitchX, cloth.pitchY) - cloth.wire;
        layer.weave = cloth.woven ? BackingWeave::Woven : BackingWeave::Welded;
        all.push_back({stock.id, stock.name, layer, openFraction(cloth).value(), stock.source});
    }
    for (const StockSheet& stock : perforatedSheets()) {
        const PerforatedSheet& sheet = stock.sheet;
        BackingLayer layer;
        layer.kind = BackingKind::Perforated;
        layer.holes = sheet.pattern == HolePattern::RoundStaggered ? BackingHoles::RoundStaggered
                      : sheet.pattern == HolePattern::RoundSquare  ? BackingHoles::RoundSquare
                                                                   : BackingHoles::Square;
        layer.hole = sheet.hole;
        layer.pitch = sheet.pitch;
        layer.thickness = sheet.thickness;
        all.push_back({stock.id, stock.name, layer, openFraction(sheet).value(), stock.source});
    }
    return all;
}

}  // namespace lidwright
