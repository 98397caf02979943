#include "app/findings/finding_card.h"

#include "app/style/wrapping_button.h"
#include "tests/app/properties/panel_window.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QSignalSpy>

namespace lidwright {
namespace {

using testing::ActiveWindow;

Finding sample()
{
    Finding f;
    f.rule = "bridge.art";
    f.part = "bridge";
    f.verdict = Verdict::Wrong;
    f.sentence = {"The bridge comes %1 near <%2>", {mm(1.2), std::string("Heron & reeds")}};
    f.measured = mm(1.2);
    f.required = mm(3);
    f.remedies = {{{"Move the bridge %1 toward the tail", {mm(5)}}, {{"scale.nut-to-box", 395.0}}},
                  {{"Make the bridge %1 narrower", {mm(4)}}, {{"bridge.width", 14.0}}}};
    return f;
}

struct Card {
    Card() : card(new FindingCard), window(card, {300, 200})
    {
        card->setFinding(sample(), UnitStyle{}, false);
        for (WrappingButton* button : card->buttons())
            button->show();
    }
    QStringList words() const
    {
        QStringList all;
        for (const QLabel* label : card->findChildren<QLabel*>())
            all << label->text().replace(QChar(QChar::Nbsp), QLatin1Char(' '));
        return all;
    }
    FindingCard* card;
    ActiveWindow window;
};

TEST(FindingCard, SaysWordSentenceAndMeasures)
{
    Card c;
    EXPECT_EQ(c.card->accessibleName().toStdString(),
              "Wrong: The bridge comes 1.2 mm near <Heron & reeds> Is 1.2 mm, needs at least 3 mm.");
    EXPECT_TRUE(c.words().contains(QStringLiteral("Is 1.2 mm, needs at least 3 mm")));
    EXPECT_TRUE(c.words().join(QLatin1Char(' ')).contains(QStringLiteral("&lt;Heron &amp; reeds&gt;")))
        << "a name is not read as markup";
    Finding bare = sample();
    bare.measured.reset();
    bare.required.reset();
    c.card->setFinding(bare, UnitStyle{}, false);
    EXPECT_FALSE(c.card->accessibleName().contains(QStringLiteral("needs")));
}

TEST(FindingCard, SpeaksOfOverlapsAndBoundsAsAMakerDoes)
{
    Card c;
    Finding f = sample();
    f.measured = Measure{-8, Quantity::Length};
    c.card->setFinding(f, UnitStyle{}, false);
    EXPECT_TRUE(c.words().contains(QStringLiteral("Overlaps by 8 mm, needs at least 3 mm clear")));
    f.measured.reset();
    f.bound = Bound::AtMost;
    c.card->setFinding(f, UnitStyle{}, false);
    EXPECT_TRUE(c.words().contains(QStringLiteral("May be 3 mm at most")));
    f.measured = Measure{2, Quantity::Length};
    f.comfortable = Measure{1, Quantity::Length};
    f.verdict = Verdict::Tight;
    c.card->setFinding(f, UnitStyle{}, false);
    EXPECT_TRUE(c.words().contains(QStringLiteral("Is 2 mm, may be 3 mm at most; good up to 1 mm")));
}

TEST(FindingCard, SpeaksTheUsersUnit)
{
    Card c;
    UnitStyle inches;
    inches.unit = LengthUnit::InchDecimal;
    c.card->setFinding(sample(), inches, false);
    EXPECT_TRUE(c.card->accessibleName().contains(QStringLiteral(" in")));
    EXPECT_FALSE(c.card->accessibleName().contains(QStringLiteral("mm")));
    EXPECT_TRUE(c.card->buttons()[0]->accessibleName().contains(QStringLiteral(" in ")));
}

TEST(FindingCard, IsAListEntryForScreenReadersAndItsButtonsHaveNames)
{
    installCardAccess();
    Card c;
    QAccessibleInterface* face = QAccessible::queryAccessibleInterface(c.card);
    ASSERT_NE(face, nullptr);
    EXPECT_EQ(face->role(), QAccessible::ListItem);
    EXPECT_EQ(face->text(QAccessible::Name), c.card->accessibleName());
    EXPECT_FALSE(face->state().selected);
    c.card->setCurrent(true);
    EXPECT_TRUE(face->state().selected);
    for (const WrappingButton* button : c.card->buttons())
        EXPECT_FALSE(QAccessible::queryAccessibleInterface(const_cast<WrappingButton*>(button))
                         ->text(QAccessible::Name)
                         .isEmpty());
}

TEST(FindingCard, RemediesAreChosenByMouseAndByKeys)
{
    Card c;
    std::vector<std::string> chosen;
    QObject::connect(c.card, &FindingCard::remedyChosen, c.card,
                     [&](const Remedy& remedy) { chosen.push_back(remedy.edits.at(0).key); });
    QTest::mouseClick(c.card->buttons()[0], Qt::LeftButton);
    QTest::keyClick(c.card->buttons()[1], Qt::Key_Space);
    QTest::keyClick(c.card->buttons()[1], Qt::Key_Return);
    EXPECT_EQ(chosen, (std::vector<std::string>{"scale.nut-to-box", "bridge.width", "bridge.width"}));
}

TEST(FindingCard, WhileRemediesAreSoughtTheOldOnesStandStill)
{
    Card c;
    QSignalSpy chosen(c.card, &FindingCard::remedyChosen);
    Finding moved = sample();
    moved.remedies.clear();
    WrappingButton* first = c.card->buttons()[0];
    first->setFocus();
    c.card->setFinding(moved, UnitStyle{}, true);
    ASSERT_EQ(c.card->buttons().size(), 2u);
    EXPECT_FALSE(first->isEnabled());
    EXPECT_TRUE(c.card->hasFocus()) << "the keyboard stays with the finding";
    QTest::mouseClick(first, Qt::LeftButton);
    EXPECT_TRUE(chosen.isEmpty());
    c.card->setFinding(moved, UnitStyle{}, false);
    EXPECT_TRUE(c.card->buttons().empty());
}

TEST(FindingCard, KeysOfTheListReachItFromItsButtonsToo)
{
    Card c;
    QSignalSpy steps(c.card, &FindingCard::stepWanted);
    QSignalSpy chosen(c.card, &FindingCard::chosen);
    c.card->setFocus();
    QTest::keyClick(c.card, Qt::Key_Down);
    QTest::keyClick(c.card->buttons()[0], Qt::Key_Up);
    QTest::keyClick(c.card, Qt::Key_End);
    QTest::keyClick(c.card, Qt::Key_Return);
    ASSERT_EQ(steps.size(), 3);
    EXPECT_EQ(steps[0][0].toInt(), 1);
    EXPECT_EQ(steps[1][0].toInt(), -1);
    EXPECT_EQ(steps[2][0].toInt(), 2);
    EXPECT_EQ(chosen.size(), 1);
    QTest::mouseClick(c.card, Qt::LeftButton, {}, QPoint(5, 5));
    EXPECT_EQ(chosen.size(), 2);
}

TEST(WrappingButton, BreaksItsTextWhereItIsNarrow)
{
    const WrappingButton button(QStringLiteral("Move the bridge 5 mm toward the tail and make it narrower"));
    const int wide = button.heightForWidth(600);
    EXPECT_GE(wide, 24);
    EXPECT_GE(button.heightForWidth(120), 2 * wide);
    EXPECT_LT(button.minimumSizeHint().width(), 120);
    EXPECT_EQ(button.heightForWidth(button.sizeHint().width()), button.sizeHint().height())
        << "one line fits";
    EXPECT_GE(button.heightForWidth(0), wide) << "no width, no crash";
}

TEST(FindingCard, TheKeyboardIsSeen)
{
    Card c;
    c.card->setCurrent(true);
    c.card->clearFocus();
    const QImage without = c.card->grab().toImage();
    c.card->setFocus();
    const QImage with = c.card->grab().toImage();
    int changed = 0;
    for (int x = 0; x < with.width(); ++x)
        changed += with.pixel(x, 1) != without.pixel(x, 1) ? 1 : 0;
    EXPECT_GT(changed, with.width() * 3 / 4) << "a ring all round";
}

}  // namespace
}  // namespace lidwright
