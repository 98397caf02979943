#pragma once

#include "core/geometry/point.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace lidwright {

/// Spells the groups of a DXF file.
class DxfText {
public:
    void text(int code, std::string_view words);
    void whole(int code, int value) { text(code, std::to_string(value)); }
    void real(int code, double value);
    /// Group codes code and code + 10: x and y.
    void point(int code, Point p);
    /// The same with code + 20: z, which is 0.
    void point3(int code, Point p);
    void handle(int code, std::uint64_t handle);
    /// A handle that none has yet.
    std::uint64_t newHandle() { return m_next++; }

    std::string take() { return std::move(m_text); }

private:
    // Below are the handles of the frame.
    static constexpr std::uint64_t kFirstFree = 0x100;

    std::string m_text;
    std::uint64_t m_next = kFirstFree;
};

}  // namespace lidwright
