#include "app/studies/plot_face.h"

#include "app/text/texts.h"

#include <QCoreApplication>
#include <QFontMetricsF>

#include <algorithm>
#include <cmath>

namespace lidwright {

namespace {

constexpr double kGap = 4;          // px between texts, and between a text and what it names
constexpr double kSwatch = 44;      // px, length of a key's line
constexpr double kLeastFrame = 24;  // px: below this there is nothing to see
constexpr int kMostTries = 2000;    // to place the guides' names: bounds the time

/// Range of the values, with the guides along the plot.
struct Span {
    double low = HUGE_VAL;
    double high = -HUGE_VAL;
    void include(double value)
    {
        low = std::min(low, value);
        high = std::max(high, value);
    }
};

/// A name beside the upper end of an upright line at x.
struct Flag {
    double x, left, right;
    std::size_t lane;  ///< 0 is next to the frame

    bool fits(const Flag& other) const
    {
        const auto crosses = [](const Flag& line, const Flag& text) {
            return line.lane >= text.lane && line.x > text.left - 1 && line.x < text.right + 1;
        };
        const bool covers = lane == other.lane && left < other.right + kGap && other.left < right + kGap;
        return !covers && !crosses(*this, other) && !crosses(other, *this);
    }
};

/// Looks for places for as many names as there is room for, within a number of tries.
struct FlagSearch {
    struct Pole {
        double x, width;  ///< width 0: without a name
    };
    std::vector<Pole> poles;
    std::vector<std::optional<Flag>> now, best;
    double leftEnd, rightEnd;
    std::size_t lanes, mostNamed;
    int tries;

    void run(std::size_t named)
    {
        if (now.size() == poles.size()) {
            if (best.empty() || named > mostNamed) {
                best = now;
                mostNamed = named;
            }
            return;
        }
        const Pole pole = poles[now.size()];
        const auto hopeless = [&] {
            return !best.empty() && (tries <= 0 || named + poles.size() - now.size() <= mostNamed);
        };
        const auto tried = [&](const std::optional<Flag>& flag) {
            --tries;
            now.push_back(flag);
            run(named + (flag ? 1 : 0));
            now.pop_back();
        };
        for (std::size_t lane = 0; lane < lanes && pole.width > 0; ++lane)
            for (const double left : {pole.x + 3, pole.x - 3 - pole.width}) {
                if (hopeless()) return;
                const Flag flag{pole.x, left, left + pole.width, lane};
                const bool room = flag.left >= leftEnd && flag.right <= rightEnd &&
                                  std::all_of(now.begin(), now.end(),
                                              [&](const auto& other) { return !other || flag.fits(*other); });
                if (room) tried(flag);
            }
        if (!hopeless()) tried(std::nullopt);
    }
};

class Layer {
public:
    Layer(const StudyPlot& plot, const QRectF& box, const PlotLook& look)
        : m_plot(plot), m_box(box), m_look(look), m_metrics(look.font), m_line(std::ceil(m_metrics.height()))
    {
        for (const StudySeries& series : plot.series)
            for (const Point& p : series.points) {
                if (!plottable(p)) continue;
                m_across.include(p.x);
                m_up.include(p.y);
            }
        for (const auto& guide : plot.guides)
            if (plottable(guide.first)) m_across.include(guide.first);
        // Zero is shown when it is not far, so that heights can be compared by eye.
        if (m_up.low > 0 && m_up.low < 0.5 * m_up.high) m_up.low = 0;
        if (m_up.high < 0 && m_up.high > 0.5 * m_up.low) m_up.high = 0;
    }

    PlotFace run()
    {
        // Room for the guides' names and the frame's width hang on one another: a second pass settles it.
        std::size_t lanes = std::min<std::size_t>(m_plot.guides.size(), 2);
        const auto mostLanes =
            static_cast<std::size_t>(std::clamp(0.3 * m_box.height() / m_line - 1, 0.0, 5.0));
        PlotFace face;
        for (int pass = 0; pass < 3; ++pass) {
            face = arranged(std::min(lanes, mostLanes));
            if (face.frame.isEmpty() || face.bare) return face;
            lanes = named(face, pass < 2 ? mostLanes : std::min(lanes, mostLanes));
        }
        return face;
    }

private:
    double width(const QString& words) const { return std::ceil(m_metrics.horizontalAdvance(words)) + 2; }
    QString fitting(const QString& words, double room) const
    {
        return m_metrics.elidedText(words, Qt::ElideRight, std::max(0.0, room - 2));
    }

    /// Everything but the guides.
    PlotFace arranged(std::size_t lanes) const
    {
        PlotFace face;
        face.inset = std::max(6.0, m_line / 2 - 2);
        double top = m_box.top();
        if (m_look.title) top = title(face, top);
        top = keys(face, top);
        if (lanes > 0) top += static_cast<double>(lanes) * m_line;
        top += std::max(2.0, m_line / 2 - face.inset);

        const double below = m_box.bottom() - m_line - 2;  // top of the heading of the axis across
        const double bottom = below - m_line - tickDrop();
        if (bottom - top < kLeastFrame) return {};
        face.up = upScale(bottom - top);
        double widest = 0;
        for (const AxisTick& tick : face.up.ticks)
            widest = std::max(widest, width(tick.words));
        const double left = m_box.left() + m_line + kGap + widest + kGap;
        const double right = m_box.right() - std::max(8.0, m_line / 2);
        if (right - left < kLeastFrame) return {};
        face.frame = QRectF(left, top, right - left, bottom - top);
        if (m_up.low > m_up.high) {
            face.bare = true;
            const QString words =
                fitting(QCoreApplication::translate("PlotWords", "There is nothing to draw."), right - left);
            const double wide = width(words);
            face.labels.push_back({PlotLabel::Kind::Bare, words,
                                   QRectF(face.frame.center().x() - wide / 2,
                                          face.frame.center().y() - m_line / 2, wide, m_line),
                                   false});
            return face;
        }

        for (const AxisTick& tick : face.up.ticks) {
            const double y = face.place({0, tick.at}).y();
            const double wide = width(tick.words);
            face.labels.push_back({PlotLabel::Kind::UpTick, tick.words,
                                   QRectF(left - kGap - wide, y - m_line / 2, wide, m_line), false});
        }
        thinOut(face.labels, PlotLabel::Kind::UpTick);
        acrossTicks(face);
        const QString up = fitting(axisHeading(m_plot.up, face.up), face.frame.height());
        const double tall = std::min(width(up), face.frame.height());
        face.labels.push_back({PlotLabel::Kind::UpHeading, up,
                               QRectF(m_box.left(), face.frame.center().y() - tall / 2, m_line, tall), true});
        const QString across = fitting(axisHeading(m_plot.across, face.across), right - left);
        const double wide = std::min(width(across), right - left);
        face.labels.push_back({PlotLabel::Kind::AcrossHeading, across,
                               QRectF(face.frame.center().x() - wide / 2, below, wide, m_line), false});
        return face;
    }

    /// Between ticks where that wastes little of the height, otherwise as the values have it.
    AxisScale upScale(double height) const
    {
        const int rows = std::clamp(static_cast<int>(height / (1.8 * m_line)), 1, 12);
        const auto scale = [&](bool toTicks) {
            return axisScale(m_up.low, m_up.high, rows, m_plot.up.quantity, m_look.style, toTicks);
        };
        const AxisScale wide = scale(true), close = scale(false);
        const bool wastes = wide.high - wide.low > 1.3 * (close.high - close.low);
        return wastes && close.ticks.size() > 1 ? close : wide;
    }

    double tickDrop() const { return std::max(5.0, m_line / 2 - 3); }

    double title(PlotFace& face, double top) const
    {
        QFont bold = m_look.font;
        bold.setBold(true);
        const QFontMetricsF metrics(bold);
        const QString words = metrics.elidedText(shown(m_plot.title), Qt::ElideRight, m_box.width() - 2);
        if (words.isEmpty()) return top;
        face.labels.push_back(
            {PlotLabel::Kind::Title, words,
             QRectF(m_box.left(), top, std::ceil(metrics.horizontalAdvance(words)) + 2, m_line), false});
        return top + m_line + kGap;
    }

    /// The names of the series in rows; returns where the rest begins.
    double keys(PlotFace& face, double top) const
    {
        const bool alone = m_plot.series.size() == 1 &&
                           (m_plot.series[0].name.empty() || m_plot.series[0].name == m_plot.title ||
                            m_plot.series[0].name == m_plot.up.heading);
        if (m_plot.series.empty() || alone) return top;
        // A very long list would leave no room for the plot itself.
        const double mostBottom = top + std::max(m_line, 0.4 * m_box.height());
        double x = m_box.left();
        for (std::size_t i = 0; i < m_plot.series.size(); ++i) {
            const QString words = fitting(shown(m_plot.series[i].name), m_box.width() - kSwatch - kGap);
            const double wide = width(words);
            if (x > m_box.left() && x + kSwatch + kGap + wide > m_box.right()) {
                x = m_box.left();
                top += m_line;
            }
            if (top + m_line > mostBottom) return top;
            face.keys.push_back({i, QRectF(x, top, kSwatch, m_line)});
            face.labels.push_back(
                {PlotLabel::Kind::Key, words, QRectF(x + kSwatch + kGap, top, wide, m_line), false});
            x += kSwatch + kGap + wide + 3 * kGap;
        }
        return top + m_line + kGap;
    }

    /// As many ticks as have room for their numbers.
    void acrossTicks(PlotFace& face) const
    {
        int most = std::clamp(static_cast<int>(face.frame.width() / (2.5 * m_line)), 1, 20);
        for (;; --most) {
            face.across =
                axisScale(m_across.low, m_across.high, most, m_plot.across.quantity, m_look.style, false);
            std::vector<PlotLabel> labels;
            bool crowded = false;
            for (const AxisTick& tick : face.across.ticks) {
                const double wide = width(tick.words);
                const double x = face.place({tick.at, 0}).x();
                const double left =
                    std::clamp(x - wide / 2, m_box.left(), std::max(m_box.left(), m_box.right() - wide));
                const QRectF box(left, face.frame.bottom() + tickDrop(), wide, m_line);
                crowded = crowded || (!labels.empty() && labels.back().box.right() + kGap > box.left());
                labels.push_back({PlotLabel::Kind::AcrossTick, tick.words, box, false});
            }
            if (crowded && most > 1) continue;
            face.labels.insert(face.labels.end(), labels.begin(), labels.end());
            if (crowded) thinOut(face.labels, PlotLabel::Kind::AcrossTick);
            return;
        }
    }

    /// Takes away the labels of a kind that touch one that stays.
    static void thinOut(std::vector<PlotLabel>& labels, PlotLabel::Kind kind)
    {
        std::vector<QRectF> kept;
        std::erase_if(labels, [&](const PlotLabel& label) {
            if (label.kind != kind) return false;
            const bool touches = std::any_of(kept.begin(), kept.end(),
                                             [&](const QRectF& box) { return box.intersects(label.box); });
            if (!touches) kept.push_back(label.box);
            return touches;
        });
    }

    /// Lines and names of the guides, each name as a flag at its line's upper end, in lanes above the frame.
    /// A line never runs through another's name. Returns how many lanes are used.
    std::size_t named(PlotFace& face, std::size_t lanes) const
    {
        std::vector<std::pair<double, QString>> guides;
        for (const auto& [at, name] : m_plot.guides)
            if (plottable(at)) guides.emplace_back(face.place({at, 0}).x(), shown(name));
        // From the right, so that flags that fly to the right end up in steps.
        std::stable_sort(guides.begin(), guides.end(),
                         [](const auto& a, const auto& b) { return a.first > b.first; });
        FlagSearch search{{}, {}, {}, face.frame.left(), m_box.right(), lanes, 0, kMostTries};
        for (const auto& [x, words] : guides)
            search.poles.push_back({x, words.isEmpty() ? 0 : width(words)});
        search.run(0);
        std::size_t used = 0;
        for (std::size_t i = 0; i < guides.size(); ++i) {
            PlotFace::Guide guide{guides[i].first, face.frame.top(), false};
            if (i < search.best.size() && search.best[i]) {
                const Flag& flag = *search.best[i];
                const double y = face.frame.top() - 1 - static_cast<double>(flag.lane + 1) * m_line;
                guide.named = true;
                guide.top = y + 2;
                used = std::max(used, flag.lane + 1);
                face.labels.push_back({PlotLabel::Kind::Guide, guides[i].second,
                                       QRectF(flag.left, y, flag.right - flag.left, m_line), false});
            }
            face.guides.push_back(guide);
        }
        return used;
    }

    const StudyPlot& m_plot;
    QRectF m_box;
    const PlotLook& m_look;
    QFontMetricsF m_metrics;
    double m_line;
    Span m_across, m_up;
};

}  // namespace

QPointF PlotFace::place(Point p) const
{
    const QRectF inner = frame.adjusted(inset, inset, -inset, -inset);
    const auto share = [](double value, const AxisScale& scale) {
        return std::clamp((value - scale.low) / (scale.high - scale.low), -1.0, 2.0);
    };
    return {inner.left() + share(p.x, across) * inner.width(),
            inner.bottom() - share(p.y, up) * inner.height()};
}

PlotFace layOutPlot(const StudyPlot& plot, const QRectF& box, const PlotLook& look)
{
    return Layer(plot, box, look).run();
}

std::optional<PlotPoint> nearestPoint(const StudyPlot& plot, const PlotFace& face, QPointF at, double reach)
{
    std::optional<PlotPoint> nearest;
    if (face.frame.isEmpty()) return nearest;
    double least = reach;
    for (std::size_t s = 0; s < plot.series.size(); ++s)
        for (std::size_t i = 0; i < plot.series[s].points.size(); ++i) {
            const Point p = plot.series[s].points[i];
            if (!plottable(p)) continue;
            const QPointF way = face.place(p) - at;
            const double far = std::hypot(way.x(), way.y());
            if (far > least || (nearest && far == least)) continue;
            least = far;
            nearest = PlotPoint{s, i};
        }
    return nearest;
}

}  // namespace lidwright
