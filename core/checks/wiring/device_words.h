#pragma once

#include "core/checks/check.h"

#include <cctype>
#include <string>
#include <string_view>

/// Words for the parts of the wiring. Private to core/checks.
namespace lidwright {

/// "Volume pot 2" for a pattern that begins with it, "volume pot 2" for others; the number is the part's own.
inline std::string deviceWords(const Plan& plan, std::size_t index, std::string_view pattern)
{
    const DeviceKind kind = plan.wiring[index].kind;
    std::string name = kind == DeviceKind::DiscPickup  ? "Disc pickup"
                       : kind == DeviceKind::RodPickup ? "Rod pickup"
                                                       : deviceName(kind);
    if (!pattern.starts_with('%') && !name.empty())
        name[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(name[0])));
    return name + " " + std::to_string(index + 1);
}

inline View wallView(DevicePlace place)
{
    return place == DevicePlace::HeadWall   ? View::HeadEnd
           : place == DevicePlace::TailWall ? View::TailEnd
                                            : View::Section;
}

}  // namespace lidwright
