#include "app/findings/findings_panel.h"

#include "app/findings/count_strip.h"
#include "app/findings/finding_card.h"
#include "app/style/wrapping_button.h"
#include "tests/app/properties/panel_window.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QEnterEvent>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QSignalSpy>
#include <QToolButton>

#include <random>

namespace lidwright {
namespace {

using testing::ActiveWindow;
using testing::unnamedControls;

/// A plan about which the checks have several things to say: a short stick, a short fretboard, holes astray.
Plan troubledPlan()
{
    Plan plan;
    plan.neck.blankLength = 700;
    plan.fretboard.blankLength = 200;
    plan.holes.resize(3);
    plan.holes[0].x = 235;  // under the bridge
    plan.holes[0].y = 5;
    plan.holes[1].x = 2;  // over the wall
    plan.holes[2].x = 150;
    plan.holes[2].y = 110;
    return plan;
}

/// The troubled plan with every length drawn anew within its hard range.
Plan withRandomMeasures(std::mt19937& random)
{
    Plan plan = troubledPlan();
    for (const Parameter& p : catalogue()) {
        if (p.quantity != Quantity::Length) continue;
        for (int i = 0; i < (p.inList() ? p.size(plan) : 1); ++i)
            p.set(plan, i, std::uniform_real_distribution<double>(p.least, p.most)(random));
    }
    return plan;
}

struct Panel {
    explicit Panel(const Plan& plan = troubledPlan(), QSize size = {300, 640})
        : panel(new FindingsPanel(document)), window(panel, size)
    {
        document.reset(plan, {});
        waitForRemedies();
    }
    void waitForRemedies()
    {
        for (int i = 0; i < 200 && document.remediesPending(); ++i)
            QTest::qWait(25);
        EXPECT_FALSE(document.remediesPending());
        QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
    }
    FindingCard* card(const std::string& rule) const
    {
        for (FindingCard* c : panel->cards())
            if (c->finding().rule == rule) return c;
        return nullptr;
    }
    /// The first entry that offers a way out.
    FindingCard* mendable() const
    {
        for (FindingCard* c : panel->cards())
            if (!c->buttons().empty()) return c;
        return nullptr;
    }
    int inSight() const
    {
        const auto* view = panel->findChild<QScrollArea*>()->viewport();
        int count = 0;
        for (const FindingCard* c : panel->cards()) {
            const QRect box(c->mapTo(view, QPoint(0, 0)), c->size());
            count += view->rect().contains(box) ? 1 : 0;
        }
        return count;
    }
    QToolButton* fold() const { return panel->findChild<QToolButton*>(); }

    PlanDocument document;
    FindingsPanel* panel;
    ActiveWindow window;
};

TEST(FindingsPanel, ShowsTheDocumentsFindingsInItsOrder)
{
    Panel p;
    p.fold()->setChecked(true);
    ASSERT_EQ(p.panel->cards().size(), p.document.findings().size());
    ASSERT_GE(p.panel->cards().size(), 5u);
    for (std::size_t i = 0; i < p.panel->cards().size(); ++i) {
        EXPECT_EQ(p.panel->cards()[i]->finding().rule, p.document.findings()[i].rule);
        EXPECT_EQ(p.panel->cards()[i]->finding().sentence, p.document.findings()[i].sentence);
    }
    QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
    for (std::size_t i = 1; i < p.panel->cards().size(); ++i)
        EXPECT_GT(p.panel->cards()[i]->y(), p.panel->cards()[i - 1]->y()) << "and in this order on screen";
}

TEST(FindingsPanel, GoodOnesAreFoldedUntilAskedFor)
{
    Panel p;
    for (const FindingCard* card : p.panel->cards())
        EXPECT_NE(card->finding().verdict, Verdict::Good);
    EXPECT_TRUE(p.fold()->accessibleName().endsWith(QStringLiteral("folded")));
    const auto before = p.panel->cards().size();
    p.fold()->setFocus();
    QTest::keyClick(p.fold(), Qt::Key_Space);
    EXPECT_GT(p.panel->cards().size(), before);
    QTest::mouseClick(p.fold(), Qt::LeftButton);
    EXPECT_EQ(p.panel->cards().size(), before);
}

TEST(FindingsPanel, TheFoldStaysBetweenWhatIsToMendAndWhatIsGood)
{
    Panel p;
    p.fold()->setChecked(true);
    const auto check = [&p] {
        QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
        for (const FindingCard* card : p.panel->cards())
            EXPECT_EQ(card->finding().verdict == Verdict::Good, card->y() > p.fold()->y())
                << card->accessibleName().toStdString();
    };
    check();
    // One thing after the other is mended, so that the border moves through the list.
    for (const Edit& edit : {Edit{"neck.blank-length", 1000.0}, Edit{"fretboard.blank-length", 480.0},
                             Edit{"hole.count", 0.0}}) {
        ASSERT_TRUE(p.document.edit({edit}, QStringLiteral("Mend")));
        check();
    }
}

TEST(FindingsPanel, ARemedyIsAppliedByMouseAndCanBeUndone)
{
    Panel p;
    FindingCard* card = p.mendable();
    ASSERT_NE(card, nullptr);
    const Remedy remedy = card->finding().remedies.front();
    const QString label = card->buttons()[0]->accessibleName();
    const Plan before = p.document.plan();
    const Plan wanted = *applyEdits(before, remedy.edits);
    QTest::mouseClick(card->buttons()[0], Qt::LeftButton);
    EXPECT_EQ(p.document.plan(), wanted);
    EXPECT_EQ(p.document.undoStack().undoText(), label);
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    p.document.undoStack().undo();
    EXPECT_EQ(p.document.plan(), before);
}

TEST(FindingsPanel, APointedRemedyIsOfferedForPreview)
{
    Panel p;
    FindingCard* card = p.mendable();
    ASSERT_NE(card, nullptr);
    QSignalSpy wanted(p.panel, &FindingsPanel::previewWanted);
    QSignalSpy done(p.panel, &FindingsPanel::previewDone);
    QEnterEvent enter(QPointF(2, 2), QPointF(2, 2), QPointF(2, 2));
    QApplication::sendEvent(card->buttons()[0], &enter);
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(wanted[0][0].value<Remedy>().edits.front().key,
              card->finding().remedies.front().edits.front().key);
    QEvent leave(QEvent::Leave);
    QApplication::sendEvent(card->buttons()[0], &leave);
    EXPECT_EQ(done.count(), 1);
    card->buttons()[0]->setFocus();
    EXPECT_EQ(wanted.count(), 2) << "the keyboard previews as well";
}

TEST(FindingsPanel, ARemedyIsReachedByTabAndAppliedByKey)
{
    Panel p;
    FindingCard* card = p.mendable();
    ASSERT_NE(card, nullptr);
    const Plan wanted = *applyEdits(p.document.plan(), card->finding().remedies.front().edits);
    p.panel->cards().front()->setFocus();
    int steps = 0;
    while (QApplication::focusWidget() != card && steps++ < 50)
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down);
    ASSERT_TRUE(card->hasFocus());
    QTest::keyClick(card, Qt::Key_Tab);
    ASSERT_TRUE(card->buttons()[0]->hasFocus());
    QTest::keyClick(card->buttons()[0], Qt::Key_Return);
    EXPECT_EQ(p.document.plan(), wanted);
    p.waitForRemedies();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    ASSERT_NE(QApplication::focusWidget(), nullptr);
    EXPECT_TRUE(p.panel->isAncestorOf(QApplication::focusWidget())) << "the keyboard stays in the list";
}

TEST(FindingsPanel, ChoosingAnEntryShowsItsPlacesAndSelectsItsPart)
{
    Panel p;
    std::vector<std::vector<Place>> shown;
    QObject::connect(p.panel, &FindingsPanel::placesWanted, p.panel,
                     [&](const std::vector<Place>& places) { shown.push_back(places); });
    ASSERT_GE(p.panel->cards().size(), 2u);
    FindingCard* second = p.panel->cards()[1];
    QTest::mouseClick(second, Qt::LeftButton, {}, QPoint(4, 4));
    ASSERT_EQ(shown.size(), 1u);
    EXPECT_EQ(shown[0].size(), second->finding().places.size());
    EXPECT_EQ(p.document.selectedPart().toStdString(), second->finding().part);
    EXPECT_TRUE(second->isCurrent());

    QTest::keyClick(second, Qt::Key_Up);
    EXPECT_TRUE(p.panel->cards()[0]->hasFocus());
    EXPECT_EQ(p.document.selectedPart().toStdString(), p.panel->cards()[0]->finding().part);
    QTest::keyClick(p.panel->cards()[0], Qt::Key_Return);
    EXPECT_EQ(shown.size(), 3u);
    QTest::keyClick(p.panel->cards()[0], Qt::Key_End);
    EXPECT_TRUE(p.panel->cards().back()->hasFocus());
    QTest::keyClick(p.panel->cards().back(), Qt::Key_Home);
    EXPECT_TRUE(p.panel->cards().front()->hasFocus());
}

TEST(FindingsPanel, TabAloneMovesNothingOnTheBoard)
{
    Panel p;
    QSignalSpy changed(&p.document, &PlanDocument::selectionChanged);
    QSignalSpy shown(p.panel, &FindingsPanel::placesWanted);
    p.panel->cards().front()->setFocus();
    for (int i = 0; i < 10; ++i)
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    EXPECT_TRUE(changed.isEmpty());
    EXPECT_TRUE(shown.isEmpty());
}

TEST(FindingsPanel, DraggingKeepsEntryAndPlace)
{
    Panel p(troubledPlan(), {300, 220});
    ASSERT_GE(p.panel->cards().size(), 3u);
    FindingCard* last = p.panel->cards().back();
    QTest::mouseClick(last, Qt::LeftButton, {}, QPoint(4, 4));
    QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
    auto* bar = p.panel->findChild<QScrollArea*>()->verticalScrollBar();
    ASSERT_GT(bar->value(), 0);
    const int where = last->mapTo(p.panel, QPoint(0, 0)).y();
    p.document.beginDrag();
    for (int i = 1; i <= 20; ++i) {
        p.document.previewDrag(Drag{{{"neck.blank-length", 700.0 + i}}, {}, {}});
        ASSERT_NE(std::find(p.panel->cards().begin(), p.panel->cards().end(), last), p.panel->cards().end());
        EXPECT_TRUE(last->isCurrent());
        EXPECT_NEAR(last->mapTo(p.panel, QPoint(0, 0)).y(), where, 1);
    }
    p.document.endDrag();
    p.waitForRemedies();
    EXPECT_TRUE(last->isCurrent());
    EXPECT_NEAR(last->mapTo(p.panel, QPoint(0, 0)).y(), where, 1);
}

TEST(FindingsPanel, AnEntryThatIsMendedGivesItsPlaceToTheNext)
{
    Panel p;
    FindingCard* first = p.panel->cards().front();
    first->setFocus();
    const auto before = p.panel->cards().size();
    ASSERT_TRUE(p.document.edit({{"neck.blank-length", 1000.0}}, QStringLiteral("Longer")));
    EXPECT_LT(p.panel->cards().size(), before);
    int current = 0;
    for (const FindingCard* card : p.panel->cards())
        current += card->isCurrent() ? 1 : 0;
    EXPECT_EQ(current, 1);
}

TEST(FindingsPanel, AnotherUnitIsSpokenAtOnce)
{
    Panel p;
    ASSERT_TRUE(p.document.edit({{"sheet.unit", 1.0}}, QStringLiteral("Inches")));
    p.waitForRemedies();
    for (const FindingCard* card : p.panel->cards())
        EXPECT_FALSE(card->accessibleName().contains(QStringLiteral(" mm")))
            << card->accessibleName().toStdString();
}

TEST(FindingsPanel, FourFindingsAreInSightInASmallWindow)
{
    // A window of 1280 x 800 leaves about 640 pixels beside menus, tool bar and status line.
    Panel p;
    EXPECT_GE(p.panel->cards().size(), 4u);
    EXPECT_GE(p.inSight(), 4);
    const auto* scroll = p.panel->findChild<QScrollArea*>();
    EXPECT_EQ(scroll->horizontalScrollBar()->maximum(), 0);
    EXPECT_LE(scroll->widget()->width(), scroll->viewport()->width());
}

TEST(FindingsPanel, NoWordOfAWayOutIsCutOff)
{
    const QFont before = QApplication::font();
    for (const double size : {9.0, 20.0}) {
        QFont font = before;
        font.setPointSizeF(size);
        QApplication::setFont(font);
        const Panel p;
        int buttons = 0;
        for (const FindingCard* card : p.panel->cards()) {
            for (const WrappingButton* button : card->buttons()) {
                EXPECT_GE(button->height(), button->heightForWidth(button->width())) << size;
                ++buttons;
            }
        }
        EXPECT_GT(buttons, 0);
        const auto* counts = p.panel->findChild<CountStrip*>();
        EXPECT_GE(counts->height(), counts->heightForWidth(counts->width())) << size;
    }
    QApplication::setFont(before);
}

TEST(FindingsPanel, LargeTypeWrapsInsteadOfScrollingSideways)
{
    const QFont before = QApplication::font();
    QFont large = before;
    large.setPointSizeF(20);
    QApplication::setFont(large);
    {
        Panel p;
        p.fold()->setChecked(true);
        QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
        const auto* scroll = p.panel->findChild<QScrollArea*>();
        EXPECT_LE(scroll->widget()->width(), scroll->viewport()->width());
        EXPECT_LE(scroll->widget()->minimumSizeHint().width(), scroll->viewport()->width());
    }
    QApplication::setFont(before);
}

TEST(FindingsPanel, AllControlsHaveNames)
{
    Panel p;
    p.fold()->setChecked(true);
    EXPECT_TRUE(unnamedControls(p.panel).isEmpty())
        << unnamedControls(p.panel).join(QLatin1Char(',')).toStdString();
}

TEST(FindingsPanel, SaysSoWhenThereIsNothingToMend)
{
    Plan plan;
    plan.holes.resize(1);
    plan.scale.setback = 3.2;
    Panel p(plan);
    for (const FindingCard* card : p.panel->cards())
        ADD_FAILURE() << "to mend in a plain plan: " << card->accessibleName().toStdString();
    bool said = false;
    for (const QLabel* label : p.panel->findChildren<QLabel*>())
        said = said ||
               (label->isVisibleTo(p.panel) && label->text().startsWith(QStringLiteral("Nothing to mend")));
    EXPECT_TRUE(said);
}

TEST(FindingsPanel, ManyChangesLeaveNothingBehind)
{
    Panel p;
    p.fold()->setChecked(true);
    std::mt19937 random(7);
    for (int i = 0; i < 60; ++i) {
        p.document.reset(withRandomMeasures(random), {});
        if (i % 3 == 0 && !p.panel->cards().empty())
            p.panel->cards()[random() % p.panel->cards().size()]->setFocus();
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        EXPECT_EQ(p.panel->cards().size(), p.document.findings().size());
        EXPECT_EQ(static_cast<std::size_t>(p.panel->findChildren<FindingCard*>().size()),
                  p.panel->cards().size());
    }
}

}  // namespace
}  // namespace lidwright
