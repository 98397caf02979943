#include "app/board/station_rule.h"

#include "app/board/pointer_text.h"
#include "app/board/sheet_colours.h"
#include "app/text/texts.h"

#include "core/base/length_text.h"

#include <QActionGroup>
#include <QContextMenuEvent>
#include <QHelpEvent>
#include <QMenu>
#include <QPainter>
#include <QToolTip>

#include <cmath>

namespace lidwright {

namespace {

constexpr int kRows = 3;
constexpr double kStrip = 16;    // height of the graduated edge, px
constexpr double kSame = 0.005;  // mm: stations nearer than this carry one label

int weightOf(const std::string& id)
{
    // Where room is short, what is measured most often stays.
    if (id == "nut" || id == "saddle") return 4;
    if (id == "head-wall" || id == "tail-wall") return 3;
    if (id == "tail-end" || id == "head-end") return 2;
    return 1;
}

}  // namespace

StationRule::StationRule(QWidget* parent) : QWidget(parent)
{
    setMouseTracking(true);
    setFocusPolicy(Qt::TabFocus);
    setAccessibleName(tr("Station rule"));
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
}

void StationRule::setStations(const std::vector<Station>& stations, const UnitStyle& style)
{
    m_stations = stations;
    m_style = style;
    arrange();
}

void StationRule::setMapping(const NeckMapping& mapping)
{
    if (mapping == m_mapping) return;
    m_mapping = mapping;
    arrange();
}

void StationRule::setSide(Side side)
{
    m_side = side;
    update();
}

void StationRule::setPointer(std::optional<double> x)
{
    if (x == m_pointer) return;
    m_pointer = x;
    update();
}

void StationRule::setZero(Zero zero)
{
    if (zero == m_zero) return;
    m_zero = zero;
    arrange();
    Q_EMIT zeroChanged();
}

double StationRule::zeroX() const
{
    const std::string wanted = m_zero == Zero::Nut ? "nut" : "head-wall";
    for (const Station& s : m_stations)
        if (s.id == wanted) return s.x;
    return 0;
}

QString StationRule::distanceText(double x) const
{
    return QString::fromStdString(formatLength(x - zeroX(), m_style).text);
}

int StationRule::rowHeight() const
{
    return fontMetrics().height() + 2;
}

QSize StationRule::sizeHint() const
{
    return {400, int(kStrip) + kRows * rowHeight() + 3};
}

double StationRule::edgeY() const
{
    return m_side == Side::DrawingAbove ? 0 : height();
}

QRectF StationRule::zeroBox() const
{
    const double width = fontMetrics().horizontalAdvance(tr("0 at the nut")) + 26;
    const double tall = std::max<double>(24, rowHeight() + 4);
    const double y = m_side == Side::DrawingAbove ? height() - tall - 1 : 1;
    return {2, y, width, tall};
}

QRectF StationRule::wordsBox(const Shown& station) const
{
    const double fromEdge = kStrip + station.place.row * rowHeight() + 1;
    const double y = m_side == Side::DrawingAbove ? fromEdge : height() - fromEdge - rowHeight();
    return {station.place.left, y, double(fontMetrics().horizontalAdvance(station.words)),
            double(rowHeight())};
}

void StationRule::arrange()
{
    m_shown.clear();
    std::vector<int> weights;
    for (const Station& s : m_stations) {
        const QString name = shown(s.label);
        if (!m_shown.empty() && std::abs(m_shown.back().x - s.x) < kSame) {
            m_shown.back().words += tr(", %1").arg(name);
            weights.back() = std::max(weights.back(), weightOf(s.id));
            continue;
        }
        m_shown.push_back({s.x, name, {}});
        weights.push_back(weightOf(s.id));
    }
    for (Shown& s : m_shown)
        s.words = tr("%1 %2", "station and its distance").arg(s.words, distanceText(s.x));

    std::vector<LabelWish> wishes;
    const std::size_t n = m_shown.size();
    for (std::size_t i = 0; i < n; ++i) {
        // Sorted by pixel, also where the neck runs to the left.
        const std::size_t k = m_mapping.mirrored ? n - 1 - i : i;
        wishes.push_back({m_mapping.toWidget(m_shown[k].x),
                          double(fontMetrics().horizontalAdvance(m_shown[k].words)), weights[k]});
    }
    const auto places = staggerLabels(wishes, kRows, zeroBox().right() + 6, width() - 4, 10);
    for (std::size_t i = 0; i < n; ++i)
        m_shown[m_mapping.mirrored ? n - 1 - i : i].place = places[i];

    QStringList spokenWords;
    for (const Shown& s : m_shown)
        spokenWords << s.words;
    setAccessibleDescription(spokenWords.join(QStringLiteral("; ")));
    update();
}

void StationRule::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), palette().color(QPalette::Window));
    paintGraduation(painter);
    paintStations(painter);

    // The switch for the zero.
    const QRectF box = zeroBox();
    painter.setPen(
        QPen(palette().color(hasFocus() ? QPalette::Highlight : QPalette::Mid), hasFocus() ? 2 : 1));
    painter.setBrush(palette().color(QPalette::Button));
    painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), 3, 3);
    painter.setPen(palette().color(QPalette::ButtonText));
    painter.drawText(box.adjusted(7, 0, -18, 0), Qt::AlignVCenter | Qt::AlignLeft,
                     m_zero == Zero::Nut ? tr("0 at the nut") : tr("0 at the box"));
    const QPointF tip(box.right() - 11, box.center().y() + 2.5);
    painter.setBrush(palette().color(QPalette::ButtonText));
    painter.setPen(Qt::NoPen);
    painter.drawPolygon(QPolygonF{tip, tip + QPointF(-4, -5), tip + QPointF(4, -5)});

    if (m_pointer) {
        const SheetColours colours = boardColours(palette());
        painter.setPen(QPen(colours.hairline, 1));
        const double x = m_mapping.toWidget(*m_pointer);
        painter.drawLine(QPointF(x, 0), QPointF(x, height()));
        const QString words = pointerLength(*m_pointer - zeroX(), m_style);
        const double wide = fontMetrics().horizontalAdvance(words) + 10;
        const double y = m_side == Side::DrawingAbove ? 0 : height() - kStrip - 1;
        QRectF flag(x + 4, y, wide, kStrip + 1);
        if (flag.right() > width()) flag.moveRight(x - 4);
        painter.setPen(QPen(colours.hairline, 1));
        painter.setBrush(palette().color(QPalette::Base));
        painter.drawRect(flag);
        painter.setPen(palette().color(QPalette::Text));
        painter.drawText(flag, Qt::AlignCenter, words);
    }
}

void StationRule::paintGraduation(QPainter& painter) const
{
    const double towards = m_side == Side::DrawingAbove ? 1 : -1;
    painter.setPen(QPen(palette().color(QPalette::WindowText), 1));
    painter.drawLine(QPointF(0, edgeY() + towards * 0.5), QPointF(width(), edgeY() + towards * 0.5));

    const bool inches = m_style.unit != LengthUnit::Millimetre;
    // Fine, middle and coarse divisions; the finest that still stand 5 px apart.
    static constexpr double kMetric[][3] = {
        {1, 5, 10}, {5, 10, 50}, {10, 50, 100}, {50, 100, 500}, {100, 500, 1000}};
    static constexpr double kInch[][3] = {{1.0 / 16, 0.25, 1}, {0.125, 0.5, 1}, {0.25, 1, 2},
                                          {0.5, 1, 6},         {1, 6, 12},      {6, 12, 36}};
    const double unit = inches ? kMillimetresPerInch : 1;
    const double(*table)[3] = inches ? kInch : kMetric;
    const int entries = inches ? int(std::size(kInch)) : int(std::size(kMetric));
    int pick = 0;
    while (pick + 1 < entries && table[pick][0] * unit * m_mapping.scale < 5)
        ++pick;
    const double* division = table[pick];
    const double zero = zeroX();
    const double a = (m_mapping.toNeck(0) - zero) / unit, b = (m_mapping.toNeck(width()) - zero) / unit;
    const auto first = static_cast<long long>(std::floor(std::min(a, b) / division[0]));
    const auto last = static_cast<long long>(std::ceil(std::max(a, b) / division[0]));
    if (last - first > 4000) return;
    const auto every = [&](int level) { return std::llround(division[level] / division[0]); };
    for (long long i = first; i <= last; ++i) {
        const double x = m_mapping.toWidget(zero + double(i) * division[0] * unit);
        const double tall = i % every(2) == 0 ? 10 : i % every(1) == 0 ? 7 : 4;
        painter.drawLine(QPointF(x, edgeY()), QPointF(x, edgeY() + towards * tall));
    }
}

void StationRule::paintStations(QPainter& painter) const
{
    const double towards = m_side == Side::DrawingAbove ? 1 : -1;
    const QColor strong = palette().color(QPalette::WindowText);
    for (const Shown& s : m_shown) {
        const double x = m_mapping.toWidget(s.x);
        if (x < -1 || x > width() + 1) continue;
        // The station itself: a wedge on the edge, and a leader down to its words.
        painter.setPen(Qt::NoPen);
        painter.setBrush(strong);
        const QPointF foot(x, edgeY() + towards);
        painter.drawPolygon(
            QPolygonF{foot, foot + QPointF(-4, towards * 11), foot + QPointF(4, towards * 11)});
        if (!s.place.shown) continue;
        const QRectF words = wordsBox(s);
        painter.setPen(QPen(strong, 1));
        const double end = m_side == Side::DrawingAbove ? words.bottom() - 3 : words.top() + 3;
        painter.drawLine(QPointF(x, edgeY() + towards * 11), QPointF(x, end));
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(words, Qt::AlignVCenter | Qt::AlignLeft | Qt::TextDontClip, s.words);
    }
}

void StationRule::resizeEvent(QResizeEvent*)
{
    arrange();
}

void StationRule::mouseMoveEvent(QMouseEvent* event)
{
    if (zeroBox().contains(event->position())) {
        setCursor(Qt::PointingHandCursor);
        Q_EMIT pointerLeft();
        return;
    }
    unsetCursor();
    // Near a station the pointer means the station.
    double x = m_mapping.toNeck(event->position().x());
    double nearest = 5;
    for (const Shown& s : m_shown) {
        if (s.place.shown && wordsBox(s).contains(event->position())) {
            x = s.x;
            break;
        }
        const double away = std::abs(m_mapping.toWidget(s.x) - event->position().x());
        if (away > nearest) continue;
        nearest = away;
        x = s.x;
    }
    Q_EMIT pointedAt(x);
}

void StationRule::mouseReleaseEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton && zeroBox().contains(event->position()))
        setZero(m_zero == Zero::Nut ? Zero::Box : Zero::Nut);
}

void StationRule::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Space || event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        setZero(m_zero == Zero::Nut ? Zero::Box : Zero::Nut);
    else
        QWidget::keyPressEvent(event);
}

void StationRule::leaveEvent(QEvent*)
{
    Q_EMIT pointerLeft();
}

void StationRule::contextMenuEvent(QContextMenuEvent* event)
{
    QMenu menu(this);
    auto* group = new QActionGroup(&menu);
    const auto add = [&](const QString& text, Zero zero) {
        QAction* action = menu.addAction(text);
        action->setCheckable(true);
        action->setChecked(m_zero == zero);
        group->addAction(action);
        connect(action, &QAction::triggered, this, [this, zero] { setZero(zero); });
    };
    add(tr("Measure from the &nut"), Zero::Nut);
    add(tr("Measure from the &box's head end"), Zero::Box);
    menu.exec(event->globalPos());
}

void StationRule::changeEvent(QEvent* event)
{
    if (event->type() == QEvent::FontChange) {
        updateGeometry();
        arrange();
    }
    QWidget::changeEvent(event);
}

bool StationRule::event(QEvent* event)
{
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        QString words;
        if (zeroBox().contains(help->pos())) {
            words = tr("Measure from the nut or from the box's head end");
        } else {
            for (const Shown& s : m_shown)
                if (std::abs(m_mapping.toWidget(s.x) - help->pos().x()) <= 6) words = s.words;
        }
        if (words.isEmpty())
            QToolTip::hideText();
        else
            QToolTip::showText(help->globalPos(), words, this);
        return true;
    }
    return QWidget::event(event);
}

}  // namespace lidwright
