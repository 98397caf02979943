#include "app/undo/plan_command.h"

#include "app/document/plan_document.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

void set(PlanDocument& document, double length, const char* key)
{
    document.edit({{"box.length", length}}, QStringLiteral("Length %1").arg(length), QLatin1String(key));
}

TEST(PlanCommand, StepsWithOneKeyBecomeOne)
{
    PlanDocument document;
    set(document, 301, "box.length");
    set(document, 302, "box.length");
    set(document, 303, "box.length");
    EXPECT_EQ(document.undoStack().count(), 1);
    EXPECT_EQ(document.undoStack().undoText(), "Length 303");
    document.undoStack().undo();
    EXPECT_EQ(document.plan(), Plan{});
    document.undoStack().redo();
    EXPECT_EQ(document.plan().box.length, 303);
}

TEST(PlanCommand, OtherKeysAndNoKeyDoNotMerge)
{
    PlanDocument document;
    set(document, 301, "a");
    set(document, 302, "b");
    set(document, 303, "");
    set(document, 304, "");
    EXPECT_EQ(document.undoStack().count(), 4);
}

TEST(PlanCommand, MergedStepsThatComeBackToTheStartVanish)
{
    PlanDocument document;
    set(document, 301, "a");
    set(document, Plan{}.box.length, "a");
    EXPECT_EQ(document.undoStack().count(), 0);
    EXPECT_FALSE(document.modified());
    EXPECT_EQ(document.plan(), Plan{});
}

TEST(PlanCommand, ASavedPlanIsAPlaceToComeBackTo)
{
    PlanDocument document;
    set(document, 301, "a");
    document.markSaved(QStringLiteral("/x.lidplan"));
    set(document, 302, "a");
    EXPECT_EQ(document.undoStack().count(), 2) << "merging would lose the saved plan";
    document.undoStack().undo();
    EXPECT_FALSE(document.modified());
}

TEST(PlanCommand, SelectingSomethingElseEndsTheRun)
{
    PlanDocument document;
    set(document, 301, "a");
    document.select(QStringLiteral("bridge"));
    set(document, 302, "a");
    EXPECT_EQ(document.undoStack().count(), 2);
}

TEST(PlanCommand, UndoIsUnlimited)
{
    PlanDocument document;
    EXPECT_EQ(document.undoStack().undoLimit(), 0);
    for (int i = 0; i < 300; ++i)
        set(document, 200 + i, "");
    while (document.undoStack().canUndo())
        document.undoStack().undo();
    EXPECT_EQ(document.plan(), Plan{});
}

}  // namespace
}  // namespace lidwright
