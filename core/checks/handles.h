#pragma once

#include "core/checks/bridge_lane.h"

#include <string>
#include <vector>

namespace lidwright {

enum class HandleMotion { AlongX, AlongY, Free, Turn, Scale, AlongZ };

/// A thing that can be taken hold of on the board.
struct Handle {
    std::string id;     ///< "nut", "saddle", "box.tail", "art.1.move", "block.2.move" ...
    std::string part;   ///< selected when the handle is taken
    std::string label;  ///< marked English: "Bridge along the neck"
    View view = View::Top;
    Point at;  ///< in the view's plane (top: x,y; section: x,z; ends: y,z)
    HandleMotion motion = HandleMotion::Free;
    /// Grip shown as a mark at `at`; false: the part's own area is the grip.
    bool mark = true;
};

/// All handles of the plan in the given view.
std::vector<Handle> handles(const Plan& plan, const Layout& layout, View view);

/// What holding the pointer near these does while dragging.
struct Snap {
    bool on = true;
    double reach = 2;  ///< mm within which centre line, edges and stations attract
    double step = 1;   ///< round step, mm (or 1/16 in = 1.5875); 0 for none
};

/// The drag of one handle from its start to `to` (view plane, mm): the edits relative to the plan at the
/// start, and what it snapped to.
struct Drag {
    std::vector<Edit> edits;
    std::string snappedTo;  ///< marked English: "centre line", "box edge", or empty
    Sentence says;          ///< "Move bridge %1 toward the tail": undo text and live caption
};
Drag drag(const Plan& start, const Layout& startLayout, const Handle& handle, Point to, const Snap& snap);

/// One arrow-key step of the part by (dx, dy) mm in the view's plane; empty edits where it cannot move so.
Drag nudge(const Plan& plan, const Layout& layout, const std::string& part, View view, Point by);

}  // namespace lidwright
