#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/json_text.h"
#include "app/exchange/backing_stock_list.h"

#include "core/plan/catalogue.h"

#include <nlohmann/json.hpp>

namespace lidwright {

namespace {

using Json = nlohmann::ordered_json;

constexpr OptionSpec kOptions[] = {{"--json", nullptr, "as JSON, at full precision"}};

/// The quantities of a layer as `--set` takes them, those that its kind uses.
std::vector<std::string> settingsOf(const BackingLayer& layer)
{
    Plan plan;
    plan.backingLayers = {layer};
    std::vector<std::string> all;
    for (const ParameterRef& ref : parametersOf(plan, "backing.1"))
        if (active(plan, ref)) all.push_back(ref.key() + "=" + settingText(*ref.parameter, get(plan, ref)));
    return all;
}

int run(const Arguments& arguments)
{
    const std::vector<StockLayer> all = stockLayers();
    if (arguments.has("--json")) {
        Json json;
        json["stock"] = Json::array();
        for (const StockLayer& stock : all)
            json["stock"].push_back({{"id", stock.id},
                                     {"name", stock.name},
                                     {"openFraction", stock.openFraction},
                                     {"set", settingsOf(stock.layer)},
                                     {"source", stock.source}});
        return finish(print(json), kExitFine);
    }
    std::string out;
    for (const StockLayer& stock : all) {
        out += padded(stock.id, 32) + padded(stock.name, 40) +
               padded(spoken(Measure{std::round(100 * stock.openFraction), Quantity::Count}, {}) + " % open",
                      14) +
               stock.source + "\n";
    }
    return finish(print(out), kExitFine);
}

}  // namespace

constinit const Command kStockCommand{"stock",
                                      "wire cloth and perforated sheet that shops have, with open area",
                                      "[--json]",
                                      "Ordinary sizes to back artwork with, each with its source; any other "
                                      "size can be set. JSON gives what to --set\n"
                                      "after --set backing.count=1.\n"
                                      "Exit code: 0.",
                                      kOptions,
                                      0,
                                      run};

}  // namespace lidwright
