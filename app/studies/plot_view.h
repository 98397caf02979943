#pragma once

#include "app/studies/plot_face.h"

#include <QWidget>

namespace lidwright {

/// Shows a plot. The pointer reads the values of the nearest point; with the keyboard, Left and Right go from
/// point to point, Up and Down from series to series, Home and End to the ends, and the values are shown and
/// told.
class PlotView final : public QWidget {
    Q_OBJECT
public:
    explicit PlotView(QWidget* parent = nullptr);

    void setPlot(const StudyPlot& plot, const UnitStyle& style);
    const StudyPlot& plot() const { return m_plot; }
    /// As it is laid out at present, in the widget's own pixels.
    PlotFace face() const;
    /// The point that the keyboard reads, if any.
    std::optional<PlotPoint> reading() const { return m_reading; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    PlotLook look() const;
    QRectF room() const;
    void read(std::optional<PlotPoint> at);

    StudyPlot m_plot;
    UnitStyle m_style;
    std::optional<PlotPoint> m_reading;
};

}  // namespace lidwright
