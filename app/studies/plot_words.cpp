#include "app/studies/plot_face.h"
#include "app/text/texts.h"

#include <QCoreApplication>

// A plot in words.

namespace lidwright {

namespace {

QString say(const char* marked)
{
    return QCoreApplication::translate("PlotWords", marked);
}

QString valueWords(double value, const StudyColumn& column, const UnitStyle& style)
{
    return shown(Measure{value, column.quantity}, style);
}

}  // namespace

QString pointWords(const StudyPlot& plot, PlotPoint at, const UnitStyle& style)
{
    if (at.series >= plot.series.size() || at.point >= plot.series[at.series].points.size()) return {};
    const StudySeries& series = plot.series[at.series];
    const Point p = series.points[at.point];
    const QString values = say("%1: %2. %3: %4")
                               .arg(shown(plot.across.heading), valueWords(p.x, plot.across, style),
                                    shown(plot.up.heading), valueWords(p.y, plot.up, style));
    return series.name.empty() ? values : say("%1. %2").arg(shown(series.name), values);
}

QString plotWords(const StudyPlot& plot, const UnitStyle& style)
{
    QStringList parts{say("%1 over %2.").arg(shown(plot.up.heading), shown(plot.across.heading))};
    for (const StudySeries& series : plot.series) {
        const Point* least = nullptr;
        const Point* most = nullptr;
        for (const Point& p : series.points) {
            if (!plottable(p)) continue;
            if (least == nullptr || p.y < least->y) least = &p;
            if (most == nullptr || p.y > most->y) most = &p;
        }
        const QString name = shown(series.name.empty() ? plot.up.heading : series.name);
        if (least == nullptr) {
            parts << say("%1: no values.").arg(name);
            continue;
        }
        parts << say("%1: least %2 at %3, most %4 at %5.")
                     .arg(name, valueWords(least->y, plot.up, style),
                          valueWords(least->x, plot.across, style), valueWords(most->y, plot.up, style),
                          valueWords(most->x, plot.across, style));
    }
    if (plot.series.empty()) parts << say("There is nothing to draw.");
    for (const auto& [at, name] : plot.guides)
        if (plottable(at)) parts << say("%1 at %2.").arg(shown(name), valueWords(at, plot.across, style));
    return parts.join(QLatin1Char(' '));
}

QString axisHeading(const StudyColumn& column, const AxisScale& scale)
{
    const QString heading = shown(column.heading);
    if (scale.unit.isEmpty()) return heading;
    return heading.isEmpty() ? scale.unit : say("%1 (%2)").arg(heading, scale.unit);
}

}  // namespace lidwright
