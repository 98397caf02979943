#include "app/properties/part_tree.h"

#include "tests/app/properties/panel_window.h"

#include <gtest/gtest.h>

#include <QSignalSpy>

namespace lidwright {
namespace {

using testing::ActiveWindow;
using testing::fullPlan;

struct Tree {
    explicit Tree(const Plan& plan = fullPlan()) : tree(new PartTree(document)), window(tree, {280, 600})
    {
        document.reset(plan, {});
    }
    QTreeWidgetItem* item(const QString& key) const
    {
        for (QTreeWidgetItemIterator at(tree); *at != nullptr; ++at)
            if ((*at)->data(0, Qt::UserRole).toString() == key) return *at;
        return nullptr;
    }

    PlanDocument document;
    PartTree* tree;
    ActiveWindow window;
};

TEST(PartTree, ShowsThePartsInCatalogueOrderAndMembersBelowTheirList)
{
    const Tree t;
    ASSERT_EQ(t.tree->topLevelItemCount(), static_cast<int>(parts().size()));
    for (int i = 0; i < t.tree->topLevelItemCount(); ++i)
        EXPECT_EQ(t.tree->topLevelItem(i)->data(0, Qt::UserRole).toString().toStdString(),
                  parts()[static_cast<std::size_t>(i)].key);
    EXPECT_EQ(t.item(QStringLiteral("hole"))->childCount(), 2);
    EXPECT_EQ(t.item(QStringLiteral("art.1"))->text(0).toStdString(), "test drawing");
    EXPECT_EQ(t.item(QStringLiteral("hole"))->text(0).toStdString(), "Plain holes");
}

TEST(PartTree, SelectionRunsBothWays)
{
    Tree t;
    t.document.select(QStringLiteral("bridge"));
    ASSERT_NE(t.tree->currentItem(), nullptr);
    EXPECT_EQ(t.tree->currentItem()->data(0, Qt::UserRole).toString().toStdString(), "bridge");

    t.tree->scrollToItem(t.item(QStringLiteral("lid")));
    QTest::mouseClick(t.tree->viewport(), Qt::LeftButton, {},
                      t.tree->visualItemRect(t.item(QStringLiteral("lid"))).center());
    EXPECT_EQ(t.document.selectedPart().toStdString(), "lid");

    t.tree->setFocus();
    QTest::keyClick(t.tree, Qt::Key_Down);
    EXPECT_EQ(t.document.selectedPart().toStdString(), "art");

    t.document.select({});
    EXPECT_EQ(t.tree->currentItem(), nullptr);
}

TEST(PartTree, EachMarkIsTheGravestFindingInWordsToo)
{
    Tree t;
    for (QTreeWidgetItemIterator at(t.tree); *at != nullptr; ++at) {
        const QString key = (*at)->data(0, Qt::UserRole).toString();
        // Another way to the same answer: by hand over all findings.
        int worst = -1;
        for (const Finding& finding : t.document.findings()) {
            const QString part = QString::fromStdString(finding.part);
            if (part == key || part.section(QLatin1Char('.'), 0, 0) == key)
                worst = std::max(worst, static_cast<int>(finding.verdict));
        }
        EXPECT_EQ((*at)->icon(1).isNull(), worst < 0) << key.toStdString();
        const QString spoken = (*at)->data(0, Qt::AccessibleTextRole).toString();
        if (worst >= 0) {
            EXPECT_TRUE(spoken.endsWith(QLatin1String(word(static_cast<Verdict>(worst)))))
                << spoken.toStdString();
        }
    }
}

TEST(PartTree, AMarkFollowsTheFindings)
{
    Tree t;
    const QString before = t.item(QStringLiteral("neck"))->data(0, Qt::AccessibleTextRole).toString();
    EXPECT_FALSE(before.endsWith(QStringLiteral("wrong")));
    ASSERT_TRUE(t.document.edit({{"neck.blank-length", 300.0}}, QStringLiteral("Shorten")));
    EXPECT_TRUE(t.item(QStringLiteral("neck"))
                    ->data(0, Qt::AccessibleTextRole)
                    .toString()
                    .endsWith(QStringLiteral("wrong")));
    t.document.undoStack().undo();
    EXPECT_EQ(t.item(QStringLiteral("neck"))->data(0, Qt::AccessibleTextRole).toString(), before);
}

TEST(PartTree, FollowsMembersThatComeAndGo)
{
    Tree t;
    t.document.select(QStringLiteral("hole.2"));
    ASSERT_TRUE(t.document.edit({{"hole.count", 3.0}}, QStringLiteral("More")));
    EXPECT_EQ(t.item(QStringLiteral("hole"))->childCount(), 3);
    EXPECT_TRUE(t.item(QStringLiteral("hole"))->isExpanded());
    EXPECT_EQ(t.tree->currentItem(), t.item(QStringLiteral("hole.2"))) << "the selection stays";
    ASSERT_TRUE(t.document.edit({{"hole.count", 1.0}}, QStringLiteral("Fewer")));
    EXPECT_EQ(t.item(QStringLiteral("hole.2")), nullptr);
    EXPECT_EQ(t.tree->currentItem(), nullptr);
}

TEST(PartTree, AFoldedListStaysFolded)
{
    Tree t;
    t.item(QStringLiteral("hole"))->setExpanded(false);
    ASSERT_TRUE(t.document.edit({{"block.count", 2.0}}, QStringLiteral("More")));
    EXPECT_FALSE(t.item(QStringLiteral("hole"))->isExpanded());
    EXPECT_TRUE(t.item(QStringLiteral("block"))->isExpanded());
}

TEST(PartTree, DelAsksForRemoval)
{
    Tree t;
    QSignalSpy wanted(t.tree, &PartTree::removeWanted);
    t.tree->setFocus();
    QTest::keyClick(t.tree, Qt::Key_Delete);
    EXPECT_EQ(wanted.size(), 1);
}

TEST(PartTree, RowsAreLargeEnoughToHit)
{
    const Tree t;
    for (QTreeWidgetItemIterator at(t.tree); *at != nullptr; ++at)
        EXPECT_GE(t.tree->visualItemRect(*at).height(), 24);
}

}  // namespace
}  // namespace lidwright
