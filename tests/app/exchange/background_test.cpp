#include "app/exchange/background.h"

#include <gtest/gtest.h>

#include <QTest>

#include <atomic>
#include <thread>

namespace lidwright {
namespace {

TEST(Background, HandsOverOnTheContextsThread)
{
    QObject context;
    int answer = 0;
    std::thread::id where;
    Background<int> background(&context, [&](int value) {
        answer = value;
        where = std::this_thread::get_id();
    });
    std::atomic<bool> elsewhere = false;
    const auto here = std::this_thread::get_id();
    background.ask([&elsewhere, here] {
        elsewhere = std::this_thread::get_id() != here;
        return 7;
    });
    EXPECT_TRUE(background.busy());
    ASSERT_TRUE(QTest::qWaitFor([&] { return answer == 7; }, 10'000));
    EXPECT_FALSE(background.busy());
    EXPECT_EQ(where, here);
    EXPECT_TRUE(elsewhere);
}

TEST(Background, OnlyTheNewestAnswerCounts)
{
    QObject context;
    std::vector<int> answers;
    Background<int> background(&context, [&](int value) { answers.push_back(value); });
    auto gate = std::make_shared<std::atomic<bool>>(false);
    background.ask([gate] {
        while (!*gate)
            std::this_thread::yield();
        return 1;
    });
    background.ask([] { return 2; });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !answers.empty(); }, 10'000));
    *gate = true;
    QTest::qWait(50);
    EXPECT_EQ(answers, std::vector<int>{2});

    background.ask([] { return 3; });
    background.dismiss();
    QTest::qWait(50);
    EXPECT_EQ(answers.size(), 1u);
    EXPECT_FALSE(background.busy());
}

TEST(Background, GoingAwayDoesNotWait)
{
    auto gate = std::make_shared<std::atomic<bool>>(false);
    auto done = std::make_shared<std::atomic<bool>>(false);
    bool called = false;
    {
        QObject context;
        Background<int> background(&context, [&](int) { called = true; });
        background.ask([gate, done] {
            while (!*gate)
                std::this_thread::yield();
            *done = true;
            return 1;
        });
    }
    EXPECT_FALSE(*done) << "the work is still going on";
    *gate = true;
    ASSERT_TRUE(QTest::qWaitFor([&] { return done->load(); }, 10'000));
    QThreadPool::globalInstance()->waitForDone();
    QTest::qWait(20);
    EXPECT_FALSE(called);
}

}  // namespace
}  // namespace lidwright
