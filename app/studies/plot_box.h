#pragma once

#include "app/studies/plot_view.h"

class QLabel;
class QToolButton;

namespace lidwright {

/// A plot with its title above it and a button that writes it as a picture.
class PlotBox final : public QWidget {
    Q_OBJECT
public:
    explicit PlotBox(QWidget* parent = nullptr);

    void setPlot(const StudyPlot& plot, const UnitStyle& style);
    PlotView& view() { return *m_view; }
    QToolButton& button() { return *m_picture; }

Q_SIGNALS:
    void pictureWanted();

protected:
    void changeEvent(QEvent* event) override;

private:
    void tint();

    QLabel* m_title;
    QToolButton* m_picture;
    PlotView* m_view;
};

}  // namespace lidwright
