#include "app/style/contrast.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// Linear light of one sRGB channel given from 0 to 1 (WCAG 2.2, "relative luminance").
double linear(double channel)
{
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double leastContrast(const QColor& colour, std::initializer_list<QColor> grounds)
{
    double least = 21;
    for (const QColor& ground : grounds)
        least = std::min(least, contrastRatio(colour, ground));
    return least;
}

}  // namespace

double relativeLuminance(const QColor& colour)
{
    // From whole 8-bit values, so that #767676 is the same however the colour was made.
    return 0.2126 * linear(colour.red() / 255.0) + 0.7152 * linear(colour.green() / 255.0) +
           0.0722 * linear(colour.blue() / 255.0);
}

double contrastRatio(const QColor& a, const QColor& b)
{
    const double first = relativeLuminance(a);
    const double second = relativeLuminance(b);
    return (std::max(first, second) + 0.05) / (std::min(first, second) + 0.05);
}

QColor mixed(const QColor& a, const QColor& b, double share)
{
    const auto channel = [share](int from, int to) {
        return static_cast<int>(std::lround(from + (to - from) * share));
    };
    return {channel(a.red(), b.red()), channel(a.green(), b.green()), channel(a.blue(), b.blue())};
}

QColor withContrast(const QColor& wanted, std::initializer_list<QColor> grounds, double ratio)
{
    if (leastContrast(wanted, grounds) >= ratio) return wanted;
    constexpr int kSteps = 64;
    for (int step = 1; step <= kSteps; ++step) {
        const double share = static_cast<double>(step) / kSteps;
        const QColor darker = mixed(wanted, Qt::black, share);
        const QColor lighter = mixed(wanted, Qt::white, share);
        const double dark = leastContrast(darker, grounds);
        const double light = leastContrast(lighter, grounds);
        if (std::max(dark, light) >= ratio) return dark >= light ? darker : lighter;
    }
    return leastContrast(Qt::black, grounds) >= leastContrast(Qt::white, grounds) ? QColor(Qt::black)
                                                                                  : QColor(Qt::white);
}

}  // namespace lidwright
