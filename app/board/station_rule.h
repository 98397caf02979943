#pragma once

#include "app/board/neck_mapping.h"
#include "app/board/station_labels.h"

#include "core/layout/layout.h"

#include <QWidget>

#include <optional>
#include <vector>

namespace lidwright {

/// The rule along the neck: a graduated edge with every station and its distance from the nut or from the
/// box, whichever the maker measures from.
class StationRule : public QWidget {
    Q_OBJECT
public:
    /// The station whose distances read zero.
    enum class Zero { Nut, Box };
    /// On which side of the rule the drawing lies.
    enum class Side { DrawingAbove, DrawingBelow };

    explicit StationRule(QWidget* parent = nullptr);

    void setStations(const std::vector<Station>& stations, const UnitStyle& style);
    void setMapping(const NeckMapping& mapping);
    void setSide(Side side);
    /// The station pointed at anywhere on the board, or nothing.
    void setPointer(std::optional<double> x);

    Zero zero() const { return m_zero; }
    void setZero(Zero zero);

    /// One station, or several that fall together, as it is shown.
    struct Shown {
        double x = 0;
        QString words;  ///< "Nut 0 mm"
        LabelPlace place;
    };
    const std::vector<Shown>& shownStations() const { return m_shown; }
    /// Where the words of a shown station stand.
    QRectF wordsBox(const Shown& station) const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {0, sizeHint().height()}; }

Q_SIGNALS:
    void pointedAt(double x);  ///< the pointer is over the rule
    void pointerLeft();
    void zeroChanged();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void changeEvent(QEvent* event) override;
    bool event(QEvent* event) override;

private:
    double zeroX() const;
    QString distanceText(double x) const;
    QRectF zeroBox() const;
    int rowHeight() const;
    double edgeY() const;
    void arrange();
    void paintGraduation(QPainter& painter) const;
    void paintStations(QPainter& painter) const;

    std::vector<Station> m_stations;
    UnitStyle m_style;
    NeckMapping m_mapping;
    Side m_side = Side::DrawingAbove;
    Zero m_zero = Zero::Nut;
    std::optional<double> m_pointer;
    std::vector<Shown> m_shown;
};

}  // namespace lidwright
