#pragma once

#include "core/drawing/template_parts.h"

namespace lidwright {

/// A place along a part and what is written there.
struct PlacedWords {
    double at = 0;
    std::string words;
};

/// Places in rising order moved so that each stands at least `step` mm from the one before, with the least
/// sum of squared moves: neighbours that are too close share the mean of their moves (pooling of adjacent
/// violators: Ayer and others, Annals of Mathematical Statistics 26 (1955) 641, from memory).
std::vector<double> keptApart(const std::vector<double>& at, double step);

/// Measures that all run from one origin (running dimensioning, ISO 129-1, from memory): a line at sheet y =
/// `line` from a ring at `origin` past an oblique stroke at every place, and beyond it the words, upright,
/// fanned out so far that none meets another. `side` is Above or Below.
void addRunning(ViewPen& pen, const std::string& part, double origin, std::vector<PlacedWords> places,
                double line, Side side);

/// The same fan of words without origin, line and strokes.
void addFan(ViewPen& pen, const std::string& part, std::vector<PlacedWords> places, double from, Side side);
/// Room that a fan of these takes: x along the part, y from its leaders' beginning to the longest word's end.
Bounds fanReach(std::vector<PlacedWords> places);

/// Words in columns.
struct SheetTable {
    std::vector<std::string> heads;
    std::vector<std::vector<std::string>> rows;
};
/// The table with (0, 0) at its upper left corner, narrow lines under the heads and at its end.
std::vector<Element> tableElements(const std::string& part, const SheetTable& table);

/// A narrow line with one zigzag, where a part goes on that is not drawn (ISO 128-2, line 01.1, from memory):
/// it stands upright from (x, low) to (x, high).
void addBreak(ViewPen& pen, const std::string& part, double x, double low, double high);

/// A groove for a string, with a round floor; mm at full size.
struct RoundGroove {
    double x = 0;
    double width = 0;
    double floor = 0;  ///< height of its lowest line
    double top = 0;    ///< height of the wood beside it

    /// Half the width at the top: less than half of `width` where less than half of the round lies in the
    /// wood.
    double halfMouth() const;
    /// From the left edge over the floor to the right one, `scale` times full size.
    Polyline line(double scale) const;
};

/// Whether the grain's direction is drawn beside a view's name: it runs along the sheet.
enum class GrainShown { No, Yes };
/// Writes what the view is over all of it, flush left.
void addViewName(ViewPen& pen, const std::string& part, const std::string& words,
                 GrainShown grain = GrainShown::No);

/// Puts what `view` has drawn under everything that `pen` has; sheet x stays.
void stackBelow(ViewPen& pen, ViewPen& view);
/// The same, with its left edge at sheet x = `left`.
void stackFlush(ViewPen& pen, ViewPen& view, double left);
/// Puts it to the right of everything; sheet y stays.
void placeRight(ViewPen& pen, ViewPen& view);
/// Puts it to the right with the upper edges level, or, where the whole became wider than a page of A4, under
/// everything and flush with its left edge.
void placeBesideOrBelow(ViewPen& pen, ViewPen& view);
/// Width that views can have side by side on a page of A4, mm.
inline constexpr double kPageViews = 178;

/// "0.635 mm", "0.025 in": a string's gauge or another size that is too fine for a rule, always decimal and
/// in one piece where lines are broken.
std::string gaugeWords(double mm, const UnitStyle& style);
/// "3 mm", for notes, in one piece too.
std::string wholeLength(double mm, const UnitStyle& style);
/// "5 : 1", ISO 5455.
std::string scaleWords(int scale);

}  // namespace lidwright
