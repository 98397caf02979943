#include "core/checks/artwork/artwork_checks.h"
#include "core/checks/judging.h"
#include "core/layout/sound_opening.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "backing.open";
/// Backing that leaves less than these shares of the free sound hole chokes it (common practice, no source).
constexpr double kFineShare = 0.5;
constexpr double kLeastShare = 0.25;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    if (in.plan.backingLayers.empty() || in.layout.backing.outline.empty()) return;
    const SoundOpening open = soundOpening(in.plan, in.layout);
    if (open.problem || open.freeArea <= 0) return;  // said by backing.fit
    const Verdict verdict =
        judgeAtLeast(open.net, kLeastShare * open.freeArea, (kFineShare - kLeastShare) * open.freeArea);
    const Measure percent{std::round(100 * open.net / open.freeArea), Quantity::Count};
    Finding f =
        finding(kRule, "backing-fit", verdict,
                {verdict == Verdict::Good
                     ? "Through the backing %1 of %2 stay open (%3 %), as much as a round hole of %4."
                     : "The backing chokes the sound hole: %1 of %2 stay open (%3 %), as much as a round "
                       "hole of %4.",
                 {Measure{open.net, Quantity::Area}, Measure{open.freeArea, Quantity::Area}, percent,
                  mm(roundHoleDiameter(open.net))}});
    f.measured = Measure{open.net, Quantity::Area};
    f.required = Measure{kLeastShare * open.freeArea, Quantity::Area};
    f.comfortable = Measure{kFineShare * open.freeArea, Quantity::Area};
    f.places = {{View::Top, bounds(in.layout.backing.outline)}};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    for (std::size_t i = 0; i < in.plan.backingLayers.size(); ++i) {
        const BackingLayer& layer = in.plan.backingLayers[i];
        const std::string key = "backing." + std::to_string(i + 1) + ".";
        if (layer.kind == BackingKind::WireCloth)
            for (const double times : {2.0, 4.0, 8.0}) {
                const double opening = std::ceil(10 * times * layer.opening) / 10;
                out.push_back(
                    oneEdit({"Take cloth with openings of %1", {mm(opening)}}, key + "opening", opening));
            }
        if (layer.kind == BackingKind::Perforated)
            for (const double share : {0.7, 0.8, 0.9}) {
                const double hole = std::floor(10 * share * layer.pitch) / 10;
                if (hole > layer.hole)
                    out.push_back(oneEdit({"Take sheet with holes of %1", {mm(hole)}}, key + "hole", hole));
            }
    }
    if (in.plan.backingLayers.size() > 1)
        out.push_back(oneEdit({"Leave out the last layer", {}}, "backing.count",
                              static_cast<double>(in.plan.backingLayers.size() - 1)));
    return out;
}

}  // namespace

const Check kBackingOpen{
    kRule, "Sound through the backing",
    "open area: ISO 9044 and ISO 7806 by openFraction(); shares: common practice, no source", judge, propose};

}  // namespace lidwright
