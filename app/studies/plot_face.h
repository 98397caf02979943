#pragma once

#include "app/studies/axis_scale.h"

#include "core/solvers/study.h"

#include <QFont>
#include <QPainter>
#include <QPalette>

#include <optional>

namespace lidwright {

/// How a plot is to be painted. The font's size counts in painter units, whatever the painter paints on.
struct PlotLook {
    QPalette palette;
    QFont font;
    UnitStyle style;
    bool title = true;  ///< whether the plot's own title stands above it
};

/// A text of a plot and where it stands.
struct PlotLabel {
    enum class Kind { Title, Key, Guide, AcrossTick, UpTick, AcrossHeading, UpHeading, Bare };
    Kind kind = Kind::Title;
    QString words;
    QRectF box;  ///< painter units; upright boxes hold a text that reads upward
    bool upright = false;
};

/// A plot laid out in a rectangle: for painting, for finding points and for tests. Texts never overlap; a
/// guide whose name finds no room is drawn without it.
struct PlotFace {
    QRectF frame;      ///< empty where the rectangle has no room for a plot
    double inset = 0;  ///< from the frame to where the scales begin and end
    AxisScale across, up;
    std::vector<PlotLabel> labels;
    /// What a series looks like, beside its name above the frame.
    struct Key {
        std::size_t series = 0;
        QRectF swatch;
    };
    std::vector<Key> keys;
    struct Guide {
        double x = 0;    ///< painter units
        double top = 0;  ///< where its line ends: at the frame or beside its name
        bool named = false;
    };
    std::vector<Guide> guides;  ///< of the plot's guides those that can be shown
    bool bare = false;          ///< no point can be drawn: words stand in the frame instead of axes

    QPointF place(Point p) const;
};
PlotFace layOutPlot(const StudyPlot& plot, const QRectF& box, const PlotLook& look);

/// Paints ground and plot. Series differ by line pattern and by the shape of their dots, not by colour alone:
/// ring, filled square, triangle, cross. Uses no clipping, so that it serves screen, PNG and SVG alike.
void paintPlot(QPainter& painter, const StudyPlot& plot, const QRectF& box, const PlotLook& look);
void paintPlot(QPainter& painter, const StudyPlot& plot, const QRectF& box, const PlotLook& look,
               const PlotFace& face);

/// A point of a plot's series.
struct PlotPoint {
    std::size_t series = 0;
    std::size_t point = 0;

    bool operator==(const PlotPoint&) const = default;
};
/// The point that is drawn nearest to the place; nothing when there is none within `reach` painter units.
std::optional<PlotPoint> nearestPoint(const StudyPlot& plot, const PlotFace& face, QPointF at, double reach);

/// "Tension. Fret: 3. Pull: 41.2 N": one point in words and in the user's unit.
QString pointWords(const StudyPlot& plot, PlotPoint at, const UnitStyle& style);
/// The plot in words for those who do not see it: axes, least and most of every series and where, guides.
QString plotWords(const StudyPlot& plot, const UnitStyle& style);
/// The heading of an axis with the unit of its numbers: "Distance (mm)".
QString axisHeading(const StudyColumn& column, const AxisScale& scale);

}  // namespace lidwright
