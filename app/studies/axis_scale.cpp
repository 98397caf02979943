#include "app/studies/axis_scale.h"

#include "core/base/length_text.h"
#include "core/base/sentence.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

namespace lidwright {

namespace {

constexpr double kSlack = 1e-9;  // of a step: a tick on the very end counts as inside

bool isWhole(Quantity quantity)
{
    return quantity == Quantity::Count || quantity == Quantity::Choice || quantity == Quantity::Flag ||
           quantity == Quantity::Pitch;
}

bool hasUnit(Quantity quantity)
{
    return !isWhole(quantity) && quantity != Quantity::Ratio && quantity != Quantity::Text;
}

/// 1, 2 or 5 times a power of ten, at least `raw`.
double decimalStep(double raw)
{
    const double power = std::pow(10.0, std::floor(std::log10(raw)));
    for (const double times : {1.0, 2.0, 5.0})
        if (times * power >= raw * (1 - kSlack)) return times * power;
    return 10 * power;
}

/// At least `raw`, which is in the shown unit.
double roundStep(double raw, Quantity quantity, bool halves)
{
    if (quantity == Quantity::Pitch) {
        // Tones, thirds, the tritone and octaves fall on the same names again and again.
        for (const double semitones : {1.0, 2.0, 4.0, 6.0, 12.0, 24.0, 48.0})
            if (semitones >= raw) return semitones;
    }
    if (isWhole(quantity)) return std::max(1.0, decimalStep(raw));
    if (!halves || raw > 1) return decimalStep(raw);
    double step = 1;
    while (step / 2 >= raw * (1 - kSlack))
        step /= 2;
    return step;
}

/// Decimals that a multiple of the step needs.
int decimalsOf(double step)
{
    return std::clamp(static_cast<int>(-std::floor(std::log10(step) + kSlack)), 0, 12);
}

}  // namespace

bool plottable(double value)
{
    return std::abs(value) <= kPlotLimit;  // false for what is no number
}

ShownUnit shownUnit(Quantity quantity, const UnitStyle& style, double largest)
{
    if (!hasUnit(quantity)) return {};
    // Which unit it is says core; how large that unit is stands here (exact but for the last).
    constexpr double inch = kMillimetresPerInch;
    static const std::pair<const char*, double> kSizes[] = {
        {"in", inch},           {"in\u00B2", inch * inch}, {"in\u00B3", inch * inch * inch},
        {"cm\u00B3", 1e3},      {"litres", 1e6},           {"g", 1e-3},
        {"oz", 0.028349523125}, {"psi", 0.00689475729}};
    const double probe = plottable(largest) && largest != 0 ? std::abs(largest) : 1.0;
    const QString words = QString::fromStdString(spoken(Measure{probe, quantity}, style));
    const auto first =
        std::find_if(words.begin(), words.end(), [](QChar c) { return c.isLetter() || c == QChar(0x00B0); });
    ShownUnit unit{words.mid(std::distance(words.begin(), first)), 1};
    if (unit.word == QLatin1String("cent")) unit.word = QStringLiteral("cents");
    for (const auto& [word, size] : kSizes)
        if (unit.word == QString::fromUtf8(word)) unit.inside = size;
    return unit;
}

AxisScale axisScale(double low, double high, int most, Quantity quantity, const UnitStyle& style,
                    bool toTicks)
{
    if (!plottable(low)) low = plottable(high) ? high : 0;
    if (!plottable(high)) high = low;
    if (low > high) std::swap(low, high);
    const ShownUnit unit = shownUnit(quantity, style, std::max(std::abs(low), std::abs(high)));
    const double size = std::max(std::abs(low), std::abs(high));
    if (high - low <= kSlack * std::max(size, unit.inside)) {
        const double by = std::max(0.05 * size, (isWhole(quantity) ? 1.0 : 0.5) * unit.inside);
        low -= by;
        high += by;
    }
    AxisScale scale{low, high, unit.word, {}};
    const double raw = (high - low) / unit.inside / std::max(1, most);
    const int denominator = style.denominator >= 1 && style.denominator <= 1024 ? style.denominator : 64;
    const bool halves =
        quantity == Quantity::Length && style.unit == LengthUnit::InchFraction && raw * denominator >= 1;
    const double step = roundStep(raw, quantity, halves);
    if (toTicks) {
        scale.low = std::floor(low / unit.inside / step + kSlack) * step * unit.inside;
        scale.high = std::ceil(high / unit.inside / step - kSlack) * step * unit.inside;
    }
    const double first = std::ceil(scale.low / unit.inside / step - kSlack);
    const double last = std::floor(scale.high / unit.inside / step + kSlack);
    for (double k = first; k <= last && k - first <= 100; ++k) {
        const double number = k * step;
        AxisTick tick{number * unit.inside, {}};
        if (quantity == Quantity::Pitch && number >= 0 && number <= 127)  // the pitches that have names
            tick.words = QString::fromStdString(spoken(Measure{number, quantity}, style));
        else if (halves)
            tick.words = QString::fromStdString(formatLength(tick.at, style, false).text);
        else
            tick.words = QString::fromStdString(decimalNumber(number, decimalsOf(step), style.decimalMark));
        scale.ticks.push_back(std::move(tick));
    }
    return scale;
}

}  // namespace lidwright
