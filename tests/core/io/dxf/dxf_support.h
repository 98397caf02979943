#pragma once

#include "core/io/dxf/dxf_reader.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <initializer_list>
#include <string>
#include <utility>

namespace lidwright::testing {

/// Groups as a file spells them.
inline std::string groups(std::initializer_list<std::pair<int, std::string>> list)
{
    std::string out;
    for (const auto& [code, value] : list)
        out.append(std::to_string(code)).append("\n").append(value).append("\n");
    return out;
}

inline std::string section(const std::string& name, const std::string& body)
{
    return groups({{0, "SECTION"}, {2, name}}).append(body).append(groups({{0, "ENDSEC"}}));
}

/// A file in millimetres with these entities.
inline std::string millimetres(const std::string& entities, const std::string& before = {})
{
    return section("HEADER", groups({{9, "$INSUNITS"}, {70, "4"}}))
        .append(before)
        .append(section("ENTITIES", entities))
        .append(groups({{0, "EOF"}}));
}

inline std::string line(const std::string& x1, const std::string& y1, const std::string& x2,
                        const std::string& y2, const std::string& layer = "cut")
{
    return groups({{0, "LINE"}, {8, layer}, {10, x1}, {20, y1}, {11, x2}, {21, y2}});
}

inline std::string circle(const std::string& x, const std::string& y, const std::string& radius,
                          const std::string& layer = "cut")
{
    return groups({{0, "CIRCLE"}, {8, layer}, {10, x}, {20, y}, {40, radius}});
}

/// A closed light polyline through corners "x y bulge".
inline std::string square(const std::string& low, const std::string& high, const std::string& layer = "cut")
{
    return groups({{0, "LWPOLYLINE"},
                   {8, layer},
                   {90, "4"},
                   {70, "1"},
                   {10, low},
                   {20, low},
                   {10, high},
                   {20, low},
                   {10, high},
                   {20, high},
                   {10, low},
                   {20, high}});
}

inline DrawingReading readGood(const std::string& text, const DxfOptions& options = {})
{
    const auto reading = readDxf(text, "test.dxf", options);
    if (!reading) {
        ADD_FAILURE() << reading.error().text();
        return {};
    }
    return *reading;
}

/// What the closed lines of a file's only paint enclose, mm2.
inline double enclosedArea(const std::string& entities, const std::string& before = {})
{
    const DrawingReading reading = readGood(millimetres(entities, before));
    EXPECT_EQ(reading.art.runs.size(), 1U);
    return reading.art.runs.empty() ? 0 : area(reading.art.runs.front().enclosed);
}

inline bool says(const Artwork& art, const std::string& words)
{
    return std::any_of(art.messages.begin(), art.messages.end(),
                       [&](const std::string& message) { return message.find(words) != std::string::npos; });
}

}  // namespace lidwright::testing
