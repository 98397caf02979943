#include "app/document/plan_document.h"

#include "tests/support/plans.h"
#include "tests/support/random_plan.h"

#include "core/io/plan/plan_file.h"

#include <gtest/gtest.h>

#include <QSignalSpy>

namespace lidwright {
namespace {

using testing::RandomPlans;

std::string text(const PlanDocument& document)
{
    return writePlan(document.plan());
}

/// A random value for a random quantity of the document's plan.
Edit randomEdit(RandomPlans& random, const Plan& plan)
{
    for (;;) {
        const Parameter& p = catalogue()[random.below(catalogue().size())];
        const int members = p.inList() ? p.size(plan) : 1;
        if (members == 0) continue;
        const int index = static_cast<int>(random.below(static_cast<std::size_t>(members)));
        if (p.isText()) return {keyOf(p, index), "text " + std::to_string(random.below(1000))};
        return {keyOf(p, index), random.within(p)};
    }
}

TEST(PlanDocument, UndoOfRandomEditsIsExactAndRedoToo)
{
    RandomPlans random(20);
    PlanDocument document;
    Plan start;
    start.art = {testing::pieceOf({{circleRing({0, 0}, 20)}})};
    start.holes.resize(2);
    document.reset(start, {});
    std::vector<std::string> states{text(document)};
    for (int i = 0; i < 150; ++i) {
        const int before = document.undoStack().index();
        document.edit({randomEdit(random, document.plan())}, QStringLiteral("step %1").arg(i));
        if (document.undoStack().index() > before) states.push_back(text(document));
        ASSERT_EQ(document.undoStack().index() + 1, static_cast<int>(states.size()));
    }
    ASSERT_GT(states.size(), 60u);
    for (std::size_t i = states.size(); i-- > 0;) {
        EXPECT_EQ(text(document), states[i]);
        document.undoStack().undo();
    }
    EXPECT_EQ(text(document), states.front());
    EXPECT_FALSE(document.modified());
    for (const std::string& state : states) {
        EXPECT_EQ(text(document), state);
        document.undoStack().redo();
    }
    EXPECT_EQ(text(document), states.back());
}

TEST(PlanDocument, LayoutAndFindingsFollowEveryEditAndUndo)
{
    PlanDocument document;
    const auto same = [&] {
        const Layout fresh = derive(document.plan());
        EXPECT_EQ(document.layout().saddleX, fresh.saddleX);
        EXPECT_EQ(document.layout().boxOuter, fresh.boxOuter);
        const auto findings = check(document.plan(), fresh);
        ASSERT_EQ(document.findings().size(), findings.size());
        for (std::size_t i = 0; i < findings.size(); ++i) {
            EXPECT_EQ(document.findings()[i].rule, findings[i].rule);
            EXPECT_EQ(document.findings()[i].verdict, findings[i].verdict);
        }
    };
    same();
    document.edit({{"box.length", 200.0}, {"scale.length", 700.0}}, QStringLiteral("both"));
    same();
    document.undoStack().undo();
    same();
}

TEST(PlanDocument, ARefusedEditChangesNothingAndSaysWhy)
{
    PlanDocument document;
    QSignalSpy refused(&document, &PlanDocument::refused);
    QSignalSpy changed(&document, &PlanDocument::changed);
    const std::string before = text(document);
    EXPECT_FALSE(document.edit({{"box.width", 200.0}, {"box.length", -5.0}}, QStringLiteral("no")));
    ASSERT_EQ(refused.count(), 1);
    EXPECT_FALSE(refused.first().first().toString().isEmpty());
    EXPECT_EQ(changed.count(), 0);
    EXPECT_EQ(text(document), before);
    EXPECT_FALSE(document.edit({{"box.lenght", 5.0}}, QStringLiteral("no")));
    EXPECT_EQ(document.undoStack().count(), 0);
}

TEST(PlanDocument, AnEditThatChangesNothingIsNoStepAndKeepsWhatCanBeRedone)
{
    PlanDocument document;
    document.edit({{"box.length", 300.0}}, QStringLiteral("shorter"));
    document.undoStack().undo();
    EXPECT_TRUE(document.edit({{"box.length", Plan{}.box.length}}, QStringLiteral("same")));
    EXPECT_TRUE(document.undoStack().canRedo());
    document.replace(document.plan(), QStringLiteral("same"));
    EXPECT_TRUE(document.undoStack().canRedo());
}

TEST(PlanDocument, OneDragIsOneStepAndCancelGoesBack)
{
    PlanDocument document;
    const std::string before = text(document);
    document.beginDrag();
    for (int i = 1; i <= 20; ++i) {
        Drag drag;
        drag.edits = {{"box.length", 330.0 + i}};
        drag.says = {"Make the box %1 longer", {mm(i)}};
        document.previewDrag(drag);
        EXPECT_EQ(document.plan().box.length, 330.0 + i);
        EXPECT_EQ(document.layout().bodyLength, 330.0 + i);
        EXPECT_FALSE(document.modified());
    }
    document.endDrag();
    EXPECT_EQ(document.undoStack().count(), 1);
    EXPECT_EQ(document.undoStack().undoText(), "Make the box 20 mm longer");
    EXPECT_EQ(document.plan().box.length, 350.0);
    document.undoStack().undo();
    EXPECT_EQ(text(document), before);

    document.beginDrag();
    document.previewDrag({{{"box.width", 100.0}}, {}, {}});
    EXPECT_EQ(document.plan().box.width, 100.0);
    document.cancelDrag();
    EXPECT_EQ(text(document), before);
    EXPECT_TRUE(document.undoStack().canRedo()) << "a drag that was broken off leaves no trace";
}

TEST(PlanDocument, ADragThatLeavesWhatAPlanCanBeStaysAtTheLastGoodPlace)
{
    PlanDocument document;
    document.beginDrag();
    document.previewDrag({{{"box.length", 400.0}}, {}, {}});
    document.previewDrag({{{"box.length", 1e6}}, {}, {}});
    EXPECT_EQ(document.plan().box.length, 400.0);
    document.endDrag();
    EXPECT_EQ(document.plan().box.length, 400.0);
}

TEST(PlanDocument, ADragBackToItsStartIsNoStep)
{
    PlanDocument document;
    document.beginDrag();
    document.previewDrag({{{"box.length", 400.0}}, {}, {}});
    document.previewDrag({{}, {}, {}});
    document.endDrag();
    EXPECT_EQ(document.undoStack().count(), 0);
    EXPECT_FALSE(document.dragging());
}

TEST(PlanDocument, UndoDuringADragForgetsThePreview)
{
    PlanDocument document;
    const std::string before = text(document);
    document.edit({{"box.length", 300.0}}, QStringLiteral("shorter"));
    const std::string shorter = text(document);
    document.beginDrag();
    document.previewDrag({{{"box.width", 100.0}}, {}, {}});
    document.undoStack().undo();
    EXPECT_FALSE(document.dragging());
    EXPECT_EQ(text(document), before);
    document.undoStack().redo();
    EXPECT_EQ(text(document), shorter);
}

TEST(PlanDocument, AnEditDuringADragEndsTheDragFirst)
{
    PlanDocument document;
    document.beginDrag();
    document.previewDrag({{{"box.width", 100.0}}, {}, {}});
    document.edit({{"box.length", 300.0}}, QStringLiteral("shorter"));
    EXPECT_EQ(document.undoStack().count(), 2);
    EXPECT_EQ(document.plan().box.width, 100.0);
    EXPECT_EQ(document.plan().box.length, 300.0);
}

TEST(PlanDocument, SelectionKnowsWhatThePlanHas)
{
    PlanDocument document;
    Plan plan;
    plan.holes.resize(2);
    document.reset(plan, {});
    QSignalSpy selected(&document, &PlanDocument::selectionChanged);
    document.select(QStringLiteral("hole.2"));
    EXPECT_EQ(document.selectedPart(), "hole.2");
    document.select(QStringLiteral("hole.3"));
    EXPECT_EQ(document.selectedPart(), "");
    document.select(QStringLiteral("hole.2"));
    document.edit({{"hole.count", 1.0}}, QStringLiteral("one hole less"));
    EXPECT_EQ(document.selectedPart(), "") << "the selected hole is gone";
    document.select(QStringLiteral("bridge"));
    EXPECT_EQ(document.selectedPart(), "bridge");
    EXPECT_EQ(selected.count(), 5);
}

TEST(PlanDocument, ResetStartsOverAndSavingMarksClean)
{
    PlanDocument document;
    document.edit({{"box.length", 300.0}}, QStringLiteral("shorter"));
    document.select(QStringLiteral("box"));
    EXPECT_TRUE(document.modified());
    QSignalSpy file(&document, &PlanDocument::fileChanged);
    document.reset(Plan{}, QStringLiteral("/somewhere/a plan.lidplan"));
    EXPECT_FALSE(document.modified());
    EXPECT_EQ(document.undoStack().count(), 0);
    EXPECT_EQ(document.selectedPart(), "");
    EXPECT_EQ(document.displayName(), "a plan.lidplan");
    EXPECT_GE(file.count(), 1);

    document.edit({{"box.length", 300.0}}, QStringLiteral("shorter"));
    document.markSaved(QStringLiteral("/somewhere/else.lidplan"));
    EXPECT_FALSE(document.modified());
    EXPECT_EQ(document.displayName(), "else.lidplan");
    document.undoStack().undo();
    EXPECT_TRUE(document.modified()) << "the file holds another plan than the board";
    document.undoStack().redo();
    EXPECT_FALSE(document.modified());
    document.markUnsaved();
    EXPECT_TRUE(document.modified());
}

}  // namespace
}  // namespace lidwright
