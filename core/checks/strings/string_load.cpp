#include "core/checks/judging.h"
#include "core/checks/strings/string_checks.h"
#include "core/solvers/string_loads.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "strings.load";

Measure share(double value)
{
    return {value, Quantity::Ratio};
}
Measure force(double newtons)
{
    return {newtons, Quantity::Force};
}

std::string noteOf(const GuitarString& string)
{
    return spoken(Measure{string.pitch, Quantity::Pitch}, {});
}

Finding judgeOne(const GuitarString& string, const PlayedString& tuned, std::size_t index)
{
    const std::string part = "string." + std::to_string(index + 1);
    const Measure number{static_cast<double>(index + 1), Quantity::Count};
    if (!tuned.ok())
        return finding(kRule, part, Verdict::Unknown,
                       {"The tension of string %1 is not known: %2", {number, tuned.problem->text()}});
    const StringLoad& load = tuned.load;
    if (load.verdict == LoadVerdict::Slack) {
        // Below half of what is called slack a string only rattles (common practice, no source).
        const bool useless = load.tension_N < tuned.body.slack_N / 2;
        Finding f = finding(kRule, part, useless ? Verdict::Wrong : Verdict::Tight,
                            {useless ? "String %1, %2, hangs slack: it pulls with only %3."
                                     : "String %1, %2, is slack: it pulls with %3 and may rattle.",
                             {number, noteOf(string), force(load.tension_N)}});
        f.measured = force(load.tension_N);
        f.required = force(tuned.body.slack_N / 2);
        f.comfortable = force(tuned.body.slack_N);
        return f;
    }
    if (!load.share) {
        Finding f = finding(kRule, part, Verdict::Good,
                            {"String %1, %2, pulls with %3; of what it breaks at nothing is published.",
                             {number, noteOf(string), force(load.tension_N)}});
        return f;
    }
    const Verdict verdict = judgeAtMost(*load.share, kWarnLoadShare, kRefuseLoadShare);
    const Measure percent{100 * *load.share, Quantity::Count};
    Finding f = finding(kRule, part, verdict,
                        {verdict == Verdict::Wrong
                             ? "String %1, %2, would break: %3 of pull are %4 % of what it bears at least."
                         : verdict == Verdict::Tight
                             ? "String %1, %2, is tuned high: %3 of pull are %4 % of what it bears at least."
                             : "String %1, %2, pulls with %3, %4 % of what it bears at least.",
                         {number, noteOf(string), force(load.tension_N), percent}});
    f.measured = share(*load.share);
    f.required = share(kRefuseLoadShare);
    f.comfortable = share(kWarnLoadShare);
    f.bound = Bound::AtMost;
    return f;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const auto strings = playedStrings(in.plan, in.layout);
    for (std::size_t i = 0; i < strings.size(); ++i) {
        Finding f = judgeOne(in.plan.stringSet[i], strings[i], i);
        f.places = {topPlace(in.layout.strings[i].first, in.layout.strings[i].second)};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const auto index = memberIndex(f.part);
    const GuitarString& string = in.plan.stringSet[index];
    const PlayedString tuned = playedStrings(in.plan, in.layout)[index];
    if (!tuned.ok()) return out;
    const auto gaugeFor = [&](const std::string& id, double tension) {
        const StringKind* kind = findStringKind(id);
        if (kind == nullptr) return;
        const auto choice = gaugeForTension(*kind, tuned.length, tuned.frequency_Hz, tension);
        if (!choice || (id == string.kind && choice->ordinaryGauge == string.gauge)) return;
        const Measure gauge{choice->ordinaryGauge, Quantity::Gauge};
        Remedy remedy =
            id == string.kind
                ? oneEdit({"Take a gauge of %1: %2 of pull", {gauge, force(choice->ordinaryTension_N)}},
                          f.part + ".gauge", choice->ordinaryGauge)
                : Remedy{{"Take %3 of %1: %2 of pull", {gauge, force(choice->ordinaryTension_N), kind->name}},
                         {{f.part + ".gauge", choice->ordinaryGauge}}};
        if (id != string.kind) {
            const auto& all = stringKinds();
            const auto at =
                std::find_if(all.begin(), all.end(), [&](const StringKind& k) { return k.id == id; });
            remedy.edits.push_back({f.part + ".kind", static_cast<double>(at - all.begin())});
        }
        if (string.core > 0) remedy.edits.push_back({f.part + ".core", 0.0});
        out.push_back(std::move(remedy));
    };
    // About what ordinary sets pull with, string by string: 70 to 130 N (common practice, no source).
    for (const double tension : {90.0, 70.0, 120.0})
        gaugeFor(string.kind, tension);
    for (const char* id : {"plain-steel", "phosphor-bronze"})
        if (id != string.kind) gaugeFor(id, 90);
    // What breaks a plain wire is its pitch, whatever its gauge.
    for (const int down : {1, 2, 3, 5, 7}) {
        const double pitch = string.pitch - down;
        if (tuned.load.verdict != LoadVerdict::Slack && pitch >= 12)
            out.push_back(
                oneEdit({"Tune it down to %1", {Measure{pitch, Quantity::Pitch}}}, f.part + ".pitch", pitch));
    }
    return out;
}

}  // namespace

const Check kStringLoad{
    kRule, "Load of the strings",
    "ASTM A228 strength; limits by the elastic limit, Shigley's Mechanical Engineering Design, 9th edition "
    "(2011), Table 10-5; slack: common practice, no source",
    judge, propose};

}  // namespace lidwright
