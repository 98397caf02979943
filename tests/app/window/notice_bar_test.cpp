#include "app/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QPushButton>
#include <QTest>
#include <QToolButton>

namespace lidwright {
namespace {

TEST(NoticeBar, StandsWhileThereIsSomethingToSay)
{
    QWidget window;
    NoticeBar bar(&window);
    window.show();
    EXPECT_FALSE(bar.isVisible());
    bar.show(QStringLiteral("one"));
    bar.show(QStringLiteral("two"), QStringLiteral("topic"));
    bar.show(QStringLiteral("three"), QStringLiteral("topic"));
    EXPECT_EQ(bar.messages(), (QStringList{QStringLiteral("one"), QStringLiteral("three")}));
    bar.dismiss(QStringLiteral("topic"));
    EXPECT_EQ(bar.messages(), QStringList{QStringLiteral("one")});
    QTest::mouseClick(bar.findChild<QToolButton*>(), Qt::LeftButton);
    EXPECT_FALSE(bar.isVisible());
    for (int i = 0; i < 10; ++i)
        bar.show(QString::number(i));
    EXPECT_LE(bar.messages().size(), 4);
    EXPECT_EQ(bar.messages().last(), "9");
    bar.dismissAll();
    EXPECT_FALSE(bar.isVisible());
}

TEST(NoticeBar, AnAnswerIsDoneOnceAndTheNoticeGoes)
{
    QWidget window;
    NoticeBar bar(&window);
    window.show();
    int done = 0;
    bar.show(QStringLiteral("question"), {}, {{QStringLiteral("Yes"), [&] {
                                                   ++done;
                                                   bar.show(QStringLiteral("thanks"));
                                               }}});
    QTest::mouseClick(bar.findChild<QPushButton*>(), Qt::LeftButton);
    EXPECT_EQ(done, 1);
    EXPECT_EQ(bar.messages(), QStringList{QStringLiteral("thanks")});
}

TEST(NoticeBar, TextIsNeverReadAsMarkup)
{
    QWidget window;
    NoticeBar bar(&window);
    bar.show(QStringLiteral("<b>a.lidplan</b> & co"));
    EXPECT_EQ(bar.messages().first(), "<b>a.lidplan</b> & co");
}

}  // namespace
}  // namespace lidwright
