#include "app/paper/joint_marks.h"

#include "core/base/length_text.h"
#include "core/drawing/lettering.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace lidwright {

namespace {

constexpr double kCrossPitch = 90;  // mm between crosses along a joint, at most
constexpr double kFromEnd =
    24;  // mm from the joint's ends to the first and last cross: clear of the page's name
constexpr double kWordHeight = 2.5;

/// Places of the crosses along a joint from `from` to `to`: the same for both of its pages.
std::vector<double> crossPlaces(double from, double to)
{
    const double first = from + std::min(kFromEnd, (to - from) / 4),
                 last = to - std::min(kFromEnd, (to - from) / 4);
    const int gaps = std::max(1, static_cast<int>(std::ceil((last - first) / kCrossPitch)));
    std::vector<double> places;
    for (int i = 0; i <= gaps; ++i)
        places.push_back(first + (last - first) * i / gaps);
    return places;
}

/// Where along the joint its words stand: clear of the crosses, over no ink if there is such a place,
/// otherwise over the least. `boxAt` gives the room that the words take about a place.
template <typename BoxAt>
double wordPlace(const std::vector<double>& crosses, double clear, const SheetInk& ink, const BoxAt& boxAt)
{
    constexpr double kStep = 4;              // mm
    constexpr std::size_t kCrossWeighs = 1;  // words over a cross can be read, over other words not
    const auto inked = [&](double at) {
        const auto crossed = std::count_if(crosses.begin(), crosses.end(),
                                           [&](double cross) { return std::abs(cross - at) < clear; });
        return 4 * ink.linesIn(boxAt(at)) + kCrossWeighs * static_cast<std::size_t>(crossed);
    };
    double best = (crosses[0] + crosses[1]) / 2;
    std::size_t least = inked(best);
    // Not beyond the joint's ends, which lie kFromEnd off the outer crosses on a joint of ordinary length.
    const double inset = std::max(0.0, clear - kFromEnd / 2);
    for (double at = crosses.front() + inset; least > 0 && at <= crosses.back() - inset; at += kStep) {
        const std::size_t lines = inked(at);
        if (lines >= least) continue;
        least = lines;
        best = at;
    }
    return best;
}

double halfOf(const QString& words)
{
    return textWidth(words.toStdString(), kWordHeight) / 2;
}

double crossHalf(const Tiling& tiling)
{
    return std::min(5.0, tiling.overlap / 2 - 0.5);
}

QString cutWords(const QString& mine, const QString& other)
{
    return PaperText::tr("Cut %1 along this line, lay it on %2").arg(mine, other);
}

QString coverWords(const QString& other)
{
    return PaperText::tr("%1 is laid on, up to this line").arg(other);
}

/// A joint between two columns, at x.
void uprightJoint(Furniture& furniture, const Tiling& tiling, const Tile& tile, bool atLeft,
                  const SheetInk& ink)
{
    const double x = tiling.jointX(atLeft ? tile.column - 1 : tile.column);
    const QString mine = QString::fromStdString(tile.name);
    const QString other =
        QString::fromStdString(rowLetters(tile.row)) + QString::number(tile.column + (atLeft ? 0 : 2));
    furniture.line({x, tile.window.minY}, {x, tile.window.maxY}, atLeft ? LineKind::Mark : LineKind::Hidden);
    // Counted from the row's own joints, printed or not, so that both pages put them at the same places.
    const double low = tile.row + 1 < tiling.rows ? tiling.jointY(tile.row) : tile.window.minY;
    const double high = tile.row > 0 ? tiling.jointY(tile.row - 1) : tile.window.maxY;
    const std::vector<double> places = crossPlaces(low, high);
    for (const double y : places)
        registrationCross(furniture, {x, y}, crossHalf(tiling));
    const QString words = atLeft ? cutWords(mine, other) : coverWords(other);
    const double wordX = atLeft ? x - 1.2 : x + 1.2 + kWordHeight;
    const double half = halfOf(words);
    const double middle = wordPlace(places, half + crossHalf(tiling), ink, [&](double at) -> Bounds {
        return {wordX - kWordHeight, at - half, wordX, at + half};
    });
    furniture.text({wordX, middle}, words, kWordHeight, Anchor::Middle, 90);
}

/// A joint between two rows, at y.
void levelJoint(Furniture& furniture, const Tiling& tiling, const Tile& tile, bool above, const SheetInk& ink)
{
    const double y = tiling.jointY(above ? tile.row - 1 : tile.row);
    const QString mine = QString::fromStdString(tile.name);
    const QString other =
        QString::fromStdString(rowLetters(tile.row + (above ? -1 : 1))) + QString::number(tile.column + 1);
    furniture.line({tile.window.minX, y}, {tile.window.maxX, y}, above ? LineKind::Mark : LineKind::Hidden);
    const double from = tile.column > 0 ? tiling.jointX(tile.column - 1) : tile.window.minX;
    const double to = tile.column + 1 < tiling.columns ? tiling.jointX(tile.column) : tile.window.maxX;
    const std::vector<double> places = crossPlaces(from, to);
    for (const double x : places)
        registrationCross(furniture, {x, y}, crossHalf(tiling));
    const QString words = above ? cutWords(mine, other) : coverWords(other);
    const double wordY = above ? y + 1.2 : y - 1.2 - kWordHeight;
    const double half = halfOf(words);
    const double middle = wordPlace(places, half + crossHalf(tiling), ink, [&](double at) -> Bounds {
        return {at - half, wordY, at + half, wordY + kWordHeight};
    });
    furniture.text({middle, wordY}, words, kWordHeight, Anchor::Middle);
}

/// The longest length up to `most` that is easily found on a ruler in the user's unit: whole millimetres, or
/// quarters of an inch.
double roundLength(double most, const UnitStyle& style)
{
    const double step = style.unit == LengthUnit::Millimetre ? 1 : kMillimetresPerInch / 4;
    return std::floor(most / step + 1e-9) * step;
}

/// A total-length line as it runs along its own axis: from `start` on, `across` beside which its words stand.
struct TotalLine {
    double across = 0;
    double words = 0;  ///< where they begin, along
};

constexpr double kTotalOff = 5;        // mm off the drawing
constexpr double kWordsOffLine = 0.8;  // mm
constexpr double kWordsFromEnd = 8;    // mm

/// Where the line and its words lie over the least: as given where nothing is there, otherwise up to `most`
/// farther on toward `into` (1 or -1 across it). `boxAt(from, to, low, high)` is a box along and across the
/// line.
template <typename BoxAt>
TotalLine leastInked(const SheetInk& ink, double start, double length, double across, double into,
                     double most, double wide, const BoxAt& boxAt)
{
    constexpr double kStepAcross = 3, kStepAlong = 15;  // mm
    constexpr std::size_t kWordsWeigh = 8;  // a line over a line is read, words over words are not
    TotalLine best{across, start + kWordsFromEnd};
    std::size_t least = std::numeric_limits<std::size_t>::max();
    for (double off = 0; off <= most && least > 0; off += kStepAcross) {
        const double y = across + into * off;
        const std::size_t crossed = ink.linesIn(boxAt(start, start + length, y - 0.3, y + 0.3));
        if (crossed >= least) continue;
        for (double at = start + kWordsFromEnd; at <= start + length - wide; at += kStepAlong) {
            const std::size_t under =
                ink.linesIn(boxAt(at - 1, at + wide + 1, y, y + kWordsOffLine + kWordHeight + 0.5));
            if (crossed + kWordsWeigh * under >= least) continue;
            least = crossed + kWordsWeigh * under;
            best = {y, at};
            if (under == 0) break;
        }
    }
    return best;
}

}  // namespace

void jointMarks(Furniture& furniture, const Tiling& tiling, const Tile& tile, const SheetInk& ink)
{
    if (tile.left) uprightJoint(furniture, tiling, tile, true, ink);
    if (tile.right) uprightJoint(furniture, tiling, tile, false, ink);
    if (tile.above) levelJoint(furniture, tiling, tile, true, ink);
    if (tile.below) levelJoint(furniture, tiling, tile, false, ink);
}

std::vector<Bounds> wasteBands(const Tile& tile)
{
    const Bounds& w = tile.window;
    const Bounds& k = tile.kept;
    std::vector<Bounds> bands;
    // The level bands take the whole width, the upright ones what is left: no place is tinted twice.
    if (k.maxY < w.maxY) bands.push_back({w.minX, k.maxY, w.maxX, w.maxY});
    if (k.minY > w.minY) bands.push_back({w.minX, w.minY, w.maxX, k.minY});
    if (k.minX > w.minX) bands.push_back({w.minX, k.minY, k.minX, k.maxY});
    if (k.maxX < w.maxX) bands.push_back({k.maxX, k.minY, w.maxX, k.maxY});
    return bands;
}

Sheet totalLengthLines(const Bounds& area, bool across, bool upright, const SheetInk& ink,
                       const UnitStyle& style)
{
    Furniture furniture;
    const auto words = [&](double length) {
        return PaperText::tr("%1 when all pages are joined")
            .arg(QString::fromStdString(formatLength(length, style).text));
    };
    constexpr double kTick = 2.5;
    if (across) {
        const double length = roundLength(area.width(), style);
        const double x = area.centre().x - length / 2;
        const auto box = [](double from, double to, double low, double high) -> Bounds {
            return {from, low, to, high};
        };
        const TotalLine line = leastInked(ink, x, length, area.minY - kTotalOff, 1, area.height() / 2,
                                          2 * halfOf(words(length)), box);
        furniture.line({x, line.across}, {x + length, line.across});
        for (const double end : {x, x + length})
            furniture.line({end, line.across - kTick}, {end, line.across + kTick});
        furniture.text({line.words, line.across + kWordsOffLine}, words(length), kWordHeight);
    }
    if (upright) {
        const double length = roundLength(area.height(), style);
        const double y = area.centre().y - length / 2;
        // Counted from the line toward the left, where its words stand, so that the room for them is low to
        // high.
        const auto box = [](double from, double to, double low, double high) -> Bounds {
            return {-high, from, -low, to};
        };
        const TotalLine line = leastInked(ink, y, length, kTotalOff - area.minX, -1, area.width() / 2,
                                          2 * halfOf(words(length)), box);
        const double x = -line.across;
        furniture.line({x, y}, {x, y + length});
        for (const double end : {y, y + length})
            furniture.line({x - kTick, end}, {x + kTick, end});
        furniture.text({x - kWordsOffLine, line.words}, words(length), kWordHeight, Anchor::Left, 90);
    }
    return furniture.sheet();
}

}  // namespace lidwright
