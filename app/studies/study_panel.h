#pragma once

#include "app/exchange/background.h"

#include "core/checks/finding.h"
#include "core/solvers/lists/shop_lists.h"
#include "core/solvers/study.h"

#include <QWidget>

#include <atomic>
#include <functional>
#include <memory>

class QComboBox;
class QLabel;
class QProgressBar;
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
///
/// Subjects that take their time are reckoned off the window's thread, coarsely first and then as finely as
/// is asked for; until the new figures are there the old ones stay, marked as stale. Progress is shown, and
/// the finer ones can be given up.
class StudyPanel : public QWidget {
    Q_OBJECT
public:
    explicit StudyPanel(PlanDocument& document, const std::vector<StudyEntry>& subjects = allSubjects(),
                        QWidget* parent = nullptr);

    const Study& study() const { return m_study; }
    /// The subject's id; false when there is none of that name.
    bool choose(const std::string& id);

    QComboBox& subject() { return *m_subject; }
    QTableWidget& table() { return *m_table; }
    QComboBox& fineness() { return *m_fineness; }
    QPushButton& stopButton() { return *m_stop; }
    QPushButton& printButton() { return *m_print; }
    /// True while figures are reckoned in the background.
    bool busy() const { return m_work.busy(); }
    /// What the figures that are shown were reckoned with; of quick subjects nothing.
    const std::optional<Fineness>& shownFineness() const { return m_shownFineness; }
    bool stale() const;
    /// Asks for the pages of what is shown; only says so where that is of an earlier plan.
    void print();
    std::vector<PlotView*> plots() const;
    /// How the user is asked where a file goes; empty for nowhere. Tests answer for themselves.
    std::function<QString(const QString& suggestion, const QString& kinds)> askForFile;

    /// Milliseconds without a change before the figures are reckoned anew.
    static constexpr int kPause = 100;

Q_SIGNALS:
    /// A row with a place was chosen: show it.
    void placesWanted(const std::vector<Place>& places);
    /// Lines to be drawn over the lid; none of an empty one.
    void pictureWanted(const StudyPicture& picture);
    /// The table is to be printed with its notes.
    void printWanted(const Study& study);
    void told(const QString& message);

protected:
    void hideEvent(QHideEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    /// What goes on in the background, read from both threads.
    struct Run {
        std::atomic<bool> stop{false};
        std::atomic<int> percent{0};
    };
    struct Answer {
        Study study;
        Fineness fineness = Fineness::Coarse;
    };

    Fineness wanted() const;
    void ask(Fineness fineness);
    void take(Answer answer);
    void giveUp();
    void tellState();
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
    QPushButton* m_print;
    QLabel* m_problem;
    QSplitter* m_figures;
    QTableWidget* m_table;
    QLabel* m_notes;
    QScrollArea* m_notesRoom;
    QSplitter* m_plotRow;
    QScrollArea* m_plotRoom;
    std::vector<PlotBox*> m_boxes;
    QComboBox* m_fineness;
    QLabel* m_state;
    QProgressBar* m_progress;
    QPushButton* m_stop;
    QTimer* m_look;
    std::shared_ptr<Run> m_run;
    Background<Answer> m_work;
    std::optional<Fineness> m_shownFineness;
    int m_shownRow = -1;
    bool m_stale = true;
};

}  // namespace lidwright
