#pragma once

#include "core/drawing/template_sheets.h"
#include "core/drawing/view_pen.h"

#include <algorithm>

namespace lidwright {

/// One line of a template's notes.
struct NoteLine {
    std::string words;
    double height = 2.5;  ///< mm, ISO 3098
};

inline constexpr double kLeastNotes = 150;  ///< mm that notes are at least allowed to be wide
inline constexpr double kMostNotes =
    170;  ///< mm; more would need a second page of A4 (190 mm within its margins)

/// How wide the notes of a template of that width are, mm: as wide as it is, within those two.
inline double notesWidth(double width)
{
    return std::clamp(width, kLeastNotes, kMostNotes);
}

/// The lines with those too long for `width` mm broken at blanks.
std::vector<NoteLine> wrapped(const std::vector<NoteLine>& lines, double width);

/// The notes under everything that the pen has drawn, flush left with it, or with `left` where nothing is
/// drawn; below them a line of 100 mm to check the print with.
void addNotes(ViewPen& pen, double left, const std::vector<NoteLine>& lines);

/// The pen's drawing as a sheet with a bare edge around it.
Sheet templateOf(ViewPen& pen, const std::string& title);

/// "3 mm", for notes.
std::string lengthWithUnit(double mm, const UnitStyle& style);

/// The lid turned over about its length: where wood lies against it, what stands on it, what is cut, with its
/// dimensions, at the pen's size of words. `wooded`: filled as the views of the board are, and not only where
/// glue goes.
void drawLidBelow(ViewPen& pen, const ViewInput& in, bool wooded);

/// Everything that is cut through the lid, and its outline, as lines to cut.
void drawLidCuts(ViewPen& pen, const ViewInput& in);

// One composer per template.
Sheet lidTemplate(const ViewInput& in);
Sheet wallTemplate(const ViewInput& in, bool head);
Sheet sideWallTemplate(const ViewInput& in, bool treble);
Sheet backingTemplate(const ViewInput& in);
Sheet neckTemplate(const ViewInput& in);
Sheet fretboardTemplate(const ViewInput& in);
Sheet storyStickTemplate(const ViewInput& in);
Sheet lidBelowTemplate(const ViewInput& in);
Sheet baseTemplate(const ViewInput& in);
Sheet blockTemplates(const ViewInput& in);
Sheet headTemplate(const ViewInput& in);
Sheet nutTemplate(const ViewInput& in);
Sheet bridgeTemplate(const ViewInput& in);
Sheet gaugeTemplates(const ViewInput& in);

}  // namespace lidwright
