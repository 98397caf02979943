#include "app/board/sheet_painter.h"

#include "app/board/fill_brushes.h"
#include "app/text/texts.h"

#include "core/drawing/fill_pattern.h"

#include <QFontMetricsF>

#include <algorithm>

namespace lidwright {

namespace {

template <class... F>
struct Overloaded : F... {
    using F::operator()...;
};
template <class... F>
Overloaded(F...) -> Overloaded<F...>;

class SheetPainting {
public:
    SheetPainting(QPainter& painter, const PaintLook& look)
        : m_painter(painter),
          m_look(look),
          m_brushes(look.colours, look.deviceRatio),
          m_visible(look.visible.empty() ? look.visible : look.visible.grown(4 / look.scale))
    {}

    void paint(const Element& element)
    {
        std::visit(Overloaded{[&](const Stroke& s) { paintStroke(s); }, [&](const Fill& f) { paintFill(f); },
                              [&](const Text& t) { paintText(t); },
                              [&](const Dimension& d) {
                                  for (const Element& e : dimensionElements(d, element.part, m_look.paper))
                                      paint(e);
                              }},
                   element.what);
    }

private:
    bool outside(const std::vector<Point>& points) const
    {
        return !m_visible.empty() && !bounds(points).touches(m_visible);
    }

    void paintFill(const Fill& fill)
    {
        if (fill.ring.size() < 3 || outside(fill.ring)) return;
        const bool printed = m_look.surface == Surface::Printer;
        QColor tint = fillColour(m_look.colours.theme, fill.kind);
        // What a warning lies on stays seen.
        if (fill.kind == FillKind::Warning && tint.alpha() > 0) tint.setAlpha(40);
        if (!printed || tint.alpha() > 0) {
            m_painter.setPen(Qt::NoPen);
            m_painter.setBrush(printed ? QBrush(tint) : m_brushes.of(fill.kind));
            // Hatches lie still on the sheet while it is panned.
            m_painter.setBrushOrigin(m_look.place({0, 0}));
            m_painter.drawPolygon(placed(fill.ring, m_look), Qt::OddEvenFill);
        }
        paintPattern(fill);
    }

    void paintPattern(const Fill& fill)
    {
        const bool along = fill.kind == FillKind::Wood || fill.kind == FillKind::WoodAcross;
        const bool printed = m_look.surface == Surface::Printer;
        // On the screen hatches are textures already.
        if (!along && !printed) return;
        const QColor colour = along ? m_look.colours.theme.grain : m_look.colours.hatch;
        if (colour.alpha() == 0) return;
        const double width = printed ? patternLineWidth(fill.kind) * m_look.paperUnit() : 0;
        m_painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::FlatCap));
        m_painter.setBrush(Qt::NoBrush);
        const double paper = along && m_look.grainPaper > 0 ? m_look.grainPaper : m_look.paper;
        for (const Polyline& line : fillPattern(fill.ring, fill.kind, paper))
            if (!outside(line)) m_painter.drawPolyline(placed(line, m_look));
    }

    QPen penOf(const Stroke& stroke) const
    {
        QPen pen(lineColour(m_look.colours.theme, stroke.kind));
        pen.setCapStyle(Qt::FlatCap);
        pen.setJoinStyle(Qt::RoundJoin);
        double width = lineWidth(stroke.kind) * m_look.paperUnit();
        if (m_look.surface == Surface::Screen) {
            width = std::clamp(width, 1.0, 3.0);
            if (stroke.points.size() > kWidePenLimit) width = 0;
        }
        pen.setWidthF(width);
        const std::vector<double> pattern = dashPattern(stroke.kind);
        if (pattern.size() >= 2) {
            QVector<qreal> dashes;
            // Qt counts dashes in pen widths.
            const double unit = m_look.paperUnit() / std::max(width, 1e-9);
            const double least = m_look.surface == Surface::Screen ? 1.0 : 1e-3;
            for (const double d : pattern)
                dashes << std::max(d * (width > 0 ? unit : m_look.paperUnit()), least);
            if (dashes.size() % 2) dashes << dashes.back();
            pen.setDashPattern(dashes);
        }
        return pen;
    }

    void paintStroke(const Stroke& stroke)
    {
        if (stroke.points.size() < 2 || outside(stroke.points)) return;
        m_painter.setPen(penOf(stroke));
        m_painter.setBrush(Qt::NoBrush);
        const QPolygonF line = placed(stroke.points, m_look);
        if (stroke.closed)
            m_painter.drawPolygon(line);
        else
            m_painter.drawPolyline(line);
    }

    void paintText(const Text& text)
    {
        if (text.words.empty()) return;
        const LaidText laid = layOut(text, m_look);
        if (!m_visible.empty()) {
            const QRectF box = laid.outline().boundingRect();
            const QRectF shownBox(m_look.place({m_visible.minX, m_visible.maxY}),
                                  m_look.place({m_visible.maxX, m_visible.minY}));
            if (!box.intersects(shownBox)) return;
        }
        m_painter.save();
        m_painter.setTransform(laid.place, true);
        if (text.boxed) {
            m_painter.setPen(Qt::NoPen);
            m_painter.setBrush(m_look.colours.theme.paper);
            m_painter.drawRect(laid.box);
        }
        m_painter.setPen(m_look.colours.theme.text);
        m_painter.setFont(laid.font);
        m_painter.drawText(QPointF(0, 0), laid.words);
        m_painter.restore();
    }

    QPainter& m_painter;
    const PaintLook& m_look;
    FillBrushes m_brushes;
    Bounds m_visible;
};

/// A font whose capitals are `capHeight` painter units high.
QFont fontOfCapHeight(const QFont& base, double capHeight)
{
    // Measured once at a large size, where hinting does not count.
    QFont probe = base;
    probe.setPixelSize(200);
    const double share = QFontMetricsF(probe).capHeight() / 200;
    QFont font = base;
    font.setPixelSize(std::max(1, qRound(capHeight / (share > 0.1 ? share : 0.72))));
    return font;
}

}  // namespace

QPolygonF placed(const std::vector<Point>& points, const PaintLook& look)
{
    QPolygonF polygon;
    polygon.reserve(qsizetype(points.size()));
    for (const Point& p : points)
        polygon << look.place(p);
    return polygon;
}

LaidText layOut(const Text& text, const PaintLook& look)
{
    LaidText laid;
    laid.words = shown(text.words);
    laid.font = fontOfCapHeight(look.font, std::max(text.height * look.paperUnit(), look.leastCapHeight));
    const QFontMetricsF metrics(laid.font);
    const double width = metrics.horizontalAdvance(laid.words);
    const double left = text.anchor == Anchor::Left ? 0 : text.anchor == Anchor::Right ? -width : -width / 2;
    const double pad = text.boxed ? 0.3 * metrics.capHeight() : 0;
    laid.box =
        QRectF(0, -metrics.capHeight(), width, metrics.capHeight() + (text.boxed ? metrics.descent() : 0));
    laid.box.adjust(-pad, -pad, pad, pad);
    const QPointF at = look.place(text.at);
    laid.place.translate(at.x(), at.y());
    // The sheet turns counter-clockwise with y up; the painter's y points down.
    laid.place.rotate(-text.angle);
    laid.place.translate(left, 0);
    return laid;
}

void paintSheet(QPainter& painter, const Sheet& sheet, const PaintLook& look)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setRenderHint(QPainter::TextAntialiasing);
    SheetPainting painting(painter, look);
    for (const Element& element : sheet.elements)
        painting.paint(element);
    painter.restore();
}

}  // namespace lidwright
