#pragma once

#include <string>
#include <vector>

namespace lidwright {

/// One string.
struct GuitarString {
    std::string kind = "plain-steel";  ///< id of core/materials
    double pitch = 60;                 ///< open, semitones: 60 is C4, 69 is A4; parts of one are cents
    double gauge = 0.4064;             ///< whole diameter, mm
    double core = 0;                   ///< of a wound string, mm; 0: as is usual for the gauge

    bool operator==(const GuitarString&) const = default;
};

/// What is the same from string to string, or from course to course.
enum class StringSpacing {
    EqualCentres,  ///< the distance of their centres
    EqualGaps,     ///< the air between them: thick strings stand wider apart
};

/// What all strings share.
struct Strings {
    double spreadAtNut = 26;  ///< outer string to outer string, centres
    double spreadAtSaddle = 34;
    StringSpacing spacing = StringSpacing::EqualCentres;
    int perCourse = 1;          ///< strings that are pressed together
    double courseGap = 2.5;     ///< between the strings of a course, centres
    double concertPitch = 440;  ///< Hz of A4

    bool operator==(const Strings&) const = default;
};

inline constexpr int kMostStrings = 12;

/// Four strings of a phosphor bronze set as box guitars have them: G2 D3 G3 of .042 .032 .025 in (hobby
/// pages, read), with a plain B3 of .016 in above. The first is the treble's, as the trade counts.
inline std::vector<GuitarString> ordinaryStrings()
{
    return {{"plain-steel", 59, 0.4064, 0},
            {"phosphor-bronze", 55, 0.635, 0},
            {"phosphor-bronze", 50, 0.8128, 0},
            {"phosphor-bronze", 43, 1.0668, 0}};
}

}  // namespace lidwright
