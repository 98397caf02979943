#include "app/studies/plot_face.h"
#include "app/style/contrast.h"
#include "app/style/palette.h"

#include <QFontInfo>

#include <algorithm>
#include <cmath>

// A plot on a painter: screen, picture or scalable drawing.

namespace lidwright {

namespace {

constexpr double kDot = 3.4;          // px, half the width of a dot
constexpr double kBetweenDots = 110;  // px along a line without dots of its own

struct Colours {
    QColor ground, text, quiet, frame, grid;
    QColor series[4];
};

Colours coloursOf(const QPalette& palette)
{
    Colours c;
    c.ground = palette.color(QPalette::Active, QPalette::Base);
    c.text = palette.color(QPalette::Active, QPalette::Text);
    c.quiet = withContrast(mixed(c.text, c.ground, 0.3), {c.ground}, kTextContrast);
    c.frame = withContrast(mixed(c.text, c.ground, 0.45), {c.ground}, kMarkContrast);
    c.grid = mixed(c.text, c.ground, 0.86);
    const PaperTheme& theme = paperTheme(isDark(palette));
    const QColor wanted[] = {c.text, theme.selection, theme.cut, theme.phantom};
    for (std::size_t i = 0; i < 4; ++i)
        c.series[i] = withContrast(wanted[i], {c.ground}, kMarkContrast);
    return c;
}

/// Pattern and dot of a series differ from those of the 15 others next to it.
QPen seriesPen(std::size_t series, const Colours& colours, bool thin)
{
    QPen pen(colours.series[series % 4], thin ? 0.9 : 1.7);
    pen.setCapStyle(Qt::FlatCap);
    switch ((series + series / 4) % 4) {
        case 1:
            pen.setDashPattern({7, 3});
            break;
        case 2:
            pen.setDashPattern({1.5, 2});
            break;
        case 3:
            pen.setDashPattern({9, 2.5, 1.5, 2.5, 1.5, 2.5});
            break;
        default:
            break;
    }
    return pen;
}

/// Where dots of two series fall on one place, both are seen: the square lies within the ring.
void paintDot(QPainter& painter, QPointF at, std::size_t series, const Colours& colours)
{
    const QColor& colour = colours.series[series % 4];
    painter.setPen(QPen(colour, 1.5));
    switch (series % 4) {
        case 0:
            painter.setBrush(colours.ground);
            painter.drawEllipse(at, kDot + 0.6, kDot + 0.6);
            break;
        case 1:
            painter.fillRect(QRectF(at.x() - kDot + 0.6, at.y() - kDot + 0.6, 2 * kDot - 1.2, 2 * kDot - 1.2),
                             colour);
            break;
        case 2:
            painter.drawPolygon(QPolygonF({at + QPointF(0, -kDot - 1.6), at + QPointF(kDot + 1.2, kDot - 0.6),
                                           at + QPointF(-kDot - 1.2, kDot - 0.6)}));
            break;
        default:
            painter.drawLine(at + QPointF(-kDot, -kDot), at + QPointF(kDot, kDot));
            painter.drawLine(at + QPointF(-kDot, kDot), at + QPointF(kDot, -kDot));
            break;
    }
    painter.setBrush(Qt::NoBrush);
}

/// The line in painter units, one run for every stretch without a gap. Where many points fall on one pixel
/// their least and most are kept, which looks the same and is painted in bounded time.
std::vector<QPolygonF> runsOf(const StudySeries& series, const PlotFace& face)
{
    std::vector<QPolygonF> runs(1);
    const bool many = static_cast<double>(series.points.size()) > 6 * face.frame.width();
    int column = 0;
    qsizetype inColumn = 0;
    for (const Point& p : series.points) {
        if (!plottable(p)) {
            if (!runs.back().isEmpty()) runs.emplace_back();
            inColumn = 0;
            continue;
        }
        const QPointF at = face.place(p);
        QPolygonF& run = runs.back();
        const int here = static_cast<int>(std::floor(at.x()));
        if (run.isEmpty() || here != column) inColumn = 0;
        column = here;
        if (!many || inColumn < 3) {
            run << at;
            ++inColumn;
            continue;
        }
        // The last three of a column are its least, its most and its end.
        QPointF* last = &run[run.size() - 3];
        const auto lower = [](QPointF a, QPointF b) { return a.y() < b.y(); };
        const auto [least, most] = std::minmax({last[0], last[1], last[2], at}, lower);
        last[0] = least;
        last[1] = most;
        last[2] = at;
    }
    return runs;
}

void paintSeries(QPainter& painter, const StudyPlot& plot, const PlotFace& face, std::size_t index,
                 const Colours& colours)
{
    const StudySeries& series = plot.series[index];
    const std::vector<QPolygonF> runs = runsOf(series, face);
    painter.setPen(seriesPen(index, colours, series.dots));
    for (const QPolygonF& run : runs)
        if (run.size() > 1) painter.drawPolyline(run);
    // A line's own dots stand apart and begin elsewhere for each, so that those of lines that run together
    // show.
    const double apart = series.dots ? 2 * kDot - 1 : kBetweenDots;
    double wanted =
        series.dots ? -HUGE_VAL : face.frame.left() + apart * (0.25 + 0.25 * static_cast<double>(index % 4));
    for (const QPolygonF& run : runs) {
        if (run.size() == 1 && !series.dots) paintDot(painter, run[0], index, colours);
        for (qsizetype i = 0; i < run.size(); ++i) {
            const QPointF at = run[i];
            if (series.dots) {
                paintDot(painter, at, index, colours);
                continue;
            }
            if (i == 0) continue;
            const QPointF before = run[i - 1];
            while (wanted <= at.x()) {
                if (wanted >= before.x() && at.x() > before.x()) {
                    const double share = (wanted - before.x()) / (at.x() - before.x());
                    paintDot(painter, before + share * (at - before), index, colours);
                }
                wanted += apart;
            }
        }
    }
}

void paintGrid(QPainter& painter, const PlotFace& face, const Colours& colours)
{
    const QRectF& frame = face.frame;
    painter.setPen(QPen(colours.grid, 1));
    for (const AxisTick& tick : face.across.ticks) {
        const double x = face.place({tick.at, 0}).x();
        painter.drawLine(QPointF(x, frame.top()), QPointF(x, frame.bottom()));
    }
    for (const AxisTick& tick : face.up.ticks) {
        const double y = face.place({0, tick.at}).y();
        painter.drawLine(QPointF(frame.left(), y), QPointF(frame.right(), y));
    }
    painter.setPen(QPen(colours.frame, 1));
    painter.drawRect(frame);
    for (const AxisTick& tick : face.across.ticks) {
        const double x = face.place({tick.at, 0}).x();
        painter.drawLine(QPointF(x, frame.bottom()), QPointF(x, frame.bottom() + 3));
    }
    if (!face.bare && face.up.low <= 0 && face.up.high >= 0) {
        const double y = face.place({0, 0}).y();
        painter.setPen(QPen(colours.text, 1.3));
        painter.drawLine(QPointF(frame.left(), y), QPointF(frame.right(), y));
    }
    QPen guide(colours.quiet, 1);
    guide.setDashPattern({10, 3, 1.5, 3});  // as a centre line
    guide.setCapStyle(Qt::FlatCap);
    painter.setPen(guide);
    for (const PlotFace::Guide& line : face.guides)
        painter.drawLine(QPointF(line.x, frame.bottom()), QPointF(line.x, line.top));
}

void paintLabels(QPainter& painter, const PlotFace& face, const QFont& font, const Colours& colours)
{
    for (const PlotLabel& label : face.labels) {
        QFont own = font;
        own.setBold(label.kind == PlotLabel::Kind::Title);
        painter.setFont(own);
        painter.setPen(label.kind == PlotLabel::Kind::Guide || label.kind == PlotLabel::Kind::Bare
                           ? colours.quiet
                           : colours.text);
        constexpr int kFlags = Qt::AlignCenter | Qt::TextSingleLine | Qt::TextDontClip;
        if (!label.upright) {
            painter.drawText(label.box, kFlags, label.words);
            continue;
        }
        painter.save();
        painter.translate(label.box.center());
        painter.rotate(-90);
        const QSizeF size = label.box.size().transposed();
        painter.drawText(QRectF(QPointF(-size.width() / 2, -size.height() / 2), size), kFlags, label.words);
        painter.restore();
    }
}

}  // namespace

void paintPlot(QPainter& painter, const StudyPlot& plot, const QRectF& box, const PlotLook& look)
{
    PlotLook own = look;
    // A size in points would hang on what the painter paints on.
    own.font.setPixelSize(std::max(1, QFontInfo(look.font).pixelSize()));
    paintPlot(painter, plot, box, own, layOutPlot(plot, box, own));
}

void paintPlot(QPainter& painter, const StudyPlot& plot, const QRectF& box, const PlotLook& look,
               const PlotFace& face)
{
    const Colours colours = coloursOf(look.palette);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(box, colours.ground);
    if (!face.frame.isEmpty()) {
        paintGrid(painter, face, colours);
        for (std::size_t i = 0; i < plot.series.size(); ++i)
            paintSeries(painter, plot, face, i, colours);
        for (const PlotFace::Key& key : face.keys) {
            const double y = key.swatch.center().y();
            painter.setPen(seriesPen(key.series, colours, plot.series[key.series].dots));
            painter.drawLine(QPointF(key.swatch.left(), y), QPointF(key.swatch.right(), y));
            paintDot(painter, key.swatch.center(), key.series, colours);
        }
        paintLabels(painter, face, look.font, colours);
    }
    painter.restore();
}

}  // namespace lidwright
