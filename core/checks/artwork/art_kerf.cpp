#include "core/checks/artwork/artwork_checks.h"
#include "core/checks/judging.h"
#include "core/layout/lid_places.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "art.kerf";
constexpr std::size_t kMostPlaces = 60;
/// A pointed cut comes out blunt by this much at most before anyone minds, mm (common practice, no source).
constexpr double kTip = 3;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const double kerf = in.plan.cutter.kerf;
    const LidPlaces all = closedByKerf(in.layout, kerf);
    if (all.problem) return;  // said by art.thin
    for (std::size_t i = 0; i < in.layout.art.size(); ++i) {
        const PlacedArt& art = *in.layout.art[i];
        if (art.cut.empty()) continue;
        const std::string& name = in.plan.art[i].name;
        std::vector<const NarrowPlace*> own;
        double narrowest = kerf;
        bool vanishes = false;
        for (const LidPlace& p : all.places) {
            if (p.art != static_cast<int>(i)) continue;
            if (p.place.finger && p.place.run < kTip) continue;
            own.push_back(&p.place);
            narrowest = std::min(narrowest, p.place.width);
            vanishes = vanishes || p.place.kind == NarrowKind::DropOut;
        }
        Finding f;
        const Measure count{static_cast<double>(own.size()), Quantity::Count};
        if (own.empty()) {
            f = finding(kRule, "art." + std::to_string(i + 1), Verdict::Good,
                        {"Every cut of %1 is wider than the kerf of %2.", {name, mm(kerf)}});
        } else {
            f = finding(
                kRule, "art." + std::to_string(i + 1), Verdict::Tight,
                {vanishes ? "%3 places of %1 are narrower than the kerf of %2, whole cuts among them: "
                            "they come out wider than drawn, or not at all."
                          : "%3 places of %1 are narrower than the kerf of %2: they come out wider than "
                            "drawn.",
                 {name, mm(kerf), count}});
            if (own.size() == 1)
                f.sentence = {
                    "1 place of %1 is narrower than the kerf of %2: it comes out wider than drawn, or "
                    "not at all.",
                    {name, mm(kerf)}};
            f.measured = mm(narrowest);
            f.required = mm(kerf);
        }
        for (const NarrowPlace* p : own)
            if (f.places.size() < kMostPlaces) f.places.push_back(topPlace(p->footA, p->footB));
        if (f.places.empty()) f.places.push_back({View::Top, art.bounds});
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    // A larger drawing has wider cuts.
    std::vector<Remedy> out;
    const auto index = memberIndex(f.part);
    const double scale = in.plan.art[index].scale;
    for (const double times : {1.1, 1.25, 1.5, 2.0}) {
        const double next = std::ceil(scale * times * 100) / 100;
        out.push_back(oneEdit({"Scale it to %1", {Measure{next, Quantity::Ratio}}}, f.part + ".scale", next));
    }
    return out;
}

}  // namespace

const Check kArtKerf{kRule, "Cuts that the kerf closes", "geometry", judge, propose};

}  // namespace lidwright
