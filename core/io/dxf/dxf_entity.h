#pragma once

#include "core/io/dxf/dxf_document.h"
#include "core/io/dxf/dxf_groups.h"

namespace lidwright::dxf {

/// The groups of one entity, asked by code. A number that cannot be read makes bad() true.
class EntityGroups {
public:
    explicit EntityGroups(const std::vector<Group>& groups) : m_groups(groups) {}

    const std::vector<Group>& all() const { return m_groups; }
    std::optional<std::string_view> text(int code) const;
    double real(int code, double otherwise = 0);
    int whole(int code, int otherwise = 0);
    /// Group codes code, code + 10.
    Point point(int code) { return {real(code), real(code + 10)}; }
    /// The number in a group that was found in all().
    double numberIn(const Group& group);
    bool bad() const { return m_bad; }

private:
    const std::vector<Group>& m_groups;
    bool m_bad = false;
};

/// A direction in space.
struct Direction {
    double x = 0, y = 0, z = 1;
};
/// The extrusion direction, of length 1; straight up where none is given or it has no length.
Direction normalOf(EntityGroups& groups);
/// From the entity's own plane, `elevation` above the drawing's, to the drawing seen from above (DXF
/// Reference: "Arbitrary Axis Algorithm").
Transform planeOf(Direction normal, double elevation);

/// The shape that an entity of this type describes; Foreign where it cannot be drawn. A POLYLINE comes
/// without its vertices. Sets plane and tilted; layer and colours are the caller's.
Entity readShape(std::string_view type, EntityGroups& groups);

}  // namespace lidwright::dxf
