#include "app/board/drag_session.h"

#include "app/document/plan_document.h"

namespace lidwright {

void DragSession::press(const Handle& handle, Point at)
{
    m_handle = handle;
    m_pressedAt = at;
    m_dragging = false;
    m_last = {};
}

void DragSession::move(Point at, const Snap& snap)
{
    if (!m_handle) return;
    if (!m_dragging) {
        m_document.beginDrag();
        m_dragging = true;
    }
    // Somebody else (an edit in a form, an undo) may have ended the drag in the document.
    if (!m_document.dragging()) {
        m_handle.reset();
        m_dragging = false;
        return;
    }
    // The grip keeps its distance from the pointer, so that nothing jumps at the first move.
    const Point to = m_handle->at + (at - m_pressedAt);
    m_last = drag(m_document.dragStartPlan(), m_document.dragStartLayout(), *m_handle, to, snap);
    m_document.previewDrag(m_last);
}

void DragSession::release()
{
    const bool wasDragging = m_dragging;
    m_handle.reset();
    m_dragging = false;
    if (wasDragging && m_document.dragging()) m_document.endDrag();
}

void DragSession::cancel()
{
    const bool wasDragging = m_dragging;
    m_handle.reset();
    m_dragging = false;
    if (wasDragging && m_document.dragging()) m_document.cancelDrag();
}

}  // namespace lidwright
