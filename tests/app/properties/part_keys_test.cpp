#include "app/properties/part_keys.h"

#include "tests/app/properties/panel_window.h"

#include "core/solvers/playing_values.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace lidwright {
namespace {

TEST(PartKeys, TakeKeysApartAndPutThemTogether)
{
    EXPECT_EQ(partWord(QStringLiteral("art.2")).toStdString(), "art");
    EXPECT_EQ(partWord(QStringLiteral("corner-blocks")).toStdString(), "corner-blocks");
    EXPECT_EQ(memberKey(QStringLiteral("hole"), 0).toStdString(), "hole.1");
    EXPECT_TRUE(isListPart(QStringLiteral("block")));
    EXPECT_FALSE(isListPart(QStringLiteral("bridge")));
    EXPECT_FALSE(isListPart(QStringLiteral("nonsense")));
    EXPECT_EQ(partIconName(QStringLiteral("corner-blocks")).toStdString(), "part_corner_blocks");
    EXPECT_EQ(listLabel(Plan{}, QStringLiteral("hole")).toStdString(), "Plain holes");
    EXPECT_EQ(listLabel(Plan{}, QStringLiteral("neck")).toStdString(), "Neck");
}

TEST(PartKeys, EveryDerivedQuantityButTheStationsStandsWithAPart)
{
    const Plan plan = testing::fullPlan();
    for (const DerivedValue& value : allValues(plan, derive(plan))) {
        const QString part = partOfDerived(value.key);
        // What is told fret by fret and tuner by tuner stands in the studies and `values`.
        const bool numbered = (value.key.starts_with("frets.") || value.key.starts_with("tuners.")) &&
                              std::count(value.key.begin(), value.key.end(), '.') > 1;
        if (value.key.starts_with("station.") || numbered) {
            EXPECT_TRUE(part.isEmpty()) << value.key;
            continue;
        }
        bool known = false;
        for (const PartInfo& info : parts())
            known = known || partWord(part) == QLatin1String(info.key);
        EXPECT_TRUE(known) << value.key << " -> " << part.toStdString();
    }
}

TEST(PartKeys, DerivedQuantitiesStandForWhatDoesNotCount)
{
    EXPECT_TRUE(standsFor("nut.to-box", "scale.nut-to-box"));
    EXPECT_TRUE(standsFor("saddle.to-tail-wall", "scale.saddle-to-tail-wall"));
    EXPECT_TRUE(standsFor("head-wall.opening-width", "head-opening.width"));
    EXPECT_TRUE(standsFor("tail-wall.strip-above", "tail-opening.strip"));
    EXPECT_FALSE(standsFor("tail-wall.opening-width", "head-opening.width"));
    EXPECT_FALSE(standsFor("neck.needed", "neck.width"));
}

}  // namespace
}  // namespace lidwright
