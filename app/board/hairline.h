#pragma once

#include "app/board/board_scene.h"
#include "app/board/view_transform.h"

#include <QColor>
#include <QPainter>

#include <optional>

namespace lidwright {

/// What is pointed at, in the frame of the plan: each coordinate that is known.
struct Hairline {
    std::optional<double> x, y, z;

    bool empty() const { return !x && !y && !z; }
    bool operator==(const Hairline&) const = default;
};

/// The coordinates that a point of a view's plane fixes: top x and y, section x and z, ends y and z.
Hairline hairlineAt(View view, Point inView);

/// Draws the hairlines through every view that shows one of the coordinates.
void paintHairline(QPainter& painter, const Hairline& hairline, const BoardScene& scene,
                   const ViewTransform& transform, const QRectF& canvas, const QColor& colour);

}  // namespace lidwright
