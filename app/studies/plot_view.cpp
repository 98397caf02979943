#include "app/studies/plot_view.h"

#include "app/text/texts.h"

#include <QAccessible>
#include <QFontInfo>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QToolTip>

#include <cmath>

namespace lidwright {

namespace {

constexpr double kMargin = 5;  // px around the plot, with the ring of the keyboard's focus
constexpr double kReach = 40;  // px at which the pointer reads a point

/// The next point of a series that can be seen, from `from` on in steps of +1 or -1.
std::optional<std::size_t> seenFrom(const StudySeries& series, std::ptrdiff_t from, int step)
{
    const auto size = static_cast<std::ptrdiff_t>(series.points.size());
    for (std::ptrdiff_t i = from; i >= 0 && i < size; i += step) {
        const auto index = static_cast<std::size_t>(i);
        if (plottable(series.points[index])) return index;
    }
    return std::nullopt;
}

/// The point of the series that lies nearest along the axis.
std::optional<std::size_t> seenNear(const StudySeries& series, double x)
{
    std::optional<std::size_t> nearest;
    for (std::size_t i = 0; i < series.points.size(); ++i) {
        const Point p = series.points[i];
        if (!plottable(p)) continue;
        if (!nearest || std::abs(p.x - x) < std::abs(series.points[*nearest].x - x)) nearest = i;
    }
    return nearest;
}

}  // namespace

PlotView::PlotView(QWidget* parent) : QWidget(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void PlotView::setPlot(const StudyPlot& plot, const UnitStyle& style)
{
    if (plot == m_plot && style == m_style) return;
    m_plot = plot;
    m_style = style;
    const bool kept = m_reading && m_reading->series < plot.series.size() &&
                      m_reading->point < plot.series[m_reading->series].points.size() &&
                      plottable(plot.series[m_reading->series].points[m_reading->point]);
    if (!kept) m_reading.reset();
    const QString words = plotWords(plot, style);
    setAccessibleName(shown(plot.title));
    setAccessibleDescription(m_reading ? pointWords(plot, *m_reading, style) : words);
    setToolTip(words);
    update();
}

QRectF PlotView::room() const
{
    return QRectF(rect()).adjusted(kMargin, kMargin, -kMargin, -kMargin);
}

PlotLook PlotView::look() const
{
    PlotLook look{palette(), font(), m_style, false};
    look.font.setPixelSize(std::max(1, QFontInfo(font()).pixelSize()));
    return look;
}

PlotFace PlotView::face() const
{
    return layOutPlot(m_plot, room(), look());
}

QSize PlotView::sizeHint() const
{
    return QSize(30, 14) * fontMetrics().height();
}

QSize PlotView::minimumSizeHint() const
{
    return QSize(16, 8) * fontMetrics().height();
}

bool PlotView::event(QEvent* event)
{
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        const auto at = nearestPoint(m_plot, face(), help->pos(), kReach);
        QToolTip::showText(help->globalPos(), at ? pointWords(m_plot, *at, m_style) : toolTip(), this);
        return true;
    }
    return QWidget::event(event);
}

void PlotView::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    const PlotLook plain = look();
    const PlotFace laid = face();
    painter.fillRect(rect(), plain.palette.color(QPalette::Active, QPalette::Base));
    paintPlot(painter, m_plot, room(), plain, laid);
    if (!hasFocus()) return;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(palette().color(QPalette::Active, QPalette::Highlight), 2));
    painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    if (m_reading && !laid.frame.isEmpty())
        painter.drawEllipse(laid.place(m_plot.series[m_reading->series].points[m_reading->point]), 8, 8);
}

void PlotView::read(std::optional<PlotPoint> at)
{
    if (!at) return;
    m_reading = at;
    update();
    const QString words = pointWords(m_plot, *at, m_style);
    setAccessibleDescription(words);
    QAccessibleEvent changed(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&changed);
    const QPointF place = face().place(m_plot.series[at->series].points[at->point]);
    QToolTip::showText(mapToGlobal(place.toPoint() + QPoint(10, -2 * fontMetrics().height())), words, this);
}

void PlotView::keyPressEvent(QKeyEvent* event)
{
    const auto count = static_cast<std::ptrdiff_t>(m_plot.series.size());
    const auto series = static_cast<std::ptrdiff_t>(m_reading ? m_reading->series : 0);
    // Along one series; where nothing is read as yet, every key begins at one end.
    const auto along = [&](std::ptrdiff_t from, int step) {
        for (std::ptrdiff_t s = series; s < count; ++s) {
            const auto index = static_cast<std::size_t>(s);
            if (const auto point = seenFrom(m_plot.series[index], from, step))
                return read(PlotPoint{index, *point});
            if (m_reading) return;
        }
    };
    const auto across = [&](int step) {
        if (!m_reading) return along(0, 1);
        const double x = m_plot.series[m_reading->series].points[m_reading->point].x;
        for (std::ptrdiff_t s = series + step; s >= 0 && s < count; s += step) {
            const auto index = static_cast<std::size_t>(s);
            if (const auto point = seenNear(m_plot.series[index], x)) return read(PlotPoint{index, *point});
        }
    };
    const auto size =
        m_plot.series.empty()
            ? std::ptrdiff_t{0}
            : static_cast<std::ptrdiff_t>(m_plot.series[static_cast<std::size_t>(series)].points.size());
    const auto point = m_reading ? static_cast<std::ptrdiff_t>(m_reading->point) : std::ptrdiff_t{-1};
    switch (event->key()) {
        case Qt::Key_Right:
            return along(point + 1, 1);
        case Qt::Key_Left:
            return m_reading ? along(point - 1, -1) : along(0, 1);
        case Qt::Key_Home:
            return along(0, 1);
        case Qt::Key_End:
            return along(size - 1, -1);
        case Qt::Key_Down:
            return across(1);
        case Qt::Key_Up:
            return across(-1);
        default:
            QWidget::keyPressEvent(event);
    }
}

void PlotView::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    update();
}

void PlotView::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    QToolTip::hideText();
    update();
}

}  // namespace lidwright
