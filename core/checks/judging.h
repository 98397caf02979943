#pragma once

#include "core/checks/check.h"

/// Small pieces that the checks share. Private to core/checks.
namespace lidwright {

/// What a pencil line, a saw and a pair of hands may be off at the bench, mm (common practice, no source).
/// A clearance that holds with this in hand is good, one that only just holds is tight.
inline constexpr double kBenchRoom = 1.0;
/// Comparisons forgive what the 10 nm grid and rounding can do, never what a maker could see.
inline constexpr double kNothing = 1e-6;

/// good at least `room` above the required value, tight at or above it, wrong below.
inline Verdict judgeAtLeast(double value, double required, double room = kBenchRoom)
{
    if (value >= required + room - kNothing) return Verdict::Good;
    if (value >= required - kNothing) return Verdict::Tight;
    return Verdict::Wrong;
}

/// good up to `fine`, tight up to `most`, wrong above.
inline Verdict judgeAtMost(double value, double fine, double most)
{
    if (value <= fine + kNothing) return Verdict::Good;
    if (value <= most + kNothing) return Verdict::Tight;
    return Verdict::Wrong;
}

inline Finding finding(const char* rule, std::string part, Verdict verdict, Sentence sentence)
{
    Finding f;
    f.rule = rule;
    f.part = std::move(part);
    f.verdict = verdict;
    f.sentence = std::move(sentence);
    return f;
}

/// Index from 0 of the list member that a part names: 1 of "art.2".
inline std::size_t memberIndex(const std::string& part)
{
    return static_cast<std::size_t>(std::stoul(part.substr(part.find('.') + 1)) - 1);
}

/// A number rounded away from zero to the next half millimetre, as a maker would set it.
double roundedOut(double value);

/// One remedy with one number set.
inline Remedy oneEdit(Sentence label, std::string key, double value)
{
    return {std::move(label), {{std::move(key), value}}};
}

/// The neck's top moved to `top`, and the bridge made higher or lower by as much, so that the action stays.
Remedy neckTopRemedy(const Plan& plan, Sentence label, double top);

/// Top-view place round two points, grown so that it can be seen.
Place topPlace(Point a, Point b);
Place topPlace(const Ring& ring);
Place placeIn(View view, double u0, double v0, double u1, double v1);

/// The two end walls by name.
struct WallName {
    const char* part;  ///< "head-opening"
    const char* wall;  ///< marked English: "head-end wall"
    View view;
    const EndWallLayout* layout;
    const WallOpening* given;
};
std::vector<WallName> bothWalls(const CheckInput& input);

/// Exact area (mm2) of the part of a region that lies in the strip fromY <= y <= toY.
double areaInStrip(const Region& region, double fromY, double toY);

}  // namespace lidwright
