#include "core/solvers/laminated_section.h"

#include "core/base/length_text.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

namespace lidwright {
namespace {

std::optional<Error> layersFault(const std::vector<SectionLayer>& layers)
{
    if (layers.empty() || layers.size() > kMostLayers)
        return Error{"the section has no layer or too many", "section layers",
                     "give 1 to " + std::to_string(kMostLayers)};
    struct Quantity {
        const char* name;
        double value, low, high;
    };
    for (std::size_t i = 0; i < layers.size(); ++i)
        for (const Quantity& q : {Quantity{"width", layers[i].width, 1e-3, 1e4},
                                  Quantity{"thickness", layers[i].thickness, 1e-3, 1e4},
                                  Quantity{"Young's modulus", layers[i].modulus_MPa, 1, 1e7},
                                  Quantity{"density", layers[i].density_kg_m3, 0, 3e4},
                                  Quantity{"strength", layers[i].strength_MPa.value_or(1), 1e-6, 1e6}})
            if (!(q.value >= q.low && q.value <= q.high))
                return Error{std::string("its ") + q.name + " is out of range or no number",
                             "section layer " + std::to_string(i + 1),
                             "give from " + exactNumber(q.low) + " to " + exactNumber(q.high)};
    return std::nullopt;
}

}  // namespace

BeamSection LaminatedSection::beamSection(double underside) const
{
    BeamSection section;
    section.bending_Nmm2 = bending_Nmm2;
    section.axial_N = axial_N;
    section.top = thickness - neutralAxis;
    section.bottom = neutralAxis;
    section.topModulus_MPa = layers.empty() ? 0 : layers.back().modulus_MPa;
    section.bottomModulus_MPa = layers.empty() ? 0 : layers.front().modulus_MPa;
    section.mass_kg_m = mass_kg_m;
    section.axis = underside + neutralAxis;
    return section;
}

Result<LaminatedSection> laminatedSection(const std::vector<SectionLayer>& layers)
{
    if (auto fault = layersFault(layers)) return *fault;
    LaminatedSection section;
    section.layers = layers;
    double first = 0;  // moment of E A about the underside
    for (const SectionLayer& layer : layers) {
        const double area = layer.width * layer.thickness;
        section.axial_N += layer.modulus_MPa * area;
        first += layer.modulus_MPa * area * (section.thickness + layer.thickness / 2);
        section.mass_kg_m += layer.density_kg_m3 * area * 1e-6;  // mm2 to m2
        section.thickness += layer.thickness;
    }
    section.neutralAxis = first / section.axial_N;
    double under = 0;
    for (const SectionLayer& layer : layers) {
        const double arm = under + layer.thickness / 2 - section.neutralAxis;
        section.bending_Nmm2 += layer.modulus_MPa * layer.width * layer.thickness *
                                (layer.thickness * layer.thickness / 12 + arm * arm);
        under += layer.thickness;
    }
    return section;
}

std::vector<LayerStress> layerStresses(const LaminatedSection& section, double moment_Nmm, double axial_N)
{
    std::vector<LayerStress> stresses;
    double under = 0;
    for (const SectionLayer& layer : section.layers) {
        const auto at = [&](double z) {
            return layer.modulus_MPa * (axial_N / section.axial_N -
                                        moment_Nmm * (z - section.neutralAxis) / section.bending_Nmm2);
        };
        LayerStress stress;
        stress.bottom_MPa = at(under);
        stress.top_MPa = at(under + layer.thickness);
        if (layer.strength_MPa) {
            const double most = std::max(std::abs(stress.bottom_MPa), std::abs(stress.top_MPa));
            stress.factorOfSafety =
                most > 0 ? *layer.strength_MPa / most : std::numeric_limits<double>::infinity();
        }
        stresses.push_back(stress);
        under += layer.thickness;
    }
    return stresses;
}

Result<std::vector<BeamPiece>> taperedPieces(double length, const SectionAt& start, const SectionAt& end,
                                             int parts)
{
    if (!(length > 0) || !std::isfinite(length) || parts < 1 || parts > static_cast<int>(kMostBeamParts))
        return Error{"the length is not above 0 or the number of parts out of range", "tapered stretch",
                     "give a length in mm and 1 to " + std::to_string(kMostBeamParts) + " parts"};
    if (start.layers.size() != end.layers.size())
        return Error{"the stretch has not as many layers at its end as at its start", "tapered stretch",
                     "divide it where a layer begins or ends"};
    if (auto fault = layersFault(start.layers)) return *fault;
    if (auto fault = layersFault(end.layers)) return *fault;
    std::vector<BeamSection> sections;
    for (int k = 0; k <= parts; ++k) {
        const double t = static_cast<double>(k) / parts;
        std::vector<SectionLayer> layers = start.layers;
        for (std::size_t i = 0; i < layers.size(); ++i) {
            layers[i].width = std::lerp(start.layers[i].width, end.layers[i].width, t);
            layers[i].thickness = std::lerp(start.layers[i].thickness, end.layers[i].thickness, t);
        }
        const Result<LaminatedSection> section = laminatedSection(layers);
        if (!section) return section.error();
        sections.push_back(section->beamSection(std::lerp(start.underside, end.underside, t)));
    }
    std::vector<BeamPiece> pieces;
    for (int k = 0; k < parts; ++k) {
        const auto at = static_cast<std::size_t>(k);
        pieces.push_back({length / parts, sections[at], sections[at + 1]});
    }
    return pieces;
}

}  // namespace lidwright
