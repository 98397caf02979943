#pragma once

#include <QObject>

class QAction;
class QComboBox;
class QLabel;
class QStatusBar;
class QToolButton;

namespace lidwright {

class PlanDocument;

/// What stands in the status bar: the caption at the left; snap, unit and zoom at the right.
class StatusStrip : public QObject {
    Q_OBJECT
public:
    StatusStrip(QStatusBar& bar, PlanDocument& document, QAction* snapping);

    void setCaption(const QString& text);
    void setZoom(double percentOfFullSize);

private:
    void showUnit();
    void chooseUnit(int index);

    PlanDocument& m_document;
    QLabel* m_caption;
    QLabel* m_zoom;
    QComboBox* m_unit;
};

}  // namespace lidwright
