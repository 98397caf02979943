#pragma once

#include "core/drawing/template_parts.h"
#include "core/layout/base_fastening.h"

namespace lidwright {

/// Where the base's screws or nails go through one wall of a rectangular box, on that wall's template and in
/// the end views. The pen's plane is the wall's: the way along it and z. Nothing where the base is glued or
/// the box is a free outline.
class BaseMarks {
public:
    BaseMarks(const ViewInput& in, BoxWall wall);

    bool any() const { return !m_along.empty(); }
    /// y of those in an end wall, x of those in a side wall, ascending.
    const std::vector<double>& along() const { return m_along; }
    /// A cross at each, `arm` drawing mm to each side.
    void draw(ViewPen& pen, double arm, LineKind kind) const;
    /// Along the wall from its corner `from` at the lower edge, and up from there.
    void addRows(ViewPen& pen, DimensionRows& below, DimensionRows& beside, Point from, Point besideAt) const;
    std::vector<NoteLine> notes() const;

private:
    const ViewInput& m_in;
    std::vector<double> m_along;
    double m_z = 0;
};

/// The base's fixings in one wall of a rectangular box, as above.
std::vector<double> baseFixingsAlong(const Plan& plan, const Layout& layout, BoxWall wall);

/// Of so many places in a row those that are measured from the corner: all of a few, otherwise the first two
/// and the last; notes say how they go on. Ascending in `along`; `fromHigh`: the corner is at the high end.
std::vector<double> measuredFixings(const std::vector<double>& along, bool fromHigh);

/// "screw" or "nail", in the plural.
const char* baseFixingsName(BaseFastening fastening);

}  // namespace lidwright
