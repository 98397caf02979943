#pragma once

#include "core/drawing/sheet.h"

#include <QCoreApplication>
#include <QString>

namespace lidwright {

/// Where the words on paper are translated.
struct PaperText {
    Q_DECLARE_TR_FUNCTIONS(PaperText)
};

/// Collects the lines and words that a page carries besides the drawing, in mm, y up.
class Furniture {
public:
    void line(Point a, Point b, LineKind kind = LineKind::Mark);
    void box(const Bounds& bounds, LineKind kind = LineKind::Mark);
    void circle(Point centre, double radius);
    void area(const Bounds& bounds, FillKind kind);
    void text(Point at, const QString& words, double height, Anchor anchor = Anchor::Left, double angle = 0);

    const Sheet& sheet() const { return m_sheet; }

private:
    Sheet m_sheet;
};

/// The cross in a circle by which two pages are laid on each other. `half`: from its middle to its ends, mm.
void registrationCross(Furniture& furniture, Point at, double half);

/// A straight line of exactly 100 mm from `from` along `angle` (0 or 90 degrees), with a tick for each mm.
void millimetreRuler(Furniture& furniture, Point from, double angle);
/// The same of exactly 4 in with a tick for each 1/8 in.
void inchRuler(Furniture& furniture, Point from, double angle);

inline constexpr double kRulerMillimetres = 100;
inline constexpr double kRulerInches = 4;

/// A square of exactly 50 mm and what to do with it; takes kSquareWidth x kSquareHeight from its lower left.
void checkSquare(Furniture& furniture, Point lowerLeft);
inline constexpr double kSquare = 50;
inline constexpr double kSquareWidth = 54;
inline constexpr double kSquareHeight = 54;

/// A line of exactly kSquare with an end tick at each end, for where a page has no room for the square.
/// Level, or upright with `up`; takes kCheckLineLength along it and kCheckLineWidth across from its lower
/// left.
void checkLine(Furniture& furniture, Point lowerLeft, bool up);
inline constexpr double kCheckLineLength = 54;
inline constexpr double kCheckLineWidth = 8;

/// `text` cut to so many characters, with an ellipsis where something is missing.
QString shortened(const QString& text, qsizetype most);

}  // namespace lidwright
