#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/json_text.h"
#include "app/commandline/plan_input.h"

#include "core/checks/check.h"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace lidwright {

namespace {

using Json = nlohmann::ordered_json;

constexpr OptionSpec kOptions[] = {
    kSetOption,
    kArtOption,
    {"--json", nullptr, "as JSON, lengths in mm at full precision"},
};

/// As JSON and command names the views.
const char* viewName(View view)
{
    switch (view) {
        case View::Top:
            return "top";
        case View::Under:
            return "under";
        case View::Section:
            return "side";
        case View::HeadEnd:
            return "head-end";
        case View::TailEnd:
            break;
    }
    return "tail-end";
}

Json editJson(const Plan& plan, const Edit& edit)
{
    Json json;
    json["key"] = edit.key;
    // An edit may name a member of a list that an edit before it makes; then there is no row to ask.
    if (const Result<ParameterRef> ref = findParameter(plan, edit.key)) {
        json["value"] = toJson(*ref->parameter, edit.value);
        if (const auto unit = unitName(ref->parameter->quantity); !unit.empty()) json["unit"] = unit;
        json["set"] = edit.key + "=" + settingText(*ref->parameter, edit.value);
    } else if (const auto* number = std::get_if<double>(&edit.value)) {
        json["value"] = *number;
    } else {
        json["value"] = std::get<std::string>(edit.value);
    }
    return json;
}

Json findingJson(const Plan& plan, const Finding& finding, const UnitStyle& style)
{
    Json json;
    json["rule"] = finding.rule;
    json["part"] = finding.part;
    json["verdict"] = word(finding.verdict);
    json["sentence"] = spoken(finding.sentence, style);
    json["measured"] = finding.measured ? toJson(*finding.measured) : Json();
    json["required"] = finding.required ? toJson(*finding.required) : Json();
    json["comfortable"] = finding.comfortable ? toJson(*finding.comfortable) : Json();
    json["bound"] = finding.required ? Json(word(finding.bound)) : Json();
    if (!finding.accepted.empty()) json["accepted"] = finding.accepted;
    json["places"] = Json::array();
    for (const Place& place : finding.places) {
        json["places"].push_back({{"view", viewName(place.view)},
                                  {"unit", "mm"},
                                  {"from", {place.box.minX, place.box.minY}},
                                  {"to", {place.box.maxX, place.box.maxY}}});
    }
    json["remedies"] = Json::array();
    for (const Remedy& remedy : finding.remedies) {
        Json edits = Json::array();
        for (const Edit& edit : remedy.edits)
            edits.push_back(editJson(plan, edit));
        json["remedies"].push_back({{"label", spoken(remedy.label, style)}, {"edits", edits}});
    }
    return json;
}

std::size_t countOf(const std::vector<Finding>& findings, Verdict verdict)
{
    return static_cast<std::size_t>(std::count_if(findings.begin(), findings.end(),
                                                  [&](const Finding& f) { return f.verdict == verdict; }));
}

constexpr Verdict kGravestFirst[] = {Verdict::Wrong, Verdict::Unknown, Verdict::Tight, Verdict::Good};

bool printJson(const PlanInput& input, const std::vector<Finding>& findings)
{
    Json json;
    json["plan"] = input.name;
    for (const Verdict verdict : kGravestFirst)
        json["counts"][word(verdict)] = countOf(findings, verdict);
    json["findings"] = Json::array();
    for (const Finding& finding : findings)
        json["findings"].push_back(findingJson(input.plan, finding, unitStyle(input.plan)));
    return print(json);
}

bool printText(const PlanInput& input, const std::vector<Finding>& findings)
{
    const UnitStyle style = unitStyle(input.plan);
    std::string out;
    for (const Finding& finding : findings) {
        out += padded(word(finding.verdict), 8) + padded(finding.rule, 22) + spoken(finding.sentence, style) +
               "\n";
        for (const Remedy& remedy : finding.remedies) {
            out += std::string(30, ' ') + "remedy: " + spoken(remedy.label, style) + "\n";
            for (const Edit& edit : remedy.edits) {
                const Json json = editJson(input.plan, edit);
                if (json.contains("set"))
                    out += std::string(38, ' ') + "--set '" + json["set"].get<std::string>() + "'\n";
            }
        }
    }
    out += input.name + ":";
    for (const Verdict verdict : kGravestFirst)
        out += (verdict == kGravestFirst[0] ? " " : ", ") + std::to_string(countOf(findings, verdict)) + " " +
               word(verdict);
    return print(out + "\n");
}

int run(const Arguments& arguments)
{
    const Result<PlanInput> input = readPlanInput(arguments);
    if (!input) return refuse(input.error());
    const std::vector<Finding> findings = checkWithRemedies(input->plan);
    const bool printed = arguments.has("--json") ? printJson(*input, findings) : printText(*input, findings);
    return finish(printed, countOf(findings, Verdict::Wrong) > 0 ? kExitPlanWrong : kExitFine);
}

}  // namespace

constinit const Command kFindingsCommand{
    "findings",
    "what is good, tight, wrong or unknown about a plan, and the remedies",
    "[PLAN] [--set KEY=VALUE]... [--art FILE.svg]... [--json]",
    "Checks the plan by every rule, the gravest finding first. Remedies are proven: after one of them the\n"
    "finding is better and nothing else is worse.\n"
    "Exit code: 0 nothing is wrong, 1 something is wrong, 2 the input cannot be used.",
    kOptions,
    1,
    run};

}  // namespace lidwright
