#pragma once

#include "core/plan/backing_layer.h"

#include <string>
#include <vector>

namespace lidwright {

/// A layer that a hardware shop has on the shelf.
struct StockLayer {
    std::string id;    ///< stable word: "hardware-cloth-4"
    std::string name;  ///< marked English
    BackingLayer layer;
    double openFraction = 0;
    std::string source;
};

/// Wire cloths, then perforated sheets, as the tables in resources/data have them. Cloths whose meshes are
/// not square are given by their wider opening.
std::vector<StockLayer> stockLayers();

}  // namespace lidwright
