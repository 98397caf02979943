#include "core/drawing/board_views.h"
#include "core/drawing/ring_split.h"

namespace lidwright {
namespace {

/// Where dimensions along the neck take hold of the drawing, on the side on which they stand.
class Stations {
public:
    Stations(const ViewPen& pen, const ViewInput& in) : m_in(in)
    {
        const bool sheetUp = in.stationSide == Side::Above;
        const bool upsideDown = pen.placed().view == View::Under;
        m_treble = sheetUp != upsideDown;
    }

    Point onNeck(double x) const
    {
        const double half = m_in.plan.neck.width / 2;
        return {x, m_in.layout.neckY + (m_treble ? half : -half)};
    }
    /// The corner of a rectangular box's wall; where a free outline crosses the neck.
    Point onWall(double x) const
    {
        if (m_in.plan.box.shape != BoxShape::Rectangle) return onNeck(x);
        const double y = m_in.plan.box.width / 2 - m_in.plan.box.cornerRadius;
        return {x, m_treble ? y : -y};
    }
    /// The saddle's end; a slanted saddle is measured where it crosses the neck's centre line.
    Point onSaddle() const
    {
        if (m_in.plan.bridge.angle != 0) return {m_in.layout.saddleX, m_in.layout.neckY};
        return m_treble ? m_in.layout.saddleTo : m_in.layout.saddleFrom;
    }
    Point extreme(bool tail) const
    {
        return farthest(m_in.layout.boxOuter, {tail ? 1.0 : -1.0, 0}, {0, m_treble ? 1.0 : -1.0});
    }

private:
    const ViewInput& m_in;
    bool m_treble = true;
};

}  // namespace

void drawStationDimensions(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    if (l.boxOuter.empty()) return;
    const Stations at(pen, in);
    const Bounds soFar = pen.extent();
    DimensionRows rows(in.stationSide, in.stationSide == Side::Above ? soFar.maxY : soFar.minY, pen.paper());
    const Point headEnd = at.onNeck(l.headEndX);
    const Point nut = at.onNeck(l.nutX);
    const Point tailEnd = at.onNeck(l.tailEndX);
    const Point headWall = at.onWall(l.headWall.outerX);
    const Point tailWall = at.onWall(l.tailWall.outerX);
    const Point saddle = at.onSaddle();

    pen.row(rows, "neck", headEnd, nut, "neck.head-length");
    pen.row(rows, "scale", nut, headWall, "scale.nut-to-box");
    pen.row(rows, "box", at.extreme(false), at.extreme(true), "box.length");
    pen.row(rows, "neck", at.onWall(l.tailWall.outerMaxX), tailEnd, "neck.tail-length");
    pen.row(rows, "scale", saddle, tailWall, "scale.saddle-to-tail");
    // Where both ends stand as measured, or a setback is in it, the distance is not the scale length.
    const bool byScale = in.plan.scale.hold != ScaleHold::BothAsMeasured && in.plan.scale.setback == 0;
    pen.row(rows, "scale", nut, saddle, byScale ? "scale.length" : "");
    if (in.plan.fretboard.end == FretboardEnd::OverLid)
        pen.row(rows, "fretboard", headWall, at.onNeck(l.fretboardEndX), "fretboard.over-lid");
    pen.row(rows, "neck", headEnd, tailEnd, "");
    pen.add(rows);
}

}  // namespace lidwright
