#pragma once

#include "app/actions/action_set.h"
#include "app/document/autosave.h"
#include "app/document/plan_document.h"
#include "app/settings/setting.h"
#include "app/window/file_flow.h"
#include "app/window/path_questions.h"

#include "core/solvers/fineness.h"

#include <QMainWindow>

#include <functional>
#include <memory>
#include <optional>

class QDockWidget;
class QSplitter;

namespace lidwright {

class BoardWidget;
class BuildSheetWork;
class FindingsPanel;
class FirstSteps;
class FoldingSide;
class NoticeBar;
class PartsPanel;
class StatusStrip;
class StudyPanel;
class ThinPanel;
struct BenchSheet;
struct Tuning;

/// The window: parts at the left, the board in the middle, findings at the right. Its members know one
/// another only through the document and through what is wired together here.
class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    /// `recoveryFolder`: where unsaved work is kept, see Autosave.
    MainWindow(Settings& settings, const QString& recoveryFolder);
    ~MainWindow() override;

    /// Offers what earlier sessions could not save.
    void offerLeftOvers();
    /// Opens a plan, or brings in a drawing, by the file's ending.
    void openAny(const QString& path);
    void importArtwork(const QString& path);
    void importBoxOutline(const QString& path);

    PlanDocument& document() { return m_document; }
    FileFlow& files() { return *m_files; }
    ActionSet& actions() { return *m_actions; }
    NoticeBar& notices() { return *m_notices; }
    ThinPanel& thinPlaces() { return *m_thin; }
    StudyPanel& studyPanel() { return *m_studies; }
    FirstSteps& firstSteps() { return *m_steps; }
    BoardWidget& board() { return *m_board; }
    Autosave& autosave() { return *m_autosave; }
    FoldingSide& partsSide() { return *m_partsSide; }
    FoldingSide& findingsSide() { return *m_findingsSide; }
    /// How the user is asked for files; tests answer for themselves.
    /// How the user is asked for a layer of backing; nothing to go back. Tests answer for themselves.
    std::function<std::optional<BackingLayer>()> askForLayer;
    /// The same for an ordinary tuning; null to go back.
    std::function<const Tuning*()> askForTuning;
    /// The same for the kind of a new part of the wiring; nothing to go back.
    std::function<std::optional<DeviceKind>()> askForDevice;
    /// How the user is asked where the build sheet goes; empty for nowhere.
    std::function<QString(const QString& suggestion)> askForBuildSheet;
    /// The same for the folder that takes everything for the bench.
    std::function<QString(const QString& suggestion)> askForBenchFolder;
    /// How pages are shown and printed; what went wrong, or empty.
    std::function<QString(const BenchSheet&)> preview;
    /// How finely lid and air are reckoned for the build sheet.
    Fineness sheetFineness = Fineness::Fine;
    BuildSheetWork& sheetWork() { return *m_sheetWork; }
    PathQuestions& questions() { return m_questions; }

protected:
    void closeEvent(QCloseEvent* event) override;
    void changeEvent(QEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void arrange();
    void wireFile();
    void wireEdit();
    void wireView();
    void wireAdd();
    void wireCutting();
    void wireStudies();
    void wireSheets();
    void writeBuildSheet();
    void writeEverything();
    void showPages(const BenchSheet& sheet);
    void printList();
    void openBelow(QDockWidget& dock, int height);
    void wireStrings();
    void wireInside();
    void wireHelp();
    void wireViews();
    void wireSide(FoldingSide& side, Command command, const Setting<bool>& setting, int splitterIndex);
    void on(Command command, std::function<void()> act);

    void offer(const std::shared_ptr<LeftOver>& left);
    void showTitle();
    void showCommands();
    void showFirstSteps(bool show);
    void goToStep(int step);
    void goToNextRegion();
    void fillRecent();
    void fillSamples();
    /// True, and said in the notice bar, when a file of the plan could not be read again.
    bool refusedAsTooLarge(const Plan& next);
    void addStructure(std::optional<Plan> next, const QString& part, const QString& undoText);
    void deletePart();
    void choosePaintUses();
    void exportPicture();
    void openPaper();

    Settings& m_settings;
    PathQuestions m_questions;
    PlanDocument m_document;
    ActionSet* m_actions;
    Autosave* m_autosave;
    FileFlow* m_files;
    NoticeBar* m_notices;
    FirstSteps* m_steps;
    PartsPanel* m_parts;
    BoardWidget* m_board;
    FindingsPanel* m_findings;
    FoldingSide* m_partsSide;
    FoldingSide* m_findingsSide;
    QSplitter* m_splitter;
    StatusStrip* m_status;
    ThinPanel* m_thin = nullptr;
    StudyPanel* m_studies = nullptr;
    BuildSheetWork* m_sheetWork = nullptr;
    bool m_refusalShown = false;
};

}  // namespace lidwright
