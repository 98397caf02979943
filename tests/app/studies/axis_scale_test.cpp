#include "app/studies/axis_scale.h"

#include "core/base/length_text.h"
#include "core/base/sentence.h"

#include <gtest/gtest.h>

#include <QSet>
#include <QStringList>

#include <limits>
#include <random>

namespace lidwright {
namespace {

QString wordsOf(const AxisScale& scale)
{
    QStringList words;
    for (const AxisTick& tick : scale.ticks)
        words << tick.words;
    return words.join(QLatin1Char(' '));
}

const UnitStyle kMm;
const UnitStyle kInch{LengthUnit::InchDecimal, 1, 64, '.'};
const UnitStyle kFraction{LengthUnit::InchFraction, 1, 32, '.'};

TEST(AxisScale, TicksAreRoundInTheUsersUnit)
{
    EXPECT_EQ(wordsOf(axisScale(0, 640, 7, Quantity::Length, kMm, false)).toStdString(),
              "0 100 200 300 400 500 600");
    EXPECT_EQ(wordsOf(axisScale(-0.013, 0.021, 4, Quantity::Length, kMm, true)).toStdString(),
              "-0.02 -0.01 0 0.01 0.02 0.03")
        << "finer than the plan's own decimals, and still told apart";
    const AxisScale inches = axisScale(0, 640, 7, Quantity::Length, kInch, false);
    EXPECT_EQ(wordsOf(inches).toStdString(), "0 5 10 15 20 25");
    EXPECT_NEAR(inches.ticks[1].at, 5 * 25.4, 1e-9);
    EXPECT_EQ(inches.unit, QStringLiteral("in"));
    EXPECT_EQ(wordsOf(axisScale(0, 25.4, 5, Quantity::Length, kFraction, false)).toStdString(),
              "0 1/4 1/2 3/4 1");
    EXPECT_EQ(wordsOf(axisScale(0, 0.1, 4, Quantity::Length, kFraction, false)).toStdString(),
              "0 0.001 0.002 0.003")
        << "finer than the finest fraction";
    UnitStyle comma = kMm;
    comma.decimalMark = ',';
    EXPECT_EQ(wordsOf(axisScale(0, 1, 2, Quantity::Force, comma, true)).toStdString(), "0 0,5 1");
    EXPECT_EQ(wordsOf(axisScale(0, 3, 10, Quantity::Count, kMm, false)).toStdString(), "0 1 2 3");
    EXPECT_EQ(wordsOf(axisScale(57, 69, 3, Quantity::Pitch, kMm, false)).toStdString(), "C4 E4 G#4");
}

TEST(AxisScale, UnitsAreThoseThatCoreSpeaks)
{
    for (const Quantity quantity :
         {Quantity::Length, Quantity::Gauge, Quantity::Angle, Quantity::Area, Quantity::Volume,
          Quantity::Force, Quantity::Mass, Quantity::Stress, Quantity::Frequency, Quantity::Interval})
        for (const UnitStyle& style : {kMm, kInch, kFraction})
            for (const double size : {1e-3, 0.5, 5.0, 3e4, 7e6}) {
                const ShownUnit unit = shownUnit(quantity, style, size);
                EXPECT_FALSE(unit.word.isEmpty());
                // Twelve of the unit are spoken as twelve of it, but where core takes a larger unit from
                // there on.
                const QString twelve =
                    QString::fromStdString(spoken(Measure{12 * unit.inside, quantity}, style));
                if (!twelve.endsWith(unit.word)) continue;
                EXPECT_TRUE(twelve.startsWith(QStringLiteral("12")) && !twelve.at(2).isDigit() &&
                            twelve.at(2) != QLatin1Char('.'))
                    << twelve.toStdString() << " of size " << size;
            }
    EXPECT_TRUE(shownUnit(Quantity::Ratio, kMm, 3).word.isEmpty());
    EXPECT_EQ(shownUnit(Quantity::Mass, kMm, 0.3).word, QStringLiteral("g"));
    EXPECT_EQ(shownUnit(Quantity::Mass, kMm, 3).word, QStringLiteral("kg"));
}

TEST(AxisScale, HoldsForRandomRanges)
{
    std::mt19937 random(20240611);
    std::uniform_real_distribution<double> exponent(-7, 7), mantissa(-1, 1);
    std::uniform_int_distribution<int> most(1, 15), quantity(0, static_cast<int>(Quantity::Text));
    for (int i = 0; i < 3000; ++i) {
        const double size = std::pow(10, exponent(random));
        double low = mantissa(random) * size, high = mantissa(random) * size;
        if (low > high) std::swap(low, high);
        const int wanted = most(random);
        const auto kind = static_cast<Quantity>(quantity(random));
        for (const UnitStyle& style : {kMm, kInch, kFraction}) {
            const AxisScale scale = axisScale(low, high, wanted, kind, style, i % 2 == 0);
            ASSERT_LT(scale.low, scale.high);
            ASSERT_LE(scale.low, low + 1e-9 * size);
            ASSERT_GE(scale.high, high - 1e-9 * size);
            // Widened to ticks there is one more at either end.
            ASSERT_LE(scale.ticks.size(), static_cast<std::size_t>(wanted) + (i % 2 == 0 ? 3 : 1));
            QSet<QString> words;
            for (std::size_t t = 0; t < scale.ticks.size(); ++t) {
                words.insert(scale.ticks[t].words);
                if (t > 0) ASSERT_GT(scale.ticks[t].at, scale.ticks[t - 1].at);
            }
            ASSERT_EQ(static_cast<std::size_t>(words.size()), scale.ticks.size())
                << low << " to " << high << ": " << wordsOf(scale).toStdString();
        }
    }
}

TEST(AxisScale, AnswersWhateverItIsAsked)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    const double values[] = {nan, inf, -inf, 0, -0.0, 1e-320, 1e12, -1e12, 1e300, 5};
    for (const double low : values)
        for (const double high : values)
            for (const int most : {-3, 0, 1, 9}) {
                const AxisScale scale = axisScale(low, high, most, Quantity::Length, kFraction, true);
                ASSERT_TRUE(std::isfinite(scale.low) && std::isfinite(scale.high));
                ASSERT_LT(scale.low, scale.high);
                ASSERT_LE(scale.ticks.size(), 12U);
            }
}

}  // namespace
}  // namespace lidwright
