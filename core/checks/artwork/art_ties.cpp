#include "core/checks/artwork/artwork_checks.h"
#include "core/checks/judging.h"
#include "core/geometry/mend_cuts.h"
#include "core/layout/art_place.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "art.ties";

std::string partOf(std::size_t index)
{
    return "tie." + std::to_string(index + 1);
}

/// The drawing that a tie belongs to, or null.
const PlacedArt* drawingOf(const CheckInput& in, const TieSpot& tie)
{
    const auto index = static_cast<std::size_t>(tie.art - 1);
    return index < in.layout.art.size() ? in.layout.art[index].get() : nullptr;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    if (in.layout.quick) return;  // at the steps of a drag large drawings are not tied
    for (std::size_t i = 0; i < in.plan.ties.size(); ++i) {
        const TieSpot& tie = in.plan.ties[i];
        const Measure number{static_cast<double>(i + 1), Quantity::Count};
        const PlacedArt* art = drawingOf(in, tie);
        Finding f;
        if (art == nullptr) {
            const Measure last{static_cast<double>(in.plan.art.size()), Quantity::Count};
            const Measure asked{static_cast<double>(tie.art), Quantity::Count};
            f = finding(kRule, partOf(i), Verdict::Wrong,
                        {"Tie %1 belongs to drawing %2, and the lid has %3.", {number, asked, last}});
            f.measured = asked;
            f.required = last;
            f.bound = Bound::AtMost;
            f.places.push_back({View::Top, bounds(in.layout.lidOutline)});
        } else if (in.layout.ties[i].outline.empty()) {
            f = finding(
                kRule, partOf(i), Verdict::Wrong,
                {"Tie %1 bridges nothing: no cut is within %2 of its place.", {number, mm(kTieReach)}});
            const double away =
                art->cutTree.empty() ? 2 * kTieReach : art->cutTree.nearest(in.layout.ties[i].at).distance;
            f.measured = mm(std::max(away, kTieReach + kBenchRoom));
            f.required = mm(kTieReach);
            f.bound = Bound::AtMost;
            f.places.push_back(topPlace(in.layout.ties[i].at, in.layout.ties[i].at));
        } else {
            const Bounds box = bounds(in.layout.ties[i].outline);
            f = finding(kRule, partOf(i), Verdict::Good,
                        {"Tie %1 leaves wood %2 wide across the cut.", {number, mm(tie.width)}});
            f.places.push_back({View::Top, box.grown(1)});
        }
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const auto index = memberIndex(f.part);
    const TieSpot& tie = in.plan.ties[index];
    const bool lost = drawingOf(in, tie) == nullptr;
    for (std::size_t art = 0; art < in.plan.art.size(); ++art) {
        if (!lost && static_cast<int>(art) + 1 != tie.art) continue;
        const SegmentTree& edges = in.layout.art[art]->cutTree;
        if (edges.empty()) continue;
        const Point from = lost ? bounds(in.layout.art[art]->cut).centre() : in.layout.ties[index].at;
        const Point to = onDrawing(in.plan.art[art], edges.nearest(from).onTree);
        // Alone, a tie has to hold its piece like a cantilever: wider ones where its own width is too little.
        for (const double times : {1.0, 1.5, 2.0, 3.0, 4.0}) {
            const double width = times > 1 ? std::ceil(2 * times * tie.width) / 2 : tie.width;
            Remedy remedy{
                {lost ? "Give the tie to %1, %2 wide" : "Move the tie to the nearest cut of %1, %2 wide",
                 {in.plan.art[art].name, mm(width)}},
                {{f.part + ".x", to.x}, {f.part + ".y", to.y}}};
            if (times > 1) remedy.edits.push_back({f.part + ".width", width});
            if (lost) remedy.edits.push_back({f.part + ".art", static_cast<double>(art) + 1});
            out.push_back(std::move(remedy));
        }
    }
    return out;
}

}  // namespace

const Check kArtTies{kRule, "Ties at picked places", "geometry; reach of a tie: common practice, no source",
                     judge, propose};

}  // namespace lidwright
