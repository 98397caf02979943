#include "tests/app/window/window_fixture.h"

#include <QToolButton>

namespace lidwright {
namespace {

class FirstStepsTest : public testing::WindowTest {
protected:
    using Step = FirstSteps::Step;
    bool done(Step step) { return window->firstSteps().done(step); }
    QToolButton* button(int index) { return window->firstSteps().findChildren<QToolButton*>().at(index); }
};

TEST_F(FirstStepsTest, AStepIsDoneWhenThePlanDiffersThere)
{
    window->files().openSample(QStringLiteral(":/samples/harbour-light.lidplan"));
    for (int i = 0; i < FirstSteps::kSteps; ++i)
        EXPECT_FALSE(done(static_cast<Step>(i))) << i;
    document().edit({{"box.length", document().plan().box.length + 5}}, QStringLiteral("box"));
    EXPECT_TRUE(done(Step::Box));
    EXPECT_FALSE(done(Step::Neck));
    EXPECT_TRUE(button(0)->accessibleName().contains(QLatin1String("done")));
    document().edit({{"neck.width", 41.0}}, QStringLiteral("neck"));
    EXPECT_TRUE(done(Step::Neck));
    document().edit({{"bridge.length", 77.0}}, QStringLiteral("bridge"));
    EXPECT_TRUE(done(Step::Bridge));
    EXPECT_FALSE(done(Step::Artwork));
    document().edit({{"hole.count", static_cast<double>(document().plan().holes.size() + 1)}},
                    QStringLiteral("hole"));
    EXPECT_TRUE(done(Step::Artwork));
    EXPECT_FALSE(window->firstSteps().allDone());
    window->firstSteps().setPaperMade();
    EXPECT_TRUE(window->firstSteps().allDone());
    document().undoStack().undo();
    EXPECT_FALSE(done(Step::Artwork));

    // Another plan is another start.
    EXPECT_TRUE(whenAsked(click(QMessageBox::Discard), [this] {
        window->files().openSample(QStringLiteral(":/samples/moon-kettle.lidplan"));
    }));
    for (int i = 0; i < FirstSteps::kSteps; ++i)
        EXPECT_FALSE(done(static_cast<Step>(i))) << i;
}

TEST_F(FirstStepsTest, AStepLeadsToItsPlace)
{
    QTest::mouseClick(button(0), Qt::LeftButton);
    EXPECT_EQ(document().selectedPart(), "box");
    EXPECT_TRUE(window->partsSide().isAncestorOf(QApplication::focusWidget()));
    window->partsSide().setFolded(true);
    QTest::mouseClick(button(2), Qt::LeftButton);
    EXPECT_EQ(document().selectedPart(), "neck");
    EXPECT_FALSE(window->partsSide().folded());
    QTest::mouseClick(button(3), Qt::LeftButton);
    EXPECT_EQ(document().selectedPart(), "bridge");
    EXPECT_TRUE(whenAsked([](QDialog* dialog) { dialog->reject(); },
                          [this] { QTest::mouseClick(button(4), Qt::LeftButton); }));
}

TEST_F(FirstStepsTest, PutAwayTheyStayAwayUntilTheyAreWanted)
{
    ASSERT_TRUE(window->firstSteps().isVisible());
    QTest::mouseClick(button(FirstSteps::kSteps), Qt::LeftButton);
    EXPECT_FALSE(window->firstSteps().isVisible());
    EXPECT_FALSE(action(Command::FirstSteps)->isChecked());
    window->close();
    open();
    EXPECT_FALSE(window->firstSteps().isVisible());
    action(Command::FirstSteps)->trigger();
    EXPECT_TRUE(window->firstSteps().isVisible());
}

TEST_F(FirstStepsTest, GoAwayWhenAllIsDone)
{
    window->files().openSample(QStringLiteral(":/samples/harbour-light.lidplan"));
    document().edit({{"box.length", document().plan().box.length + 5},
                     {"hole.count", static_cast<double>(document().plan().holes.size() + 1)},
                     {"neck.width", 41.0},
                     {"bridge.length", 77.0}},
                    QStringLiteral("all"));
    EXPECT_TRUE(window->firstSteps().isVisible());
    window->firstSteps().setPaperMade();
    EXPECT_FALSE(window->firstSteps().isVisible());
}

}  // namespace
}  // namespace lidwright
