#include "app/exchange/paint_table.h"

#include "tests/support/plans.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QSignalSpy>
#include <QTest>

namespace lidwright {
namespace {

Artwork twoPaints()
{
    Artwork art;
    art.paints = {{"fill #000000", "#000000", false, 0}, {"line #ff0000", "#ff0000", true, 0.1}};
    const Region square{{rectangleRing({0, 0}, 20, 10)}};
    art.runs = {{0, square, {}},
                {1, {{rectangleRing({50, 0}, 1, 1)}}, square},
                {0, {{rectangleRing({0, 50}, 5, 2)}}, {}}};
    return art;
}

TEST(PaintTable, ShowsNameAreaAndUseOfEveryPaint)
{
    PaintTable table;
    table.setPaints(twoPaints(), {ArtUse::Cut, ArtUse::CutInside}, {});
    ASSERT_EQ(table.rowCount(), 2);
    EXPECT_EQ(table.item(0, 0)->text(), "fill #000000");
    EXPECT_FALSE(table.item(0, 0)->icon().isNull());
    EXPECT_TRUE(table.item(0, 1)->text().startsWith(QLatin1String("210")))
        << table.item(0, 1)->text().toStdString();
    EXPECT_EQ(table.uses(), (std::vector<ArtUse>{ArtUse::Cut, ArtUse::CutInside}));
    EXPECT_EQ(table.useBox(0)->count(), 4) << "a fill encloses nothing";
    EXPECT_EQ(table.useBox(1)->count(), 5);
    EXPECT_FALSE(table.useBox(0)->accessibleName().isEmpty());

    table.setPaints(twoPaints(), {}, {}, 2);
    EXPECT_TRUE(table.item(0, 1)->text().startsWith(QLatin1String("840")))
        << table.item(0, 1)->text().toStdString();
    EXPECT_EQ(table.uses(), (std::vector<ArtUse>{ArtUse::Ignored, ArtUse::Ignored})) << "no use is no use";
}

TEST(PaintTable, TheKeyboardChangesAUse)
{
    PaintTable table;
    table.setPaints(twoPaints(), {ArtUse::Cut, ArtUse::Cut}, {});
    table.show();
    QSignalSpy changed(&table, &PaintTable::usesChanged);
    QTest::keyClick(table.useBox(0), Qt::Key_Down);
    EXPECT_EQ(changed.count(), 1);
    EXPECT_EQ(table.uses().front(), ArtUse::Engraved);
    QTest::keyClick(table.useBox(1), Qt::Key_End);
    EXPECT_EQ(table.uses().back(), ArtUse::Ignored);
}

TEST(PaintTable, UsesAreCarriedOverByName)
{
    const Artwork before = twoPaints();
    Artwork now = before;
    std::swap(now.paints[0], now.paints[1]);
    now.paints.push_back({"fill #123456", "#123456", false, 0});
    const auto carried = carriedUses(before, {ArtUse::Engraved, ArtUse::Wood}, now);
    ASSERT_EQ(carried.size(), 3u);
    EXPECT_EQ(carried[0], ArtUse::Wood);
    EXPECT_EQ(carried[1], ArtUse::Engraved);
    EXPECT_EQ(carried[2], firstGuess(now)[2]);
}

}  // namespace
}  // namespace lidwright
