#include "core/checks/gravest.h"
#include "core/checks/wiring/device_words.h"
#include "core/checks/wiring/wiring_checks.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "wiring.bush";
/// Thread that must stand out for a washer and a nut (common practice, no source).
constexpr double kLeastThread = 2;
constexpr double kFineThread = 3;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    for (std::size_t i = 0; i < in.plan.wiring.size(); ++i) {
        const Device& d = in.plan.wiring[i];
        const DeviceLayout& placed = in.layout.devices[i];
        const bool threaded = d.kind == DeviceKind::Pot || d.kind == DeviceKind::Socket;
        if (!threaded || d.bush <= 0 || !placed.reaches || d.place == DevicePlace::Neck) continue;
        const double thread = d.bush - placed.through;
        Finding f = atLeast(kRule, placed.part, thread, kLeastThread, kFineThread);
        const std::string name = deviceWords(in.plan, i, "The");
        const std::string place = placeName(d.place);
        if (thread <= 0)
            f.sentence = {"The bush of %1, %2 long, does not come through the %3 of %4.",
                          {name, mm(d.bush), place, mm(placed.through)}};
        else
            f.sentence = {f.verdict == Verdict::Good
                              ? "The bush of %1 comes %2 out of the %3: enough for washer and nut."
                          : f.verdict == Verdict::Tight
                              ? "The bush of %1 comes %2 out of the %3: a thin washer and nut only."
                              : "The bush of %1 comes only %2 out of the %3: the nut does not catch.",
                          {name, mm(thread), place}};
        f.places = {placed.onWall ? Place{wallView(d.place), bounds(placed.face)} : topPlace(placed.face)};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const std::size_t i = memberIndex(f.part);
    const Device& d = in.plan.wiring[i];
    const Layout& l = in.layout;
    const double longer = roundedOut(l.devices[i].through + kFineThread);
    out.push_back(oneEdit({"Take one with a bush of %1", {mm(longer)}}, f.part + ".bush", longer));
    // Where lid or another wall is thin enough.
    const auto thinEnough = [&](double thickness) { return d.bush - thickness >= kLeastThread - kNothing; };
    const double half = d.bodyLength / 2 + 2 * kBenchRoom;
    const Bounds in2 = bounds(l.boxInner);
    if (in2.empty()) return out;
    if (d.place != DevicePlace::Lid && thinEnough(in.plan.lid.thickness)) {
        // Along the side of the lid that is nearest to where it sits now, from tail to head.
        const bool bass =
            d.place == DevicePlace::BassWall ||
            ((d.place == DevicePlace::HeadWall || d.place == DevicePlace::TailWall) && d.along < 0);
        const double aside = bass ? in2.minY + half : in2.maxY - half;
        for (const double share : {0.8, 0.65, 0.5, 0.35, 0.2}) {
            const double along = std::round(in2.minX + share * in2.width());
            out.push_back({{"Set it into the lid, %1 from the head-end wall and %2 from the centre line",
                            {mm(along), mm(std::abs(aside))}},
                           {{f.part + ".place", static_cast<double>(DevicePlace::Lid)},
                            {f.part + ".along", along},
                            {f.part + ".aside", aside}}});
        }
    }
    const bool endWall = d.place == DevicePlace::HeadWall || d.place == DevicePlace::TailWall;
    if (!endWall && d.place != DevicePlace::Lid && thinEnough(in.plan.box.endWall)) {
        const double y = (d.place == DevicePlace::BassWall ? -1 : 1) * in2.height() / 4;
        out.push_back(
            {{"Set it into the tail-end wall, %1 from the centre line", {mm(std::abs(y))}},
             {{f.part + ".place", static_cast<double>(DevicePlace::TailWall)}, {f.part + ".along", y}}});
    }
    if (endWall && thinEnough(in.plan.box.sideWall)) {
        const double x = std::round(in2.minX + (d.place == DevicePlace::HeadWall ? 0.3 : 0.7) * in2.width());
        out.push_back({{"Set it into the side wall, %1 from the head-end wall", {mm(x)}},
                       {{f.part + ".place",
                         static_cast<double>(d.along < 0 ? DevicePlace::BassWall : DevicePlace::TrebleWall)},
                        {f.part + ".along", x}}});
    }
    return out;
}

}  // namespace

const Check kWiringBush{kRule, "Bush and thickness",
                        "2 mm of thread, 3 mm at ease: common practice, no source", judge, propose};

}  // namespace lidwright
