#include "core/checks/artwork/artwork_checks.h"
#include "core/checks/artwork/thin_verdict.h"
#include "core/checks/judging.h"
#include "core/solvers/weak_places.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace lidwright {
namespace {

constexpr const char* kRule = "art.thin";
/// More than these help nobody on the drawing.
constexpr std::size_t kMostPlaces = 60;

std::string partOf(int art)
{
    return art < 0 ? "lid" : "art." + std::to_string(art + 1);
}

Place placeOf(const NarrowPlace& place)
{
    Bounds box;
    box.include(place.footA);
    box.include(place.footB);
    for (const Point p : place.axis)
        box.include(p);
    constexpr double kRoom = 1;
    return {View::Top, box.grown(kRoom)};
}

/// What one drawing's thin places come to.
struct Thin {
    std::vector<const WeakPlace*> weak;    ///< break under less than asked
    std::vector<const WeakPlace*> close;   ///< hold, with less in hand than is good
    std::vector<const WeakPlace*> narrow;  ///< narrower than asked, whatever they bear
    const WeakPlace* weakest = nullptr;
};

Thin sorted(const Plan& plan, const std::vector<const WeakPlace*>& places)
{
    Thin out;
    for (const WeakPlace* p : places) {
        if (out.weakest == nullptr || p->breaksAt_N < out.weakest->breaksAt_N) out.weakest = p;
        const Verdict verdict = thinVerdict(plan, *p);
        if (verdict == Verdict::Wrong)
            out.weak.push_back(p);
        else if (narrowerThanAsked(plan, *p))
            out.narrow.push_back(p);
        else if (verdict == Verdict::Tight)
            out.close.push_back(p);
    }
    return out;
}

Measure force(double newtons)
{
    return {newtons, Quantity::Force};
}

void addStrength(const Plan& plan, const WeakPlace& worst, Finding& f)
{
    f.measured = force(worst.breaksAt_N);
    f.required = force(plan.cutter.safety * plan.cutter.press);
    f.comfortable = force(kGoodShareOfSafety * plan.cutter.safety * plan.cutter.press);
}

Sentence weakSentence(const Plan& plan, const std::string& name, const Thin& thin)
{
    const WeakPlace& worst = *thin.weakest;
    const Measure count{static_cast<double>(thin.weak.size()), Quantity::Count};
    std::vector<Sentence::Argument> with{name,
                                         mm(worst.width),
                                         mm(worst.span),
                                         force(worst.breaksAt_N),
                                         force(plan.cutter.press),
                                         Measure{plan.cutter.safety, Quantity::Ratio},
                                         count};
    const bool shortGrain = worst.grainAngle > kPi / 4;
    if (thin.weak.size() == 1)
        return {
            shortGrain
                ? "1 thin place of %1 is too weak: %2 wide once cut and %3 long across the grain, it breaks "
                  "at "
                  "about %4; a finger presses with %5, and %6 times that is asked."
                : "1 thin place of %1 is too weak: %2 wide once cut and %3 long, it breaks at about %4; a "
                  "finger presses with %5, and %6 times that is asked.",
            std::move(with)};
    return {
        shortGrain
            ? "%7 thin places of %1 are too weak; the weakest, %2 wide once cut and %3 long across the "
              "grain, "
              "breaks at about %4; a finger presses with %5, and %6 times that is asked."
            : "%7 thin places of %1 are too weak; the weakest, %2 wide once cut and %3 long, breaks at about "
              "%4; a finger presses with %5, and %6 times that is asked.",
        std::move(with)};
}

Finding judgeOne(const Plan& plan, const std::string& part, const std::string& name, const Thin& thin,
                 double searchedTo)
{
    if (thin.weakest == nullptr)
        return finding(kRule, part, Verdict::Good,
                       {"All wood between the cuts of %1 is at least %2 wide.", {name, mm(searchedTo)}});
    const WeakPlace& worst = *thin.weakest;
    if (!thin.weak.empty()) {
        Finding f = finding(kRule, part, Verdict::Wrong, weakSentence(plan, name, thin));
        addStrength(plan, worst, f);
        return f;
    }
    if (!thin.close.empty()) {
        Finding f = finding(
            kRule, part, Verdict::Tight,
            {"The weakest thin place of %1, %2 wide once cut, breaks at about %3: it holds, with little "
             "in hand.",
             {name, mm(worst.width), force(worst.breaksAt_N)}});
        addStrength(plan, worst, f);
        return f;
    }
    if (!thin.narrow.empty()) {
        const auto narrowest =
            *std::min_element(thin.narrow.begin(), thin.narrow.end(),
                              [](const WeakPlace* a, const WeakPlace* b) { return a->width < b->width; });
        Finding f = finding(
            kRule, part, Verdict::Tight,
            {"Once cut, wood of %1 is down to %2 wide, less than the %3 asked for; by its strength it "
             "holds a finger's press.",
             {name, mm(narrowest->width), mm(plan.cutter.leastWeb)}});
        f.measured = mm(narrowest->width);
        f.required = mm(plan.cutter.leastWeb);
        return f;
    }
    Finding f = finding(kRule, part, Verdict::Good,
                        {"The weakest thin place of %1, %2 wide once cut, holds about %3.",
                         {name, mm(worst.width), force(worst.breaksAt_N)}});
    addStrength(plan, worst, f);
    return f;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    if (in.layout.art.empty() && in.layout.holes.empty()) return;
    const WeakPlaces all = weakPlaces(in.plan, in.layout);
    std::map<int, std::vector<const WeakPlace*>> byArt;
    for (std::size_t i = 0; i < in.layout.art.size(); ++i)
        if (!in.layout.art[i]->cut.empty()) byArt[static_cast<int>(i)];
    for (const WeakPlace& p : all.places)
        if (p.lid.place.kind != NarrowKind::DropOut) byArt[p.lid.art].push_back(&p);
    for (const auto& [art, places] : byArt) {
        const std::string part = partOf(art);
        const std::string name =
            art < 0 ? std::string("the lid") : in.plan.art[static_cast<std::size_t>(art)].name;
        if (all.problem) {
            out.push_back(
                finding(kRule, part, Verdict::Unknown,
                        {"The thin places of %1 could not be found: %2", {name, all.problem->text()}}));
            continue;
        }
        const Thin thin = sorted(in.plan, places);
        Finding f = judgeOne(in.plan, part, name, thin, all.searchedTo);
        const auto& shown = !thin.weak.empty() ? thin.weak : !thin.close.empty() ? thin.close : thin.narrow;
        for (const WeakPlace* p : shown)
            if (f.places.size() < kMostPlaces) f.places.push_back(placeOf(p->lid.place));
        if (f.places.empty())
            f.places.push_back({View::Top, art < 0 ? bounds(in.layout.lidOutline)
                                                   : in.layout.art[static_cast<std::size_t>(art)]->bounds});
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const double lost = in.plan.cutter.compensate ? 0 : in.plan.cutter.kerf;
    if (f.part.starts_with("art.")) {
        const auto index = memberIndex(f.part);
        const double asked = in.plan.cutter.leastWeb + lost;
        for (const double times : {1.0, 2.0, 3.0}) {
            const double width = std::ceil(2 * times * asked) / 2;
            if (width <= in.plan.art[index].strengthen) continue;
            out.push_back(
                oneEdit({"Strengthen its thin wood to %1", {mm(width)}}, f.part + ".strengthen", width));
        }
    }
    if (f.part == "lid" && !in.plan.art.empty()) {
        for (const double times : {1.0, 2.0, 3.0}) {
            const double width = std::ceil(2 * times * (in.plan.cutter.leastWeb + lost)) / 2;
            Remedy remedy{{"Strengthen all drawings' thin wood to %1", {mm(width)}}, {}};
            for (std::size_t i = 0; i < in.plan.art.size(); ++i)
                if (in.plan.art[i].strengthen < width)
                    remedy.edits.push_back({partOf(static_cast<int>(i)) + ".strengthen", width});
            if (!remedy.edits.empty()) out.push_back(std::move(remedy));
        }
    }
    if (in.plan.backingLayers.empty() && f.part.starts_with("art."))
        out.push_back(oneEdit({"Back the artwork with wire cloth", {}}, "backing.count", 1));
    const double thickness = std::ceil(3 * in.plan.lid.thickness) / 2;
    out.push_back(oneEdit({"Take a lid %1 thick", {mm(thickness)}}, "lid.thickness", thickness));
    return out;
}

}  // namespace

bool narrowerThanAsked(const Plan& plan, const WeakPlace& place)
{
    return place.width < plan.cutter.leastWeb - kNothing && !place.backed;
}

Verdict thinVerdict(const Plan& plan, const WeakPlace& place)
{
    if (place.lid.place.kind == NarrowKind::DropOut) return Verdict::Wrong;
    if (!place.judged) return Verdict::Unknown;
    const double factor = place.strength.factorOfSafety;
    if (factor < plan.cutter.safety) return Verdict::Wrong;
    if (factor < kGoodShareOfSafety * plan.cutter.safety || narrowerThanAsked(plan, place))
        return Verdict::Tight;
    return Verdict::Good;
}

const Check kArtThin{
    kRule, "Thin wood between the cuts",
    "strength: Wood Handbook (2010) and the panel's own values, as webStrength() says; width and "
    "factor of safety: common practice, no source",
    judge, propose};

}  // namespace lidwright
