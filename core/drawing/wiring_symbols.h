#pragma once

#include "core/drawing/sheet.h"
#include "core/plan/wiring.h"

#include <string>
#include <vector>

namespace lidwright {

/// Draws the wiring's plain symbols on a sheet at full size. mm.
class WiringPen {
public:
    /// A wire with square bends; hot wires are wide, ground wires dashed.
    void hot(const std::string& part, std::vector<Point> way);
    void ground(const std::string& part, std::vector<Point> way);
    /// Where wires are joined.
    void joint(Point at);
    void words(Point at, const std::string& words, Anchor anchor = Anchor::Left, double height = 2.5);

    /// A pickup about `middle`: ground comes out at its left, hot at its right, kPickupHalf from the middle.
    void pickup(const std::string& part, DeviceKind kind, Point middle);
    /// A pot seen from behind with its lugs down, numbered 1 to 3 from the left; lug 3 is bent to the case.
    void pot(const std::string& part, Point middle);
    /// A socket seen from behind: tip at its left, sleeve at its right.
    void socket(const std::string& part, Point middle);

    std::vector<Element> take() { return std::move(m_elements); }

private:
    std::vector<Element> m_elements;

    void line(const std::string& part, std::vector<Point> points, LineKind kind, bool closed = false);
};

inline constexpr double kPickupHalf = 13;   ///< mm from a pickup's middle to its wires
inline constexpr double kPotRadius = 9;     ///< of a pot's case
inline constexpr double kLugPitch = 6;      ///< between its lugs
inline constexpr double kLugEnd = 14;       ///< from its middle down to the lugs' ends
inline constexpr double kSocketRadius = 9;  ///< of a socket

}  // namespace lidwright
