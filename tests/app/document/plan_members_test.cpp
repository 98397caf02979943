#include "app/document/plan_members.h"

#include "tests/support/plans.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

Plan threeHoles()
{
    Plan plan;
    plan.holes.resize(3);
    for (std::size_t i = 0; i < 3; ++i)
        plan.holes[i].x = 10.0 * static_cast<double>(i + 1);
    return plan;
}

TEST(PlanMembers, PartKeysOfListsAreRead)
{
    const auto member = partMember(QStringLiteral("hole.12"));
    ASSERT_TRUE(member);
    EXPECT_EQ(member->list, "hole");
    EXPECT_EQ(member->index, 11);
    for (const char* bad : {"bridge", "hole.", "hole.0", "hole.-1", "hole.x", ""})
        EXPECT_FALSE(partMember(QLatin1String(bad))) << bad;
}

TEST(PlanMembers, TakingOneOutLeavesTheOthersInOrder)
{
    const auto next = withoutMember(threeHoles(), QStringLiteral("hole.2"));
    ASSERT_TRUE(next);
    ASSERT_EQ(next->holes.size(), 2u);
    EXPECT_EQ(next->holes[0].x, 10);
    EXPECT_EQ(next->holes[1].x, 30);
    EXPECT_FALSE(withoutMember(threeHoles(), QStringLiteral("hole.4")));
    EXPECT_FALSE(withoutMember(threeHoles(), QStringLiteral("art.1")));
    EXPECT_FALSE(withoutMember(threeHoles(), QStringLiteral("bridge")));
}

TEST(PlanMembers, AddingStopsAtTheLimit)
{
    Plan plan;
    for (int i = 0; i < kMostPieces; ++i) {
        const auto next = withHole(plan, HoleKind::Slot);
        ASSERT_TRUE(next);
        plan = *next;
    }
    EXPECT_EQ(plan.holes.back().kind, HoleKind::Slot);
    EXPECT_FALSE(withHole(plan, HoleKind::Circle));
    EXPECT_TRUE(withBlock(plan));
    EXPECT_TRUE(withArtwork(plan, testing::pieceOf({{circleRing({0, 0}, 5)}})));
}

TEST(PlanMembers, WhatIsInTheBoxIsAddedAndTakenOut)
{
    Plan plan;
    for (int i = 0; i < 2; ++i) {
        plan = *withHollow(plan);
        plan = *withBar(plan, derive(plan));
        plan = *withDevice(plan, derive(plan), i == 0 ? DeviceKind::Pot : DeviceKind::Socket);
    }
    for (const char* list : {"hollow", "bar", "wiring"}) {
        EXPECT_EQ(memberCount(plan, QLatin1String(list)), 2) << list;
        const auto next = withoutMember(plan, QLatin1String(list) + QStringLiteral(".1"));
        ASSERT_TRUE(next) << list;
        EXPECT_EQ(memberCount(*next, QLatin1String(list)), 1) << list;
        EXPECT_FALSE(withoutMember(plan, QLatin1String(list) + QStringLiteral(".3"))) << list;
    }
    EXPECT_EQ(withoutMember(plan, QStringLiteral("wiring.1"))->wiring[0].kind, DeviceKind::Socket);
    plan.wiring.resize(kMostPieces);
    plan.bars.resize(kMostPieces);
    plan.hollows.resize(kMostPieces);
    EXPECT_FALSE(withHollow(plan));
    EXPECT_FALSE(withBar(plan, derive(plan)));
    EXPECT_FALSE(withDevice(plan, derive(plan), DeviceKind::Pot));
}

TEST(PlanMembers, WhatIsNoListMemberIsAlwaysThere)
{
    const Plan plan = threeHoles();
    EXPECT_TRUE(hasPart(plan, QStringLiteral("bridge")));
    EXPECT_TRUE(hasPart(plan, QStringLiteral("hole.3")));
    EXPECT_FALSE(hasPart(plan, QStringLiteral("hole.4")));
    EXPECT_FALSE(hasPart(plan, QStringLiteral("hole.no")));
}

}  // namespace
}  // namespace lidwright
