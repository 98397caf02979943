#include "app/document/plan_files.h"
#include "app/exchange/import_artwork_dialog.h"
#include "app/window/about_dialog.h"
#include "app/window/keys_page.h"
#include "tests/app/exchange/drawings.h"
#include "tests/app/window/window_fixture.h"
#include "tests/support/plans.h"

#include "core/materials/tunings.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QDir>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QMenu>
#include <QMimeData>
#include <QPushButton>
#include <QStatusBar>

namespace lidwright {
namespace {

class Window : public testing::WindowTest {
protected:
    static void acceptImport(QDialog* dialog)
    {
        auto* import = qobject_cast<ImportArtworkDialog*>(dialog);
        ASSERT_NE(import, nullptr);
        auto* ok = import->findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok);
        ASSERT_TRUE(QTest::qWaitFor([ok] { return ok->isEnabled(); }, 20'000));
        QTest::mouseClick(ok, Qt::LeftButton);
    }
    testing::Drawings drawings;
};

TEST_F(Window, EverySampleOpensAsAnUntitledCopyWithoutAWord)
{
    const QStringList samples = QDir(QStringLiteral(":/samples")).entryList({QStringLiteral("*.lidplan")});
    ASSERT_GE(samples.size(), 3);
    EXPECT_EQ(window->actions().samplesMenu()->actions().size(), samples.size());
    for (QAction* sample : window->actions().samplesMenu()->actions()) {
        sample->trigger();
        EXPECT_EQ(document().filePath(), "") << sample->text().toStdString();
        EXPECT_FALSE(document().modified());
        EXPECT_TRUE(notices().isEmpty()) << notices().join(QLatin1Char('\n')).toStdString();
        EXPECT_FALSE(document().plan() == Plan{});
    }
}

TEST_F(Window, UndoAndRedoSayWhatTheyDo)
{
    EXPECT_FALSE(action(Command::Undo)->isEnabled());
    edit(300);
    EXPECT_TRUE(action(Command::Undo)->text().contains(QLatin1String("Length 300")));
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(document().plan(), Plan{});
    EXPECT_TRUE(action(Command::Redo)->text().contains(QLatin1String("Length 300")));
    action(Command::Redo)->trigger();
    EXPECT_EQ(document().plan().box.length, 300);
}

TEST_F(Window, TiesAndFixingHolesAreAddedAndGoWithTheirDrawing)
{
    action(Command::AddTie)->trigger();
    EXPECT_TRUE(document().plan().ties.empty());
    EXPECT_EQ(notices().size(), 1) << "a tie belongs to a drawing";
    action(Command::AddFixing)->trigger();
    EXPECT_EQ(document().selectedPart(), "fixing.1");
    Plan plan = document().plan();
    const Region ring = subtract(fill({circleRing({0, 0}, 14)}, FillRule::NonZero),
                                 fill({circleRing({0, 0}, 10)}, FillRule::NonZero));
    for (const double x : {80.0, 160.0}) {
        plan.art.push_back(testing::pieceOf(ring));
        plan.art.back().x = x;
        plan.art.back().y = 60;
    }
    document().replace(plan, QStringLiteral("Two drawings"));
    document().select(QStringLiteral("art.2"));
    action(Command::AddTie)->trigger();
    ASSERT_EQ(document().plan().ties.size(), 1u);
    EXPECT_EQ(document().selectedPart(), "tie.1");
    EXPECT_EQ(document().plan().ties[0].art, 2);
    EXPECT_FALSE(document().layout().ties[0].outline.empty());
    document().select(QStringLiteral("art.1"));
    action(Command::DeletePart)->trigger();
    ASSERT_EQ(document().plan().ties.size(), 1u);
    EXPECT_EQ(document().plan().ties[0].art, 1) << "the tie stays with its drawing";
    EXPECT_FALSE(document().layout().ties[0].outline.empty());
    document().select(QStringLiteral("art.1"));
    action(Command::DeletePart)->trigger();
    EXPECT_TRUE(document().plan().ties.empty());
}

TEST_F(Window, ATuningFillsInTheStringsInOneStep)
{
    window->askForTuning = [] { return findTuning("gdg"); };
    action(Command::TakeTuning)->trigger();
    ASSERT_EQ(document().plan().stringSet.size(), 3u);
    EXPECT_EQ(document().plan().stringSet[2].pitch, 43) << "G2 lies on the bass side";
    EXPECT_EQ(document().selectedPart(), "strings");
    EXPECT_EQ(document().undoStack().count(), 1);
    document().undoStack().undo();
    EXPECT_EQ(document().plan(), Plan{});
    window->askForTuning = []() -> const Tuning* { return nullptr; };
    action(Command::TakeTuning)->trigger();
    EXPECT_EQ(document().plan(), Plan{});
}

TEST_F(Window, HolesSlotsAndBlocksAreAddedAndDeleted)
{
    action(Command::AddHole)->trigger();
    EXPECT_EQ(document().selectedPart(), "hole.1");
    action(Command::AddSlot)->trigger();
    ASSERT_EQ(document().plan().holes.size(), 2u);
    EXPECT_EQ(document().plan().holes[1].kind, HoleKind::Slot);
    action(Command::AddBlock)->trigger();
    EXPECT_EQ(document().selectedPart(), "block.1");
    document().select(QStringLiteral("hole.1"));
    window->board().setFocus();
    QTest::keyClick(&window->board(), Qt::Key_Delete);
    ASSERT_EQ(document().plan().holes.size(), 1u);
    EXPECT_EQ(document().plan().holes[0].kind, HoleKind::Slot);
    document().select(QStringLiteral("bridge"));
    EXPECT_FALSE(action(Command::DeletePart)->isEnabled()) << "every guitar has a bridge";
    while (document().undoStack().canUndo())
        document().undoStack().undo();
    EXPECT_EQ(document().plan(), Plan{});
}

TEST_F(Window, ArtworkComesInThroughItsDialogAsOneStep)
{
    chosenPath = drawings.path("measured.svg");
    EXPECT_TRUE(whenAsked(&Window::acceptImport, [this] { action(Command::AddArtwork)->trigger(); }));
    ASSERT_EQ(document().plan().art.size(), 1u);
    EXPECT_EQ(document().selectedPart(), "art.1");
    EXPECT_NEAR(document().plan().art[0].art->width, 100, 0.02);
    EXPECT_TRUE(document().layout().body.contains({document().plan().art[0].x, document().plan().art[0].y}));
    EXPECT_TRUE(action(Command::PaintUses)->isEnabled());
    EXPECT_TRUE(document().undoStack().undoText().contains(QLatin1String("measured")));
    document().undoStack().undo();
    EXPECT_EQ(document().plan(), Plan{});
}

TEST_F(Window, PaintUsesAreReopenedForTheSelectedPiece)
{
    chosenPath = drawings.path("unitless.svg");
    whenAsked(&Window::acceptImport, [this] { action(Command::AddArtwork)->trigger(); });
    ASSERT_EQ(document().plan().art.size(), 1u);
    const auto change = [](QDialog* dialog) {
        QTest::keyClick(dialog->findChild<QComboBox*>(), Qt::Key_End);
        QTest::mouseClick(dialog->findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok),
                          Qt::LeftButton);
    };
    EXPECT_TRUE(whenAsked(change, [this] { action(Command::PaintUses)->trigger(); }));
    EXPECT_EQ(document().plan().art[0].uses[0], ArtUse::Ignored);
    EXPECT_EQ(document().undoStack().count(), 2);
}

TEST_F(Window, FilesAreTakenByDropping)
{
    const auto drop = [this](const QString& path) {
        QMimeData data;
        data.setUrls({QUrl::fromLocalFile(path)});
        QDragEnterEvent enter({50, 50}, Qt::CopyAction, &data, Qt::LeftButton, {});
        QApplication::sendEvent(window.get(), &enter);
        if (!enter.isAccepted()) return false;
        QDropEvent event({50, 50}, Qt::CopyAction, &data, Qt::LeftButton, {});
        QApplication::sendEvent(window.get(), &event);
        return true;
    };
    EXPECT_FALSE(drop(at("picture.png")));
    Plan plan;
    plan.sheet.title = "Dropped";
    ASSERT_FALSE(savePlanFile(plan, at("a.lidplan")));
    EXPECT_TRUE(drop(at("a.lidplan")));
    QTest::qWait(20);
    EXPECT_EQ(document().plan().sheet.title, "Dropped");
    EXPECT_TRUE(whenAsked(&Window::acceptImport, [&] {
        EXPECT_TRUE(drop(drawings.path("measured.svg")));
        QTest::qWait(200);
    }));
    EXPECT_EQ(document().plan().art.size(), 1u);
}

TEST_F(Window, TheUnitIsSwitchedInTheStatusBar)
{
    auto* unit = window->statusBar()->findChild<QComboBox*>();
    ASSERT_NE(unit, nullptr);
    QTest::keyClick(unit, Qt::Key_End);
    QTest::keyClick(unit, Qt::Key_Return);
    EXPECT_EQ(document().plan().sheet.unit, PlanUnit::InchFraction);
    EXPECT_EQ(document().style().unit, LengthUnit::InchFraction);
    document().undoStack().undo();
    EXPECT_EQ(unit->currentIndex(), 0) << "shows what the plan says";
}

TEST_F(Window, ARefusedEditIsSaidUntilTheNextChange)
{
    document().edit({{"box.length", -1.0}}, QStringLiteral("no"));
    EXPECT_EQ(notices().size(), 1);
    edit(300);
    EXPECT_TRUE(notices().isEmpty());
}

TEST_F(Window, SnappingIsRemembered)
{
    EXPECT_TRUE(window->board().snapping());
    QTest::keyClick(window.get(), Qt::Key_F9);
    EXPECT_FALSE(window->board().snapping());
    window->close();
    open();
    EXPECT_FALSE(window->board().snapping());
    EXPECT_FALSE(action(Command::Snapping)->isChecked());
}

TEST_F(Window, ThePictureOfTheBoardIsWritten)
{
    chosenPath = at("board.png");
    action(Command::ExportPicture)->trigger();
    EXPECT_TRUE(QFile::exists(chosenPath));
    ASSERT_EQ(notices().size(), 1);
    EXPECT_TRUE(notices().first().contains(QLatin1String("board.png")));
}

TEST_F(Window, HelpPagesOpenAndClose)
{
    EXPECT_TRUE(whenAsked(
        [](QDialog* dialog) {
            EXPECT_NE(qobject_cast<KeysPage*>(dialog), nullptr);
            QTest::keyClick(dialog, Qt::Key_Escape);
        },
        [this] { QTest::keyClick(window.get(), Qt::Key_F1); }));
    EXPECT_TRUE(whenAsked(
        [](QDialog* dialog) {
            EXPECT_NE(qobject_cast<AboutDialog*>(dialog), nullptr);
            dialog->reject();
        },
        [this] { action(Command::About)->trigger(); }));
}

TEST_F(Window, RecentPlansAreOffered)
{
    ASSERT_FALSE(savePlanFile({}, at("a & b.lidplan")));
    ASSERT_TRUE(window->files().openPath(at("a & b.lidplan")));
    QMenu* menu = window->actions().recentMenu();
    Q_EMIT menu->aboutToShow();
    EXPECT_TRUE(menu->actions().first()->text().endsWith(QLatin1String("a && b.lidplan")));
    action(Command::New)->trigger();
    menu->actions().first()->trigger();
    EXPECT_EQ(document().filePath(), at("a & b.lidplan"));
    ASSERT_TRUE(QFile::remove(at("a & b.lidplan")));
    action(Command::New)->trigger();
    menu->actions().first()->trigger();
    EXPECT_FALSE(notices().isEmpty());
    Q_EMIT menu->aboutToShow();
    EXPECT_FALSE(menu->actions().first()->isEnabled()) << "a plan that is gone is not offered again";
}

TEST_F(Window, GeometryIsRemembered)
{
    window->resize(1000, 700);
    QApplication::processEvents();
    window->close();
    settings->sync();
    EXPECT_FALSE(settings->read(kWindowGeometry).isEmpty());
}

}  // namespace
}  // namespace lidwright
