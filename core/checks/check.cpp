#include "core/checks/check.h"

#include "core/checks/artwork/artwork_checks.h"
#include "core/checks/bridge/bridge_checks.h"
#include "core/checks/fretboard/fretboard_checks.h"
#include "core/checks/head/head_checks.h"
#include "core/checks/lid/lid_checks.h"
#include "core/checks/neck/neck_checks.h"
#include "core/checks/relief/relief_checks.h"
#include "core/checks/strings/string_checks.h"
#include "core/checks/supports/support_checks.h"
#include "core/checks/walls/wall_checks.h"
#include "core/checks/wiring/wiring_checks.h"

#include <algorithm>
#include <array>
#include <map>

namespace lidwright {
namespace {

constexpr std::size_t kMostRemedies = 4;

int gravity(Verdict v)
{
    return static_cast<int>(v);
}

std::string identity(const Finding& f)
{
    return f.rule + "|" + f.part;
}

std::map<std::string, Verdict> verdicts(const std::vector<Finding>& findings)
{
    std::map<std::string, Verdict> out;
    for (const Finding& f : findings) {
        const auto [it, fresh] = out.try_emplace(identity(f), f.verdict);
        if (!fresh && gravity(f.verdict) > gravity(it->second)) it->second = f.verdict;
    }
    return out;
}

/// Better for the finding itself, and nothing else worse than it was.
bool proves(const Finding& finding, const std::map<std::string, Verdict>& before,
            const std::vector<Finding>& after)
{
    const std::map<std::string, Verdict> now = verdicts(after);
    const auto own = now.find(identity(finding));
    if (own != now.end()) {
        const bool mended = own->second == Verdict::Good ||
                            (finding.verdict == Verdict::Wrong && own->second == Verdict::Tight);
        if (!mended) return false;
    }
    return std::all_of(now.begin(), now.end(), [&](const auto& entry) {
        const auto old = before.find(entry.first);
        const int was = old == before.end() ? gravity(Verdict::Tight) : gravity(old->second);
        return gravity(entry.second) <= was || entry.second == Verdict::Unknown;
    });
}

/// The maker's reason for living with the finding; empty without one.
std::string reasonFor(const Plan& plan, const Finding& f)
{
    for (const Acceptance& accepted : plan.accepted)
        if (isMeant(accepted, f)) return accepted.reason.empty() ? "accepted" : accepted.reason;
    return {};
}

const Check* checkOf(const std::string& rule)
{
    const auto all = allChecks();
    const auto it = std::find_if(all.begin(), all.end(), [&](const Check* c) { return rule == c->id; });
    return it == all.end() ? nullptr : *it;
}

std::vector<Remedy> proven(const CheckInput& in, const Finding& finding,
                           const std::map<std::string, Verdict>& before, PlacedArtCache* cache)
{
    std::vector<Remedy> kept;
    const Check* check = checkOf(finding.rule);
    if (check == nullptr || check->propose == nullptr) return kept;
    if (finding.verdict != Verdict::Wrong && finding.verdict != Verdict::Tight) return kept;
    std::vector<std::vector<Edit>> seen;
    for (Remedy& remedy : check->propose(in, finding)) {
        if (kept.size() == kMostRemedies) break;
        if (remedy.edits.empty() || std::find(seen.begin(), seen.end(), remedy.edits) != seen.end()) continue;
        seen.push_back(remedy.edits);
        const auto next = applyEdits(in.plan, remedy.edits);
        if (!next || *next == in.plan) continue;
        const Layout layout = derive(*next, cache);
        if (proves(finding, before, lidwright::check(*next, layout))) kept.push_back(std::move(remedy));
    }
    return kept;
}

}  // namespace

std::string acceptanceName(const Finding& finding)
{
    return finding.rule + " " + finding.part;
}

bool isMeant(const Acceptance& accepted, const Finding& finding)
{
    return accepted.finding == finding.rule || accepted.finding == acceptanceName(finding);
}

const char* word(Verdict verdict)
{
    switch (verdict) {
        case Verdict::Good:
            return "good";
        case Verdict::Tight:
            return "tight";
        case Verdict::Unknown:
            return "unknown";
        case Verdict::Wrong:
            return "wrong";
    }
    return "";
}

const char* word(Bound bound)
{
    switch (bound) {
        case Bound::AtLeast:
            return "at least";
        case Bound::AtMost:
            return "at most";
        case Bound::Exactly:
            return "exactly";
    }
    return "";
}

std::span<const Check* const> allChecks()
{
    static const std::array kAll{
        &kBridgeArt,     &kBridgeSeat,     &kBridgeAdjust,    &kSaddleScale,      &kNeckBlank,
        &kNeckWidth,     &kFretboardBlank, &kFretboardOffcut, &kFretboardOverLid, &kFretboardArt,
        &kFretsNotes,    &kFretsSlot,      &kFretsTang,       &kFretsBoardEnd,    &kFretsBoxEdge,
        &kFretsMarking,  &kNeckCrosses,    &kOpeningWidth,    &kOpeningHeight,    &kOpeningUnder,
        &kOpeningBeside, &kOpeningStrip,   &kNeckBlocks,      &kReliefAir,        &kReliefPad,
        &kReliefLand,    &kReliefLeft,     &kReliefWalls,     &kReliefTouch,      &kOpeningsLineUp,
        &kHeadStep,      &kHeadHoles,      &kHeadPlates,      &kHeadPost,         &kHeadBreak,
        &kHeadSplay,     &kHeadStrings,    &kArtField,        &kLidMaterial,      &kArtThin,
        &kArtDropOuts,   &kArtTies,        &kLidFixings,      &kLidScrews,        &kBarsArt,
        &kBarsGlue,      &kInsideClash,    &kArtKerf,         &kBackingFit,       &kBackingOpen,
        &kArtOverNeck,   &kStringPath,     &kStringLoad,      &kStringIntonation, &kStringAction,
        &kStringClear,   &kStringBreak,    &kNeckBow,         &kNeckStrength,     &kNeckBalance,
        &kLidSag,        &kLidCrack,       &kLidMoves,        &kWiringWall,       &kWiringBush,
        &kWiringClear,   &kWiringStick,    &kFittingsStrap,   &kFittingsFeet};
    return kAll;
}

std::vector<Finding> check(const Plan& plan, const Layout& layout)
{
    std::vector<Finding> all;
    const CheckInput in{plan, layout};
    for (const Check* c : allChecks())
        c->judge(in, all);
    for (Finding& f : all)
        if (f.verdict != Verdict::Good) f.accepted = reasonFor(plan, f);
    std::stable_sort(all.begin(), all.end(), [](const Finding& a, const Finding& b) {
        return gravity(a.verdict) > gravity(b.verdict);
    });
    return all;
}

std::vector<Remedy> provenRemedies(const Plan& plan, const Finding& finding, PlacedArtCache* cache)
{
    const Layout layout = derive(plan, cache);
    return proven({plan, layout}, finding, verdicts(check(plan, layout)), cache);
}

std::vector<Finding> checkWithRemedies(const Plan& plan, PlacedArtCache* cache)
{
    PlacedArtCache own;
    if (cache == nullptr) cache = &own;
    const Layout layout = derive(plan, cache);
    std::vector<Finding> all = check(plan, layout);
    const auto before = verdicts(all);
    for (Finding& f : all)
        f.remedies = proven({plan, layout}, f, before, cache);
    return all;
}

}  // namespace lidwright
