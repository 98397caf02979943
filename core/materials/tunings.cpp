#include "core/materials/tunings.h"

#include "core/materials/material_tables.h"
#include "core/materials/string_kind.h"
#include "core/materials/table_reader.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace lidwright {
namespace {

/// The words of a cell, nothing of "none".
std::vector<std::string> wordsOf(std::string_view cell)
{
    std::vector<std::string> words;
    while (!cell.empty()) {
        const std::size_t end = std::min(cell.find(' '), cell.size());
        if (end > 0) words.emplace_back(cell.substr(0, end));
        cell.remove_prefix(std::min(end + 1, cell.size()));
    }
    if (words == std::vector<std::string>{"none"}) words.clear();
    return words;
}

std::optional<double> numberIn(const std::string& word)
{
    double value = 0;
    const auto [end, code] = std::from_chars(word.data(), word.data() + word.size(), value);
    const bool whole = code == std::errc() && end == word.data() + word.size() && std::isfinite(value);
    return whole ? std::optional(value) : std::nullopt;
}

void addGauge(RowReader& row, TunedString& string, const std::string& gauge, const std::string& id)
{
    const StringKind* kind = findStringKind(id);
    if (!kind) {
        row.refuse("kinds", "\"" + id + "\" is no kind of string", "name one of string_kinds.csv");
        return;
    }
    const std::optional<double> gauge_in = numberIn(gauge);
    if (!gauge_in) {
        row.refuse("gauges_in", "\"" + gauge + "\" is no number", "write it as 0.012");
        return;
    }
    const Result<StringBody> body = stringBody(*kind, *gauge_in * kMillimetresPerInch);
    if (!body) row.refuse("gauges_in", body.error().what, body.error().mend);
    string.gauge_in = gauge_in;
    string.kind = id;
}

Tuning tuningOf(RowReader& row)
{
    Tuning tuning;
    tuning.id = row.id("id");
    tuning.name = row.text("name");
    const std::vector<std::string> pitches = wordsOf(row.text("pitches"));
    const std::vector<std::string> gauges = wordsOf(row.text("gauges_in"));
    const std::vector<std::string> kinds = wordsOf(row.text("kinds"));
    tuning.source = row.text("source");
    tuning.gaugeSource = row.text("gauge_source");
    if (tuning.gaugeSource == "none") tuning.gaugeSource.clear();
    if (pitches.empty() || pitches.size() > kMostTunedStrings)
        row.refuse("pitches", "there are no strings or too many",
                   "give 1 to " + std::to_string(kMostTunedStrings));
    if (!gauges.empty() && gauges.size() != pitches.size())
        row.refuse("gauges_in", "there are not as many gauges as pitches", "give one for each, or none");
    if (kinds.size() != gauges.size())
        row.refuse("kinds", "there are not as many kinds as gauges", "give one for each gauge");
    if (gauges.empty() != tuning.gaugeSource.empty())
        row.refuse("gauge_source", "gauges and their source do not go together", "give both or neither");
    if (row.error()) return tuning;
    for (std::size_t i = 0; i < pitches.size(); ++i) {
        const Result<Pitch> pitch = parsePitch(pitches[i]);
        if (!pitch) {
            row.refuse("pitches", "\"" + pitches[i] + "\": " + pitch.error().what, pitch.error().mend);
            return tuning;
        }
        TunedString string{*pitch, std::nullopt, {}};
        if (pitch->cents != 0) row.refuse("pitches", "a tuning has no cents", "name the note");
        if (!gauges.empty()) addGauge(row, string, gauges[i], kinds[i]);
        tuning.strings.push_back(std::move(string));
    }
    return tuning;
}

}  // namespace

Result<std::vector<Tuning>> readTunings(std::string_view text)
{
    const Result<Table> table = Table::read(
        text, "tunings.csv", {"id", "name", "pitches", "gauges_in", "kinds", "source", "gauge_source"});
    return readEntries<Tuning>(table, tuningOf);
}

const std::vector<Tuning>& tunings()
{
    static const std::vector<Tuning> list = [] {
        Result<std::vector<Tuning>> read = readTunings(tuningsTable());
        return read ? std::move(read).value() : std::vector<Tuning>{};
    }();
    return list;
}

const Tuning* findTuning(std::string_view id)
{
    const auto at =
        std::find_if(tunings().begin(), tunings().end(), [&](const Tuning& t) { return t.id == id; });
    return at == tunings().end() ? nullptr : &*at;
}

}  // namespace lidwright
