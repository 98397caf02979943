#include "core/materials/open_area.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>

namespace lidwright {
namespace {

struct Size {
    const char* name;
    double value;
};

/// Sizes from 1 um to 1 km, densities likewise: within, nothing overflows or vanishes.
std::optional<Error> sizeFault(const char* where, std::initializer_list<Size> sizes)
{
    for (const Size& size : sizes)
        if (!(size.value >= 1e-3 && size.value <= 1e6))
            return Error{std::string("the ") + size.name + " is not above 0 or out of all measure", where,
                         "give it in millimetres, a density in kg/m3"};
    return std::nullopt;
}

std::optional<Error> shapeFault(const WireCloth& cloth)
{
    if (auto error = sizeFault(
            "wire cloth", {{"pitch", cloth.pitchX}, {"pitch", cloth.pitchY}, {"wire diameter", cloth.wire}}))
        return error;
    if (cloth.wire >= std::min(cloth.pitchX, cloth.pitchY))
        return Error{"the wires leave no opening", "wire cloth", "give a thinner wire or a longer pitch"};
    return std::nullopt;
}

std::optional<Error> shapeFault(const PerforatedSheet& sheet)
{
    if (auto error = sizeFault("perforated sheet", {{"hole", sheet.hole}, {"pitch", sheet.pitch}}))
        return error;
    if (sheet.hole >= sheet.pitch)
        return Error{"the holes touch one another", "perforated sheet",
                     "give a smaller hole or a longer pitch"};
    return std::nullopt;
}

/// A wire's length over the straight way, over and under wires that stand `pitch` apart.
double crimp(double wire, double pitch)
{
    const double slope = kPi * wire / pitch;
    return 1 + slope * slope / 16;
}

struct LayerValues {
    double open = 1, thickness = 0, weight_kg_m2 = 0;
};

Result<LayerValues> layerValues(const WireCloth& cloth)
{
    const Result<double> open = openFraction(cloth), weight = areaWeight_kg_m2(cloth);
    if (!open) return open.error();
    if (!weight) return weight.error();
    return LayerValues{*open, clothThickness(cloth), *weight};
}

Result<LayerValues> layerValues(const PerforatedSheet& sheet)
{
    const Result<double> open = openFraction(sheet), weight = areaWeight_kg_m2(sheet);
    if (!open) return open.error();
    if (!weight) return weight.error();
    return LayerValues{*open, sheet.thickness, *weight};
}

Result<LayerValues> layerValues(const OpenPanel& panel)
{
    if (const auto error =
            sizeFault("panel", {{"thickness", panel.thickness}, {"density", panel.density_kg_m3}}))
        return *error;
    return LayerValues{1, panel.thickness, panel.thickness * 1e-3 * panel.density_kg_m3};
}

}  // namespace

Result<double> openFraction(const WireCloth& cloth)
{
    if (const auto error = shapeFault(cloth)) return *error;
    return (1 - cloth.wire / cloth.pitchX) * (1 - cloth.wire / cloth.pitchY);
}

Result<double> openFraction(const PerforatedSheet& sheet)
{
    if (const auto error = shapeFault(sheet)) return *error;
    const double ratio = sheet.hole / sheet.pitch;
    switch (sheet.pattern) {
        case HolePattern::RoundStaggered:
            return kPi / (2 * std::sqrt(3.0)) * ratio * ratio;
        case HolePattern::RoundSquare:
            return kPi / 4 * ratio * ratio;
        case HolePattern::Square:
            return ratio * ratio;
    }
    return Error{"the pattern of holes is unknown", "perforated sheet", "choose one of the patterns"};
}

double clothThickness(const WireCloth& cloth)
{
    return 2 * cloth.wire;
}

Result<double> areaWeight_kg_m2(const WireCloth& cloth)
{
    if (const auto error = shapeFault(cloth)) return *error;
    if (const auto error = sizeFault("wire cloth", {{"density", cloth.density_kg_m3}})) return *error;
    const double section_m2 = kPi / 4 * cloth.wire * cloth.wire * 1e-6;
    // Wires pitchX apart run along y and cross those that stand pitchY apart, and the other way round.
    const double along = (cloth.woven ? crimp(cloth.wire, cloth.pitchY) : 1) * 1e3 / cloth.pitchX;
    const double across = (cloth.woven ? crimp(cloth.wire, cloth.pitchX) : 1) * 1e3 / cloth.pitchY;
    return (along + across) * section_m2 * cloth.density_kg_m3;
}

Result<double> areaWeight_kg_m2(const PerforatedSheet& sheet)
{
    const Result<double> open = openFraction(sheet);
    if (!open) return open;
    if (const auto error =
            sizeFault("perforated sheet", {{"thickness", sheet.thickness}, {"density", sheet.density_kg_m3}}))
        return *error;
    return sheet.thickness * 1e-3 * sheet.density_kg_m3 * (1 - *open);
}

Result<StackOpening> stackOpening(const std::vector<StackLayer>& layers)
{
    StackOpening stack;
    double covered = 0;
    for (std::size_t i = 0; i < layers.size(); ++i) {
        const Result<LayerValues> layer =
            std::visit([](const auto& each) { return layerValues(each); }, layers[i]);
        if (!layer) {
            Error error = layer.error();
            error.where = "layer " + std::to_string(i + 1) + ", " + error.where;
            return error;
        }
        stack.estimate *= layer->open;
        covered += 1 - layer->open;
        stack.highest = std::min(stack.highest, layer->open);
        stack.thickness += layer->thickness;
        stack.areaWeight_kg_m2 += layer->weight_kg_m2;
    }
    stack.lowest = std::max(0.0, 1 - covered);
    return stack;
}

double roundHoleDiameter(double area_mm2)
{
    return area_mm2 > 0 ? 2 * std::sqrt(area_mm2 / kPi) : 0;
}

}  // namespace lidwright
