#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/json_text.h"
#include "app/commandline/plan_input.h"

#include "core/solvers/playing_values.h"

#include <nlohmann/json.hpp>

namespace lidwright {

namespace {

using Json = nlohmann::ordered_json;

constexpr OptionSpec kOptions[] = {
    kSetOption,
    kArtOption,
    {"--json", nullptr, "as JSON, at full precision"},
};

int run(const Arguments& arguments)
{
    const Result<PlanInput> input = readPlanInput(arguments);
    if (!input) return refuse(input.error());
    const std::vector<DerivedValue> all = allValues(input->plan, derive(input->plan));
    if (arguments.has("--json")) {
        Json json;
        json["plan"] = input->name;
        json["values"] = Json::array();
        for (const DerivedValue& value : all) {
            Json row{{"key", value.key}, {"label", value.label}};
            row.update(toJson(value.measure));
            json["values"].push_back(row);
        }
        return finish(print(json), kExitFine);
    }
    std::string out;
    for (const DerivedValue& value : all)
        out += padded(value.key, 34) + padded(spoken(value.measure, unitStyle(input->plan)), 18) +
               value.label + "\n";
    return finish(print(out), kExitFine);
}

}  // namespace

constinit const Command kValuesCommand{"values",
                                       "every quantity that follows from a plan",
                                       "[PLAN] [--set KEY=VALUE]... [--art FILE.svg]... [--json]",
                                       "Every derived quantity under its stable key: where nut and saddle "
                                       "stand, what is left of the blanks, areas,\n"
                                       "heights. The text is in the plan's unit, rounded (marked with the "
                                       "sign for \"about\"); JSON is in the units\n"
                                       "that it names, at full precision.\n"
                                       "Exit code: 0, or 2 when the input cannot be used.",
                                       kOptions,
                                       1,
                                       run};

}  // namespace lidwright
