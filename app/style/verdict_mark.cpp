#include "app/style/verdict_mark.h"

#include "app/style/contrast.h"

#include <QIconEngine>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

// Shares of the mark's width.
constexpr double kRingPen = 0.15;
constexpr double kSquareMargin = 0.06;
constexpr double kBarLength = 0.56;
constexpr double kBarWidth = 0.18;
constexpr int kDots = 7;
constexpr double kDotRadius = 0.095;

QColor wantedColour(Verdict verdict)
{
    // Okabe and Ito's bluish green, orange, vermillion and a grey (values from memory).
    switch (verdict) {
        case Verdict::Good:
            return {0x00, 0x9e, 0x73};
        case Verdict::Tight:
            return {0xe6, 0x9f, 0x00};
        case Verdict::Wrong:
            return {0xd5, 0x5e, 0x00};
        case Verdict::Unknown:
            break;
    }
    return {0x80, 0x80, 0x80};
}

QPainterPath ring(const QRectF& box)
{
    const double pen = kRingPen * box.width();
    const QRectF outer = box.adjusted(pen / 4, pen / 4, -pen / 4, -pen / 4);
    QPainterPath path;
    path.setFillRule(Qt::OddEvenFill);
    path.addEllipse(outer);
    path.addEllipse(outer.adjusted(pen, pen, -pen, -pen));
    return path;
}

QPainterPath halfFilledRing(const QRectF& box)
{
    QPainterPath lowerHalf;
    lowerHalf.addRect(QRectF(box.left(), box.center().y(), box.width(), box.height() / 2));
    QPainterPath disc;
    const double pen = kRingPen * box.width();
    disc.addEllipse(box.adjusted(pen / 4, pen / 4, -pen / 4, -pen / 4));
    return ring(box).united(disc.intersected(lowerHalf));
}

QPainterPath barredSquare(const QRectF& box)
{
    const double margin = kSquareMargin * box.width();
    const double length = kBarLength * box.width();
    const double width = kBarWidth * box.width();
    QPainterPath path;
    // The bar is left open, so that it shows whatever ground the mark stands on.
    path.setFillRule(Qt::OddEvenFill);
    path.addRect(box.adjusted(margin, margin, -margin, -margin));
    path.addRect(QRectF(box.center().x() - length / 2, box.center().y() - width / 2, length, width));
    return path;
}

QPainterPath dottedRing(const QRectF& box)
{
    const double dot = kDotRadius * box.width();
    const double radius = box.width() / 2 - dot;
    QPainterPath path;
    for (int i = 0; i < kDots; ++i) {
        const double angle = 2 * kPi * i / kDots - kPi / 2;
        path.addEllipse(box.center() + radius * QPointF(std::cos(angle), std::sin(angle)), dot, dot);
    }
    return path;
}

QPainterPath markShape(const QRectF& box, Verdict verdict)
{
    switch (verdict) {
        case Verdict::Good:
            return ring(box);
        case Verdict::Tight:
            return halfFilledRing(box);
        case Verdict::Wrong:
            return barredSquare(box);
        case Verdict::Unknown:
            break;
    }
    return dottedRing(box);
}

/// Draws the mark fresh at any size and scale.
class MarkEngine final : public QIconEngine {
public:
    MarkEngine(Verdict verdict, const QPalette& palette, int size)
        : m_verdict(verdict), m_palette(palette), m_size(size)
    {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override
    {
        QPalette palette = m_palette;
        if (mode == QIcon::Selected) {
            const QColor ground = palette.color(QPalette::Highlight);
            palette.setColor(QPalette::Base, ground);
            palette.setColor(QPalette::Window, ground);
        }
        paintMark(*painter, rect, m_verdict, palette);
    }
    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override
    {
        QPixmap image(size);
        image.fill(Qt::transparent);
        QPainter painter(&image);
        paint(&painter, image.rect(), mode, state);
        return image;
    }
    QSize actualSize(const QSize& size, QIcon::Mode, QIcon::State) override
    {
        return size.boundedTo({m_size, m_size});
    }
    QIconEngine* clone() const override { return new MarkEngine(*this); }

private:
    Verdict m_verdict;
    QPalette m_palette;
    int m_size;
};

}  // namespace

QColor markColour(Verdict verdict, const QPalette& palette)
{
    return withContrast(wantedColour(verdict),
                        {palette.color(QPalette::Base), palette.color(QPalette::Window)}, kMarkContrast);
}

void paintMark(QPainter& painter, const QRectF& box, Verdict verdict, const QPalette& palette)
{
    const double side = std::min(box.width(), box.height());
    const QRectF square(box.center().x() - side / 2, box.center().y() - side / 2, side, side);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(markColour(verdict, palette));
    painter.drawPath(markShape(square, verdict));
    painter.restore();
}

QIcon markIcon(Verdict verdict, const QPalette& palette, int size)
{
    return QIcon(new MarkEngine(verdict, palette, size));
}

}  // namespace lidwright
