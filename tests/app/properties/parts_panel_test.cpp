#include "app/properties/parts_panel.h"

#include "app/properties/choice_edit.h"
#include "app/properties/flag_edit.h"
#include "app/properties/notes_edit.h"
#include "app/properties/parameter_editor.h"
#include "app/properties/part_form.h"
#include "app/properties/part_tree.h"
#include "app/properties/typed_edit.h"
#include "tests/app/properties/panel_window.h"

#include <gtest/gtest.h>

#include <QMenu>
#include <QPushButton>
#include <QSignalSpy>

#include <cmath>

namespace lidwright {
namespace {

using testing::fullPlan;
using testing::PanelWindow;
using testing::type;
using testing::unnamedControls;

/// Keys of all quantities that a full plan has.
std::vector<std::string> allKeys()
{
    std::vector<std::string> keys;
    const Plan plan = fullPlan();
    for (const Parameter& p : catalogue())
        for (int i = 0; i < (p.inList() ? p.size(plan) : 1); ++i)
            keys.push_back(keyOf(p, i));
    return keys;
}

/// The plan with choices changed until the quantity counts; any choice of the catalogue may be the one.
Plan whereItCounts(const Plan& plan, const ParameterRef& ref)
{
    if (active(plan, ref)) return plan;
    for (const Parameter& other : catalogue()) {
        const int values = other.quantity == Quantity::Flag     ? 2
                           : other.quantity == Quantity::Choice ? static_cast<int>(other.choices.size())
                           : other.quantity == Quantity::Count  ? 3
                                                                : 0;
        for (int v = 0; v < values; ++v) {
            const int members = other.inList() ? other.size(plan) : 1;
            for (int i = 0; i < members; ++i) {
                const auto next = set(plan, {&other, i}, static_cast<double>(v));
                if (next && active(*next, ref)) return *next;
            }
        }
    }
    ADD_FAILURE() << ref.key() << " counts in no plan";
    return plan;
}

/// Another allowed number, near the middle of the way to the farther end of the range, with few decimals.
double anotherNumber(const Parameter& p, double now)
{
    const double end = p.most - now > now - p.least ? p.most : p.least;
    const double step = p.quantity == Quantity::Count || p.quantity == Quantity::Pitch ? 1 : 0.5;
    const double half = std::floor((now + (end - now) / 2) / step) * step;
    return half != now && half >= p.least && half <= p.most ? half : end;
}

class EveryParameter : public ::testing::TestWithParam<std::string> {};

TEST_P(EveryParameter, HasARowThatTakesWhatIsTypedAndGivesItBack)
{
    const std::string key = GetParam();
    const auto found = findParameter(fullPlan(), key);
    ASSERT_TRUE(found.ok());
    PanelWindow w(whereItCounts(fullPlan(), *found));
    const Parameter& p = *found->parameter;
    QWidget* control = w.control(key);
    ASSERT_NE(control, nullptr) << "no row";
    EXPECT_TRUE(control->hasFocus());
    EXPECT_TRUE(control->isEnabled());
    EXPECT_FALSE(control->accessibleName().isEmpty());
    EXPECT_FALSE(control->toolTip().isEmpty());
    EXPECT_FALSE(control->whatsThis().isEmpty());

    const ParameterValue before = w.now(key);
    ParameterValue wanted;
    if (auto* typed = qobject_cast<TypedEdit*>(control)) {
        if (p.isText()) {
            wanted = std::string("Heron & reeds 3/4");
            type(typed, QStringLiteral("Heron & reeds 3/4"));
        } else {
            const double number = anotherNumber(p, std::get<double>(before));
            wanted = number;
            type(typed, p.quantity == Quantity::Pitch ? QString::fromStdString(formatValue(p, number, {}))
                                                      : QString::number(number, 'g', 12));
        }
    } else if (auto* notes = qobject_cast<NotesEdit*>(control)) {
        wanted = std::string("one\ntwo");
        QTest::keyClicks(notes, QStringLiteral("one"));
        QTest::keyClick(notes, Qt::Key_Return);
        QTest::keyClicks(notes, QStringLiteral("two"));
        QTest::keyClick(notes, Qt::Key_Return, Qt::ControlModifier);
    } else if (auto* choice = qobject_cast<ChoiceEdit*>(control)) {
        const bool last = std::get<double>(before) == p.most;
        wanted = std::get<double>(before) + (last ? -1 : 1);
        QTest::keyClick(choice, last ? Qt::Key_Up : Qt::Key_Down);
    } else if (auto* flag = qobject_cast<FlagEdit*>(control)) {
        wanted = 1 - std::get<double>(before);
        QTest::keyClick(flag, Qt::Key_Space);
    } else {
        FAIL() << "unknown control " << control->metaObject()->className();
    }
    ASSERT_NE(wanted, before);
    EXPECT_EQ(w.now(key), wanted);
    EXPECT_EQ(w.document.undoStack().count(), 1);
    EXPECT_TRUE(w.document.undoStack().undoText().startsWith(QStringLiteral("Set ")));
    w.document.undoStack().undo();
    EXPECT_EQ(w.now(key), before);
}

std::string testName(const ::testing::TestParamInfo<std::string>& info)
{
    std::string name = info.param;
    for (char& c : name)
        if (c == '.' || c == '-') c = '_';
    return name;
}

INSTANTIATE_TEST_SUITE_P(Catalogue, EveryParameter, ::testing::ValuesIn(allKeys()), testName);

TEST(PartsPanel, LookingThroughEveryFieldChangesNothing)
{
    Plan plan = fullPlan();
    plan.neck.width = 38.0123456789;
    plan.holes[1].y = -12.3456789012345;
    plan.sheet.unit = PlanUnit::InchFraction;
    PanelWindow w(plan);
    for (const std::string& key : allKeys()) {
        QWidget* control = w.control(key);
        ASSERT_NE(control, nullptr) << key;
        QTest::keyClick(control, Qt::Key_Tab);
    }
    EXPECT_EQ(w.document.plan(), plan);
    EXPECT_EQ(w.document.undoStack().count(), 0);
}

TEST(PartsPanel, AllControlsHaveNames)
{
    PanelWindow w;
    QStringList keys{QString(), QStringLiteral("art.1"), QStringLiteral("hole.1"), QStringLiteral("block.1")};
    for (const PartInfo& part : parts())
        keys << QString::fromLatin1(part.key);
    for (const QString& key : keys) {
        w.document.select(key);
        EXPECT_TRUE(unnamedControls(w.panel).isEmpty())
            << key.toStdString() << ": " << unnamedControls(w.panel).join(QStringLiteral(", ")).toStdString();
    }
}

TEST(PartsPanel, TabWalksTheFormsFieldsInOrder)
{
    PanelWindow w;
    QWidget* first = w.control("bridge.length");
    std::vector<std::string> visited{first->objectName().toStdString()};
    for (int i = 0; i < 4; ++i) {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        visited.push_back(QApplication::focusWidget()->objectName().toStdString());
    }
    EXPECT_EQ(visited, (std::vector<std::string>{"bridge.length", "bridge.width", "bridge.height",
                                                 "bridge.art-margin", "bridge.angle"}));
}

TEST(PartsPanel, AddsAndRemovesMembers)
{
    PanelWindow w;
    QPushButton* add = nullptr;
    QPushButton* remove = nullptr;
    for (QPushButton* button : w.panel->findChildren<QPushButton*>()) {
        if (button->menu() != nullptr) add = button;
        if (button->text() == QStringLiteral("Remove") && button->parentWidget()->findChild<PartTree*>())
            remove = button;
    }
    ASSERT_NE(add, nullptr);
    ASSERT_NE(remove, nullptr);
    EXPECT_FALSE(remove->isEnabled()) << "nothing is selected";

    QSignalSpy artWanted(w.panel, &PartsPanel::addArtworkWanted);
    for (QAction* action : add->menu()->actions())
        action->trigger();
    EXPECT_EQ(artWanted.size(), 1);
    EXPECT_EQ(w.document.plan().holes.size(), 3u);
    EXPECT_EQ(w.document.plan().blocks.size(), 2u);
    EXPECT_EQ(w.document.selectedPart().toStdString(), "accepted.1");
    EXPECT_EQ(w.document.undoStack().undoText().toStdString(), "Add accepted finding");

    w.document.select(QStringLiteral("hole.2"));
    EXPECT_TRUE(remove->isEnabled());
    QTest::mouseClick(remove, Qt::LeftButton);
    EXPECT_EQ(w.document.plan().holes.size(), 2u);
    EXPECT_EQ(w.document.undoStack().undoText().toStdString(), "Remove Plain hole 2");
    EXPECT_EQ(w.document.selectedPart().toStdString(), "hole.2") << "the one that moved up";

    auto* tree = w.panel->findChild<PartTree*>();
    w.document.select(QStringLiteral("art.1"));
    tree->setFocus();
    QTest::keyClick(tree, Qt::Key_Delete);
    EXPECT_TRUE(w.document.plan().art.empty());
    EXPECT_EQ(w.document.selectedPart().toStdString(), "art");
}

TEST(PartsPanel, PendingTextCanBeTakenFromOutside)
{
    PanelWindow w;
    QWidget* field = w.control("lid.thickness");
    QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(field, QStringLiteral("4.5"));
    EXPECT_EQ(w.document.plan().lid.thickness, Lid{}.thickness);
    w.panel->commitPending();
    EXPECT_EQ(w.document.plan().lid.thickness, 4.5);
}

TEST(PartsPanel, AnUnknownParameterMovesNothing)
{
    PanelWindow w;
    w.document.select(QStringLiteral("neck"));
    for (const char* key : {"", "nonsense", "neck.", "hole.99.x", "neck.nonsense"})
        w.panel->focusParameter(QLatin1String(key));
    EXPECT_EQ(w.document.plan(), fullPlan());
}

}  // namespace
}  // namespace lidwright
