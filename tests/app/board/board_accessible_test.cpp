#include "tests/app/board/board_fixture.h"

#include <QAccessible>

namespace lidwright::testing {
namespace {

class BoardAccess : public BoardTest {
protected:
    QAccessibleInterface* root() { return QAccessible::queryAccessibleInterface(&board); }
    QAccessibleInterface* partChild(const QString& beginning)
    {
        for (int i = 0; i < root()->childCount(); ++i)
            if (QAccessibleInterface* c = root()->child(i);
                c && c->text(QAccessible::Name).startsWith(beginning))
                return c;
        return nullptr;
    }
};

TEST_F(BoardAccess, OneNamedChildPerPartThenTheBars)
{
    ASSERT_NE(root(), nullptr);
    const auto parts = board.scene().partsInOrder();
    ASSERT_GE(root()->childCount(), int(parts.size()) + 2);
    for (int i = 0; i < root()->childCount(); ++i) {
        QAccessibleInterface* child = root()->child(i);
        ASSERT_NE(child, nullptr) << i;
        EXPECT_TRUE(child->isValid());
        EXPECT_EQ(root()->indexOfChild(child), i);
        // The closed dimension field has no name before it is opened.
        if (child->object() && !qobject_cast<QWidget*>(child->object())->isVisible()) continue;
        EXPECT_FALSE(child->text(QAccessible::Name).isEmpty()) << i;
    }
    QAccessibleInterface* bridge = partChild("Bridge, ");
    ASSERT_NE(bridge, nullptr);
    EXPECT_EQ(bridge->text(QAccessible::Name), "Bridge, 90 by 18 mm");
    EXPECT_EQ(bridge->role(), QAccessible::Graphic);
    EXPECT_EQ(bridge->parent(), root());
}

TEST_F(BoardAccess, NamesFollowThePlan)
{
    document.edit({{"bridge.length", 80.0}, {"art.1.x", 235.0}, {"art.1.y", 0.0}}, "test");
    QAccessibleInterface* bridge = partChild("Bridge, ");
    ASSERT_NE(bridge, nullptr);
    const QString name = bridge->text(QAccessible::Name);
    EXPECT_TRUE(name.startsWith("Bridge, 80 by 18 mm, ")) << name.toStdString();
    EXPECT_TRUE(name.contains("wrong")) << name.toStdString();

    const int before = root()->childCount();
    Plan fewer = document.plan();
    fewer.holes.clear();
    document.replace(fewer, "Remove hole");
    EXPECT_EQ(root()->childCount(), before - 1);
}

TEST_F(BoardAccess, ChildrenLieWhereThePartsAre)
{
    QAccessibleInterface* bridge = partChild("Bridge, ");
    ASSERT_NE(bridge, nullptr);
    const QPoint middle = board.mapToGlobal(pixel(View::Top, {layout().saddleX, 0}));
    EXPECT_TRUE(bridge->rect().contains(middle));
    QAccessibleInterface* there = root()->childAt(middle.x(), middle.y());
    ASSERT_NE(there, nullptr);
    EXPECT_LE(there->rect().width(), bridge->rect().width()) << there->text(QAccessible::Name).toStdString();
}

TEST_F(BoardAccess, APartCanBeSelectedByItsAction)
{
    QAccessibleInterface* bridge = partChild("Bridge, ");
    ASSERT_NE(bridge, nullptr);
    EXPECT_FALSE(bridge->state().selected);
    QSignalSpy activated(&board, &BoardWidget::partActivated);
    ASSERT_NE(bridge->actionInterface(), nullptr);
    bridge->actionInterface()->doAction(QAccessibleActionInterface::setFocusAction());
    EXPECT_EQ(selected(), "bridge");
    EXPECT_TRUE(bridge->state().selected);
    EXPECT_EQ(activated.count(), 0);
    bridge->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    EXPECT_EQ(activated.count(), 1);
    ASSERT_NE(root()->focusChild(), nullptr);
    EXPECT_EQ(root()->focusChild()->text(QAccessible::Name), bridge->text(QAccessible::Name));
}

}  // namespace
}  // namespace lidwright::testing
