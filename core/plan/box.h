#pragma once

#include "core/geometry/point.h"

#include <memory>
#include <string>

namespace lidwright {

enum class BoxShape { Rectangle, Outline };

/// What holds the base to the walls.
enum class BaseFastening { Glued, Screwed, Nailed };

/// A closed outline read from a drawing, as its own file had it (mm, y up). Immutable and shared.
struct FreeOutline {
    Ring ring;
    std::string fileName;

    bool operator==(const FreeOutline&) const = default;
};

/// The body without its lid. Outside measures.
struct Box {
    BoxShape shape = BoxShape::Rectangle;
    double length = 330;      ///< along x, mm
    double width = 230;       ///< along y, mm
    double cornerRadius = 4;  ///< of the outside corners, rectangle only
    double height = 64;   ///< underside of the base to the top edge of the walls; a lid laid on adds to it
    double endWall = 8;   ///< thickness of the two walls that the neck crosses
    double sideWall = 8;  ///< thickness of the others; of the whole wall of a free outline
    double base = 4;      ///< thickness of the base
    std::string material = "spanish-cedar";  ///< of walls and base, id of a wood or panel in core/materials
    BaseFastening baseFastening = BaseFastening::Glued;
    double baseSpacing = 80;                     ///< between its screws or nails at most, mm
    std::shared_ptr<const FreeOutline> outline;  ///< shape of a free box, stretched to length and width

    bool operator==(const Box& o) const
    {
        return shape == o.shape && length == o.length && width == o.width && cornerRadius == o.cornerRadius &&
               height == o.height && endWall == o.endWall && sideWall == o.sideWall && base == o.base &&
               material == o.material && baseFastening == o.baseFastening && baseSpacing == o.baseSpacing &&
               (outline == o.outline || (outline && o.outline && *outline == *o.outline));
    }
};

}  // namespace lidwright
