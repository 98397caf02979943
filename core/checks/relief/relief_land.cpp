#include "core/checks/gravest.h"
#include "core/checks/relief/relief_checks.h"
#include "core/checks/relief/stick_inside.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "relief.land";

/// Full stick from one wall's inner face to the first cut.
struct Land {
    const char* wall;   ///< marked English
    double length = 0;  ///< as it is, hollows counted
    Stretch where;
    double wallFace = 0;    ///< x of the inner face
    const ReliefCut* next;  ///< what ends it; null where nothing does
};

Land landAt(const Layout& l, Stretch inside, bool head)
{
    Land land{head ? "head-end wall" : "tail-end wall", inside.size(), inside, head ? inside.from : inside.to,
              nullptr};
    for (const ReliefCut& cut : l.relief.cuts) {
        if (cut.to <= inside.from + kNothing || cut.from >= inside.to - kNothing) continue;
        const double length = std::max(0.0, head ? cut.from - inside.from : inside.to - cut.to);
        if (length < land.length) {
            land.length = length;
            land.next = &cut;
        }
    }
    land.where =
        head ? Stretch{inside.from, inside.from + land.length} : Stretch{inside.to - land.length, inside.to};
    return land;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const auto inside = stickInside(in.layout);
    if (!inside || in.layout.relief.cuts.empty()) return;
    const double wanted = in.plan.relief.glueLand;
    Gravest gravest;
    for (const bool head : {true, false}) {
        const Land land = landAt(in.layout, *inside, head);
        const double air = airBeforeRelief(in, land.wallFace);
        if (air > kLidLies || in.plan.lid.fastening == LidFastening::Screwed) {
            Finding f = finding(kRule, "relief", Verdict::Good,
                                air > kLidLies
                                    ? Sentence{"At the %2 the stick lies %1 below the lid: only the walls "
                                               "hold the lid there.",
                                               {mm(air), std::string(land.wall)}}
                                    : Sentence{"The lid is screwed; its land at the %2 is %1 long and needs "
                                               "no glue.",
                                               {mm(land.length), std::string(land.wall)}});
            f.places = {stickPlace(in, land.where, air)};
            gravest.take(std::move(f));
            continue;
        }
        Finding f = atLeast(kRule, "relief", land.length, wanted, wanted + kBenchRoom);
        f.sentence = {f.verdict == Verdict::Good
                          ? "The lid is glued to lands of at least %1, shortest at the %2."
                          : "The land at the %2 is %1 long; %3 are wanted to glue the lid to.",
                      {mm(land.length), std::string(land.wall), mm(wanted)}};
        f.places = {stickPlace(in, land.where, in.plan.relief.depth)};
        gravest.take(std::move(f));
    }
    gravest.pourInto(out);
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const auto inside = stickInside(in.layout);
    if (!inside) return out;
    const double good = in.plan.relief.glueLand + kBenchRoom;
    Remedy longer{{"Leave lands of %1", {mm(good)}}, {}};
    for (const bool head : {true, false}) {
        const Land land = landAt(in.layout, *inside, head);
        if (land.next == nullptr || land.length >= good) continue;
        if (in.plan.relief.cut && (head ? in.plan.relief.headLand : in.plan.relief.tailLand) < good)
            longer.edits.push_back({head ? "relief.head-land" : "relief.tail-land", good});
        for (std::size_t i = 0; i < in.plan.hollows.size(); ++i) {
            const Hollow& hollow = in.plan.hollows[i];
            const double from = hollow.from, to = hollow.from + hollow.length;
            const double atHead = inside->from + good, atTail = inside->to - good;
            const std::string key = "hollow." + std::to_string(i + 1) + ".from";
            if (head && to > inside->from && from < atHead) longer.edits.push_back({key, atHead});
            if (!head && from < inside->to && to > atTail)
                longer.edits.push_back({key, atTail - hollow.length});
        }
    }
    out.push_back(std::move(longer));
    // A little less is glued often enough, where glue and fit are good (common practice, no source).
    constexpr double kLeastLand = 10;
    if (f.measured && f.measured->value - kBenchRoom >= kLeastLand) {
        const double least = std::floor(f.measured->value - kBenchRoom);
        out.push_back(oneEdit({"Be content with lands of %1", {mm(least)}}, "relief.glue-land", least));
    }
    return out;
}

}  // namespace

const Check kReliefLand{kRule, "Land that the lid is glued to",
                        "least land chosen by the maker; 1 mm bench room, 10 mm: common practice, no source",
                        judge, propose};

}  // namespace lidwright
