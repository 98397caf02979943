#pragma once

#include "core/checks/handles.h"

/// What drags are made of. Private to core/checks.
namespace lidwright {

/// A coordinate that attracts, and what it is called.
struct Magnet {
    double at;
    const char* name;
};

struct Snapped {
    double value;
    const char* name = "";
};

/// The nearest magnet in reach, otherwise the value on its round step counted from `origin`.
Snapped snapTo(double value, const std::vector<Magnet>& magnets, double origin, const Snap& snap);

/// What a drag of one handle works with.
struct DragJob {
    const Plan& plan;
    const Layout& l;
    const Handle& handle;
    Point to;
    const Snap& snap;
};

/// A value pressed into its parameter's hard range, so that a drag stops there instead of being refused.
double inRange(const Plan& plan, const std::string& key, double value);

Drag oneKey(const DragJob& job, const std::string& key, double value, const char* snapped,
            const char* pattern);

/// Moves a thing on the lid by the way from where the handle stood; its place is in these two keys, where it
/// is now in x and y.
Drag freeMove(const DragJob& job, const std::string& keyX, const std::string& keyY, double x, double y,
              const char* pattern);

/// The grips of what is in the box: relief, hollows, bars, wiring.
void addInsideHandles(std::vector<Handle>& out, const Plan& plan, const Layout& layout, View view);
/// The drag of such a grip; empty edits for others.
Drag dragInside(const DragJob& job);

}  // namespace lidwright
