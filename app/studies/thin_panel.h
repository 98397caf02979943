#pragma once

#include "app/exchange/thin_places_list.h"

#include <QWidget>

#include <functional>

class QLabel;
class QPushButton;
class QTableWidget;

namespace lidwright {

class PlanDocument;

/// The table of thin places: webs, tongues, pieces that fall out and cuts that the kerf closes, the weakest
/// first. Follows the document while it is seen.
class ThinPanel : public QWidget {
    Q_OBJECT
public:
    explicit ThinPanel(PlanDocument& document, QWidget* parent = nullptr);

    const ThinList& list() const { return m_list; }
    QTableWidget& table() { return *m_table; }
    /// How the user is asked where the CSV goes; empty for nowhere. Tests answer for themselves.
    std::function<QString()> askForFile;

Q_SIGNALS:
    /// A row was chosen: show its place.
    void placesWanted(const std::vector<Place>& places);
    void told(const QString& message);

protected:
    void showEvent(QShowEvent* event) override;

private:
    void refresh();
    void fill();
    void showChosen();
    void exportCsv();

    PlanDocument& m_document;
    ThinList m_list;
    QLabel* m_summary;
    QTableWidget* m_table;
    QPushButton* m_export;
    bool m_stale = true;
};

}  // namespace lidwright
