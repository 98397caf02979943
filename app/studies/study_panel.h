#pragma once

#include "core/checks/finding.h"
#include "core/solvers/study.h"

#include <QWidget>

#include <functional>

class QComboBox;
class QLabel;
class QPushButton;
class QScrollArea;
class QSplitter;
class QTableWidget;
class QTimer;

namespace lidwright {

class PlanDocument;
class PlotBox;
class PlotView;

/// One subject at a time: its table, what the figures stand on, and its plots. Follows the document while it
/// is seen, a moment after the last change.
class StudyPanel : public QWidget {
    Q_OBJECT
public:
    explicit StudyPanel(PlanDocument& document, const std::vector<StudyEntry>& subjects = studies(),
                        QWidget* parent = nullptr);

    const Study& study() const { return m_study; }
    /// The subject's id; false when there is none of that name.
    bool choose(const std::string& id);

    QComboBox& subject() { return *m_subject; }
    QTableWidget& table() { return *m_table; }
    std::vector<PlotView*> plots() const;
    /// How the user is asked where a file goes; empty for nowhere. Tests answer for themselves.
    std::function<QString(const QString& suggestion, const QString& kinds)> askForFile;

    /// Milliseconds without a change before the figures are reckoned anew.
    static constexpr int kPause = 100;

Q_SIGNALS:
    /// A row with a place was chosen: show it.
    void placesWanted(const std::vector<Place>& places);
    void told(const QString& message);

protected:
    void showEvent(QShowEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    QWidget* head();
    QWidget* figures();
    void prepareTable();
    bool seen() const;
    void reckon();
    void fill();
    void fillTable();
    void fillPlots();
    void showChosen();
    void copyChosen();
    void exportCsv();
    void exportPicture(std::size_t plot);

    PlanDocument& m_document;
    const std::vector<StudyEntry>& m_subjects;
    Study m_study;
    QTimer* m_pause;
    QComboBox* m_subject;
    QPushButton* m_export;
    QLabel* m_problem;
    QSplitter* m_figures;
    QTableWidget* m_table;
    QLabel* m_notes;
    QScrollArea* m_notesRoom;
    QSplitter* m_plotRow;
    QScrollArea* m_plotRoom;
    std::vector<PlotBox*> m_boxes;
    int m_shownRow = -1;
    bool m_stale = true;
};

}  // namespace lidwright
