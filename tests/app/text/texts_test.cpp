#include "app/text/texts.h"

#include "tests/support/plans.h"

#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QTranslator>

namespace lidwright {
namespace {

/// Knows a handful of core's texts in another language, as a translation file would.
class FewWords final : public QTranslator {
public:
    QString translate(const char* context, const char* source, const char*, int) const override
    {
        if (QLatin1String(context) != QLatin1String("core")) return {};
        const QString text = QString::fromUtf8(source);
        if (text == QLatin1String("Move the bridge %1 toward the %2"))
            return QStringLiteral("Zum %2 hin den Steg um %1 versetzen");
        if (text == QLatin1String("tail")) return QStringLiteral("Ende");
        if (text == QLatin1String("wrong")) return QStringLiteral("falsch");
        return {};
    }
    bool isEmpty() const override { return false; }
};

const Sentence kMove{"Move the bridge %1 toward the %2", {mm(25.4), std::string("tail")}};

UnitStyle inches()
{
    UnitStyle style;
    style.unit = LengthUnit::InchFraction;
    return style;
}

TEST(Texts, ASentenceSpeaksTheUsersUnit)
{
    EXPECT_EQ(shown(kMove, UnitStyle{}).toStdString(), "Move the bridge 25.4 mm toward the tail");
    EXPECT_EQ(shown(kMove, inches()).toStdString(), "Move the bridge 1 in toward the tail");
}

TEST(Texts, ATranslationMayChangeTheOrderAndReachesWordsInArguments)
{
    FewWords words;
    QCoreApplication::installTranslator(&words);
    EXPECT_EQ(shown(kMove, UnitStyle{}).toStdString(), "Zum Ende hin den Steg um 25.4 mm versetzen");
    EXPECT_EQ(shown(Verdict::Wrong).toStdString(), "falsch");
    EXPECT_EQ(shown(Verdict::Good).toStdString(), "good");
    QCoreApplication::removeTranslator(&words);
    EXPECT_EQ(shown(Verdict::Wrong).toStdString(), "wrong");
}

TEST(Texts, AnEmptyTextStaysEmpty)
{
    EXPECT_TRUE(shown("").isEmpty());
    EXPECT_TRUE(shown(std::string()).isEmpty());
    EXPECT_TRUE(shown(static_cast<const char*>(nullptr)).isEmpty());
}

TEST(Texts, AnErrorNamesTheFieldAsTheFormDoesAndSaysWhatToDo)
{
    const Error error{"3000 mm is out of range", "neck.width", "it must lie between 10 mm and 150 mm"};
    EXPECT_EQ(shown(error).toStdString(),
              "Neck, Width: 3000 mm is out of range. It must lie between 10 mm and 150 mm");
    EXPECT_EQ(shown(Error{"the line has no end", "art.svg, line 12", ""}).toStdString(),
              "art.svg, line 12: the line has no end");
    EXPECT_EQ(shown(Error{"the line has no end", "", ""}).toStdString(), "The line has no end");
}

TEST(Texts, AnErrorAboutAListMemberNamesItsFieldToo)
{
    EXPECT_TRUE(shown(Error{"too far", "hole.12.x", ""}).startsWith(QStringLiteral("Plain hole, ")));
}

TEST(Texts, EveryPartOfTheCatalogueHasALabel)
{
    const Plan plan;
    for (const PartInfo& part : parts())
        EXPECT_EQ(partLabel(plan, QString::fromLatin1(part.key)).toStdString(), part.label);
}

TEST(Texts, MembersAreToldApartByNumberOrByTheirOwnName)
{
    Plan plan;
    plan.art.resize(2);
    plan.art[1].name = "Heron";
    EXPECT_EQ(partLabel(plan, QStringLiteral("art.1")).toStdString(), "Artwork 1");
    EXPECT_EQ(partLabel(plan, QStringLiteral("art.2")).toStdString(), "Heron");
    plan.art[1].name.clear();
    EXPECT_EQ(partLabel(plan, QStringLiteral("art.2")).toStdString(), "Artwork 2");
    EXPECT_EQ(partLabel(plan, QStringLiteral("art.9")).toStdString(), "Artwork 9");
    EXPECT_EQ(partLabel(plan, QStringLiteral("hole.3")).toStdString(), "Plain hole 3");
    EXPECT_EQ(partLabel(plan, QStringLiteral("whatever.x")).toStdString(), "Whatever");
}

}  // namespace
}  // namespace lidwright
