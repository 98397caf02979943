#include "core/materials/material.h"

#include "core/materials/panel.h"
#include "core/materials/wood.h"

namespace lidwright {

std::string materialName(std::string_view id)
{
    if (const Wood* wood = findWood(id)) return wood->name;
    if (const Panel* panel = findPanel(id)) return panel->name;
    return std::string(id);
}

double materialDensity_kg_m3(std::string_view id)
{
    if (const Wood* wood = findWood(id)) return wood->density_kg_m3;
    if (const Panel* panel = findPanel(id)) return panel->density_kg_m3;
    return 0;
}

}  // namespace lidwright
