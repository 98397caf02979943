#include "core/drawing/board_views.h"

#include <algorithm>

namespace lidwright {
namespace {

/// A tie that bridges nothing is marked by a cross, mm to each side.
constexpr double kTieCross = 2;

struct Shown {
    const Ring* ring;
    std::size_t piece;
    bool engraved;
    bool hole;
    double size;  // by which the painting order goes
};

}  // namespace

void drawCutOuts(ViewPen& pen, const ViewInput& in)
{
    const Layout& layout = in.layout;
    std::vector<Shown> all;
    // Where an engraving is left out around a cut, the two rings are the same: the hole is painted first.
    constexpr double kHoleFirst = 1 + 1e-9;
    for (std::size_t i = 0; i < layout.art.size(); ++i) {
        if (!layout.art[i]) continue;
        for (const bool engraved : {true, false})
            for (const Ring& ring : (engraved ? layout.art[i]->engraved : layout.art[i]->cut).rings) {
                const double a = signedArea(ring);
                all.push_back({&ring, i, engraved, a < 0, a < 0 ? -a * kHoleFirst : a});
            }
    }
    std::stable_sort(all.begin(), all.end(), [](const Shown& a, const Shown& b) { return a.size > b.size; });
    for (const Shown& s : all) {
        const std::string part = "art." + std::to_string(s.piece + 1);
        const FillKind kind = s.hole       ? lidWood(in.plan)
                              : s.engraved ? FillKind::Engraved
                                           : FillKind::CutThrough;
        pen.fill(part, "artwork", *s.ring, kind);
        if (s.engraved) pen.outline(part, "artwork", *s.ring, LineKind::Narrow);
    }
    for (std::size_t i = 0; i < layout.holes.size(); ++i)
        pen.area("hole." + std::to_string(i + 1), "holes", layout.holes[i], FillKind::CutThrough,
                 LineKind::Visible);
}

void drawFixingsAndTies(ViewPen& pen, const ViewInput& in)
{
    const Layout& layout = in.layout;
    const FillKind wood = lidWood(in.plan);
    for (std::size_t i = 0; i < layout.fixings.size(); ++i)
        pen.area("fixing." + std::to_string(i + 1), "fixings", layout.fixings[i], FillKind::CutThrough,
                 LineKind::Visible);
    for (std::size_t i = 0; i < layout.ties.size(); ++i) {
        const std::string part = "tie." + std::to_string(i + 1);
        const TieLayout& tie = layout.ties[i];
        if (!tie.outline.empty())
            pen.area(part, "ties", tie.over, wood, LineKind::Narrow);
        else
            for (const Point arm : {Point{kTieCross, 0}, Point{0, kTieCross}})
                pen.line(part, "ties", {tie.at - arm, tie.at + arm}, LineKind::Visible);
    }
}

}  // namespace lidwright
