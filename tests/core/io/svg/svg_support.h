#pragma once

#include "core/io/svg/svg_reader.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace lidwright::testing {

/// A page of 100 mm by 100 mm on which one user unit is one millimetre.
inline std::string page100(const std::string& body)
{
    return R"(<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" )"
           R"(width="100mm" height="100mm" viewBox="0 0 100 100">)" +
           body + "</svg>";
}

inline SvgReading readGood(const std::string& text, const SvgOptions& options = {})
{
    const auto reading = readSvg(text, "test.svg", options);
    if (!reading) {
        ADD_FAILURE() << reading.error().text();
        return {};
    }
    return *reading;
}

/// Everything that is painted, as one region.
inline Region allPainted(const Artwork& art)
{
    std::vector<Region> parts;
    for (const ArtRun& run : art.runs)
        parts.push_back(run.painted);
    return unite(parts);
}

/// Painted area of a body on the 100 mm page, mm2.
inline double paintedArea(const std::string& body)
{
    return area(allPainted(readGood(page100(body)).art));
}

/// Length of all outlines, mm.
inline double outlineLength(const Region& region)
{
    double sum = 0;
    for (const Ring& ring : region.rings) {
        for (std::size_t i = 0; i < ring.size(); ++i)
            sum += distance(ring[i], ring[(i + 1) % ring.size()]);
    }
    return sum;
}

inline bool says(const Artwork& art, const std::string& words)
{
    return std::any_of(art.messages.begin(), art.messages.end(),
                       [&](const std::string& message) { return message.find(words) != message.npos; });
}

inline std::vector<std::string> paintNames(const Artwork& art)
{
    std::vector<std::string> names;
    for (const ArtPaint& paint : art.paints)
        names.push_back(paint.name);
    return names;
}

}  // namespace lidwright::testing
