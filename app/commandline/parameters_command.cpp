#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/json_text.h"

#include "core/base/length_text.h"
#include "core/plan/catalogue.h"

#include <nlohmann/json.hpp>

#include <string_view>

namespace lidwright {

namespace {

using Json = nlohmann::ordered_json;

constexpr OptionSpec kOptions[] = {
    {"--json", nullptr, "as JSON"},
    {"--markdown", nullptr, "as a page of reference"},
};

bool customary(const Parameter& p)
{
    return p.customaryLeast != 0 || p.customaryMost != 0;
}

std::string_view partOf(const Parameter& p)
{
    const std::string_view key = p.key;
    return key.substr(0, key.find('.'));
}

bool hasRange(const Parameter& p)
{
    return p.quantity != Quantity::Choice && p.quantity != Quantity::Flag && !p.isText();
}

/// "2 to 6 mm" in the inside unit.
std::string rangeText(const Parameter& p, double least, double most)
{
    std::string text = exactNumber(least) + " to " + exactNumber(most);
    if (const auto unit = unitName(p.quantity); !unit.empty()) text.append(" ").append(unit);
    return text;
}

std::string defaultText(const Parameter& p)
{
    const std::string text = settingText(p, defaultValue(p));
    return p.quantity == Quantity::Angle ? text + " deg" : text;
}

Json rowJson(const Parameter& p)
{
    Json row;
    row["key"] = p.key;
    row["label"] = p.label;
    row["kind"] = kindName(p.quantity);
    row["unit"] = !unitName(p.quantity).empty() ? Json(unitName(p.quantity)) : Json();
    row["default"] = toJson(p, defaultValue(p));
    if (hasRange(p)) {
        row["least"] = p.least;
        row["most"] = p.most;
    } else if (p.isText()) {
        row["mostBytes"] = p.most;
    }
    if (customary(p))
        row["customary"] = {{"least", p.customaryLeast}, {"most", p.customaryMost}, {"source", p.source}};
    row["help"] = p.help;
    if (!p.choices.empty()) {
        row["choices"] = Json::array();
        for (const ChoiceWord& choice : p.choices)
            row["choices"].push_back({{"word", choice.word}, {"label", choice.label}});
    }
    return row;
}

bool printJson()
{
    Json json;
    json["parameters"] = Json::array();
    for (const Parameter& p : catalogue())
        json["parameters"].push_back(rowJson(p));
    return print(json);
}

bool printText()
{
    std::string out;
    for (const Parameter& p : catalogue()) {
        out += padded(p.key, 30) + padded(defaultText(p), 24) + p.label;
        if (hasRange(p)) out += " (" + rangeText(p, p.least, p.most) + ")";
        for (const ChoiceWord& choice : p.choices)
            out += (&choice == p.choices.data() ? " (" : ", ") + std::string(choice.word);
        if (!p.choices.empty()) out += ")";
        out += std::string("\n") + std::string(30, ' ') + p.help + "\n";
    }
    return print(out);
}

/// A table cell: no bar may end it, no line break may end the row.
std::string cell(std::string_view text)
{
    std::string out;
    for (const char c : text) {
        if (c == '|') out += '\\';
        out += c == '\n' ? ' ' : c;
    }
    return out;
}

std::string valuesCell(const Parameter& p)
{
    if (p.quantity == Quantity::Flag) return "yes, no";
    if (p.isText()) return "text, at most " + exactNumber(p.most) + " bytes";
    if (p.choices.empty()) return rangeText(p, p.least, p.most);
    std::string words;
    for (const ChoiceWord& choice : p.choices)
        words += (words.empty() ? "" : "; ") + std::string("`") + choice.word + "` (" + choice.label + ")";
    return words;
}

bool printMarkdown()
{
    std::string out =
        "# Every quantity of a plan\n\n"
        "Keys are those of the plan file and of `--set KEY=VALUE`. Where `#` stands, the number of the "
        "member\n"
        "stands: `art.1.x`, `art.2.x`. Lengths are in mm inside; what is typed may be in any unit. Values "
        "outside\n"
        "the range are refused; the customary range only warns.\n";
    for (const PartInfo& part : parts()) {
        out += std::string("\n## ") + part.label + "\n\n" +
               "| key | what | default | range or words | customary | help |\n" +
               "| --- | --- | --- | --- | --- | --- |\n";
        for (const Parameter& p : catalogue()) {
            if (partOf(p) != part.key) continue;
            const std::string usual =
                customary(p) ? rangeText(p, p.customaryLeast, p.customaryMost) + " (" + p.source + ")" : "";
            out += std::string("| `") + p.key + "` | " + cell(p.label) + " | " + cell(defaultText(p)) +
                   " | " + cell(valuesCell(p)) + " | " + cell(usual) + " | " + cell(p.help) + " |\n";
        }
    }
    return print(out);
}

int run(const Arguments& arguments)
{
    const bool printed = arguments.has("--json")       ? printJson()
                         : arguments.has("--markdown") ? printMarkdown()
                                                       : printText();
    return finish(printed, kExitFine);
}

}  // namespace

constinit const Command kParametersCommand{
    "parameters",
    "every quantity that a plan can carry",
    "[--json | --markdown]",
    "The catalogue: key, label, kind, unit, default, ranges and what the quantity means.",
    kOptions,
    0,
    run};

}  // namespace lidwright
