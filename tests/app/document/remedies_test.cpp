#include "app/document/plan_document.h"
#include "app/document/remedy_seeker.h"
#include "tests/support/plans.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

namespace lidwright {
namespace {

/// A plan with something wrong that can be mended: a drawing under the bridge.
Plan collision()
{
    Plan plan;
    plan.art = {testing::pieceOf({{circleRing({0, 0}, 15)}})};
    const Layout layout = derive(plan);
    plan.art[0].x = layout.saddleX - 10;
    plan.art[0].y = 0;
    return plan;
}

std::size_t remedyCount(const std::vector<Finding>& findings)
{
    std::size_t count = 0;
    for (const Finding& finding : findings)
        count += finding.remedies.size();
    return count;
}

TEST(Remedies, ComeAMomentLaterAndAreThoseOfTheCore)
{
    PlanDocument document;
    QSignalSpy ready(&document, &PlanDocument::remediesReady);
    document.reset(collision(), {});
    EXPECT_TRUE(document.remediesPending());
    EXPECT_EQ(remedyCount(document.findings()), 0u) << "the window does not wait for them";
    ASSERT_TRUE(ready.wait(60'000));
    EXPECT_FALSE(document.remediesPending());
    const auto expected = checkWithRemedies(document.plan());
    ASSERT_EQ(document.findings().size(), expected.size());
    ASSERT_GT(remedyCount(expected), 0u);
    for (std::size_t i = 0; i < expected.size(); ++i) {
        ASSERT_EQ(document.findings()[i].remedies.size(), expected[i].remedies.size());
        for (std::size_t k = 0; k < expected[i].remedies.size(); ++k)
            EXPECT_EQ(document.findings()[i].remedies[k].edits, expected[i].remedies[k].edits);
    }
}

TEST(Remedies, AnOfferedRemedyIsAnEditThatHelps)
{
    PlanDocument document;
    QSignalSpy ready(&document, &PlanDocument::remediesReady);
    document.reset(collision(), {});
    ASSERT_TRUE(ready.wait(60'000));
    for (const Finding& finding : document.findings()) {
        if (finding.remedies.empty()) continue;
        const Finding wrong = finding;
        ASSERT_TRUE(document.edit(wrong.remedies.front().edits, QStringLiteral("mend")));
        for (const Finding& now : document.findings())
            if (now.rule == wrong.rule && now.part == wrong.part) EXPECT_LT(now.verdict, wrong.verdict);
        return;
    }
    FAIL() << "nothing was offered";
}

TEST(Remedies, AnswersToOldQuestionsAreDropped)
{
    PlanDocument document;
    QSignalSpy ready(&document, &PlanDocument::remediesReady);
    document.reset(collision(), {});
    // Long enough for the search to have begun.
    QTest::qWait(RemedySeeker::kRest_ms + 20);
    document.edit({{"art.1.x", 80.0}, {"art.1.y", -70.0}}, QStringLiteral("away"));
    while (document.remediesPending())
        ASSERT_TRUE(ready.wait(60'000));
    const auto expected = checkWithRemedies(document.plan());
    ASSERT_EQ(document.findings().size(), expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i)
        EXPECT_EQ(document.findings()[i].remedies.size(), expected[i].remedies.size());
}

TEST(Remedies, AreNotSoughtWhileDragging)
{
    PlanDocument document;
    document.reset(collision(), {});
    QSignalSpy ready(&document, &PlanDocument::remediesReady);
    document.beginDrag();
    document.previewDrag({{{"art.1.y", 1.0}}, {}, {}});
    QTest::qWait(RemedySeeker::kRest_ms * 3);
    EXPECT_EQ(ready.count(), 0);
    document.endDrag();
    EXPECT_TRUE(ready.wait(60'000));
}

TEST(Remedies, ADocumentCanGoWhileTheyAreSought)
{
    for (int i = 0; i < 5; ++i) {
        auto document = std::make_unique<PlanDocument>();
        document->reset(collision(), {});
        QTest::qWait(RemedySeeker::kRest_ms + 5 * i);
        document.reset();
    }
    QCoreApplication::processEvents();
}

}  // namespace
}  // namespace lidwright
