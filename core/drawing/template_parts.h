#pragma once

#include "core/drawing/template_sheets.h"
#include "core/drawing/view_pen.h"

namespace lidwright {

/// One line of a template's notes.
struct NoteLine {
    std::string words;
    double height = 2.5;  ///< mm, ISO 3098
};

inline constexpr double kLeastNotes = 150;  ///< mm that notes are at least allowed to be wide

/// The lines with those too long for `width` mm broken at blanks.
std::vector<NoteLine> wrapped(const std::vector<NoteLine>& lines, double width);

/// The notes under everything that the pen has drawn, flush left with `left`; below them a line of 100 mm to
/// check the print with.
void addNotes(ViewPen& pen, double left, const std::vector<NoteLine>& lines);

/// The pen's drawing as a sheet with a bare edge around it.
Sheet templateOf(ViewPen& pen, const std::string& title);

/// "3 mm", for notes.
std::string lengthWithUnit(double mm, const UnitStyle& style);

// One composer per template.
Sheet lidTemplate(const ViewInput& in);
Sheet wallTemplate(const ViewInput& in, bool head);
Sheet sideWallTemplate(const ViewInput& in, bool treble);
Sheet backingTemplate(const ViewInput& in);
Sheet neckTemplate(const ViewInput& in);
Sheet fretboardTemplate(const ViewInput& in);
Sheet storyStickTemplate(const ViewInput& in);

}  // namespace lidwright
