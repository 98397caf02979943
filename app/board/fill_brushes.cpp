#include "app/board/fill_brushes.h"

#include <QImage>
#include <QPainter>

namespace lidwright {

namespace {

/// A tile that repeats without a seam, painted by `draw` in logical pixels.
template <typename Draw>
QBrush tile(int width, int height, double ratio, const QColor& ground, const Draw& draw)
{
    QImage image(qMax(1, qRound(width * ratio)), qMax(1, qRound(height * ratio)),
                 QImage::Format_ARGB32_Premultiplied);
    image.fill(ground);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(image.width() / double(width), image.height() / double(height));
    draw(painter);
    painter.end();
    QBrush brush(image);
    // One image pixel per device pixel: the painter's own scale is taken back here, which also keeps the fast
    // path.
    brush.setTransform(QTransform::fromScale(double(width) / image.width(), double(height) / image.height()));
    return brush;
}

QBrush hatch(const QColor& ground, const QColor& line, double ratio, bool both)
{
    constexpr int kSide = 7;
    return tile(kSide, kSide, ratio, ground, [&](QPainter& painter) {
        painter.setPen(QPen(line, 1.0));
        for (const int shift : {-kSide, 0, kSide}) {
            painter.drawLine(QPointF(shift - 1, kSide + 1), QPointF(shift + kSide + 1, -1));
            if (both) painter.drawLine(QPointF(shift - 1, -1), QPointF(shift + kSide + 1, kSide + 1));
        }
    });
}

}  // namespace

FillBrushes::FillBrushes(const SheetColours& colours, double deviceRatio)
    : m_colours(colours), m_ratio(deviceRatio)
{}

const QBrush& FillBrushes::of(FillKind kind)
{
    const auto found = m_made.find(kind);
    if (found != m_made.end()) return found->second;
    return m_made.emplace(kind, make(kind)).first->second;
}

QBrush FillBrushes::make(FillKind kind) const
{
    const PaperTheme& t = m_colours.theme;
    const QColor ground = fillColour(t, kind);
    switch (kind) {
        case FillKind::WoodEnd:
            return hatch(ground, m_colours.endGrain, m_ratio, false);
        case FillKind::Engraved:
            return hatch(ground, m_colours.hatch, m_ratio, false);
        case FillKind::Backing:
            return hatch(ground, t.narrow, m_ratio, true);
        case FillKind::Warning: {
            QColor faint = ground;
            faint.setAlpha(40);
            return hatch(faint, ground, m_ratio, false);
        }
        case FillKind::Paper:
        case FillKind::Wood:
        case FillKind::WoodAcross:
        case FillKind::CutThrough:
        case FillKind::Bridge:
        case FillKind::Fretboard:
        case FillKind::Block:
            break;
    }
    return ground;
}

}  // namespace lidwright
