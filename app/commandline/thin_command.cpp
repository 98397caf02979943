#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/plan_input.h"
#include "app/commandline/thin_json.h"

#include "core/base/sentence.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <utility>

namespace lidwright {

namespace {

using Json = nlohmann::ordered_json;

constexpr OptionSpec kOptions[] = {
    kSetOption,
    kArtOption,
    {"--json", nullptr, "as JSON, at full precision"},
    {"--csv", nullptr, "as a table with a head line"},
};

Json rowJson(const ThinRow& row)
{
    Json json;
    if (row.number > 0) json["number"] = row.number;
    json["drawing"] = row.drawing;
    json["at"] = {row.at.x, row.at.y};
    json["unit"] = "mm";
    json["width"] = row.width;
    if (row.left) json["onceCut"] = *row.left;
    json["run"] = row.run;
    json["direction"] = row.direction;
    json["directionUnit"] = "deg";
    json["outlines"] = {row.outlineA + 1, row.outlineB + 1};
    if (row.kind == "tongue" || row.kind == "drop-out")
        json["loose"] = {{"value", row.freed}, {"unit", "mm2"}};
    if (row.factorOfSafety) {
        json["angleToGrain"] = row.grainAngle;
        json["backed"] = row.backed;
        json["breaksAt"] = {{"value", *row.breaksAt_N}, {"unit", "N"}};
        json["factorOfSafety"] = *row.factorOfSafety;
    }
    json["verdict"] = word(row.verdict);
    return json;
}

std::string textOf(const ThinList& list, const UnitStyle& style)
{
    const auto length = [&](double value) { return spoken(Measure{value, Quantity::Length}, style); };
    std::string out;
    for (const ThinRow& row : list.rows) {
        out += padded(row.number > 0 ? std::to_string(row.number) : std::string(), 5) +
               padded(word(row.verdict), 8) + padded(row.kind, 14) + padded(length(row.width) + " wide", 18) +
               padded(length(row.run) + " long", 18);
        if (row.factorOfSafety)
            out += padded(spoken(Measure{row.grainAngle, Quantity::Angle}, style) + " to the grain", 22) +
                   padded("breaks at " + spoken(Measure{*row.breaksAt_N, Quantity::Force}, style), 22);
        else if (row.kind == "drop-out")
            out += padded(spoken(Measure{row.freed, Quantity::Area}, style) + " falls out", 44);
        out += row.drawing + "\n";
    }
    if (list.rows.empty()) out = "no wood is thinner than " + length(list.searchedTo) + "\n";
    return out;
}

int run(const Arguments& arguments)
{
    const Result<PlanInput> input = readPlanInput(arguments);
    if (!input) return refuse(input.error());
    const ThinList list = thinList(input->plan, derive(input->plan));
    if (list.problem) return refuse(*list.problem);
    const bool wrong = std::any_of(list.rows.begin(), list.rows.end(),
                                   [](const ThinRow& row) { return row.verdict == Verdict::Wrong; });
    bool printed = false;
    if (arguments.has("--json")) {
        Json json;
        json["plan"] = input->name;
        json["searchedTo"] = {{"value", list.searchedTo}, {"unit", "mm"}};
        json.update(thinJson(list));
        printed = print(json);
    } else if (arguments.has("--csv")) {
        printed = print(thinCsv(list));
    } else {
        printed = print(textOf(list, unitStyle(input->plan)));
    }
    return finish(printed, wrong ? kExitPlanWrong : kExitFine);
}

}  // namespace

nlohmann::ordered_json thinJson(const ThinList& list)
{
    Json json;
    for (const auto& [kind, name] :
         {std::pair{"web", "webs"}, std::pair{"tongue", "tongues"}, std::pair{"drop-out", "dropOuts"},
          std::pair{"kerf-closing", "kerfClosings"}}) {
        json[name] = Json::array();
        for (const ThinRow& row : list.rows)
            if (row.kind == kind) json[name].push_back(rowJson(row));
    }
    return json;
}

constinit const Command kThinCommand{
    "thin",
    "where the lid's wood is thin between its cuts, and what it bears",
    "[PLAN] [--set KEY=VALUE]... [--art FILE.svg]... [--json|--csv]",
    "Webs, tongues and pieces that fall out, the weakest first, with width, length, direction, angle to the "
    "grain "
    "and\n"
    "the press of a finger that breaks them; then the parts of the cuts that the kerf closes. What is asked "
    "for is\n"
    "set by cutter.least-web, cutter.press and cutter.safety, the wood by lid.material, lid.thickness and "
    "lid.grain.\n"
    "Strength is that of a beam of clear wood in a stiff surround: an estimate, to choose by, not to rely "
    "on.\n"
    "Exit code: 0 nothing too weak, 1 something is, 2 the input cannot be used.",
    kOptions,
    1,
    run};

}  // namespace lidwright
