#include "core/checks/artwork/artwork_checks.h"
#include "core/checks/judging.h"
#include "core/solvers/weak_places.h"

#include <cmath>
#include <map>

namespace lidwright {
namespace {

constexpr const char* kRule = "art.drop-outs";

/// A speck that no one would miss, mm2 (common practice, no source).
constexpr double kSpeck = 1;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const LidPlaces all = narrowPlaces(in.layout, searchWidth(in.plan));
    if (all.problem) return;  // said by art.thin
    std::map<std::string, std::vector<const LidPlace*>> byPart;
    for (std::size_t i = 0; i < in.layout.art.size(); ++i)
        if (!in.layout.art[i]->cut.empty()) byPart["art." + std::to_string(i + 1)];
    for (const LidPlace& p : all.places)
        if (p.place.kind == NarrowKind::DropOut)
            byPart[p.art < 0 ? "lid" : "art." + std::to_string(p.art + 1)].push_back(&p);
    for (const auto& [part, drops] : byPart) {
        const bool lid = part == "lid";
        const std::size_t index = lid ? 0 : memberIndex(part);
        const std::string name = lid ? std::string("the lid") : in.plan.art[index].name;
        double area = 0, largest = 0;
        for (const LidPlace* p : drops) {
            area += p->place.freed;
            largest = std::max(largest, p->place.freed);
        }
        const Measure count{static_cast<double>(drops.size()), Quantity::Count};
        Finding f;
        if (drops.empty())
            f = finding(kRule, part, Verdict::Good, {"No piece of %1 falls out when it is cut.", {name}});
        else if (drops.size() == 1)
            f = finding(kRule, part, largest > kSpeck ? Verdict::Wrong : Verdict::Tight,
                        {"1 piece of %1, %2 of wood, is cut all round: it falls out.",
                         {name, Measure{area, Quantity::Area}}});
        else
            f = finding(kRule, part, largest > kSpeck ? Verdict::Wrong : Verdict::Tight,
                        {"%3 pieces of %1, %2 of wood in all, are cut all round: they fall out.",
                         {name, Measure{area, Quantity::Area}, count}});
        f.measured = Measure{area, Quantity::Area};
        f.required = Measure{0, Quantity::Area};
        f.bound = Bound::AtMost;
        for (const LidPlace* p : drops)
            f.places.push_back({View::Top, bounds(p->place.piece).grown(1)});
        if (f.places.empty()) f.places.push_back({View::Top, in.layout.art[index]->bounds});
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    if (!f.part.starts_with("art.")) return out;
    const auto index = memberIndex(f.part);
    // Ties must not break in their turn: wider ones where the plan's own are too weak.
    for (const double times : {1.0, 1.5, 2.0, 3.0, 4.0}) {
        const double width = std::ceil(2 * times * in.plan.cutter.tieWidth) / 2;
        for (const int ties : {2, 3}) {
            if (ties == in.plan.art[index].ties && times == 1) continue;
            const Measure count{static_cast<double>(ties), Quantity::Count};
            Remedy remedy{{"Hold each by %2 ties, %1 wide", {mm(width), count}},
                          {{f.part + ".ties", static_cast<double>(ties)}}};
            if (times > 1) remedy.edits.push_back({"cutter.tie-width", width});
            out.push_back(std::move(remedy));
        }
    }
    return out;
}

}  // namespace

const Check kArtDropOuts{kRule, "Pieces that fall out",
                         "geometry; a speck up to 1 mm²: common practice, no source", judge, propose};

}  // namespace lidwright
