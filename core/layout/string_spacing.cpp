#include "core/layout/string_spacing.h"

#include <algorithm>
#include <initializer_list>
#include <optional>
#include <string>

namespace lidwright {
namespace {

constexpr double kWidest = 1000;  // mm

std::optional<Error> fault(std::initializer_list<double> sizes, const std::vector<double>& diameters)
{
    const auto good = [](double size) { return size >= 0 && size <= kWidest; };
    if (diameters.empty() || diameters.size() > kMostSpacedStrings)
        return Error{"there is no string or there are too many", "strings",
                     "give 1 to " + std::to_string(kMostSpacedStrings)};
    for (std::size_t i = 0; i < diameters.size(); ++i)
        if (!good(diameters[i]))
            return Error{"its diameter is out of range or no number", "string " + std::to_string(i + 1),
                         "give 0 to 1000 mm"};
    if (!std::all_of(sizes.begin(), sizes.end(), good))
        return Error{"a width or margin is out of range or no number", "string spacing", "give 0 to 1000 mm"};
    return std::nullopt;
}

/// Strings from one centre to another.
Result<StringPlaces> placed(double first, double last, const std::vector<double>& diameters,
                            StringSpacing spacing)
{
    const std::size_t count = diameters.size();
    if (count == 1) return StringPlaces{{(first + last) / 2}, 0};
    const double steps = static_cast<double>(count - 1);
    double thick = 0;  // of the strings themselves, from centre to centre
    for (std::size_t i = 1; i < count; ++i)
        thick += (diameters[i - 1] + diameters[i]) / 2;
    StringPlaces places;
    double at = first;
    for (std::size_t i = 0; i < count; ++i) {
        if (i > 0) {
            const double touching = (diameters[i - 1] + diameters[i]) / 2;
            const double step = spacing == StringSpacing::EqualGaps
                                    ? touching + (last - first - thick) / steps
                                    : (last - first) / steps;
            at += step;
            const double gap = step - touching;
            if (!(gap > 0))
                return Error{"strings " + std::to_string(i) + " and " + std::to_string(i + 1) + " touch",
                             "string spacing", "spread them wider or take fewer"};
            places.leastGap = i == 1 ? gap : std::min(places.leastGap, gap);
        }
        places.centres.push_back(at);
    }
    places.centres.back() = last;
    return places;
}

}  // namespace

Result<StringPlaces> stringsBetween(double width, double bassMargin, double trebleMargin,
                                    const std::vector<double>& diameters, StringSpacing spacing)
{
    if (auto error = fault({width, bassMargin, trebleMargin}, diameters)) return *error;
    const bool toOutsides = spacing == StringSpacing::EqualGaps && diameters.size() > 1;
    const double first = bassMargin + (toOutsides ? diameters.front() / 2 : 0);
    const double last = width - trebleMargin - (toOutsides ? diameters.back() / 2 : 0);
    if (diameters.size() == 1 && last < first)
        return Error{"the margins leave no room", "string spacing", "make them narrower"};
    return placed(first, last, diameters, spacing);
}

Result<StringPlaces> stringsAbout(double spread, const std::vector<double>& diameters, StringSpacing spacing)
{
    if (auto error = fault({spread}, diameters)) return *error;
    return placed(-spread / 2, spread / 2, diameters, spacing);
}

}  // namespace lidwright
