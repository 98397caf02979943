#pragma once

#include "core/drawing/template_parts.h"

namespace lidwright {

/// The holes for wiring in one wall, on its template. The pen's plane is the wall's: the way along it and z.
class WallHoles {
public:
    WallHoles(const ViewInput& in, DevicePlace wall);

    bool any() const { return !m_devices.empty(); }
    /// Each hole to be drilled with its centre mark, its diameter and the part behind it in hidden lines.
    void draw(ViewPen& pen) const;
    /// Middles: along the wall from `from`, and down from the top edge at `corner`.
    void addRows(ViewPen& pen, DimensionRows& below, DimensionRows& beside, Point from, Point corner) const;
    std::vector<NoteLine> notes() const;

private:
    const ViewInput& m_in;
    std::vector<std::size_t> m_devices;  ///< index in Plan::wiring of those with a hole
};

/// Whether that wall has a hole for wiring.
bool wallHasHoles(const Plan& plan, DevicePlace wall);

}  // namespace lidwright
