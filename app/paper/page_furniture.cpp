#include "app/paper/page_furniture.h"

#include "core/base/units.h"

#include <cmath>

namespace lidwright {

namespace {

constexpr double kTickNumberHeight = 1.8;

/// A ruler of `count` steps. `rank` says how long the tick of a step is: 0 short, 1 middle, 2 long with
/// number.
struct RulerSteps {
    double step = 1;
    int count = 0;
    int (*rank)(int) = nullptr;
    int perNumber = 1;   ///< steps between numbers
    int numberStep = 1;  ///< by how much the numbers grow
    QString unit;
};

void ruler(Furniture& furniture, Point from, double angle, const RulerSteps& steps)
{
    const bool up = angle != 0;
    const Point along = up ? Point{0, 1} : Point{1, 0};
    const Point aside = up ? Point{-1, 0} : Point{0, 1};
    const double whole = steps.step * steps.count;
    furniture.line(from, from + whole * along);
    constexpr double kTick[] = {1.8, 3.0, 4.5};
    for (int i = 0; i <= steps.count; ++i) {
        const Point at = from + (i * steps.step) * along;
        const int rank = steps.rank(i);
        furniture.line(at, at + kTick[rank] * aside);
        if (rank < 2) continue;
        const Point numberAt = at + 5.3 * aside;
        const bool last = i == steps.count;
        const QString number =
            QString::number(i / steps.perNumber * steps.numberStep) + (last ? steps.unit : QString());
        furniture.text(numberAt, number, kTickNumberHeight, Anchor::Middle, angle);
    }
}

}  // namespace

void Furniture::line(Point a, Point b, LineKind kind)
{
    m_sheet.elements.push_back({{}, "furniture", Stroke{{a, b}, false, kind}});
    m_sheet.extent.include(a);
    m_sheet.extent.include(b);
}

void Furniture::box(const Bounds& b, LineKind kind)
{
    m_sheet.elements.push_back(
        {{},
         "furniture",
         Stroke{{{b.minX, b.minY}, {b.maxX, b.minY}, {b.maxX, b.maxY}, {b.minX, b.maxY}}, true, kind}});
    m_sheet.extent.include(b);
}

void Furniture::circle(Point centre, double radius)
{
    m_sheet.elements.push_back({{}, "furniture", Stroke{circleRing(centre, radius), true, LineKind::Mark}});
}

void Furniture::area(const Bounds& b, FillKind kind)
{
    m_sheet.elements.push_back(
        {{},
         "furniture",
         Fill{{{b.minX, b.minY}, {b.maxX, b.minY}, {b.maxX, b.maxY}, {b.minX, b.maxY}}, kind}});
}

void Furniture::text(Point at, const QString& words, double height, Anchor anchor, double angle)
{
    m_sheet.elements.push_back(
        {{}, "furniture", Text{at, words.toStdString(), height, angle, anchor, false}});
    m_sheet.extent.include(at);
}

void registrationCross(Furniture& furniture, Point at, double half)
{
    furniture.line(at - Point{half, 0}, at + Point{half, 0});
    furniture.line(at - Point{0, half}, at + Point{0, half});
    furniture.circle(at, half / 2);
}

void millimetreRuler(Furniture& furniture, Point from, double angle)
{
    const auto rank = [](int i) { return i % 10 == 0 ? 2 : i % 5 == 0 ? 1 : 0; };
    ruler(furniture, from, angle,
          {1, static_cast<int>(kRulerMillimetres), rank, 10, 10, PaperText::tr(" mm")});
}

void inchRuler(Furniture& furniture, Point from, double angle)
{
    const auto rank = [](int i) { return i % 8 == 0 ? 2 : i % 4 == 0 ? 1 : 0; };
    ruler(furniture, from, angle,
          {kMillimetresPerInch / 8, static_cast<int>(kRulerInches) * 8, rank, 8, 1, PaperText::tr(" in")});
}

void checkSquare(Furniture& furniture, Point lowerLeft)
{
    const Point corner = lowerLeft + Point{2, 2};
    furniture.box({corner.x, corner.y, corner.x + kSquare, corner.y + kSquare});
    const double middle = corner.x + kSquare / 2;
    furniture.text({middle, corner.y + 3.5}, PaperText::tr("50 mm both ways?"), 2.5, Anchor::Middle);
    furniture.text({middle, corner.y + 43.5}, PaperText::tr("Print at 100 %"), 2.5, Anchor::Middle);
}

void checkLine(Furniture& furniture, Point lowerLeft, bool up)
{
    const Point along = up ? Point{0, 1} : Point{1, 0};
    const Point across = up ? Point{1, 0} : Point{0, 1};
    // Level words stand above the line, upright ones to its left: there they read from the right-hand side.
    const Point from = lowerLeft + 2 * along + (up ? 6.0 : 2.0) * across;
    const Point to = from + kSquare * along;
    furniture.line(from, to);
    for (const Point end : {from, to})
        furniture.line(end - 1.5 * across, end + 1.5 * across);
    const Point words = from + (kSquare / 2) * along + (up ? -1.2 : 1.2) * across;
    furniture.text(words, PaperText::tr("50 mm? Print at 100 %"), 2.5, Anchor::Middle, up ? 90 : 0);
}

QString shortened(const QString& text, qsizetype most)
{
    const QString line = text.simplified();
    return line.size() <= most ? line : line.left(most - 1).trimmed() + QChar(0x2026);
}

}  // namespace lidwright
