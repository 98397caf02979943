#include "app/properties/edit_text.h"

#include "tests/app/properties/panel_window.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

ParameterRef ref(const Plan& plan, const char* key)
{
    const auto found = findParameter(plan, key);
    EXPECT_TRUE(found.ok()) << key;
    return *found;
}

TEST(EditText, AnUndoStepReadsAsWhatItDid)
{
    const Plan plan = testing::fullPlan();
    EXPECT_EQ(editText(plan, ref(plan, "neck.width"), 40.0).toStdString(), "Set neck width to 40 mm");
    EXPECT_EQ(editText(plan, ref(plan, "hole.2.x"), 40.0).toStdString(),
              "Set plain hole 2 from head-end wall to 40 mm");
    EXPECT_EQ(editText(plan, ref(plan, "corner-blocks.present"), 0.0).toStdString(),
              "Set corner blocks to no");
    EXPECT_EQ(editText(plan, ref(plan, "box.shape"), 0.0).toStdString(), "Set box shape to rectangle");
    EXPECT_EQ(editText(plan, ref(plan, "sheet.maker"), std::string("A\nB")).toStdString(),
              "Set plan maker to “A B”");
    EXPECT_EQ(editText(plan, ref(plan, "sheet.maker"), std::string()).toStdString(),
              "Set plan maker to nothing");
    EXPECT_LT(editText(plan, ref(plan, "sheet.notes"), std::string(5000, 'x')).size(), 100);
}

TEST(EditText, TheTipSaysHelpExactValueAndRange)
{
    Plan plan = testing::fullPlan();
    plan.neck.width = 38.123456789;
    plan.sheet.unit = PlanUnit::InchFraction;
    const QString tip = parameterTip(plan, ref(plan, "neck.width"));
    EXPECT_TRUE(tip.contains(QStringLiteral("Width of the stick.")));
    EXPECT_TRUE(tip.contains(QStringLiteral("Exactly 38.123456789 mm")));
    EXPECT_TRUE(tip.contains(QStringLiteral("common practice, no source")));
    EXPECT_TRUE(tip.contains(QStringLiteral(" in")));
}

TEST(EditText, EveryTipNamesItsUnitAndRange)
{
    const Plan plan = testing::fullPlan();
    for (const PartInfo& part : parts()) {
        for (const std::string& key : {std::string(part.key), std::string(part.key) + ".1"}) {
            for (const ParameterRef& r : parametersOf(plan, key)) {
                const QString tip = parameterTip(plan, r);
                EXPECT_GE(tip.count(QLatin1Char('\n')), 1) << r.key();
                if (r.parameter->quantity == Quantity::Length) {
                    EXPECT_TRUE(tip.contains(QStringLiteral("From ")) && tip.contains(QStringLiteral(" mm")))
                        << r.key();
                }
                EXPECT_FALSE(parameterName(plan, r).isEmpty());
            }
        }
    }
}

TEST(EditText, TheCustomaryRangeIsShort)
{
    const Plan plan;
    EXPECT_EQ(customaryHint(*ref(plan, "neck.width").parameter, UnitStyle{}).toStdString(),
              "usual 32 to 50 mm");
    EXPECT_TRUE(customaryHint(*ref(plan, "neck.top").parameter, UnitStyle{}).isEmpty());
    UnitStyle inches;
    inches.unit = LengthUnit::InchFraction;
    EXPECT_FALSE(customaryHint(*ref(plan, "neck.width").parameter, inches).contains(QChar(0x2248)));
    EXPECT_TRUE(outsideCustomary(*ref(plan, "neck.width").parameter, 31.9));
    EXPECT_FALSE(outsideCustomary(*ref(plan, "neck.width").parameter, 32.0));
    EXPECT_FALSE(outsideCustomary(*ref(plan, "neck.top").parameter, 1e6)) << "nothing is known";
    Plan wired;
    wired.wiring.resize(1);
    EXPECT_FALSE(outsideCustomary(*ref(wired, "wiring.1.hole").parameter, 0.0)) << "it needs no hole";
    EXPECT_TRUE(outsideCustomary(*ref(wired, "wiring.1.hole").parameter, 1.0));
}

TEST(EditText, SaysWhichChoiceSilencesAQuantity)
{
    Plan plan = testing::fullPlan();
    EXPECT_TRUE(inactiveReason(plan, ref(plan, "neck.width"), false).isEmpty());
    plan.scale.hold = ScaleHold::SaddleToTail;
    EXPECT_EQ(inactiveReason(plan, ref(plan, "scale.nut-to-box"), true).toStdString(),
              "Follows while what is held is “saddle from the tail-end wall”.");
    EXPECT_EQ(inactiveReason(plan, ref(plan, "hole.1.length"), false).toStdString(),
              "Does not count while kind is “circle”.");
    EXPECT_EQ(inactiveReason(plan, ref(plan, "head-opening.width"), true).toStdString(),
              "Follows while already cut is “no”.");
    plan.box.shape = BoxShape::Outline;
    EXPECT_TRUE(
        inactiveReason(plan, ref(plan, "corner-blocks.height"), false).contains(QStringLiteral("box")));
}

}  // namespace
}  // namespace lidwright
