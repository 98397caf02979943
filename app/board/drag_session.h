#pragma once

#include "core/checks/handles.h"

#include <optional>

namespace lidwright {

class PlanDocument;

/// One drag of a handle from press to release. What the way means comes from core; the document turns the
/// whole way into one undo step.
class DragSession {
public:
    explicit DragSession(PlanDocument& document) : m_document(document) {}

    /// Takes hold of the handle at the pressed point of its view's plane (mm). Nothing changes yet.
    void press(const Handle& handle, Point at);
    bool pressed() const { return m_handle.has_value(); }
    /// True once the first move() has begun the drag.
    bool dragging() const { return m_dragging; }
    const Handle& handle() const { return *m_handle; }

    /// The pointer is at `at` of the view's plane: previews the change in the document.
    void move(Point at, const Snap& snap);
    /// What the last move() did.
    const Drag& last() const { return m_last; }

    /// Ends the hold; a drag becomes one undo step.
    void release();
    /// Ends the hold; a drag is taken back.
    void cancel();

private:
    PlanDocument& m_document;
    std::optional<Handle> m_handle;
    Point m_pressedAt;
    bool m_dragging = false;
    Drag m_last;
};

}  // namespace lidwright
