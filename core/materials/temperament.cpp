#include "core/materials/temperament.h"

#include "core/base/near_word.h"
#include "core/materials/material_tables.h"
#include "core/materials/table_reader.h"

#include <algorithm>
#include <charconv>

namespace lidwright {
namespace {

constexpr std::string_view kEqual = "equal-";
constexpr int kPatternNotes = 12;  // of the octaves that patterns are made for

std::vector<std::string> words(const std::string& text)
{
    std::vector<std::string> found;
    std::size_t at = 0;
    while ((at = text.find_first_not_of(' ', at)) != std::string_view::npos) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        found.push_back(text.substr(at, end - at));
        at = end;
    }
    return found;
}

/// A whole number of at most four digits and nothing else.
std::optional<int> wholeNumber(std::string_view s)
{
    int value = 0;
    if (s.empty() || s.size() > 4 || s.find_first_not_of("0123456789") != std::string_view::npos)
        return std::nullopt;
    std::from_chars(s.data(), s.data() + s.size(), value);
    return value;
}

/// "6+" is {6, "+"}.
struct Label {
    int number = 0;
    std::string_view sign;
};

std::optional<Label> labelOf(std::string_view s)
{
    Label label;
    if (!s.empty() && s.back() == '+') label.sign = s.substr(s.size() - 1);
    const auto number = wholeNumber(s.substr(0, s.size() - label.sign.size()));
    if (!number || *number < 1) return std::nullopt;
    label.number = *number;
    return label;
}

/// What is wrong with a pattern, or nothing.
std::optional<std::string> patternFault(const FretPattern& pattern)
{
    if (pattern.notes.empty() || pattern.notes.size() != pattern.labels.size())
        return "there is not one label for each note";
    int before = 0;
    for (int note : pattern.notes) {
        if (note <= before || note > kPatternNotes) return "the notes do not rise from 1 to 12";
        before = note;
    }
    if (before != kPatternNotes) return "the last note is not 12, the octave";
    Label below;
    for (const std::string& text : pattern.labels) {
        const std::optional<Label> label = labelOf(text);
        if (!label) return "\"" + text + "\" is no label such as 6 or 6+";
        const bool rises = label->number > below.number ||
                           (label->number == below.number && label->sign.size() > below.sign.size());
        if (!rises) return "the label " + text + " does not come after the one before";
        below = *label;
    }
    if (pattern.labels.back().back() == '+') return "the octave's label has a +";
    return std::nullopt;
}

std::optional<Error> notesFault(const Temperament& temperament, int count)
{
    if (count < 0 || count > kMostFrets)
        return Error{"the number of frets is out of range", "frets",
                     "ask for 0 to " + std::to_string(kMostFrets)};
    double before = 1;
    for (double ratio : temperament.ratios) {
        if (!(ratio > before) || !std::isfinite(ratio))
            return Error{"the notes do not rise from the open string", temperament.id,
                         "give ratios above 1 in rising order"};
        before = ratio;
    }
    if (temperament.ratios.empty())
        return Error{"the temperament has no notes", temperament.id, "give at least one"};
    return std::nullopt;
}

/// Note number n, counted from 1, in whatever octave; infinite beyond a list that does not repeat.
double noteRatio(const Temperament& temperament, int n)
{
    const int notes = static_cast<int>(temperament.ratios.size());
    if (n > notes && !temperament.repeats) return HUGE_VAL;
    const double octave = temperament.ratios.back();
    double ratio = temperament.ratios[static_cast<std::size_t>((n - 1) % notes)];
    // Multiplied and not raised to a power: exact where the period is 2.
    for (int k = 0; k < (n - 1) / notes; ++k)
        ratio *= octave;
    return ratio;
}

/// The frets whose notes `noteOf(k)` numbers, k counted from 0.
template <typename NoteOf, typename LabelOf>
Result<std::vector<FretNote>> frets(const Temperament& temperament, int count, NoteOf noteOf, LabelOf label)
{
    if (const auto fault = notesFault(temperament, count)) return *fault;
    std::vector<FretNote> found;
    for (int k = 0; k < count; ++k) {
        const double ratio = noteRatio(temperament, noteOf(k));
        if (std::isinf(ratio))
            return Error{
                "the list has " + std::to_string(k) + " frets and " + std::to_string(count) + " are wanted",
                temperament.id, "ask for fewer frets or add notes to the list"};
        if (ratio > kHighestFret)
            return Error{"fret " + label(k) + " lies more than six octaves up", temperament.id,
                         "ask for at most " + std::to_string(k) + " frets"};
        found.push_back({label(k), ratio});
    }
    return found;
}

}  // namespace

Result<Temperament> equalTemperament(int divisions)
{
    if (divisions < 1 || divisions > kMostDivisions)
        return Error{"an octave in " + std::to_string(divisions) + " equal steps is out of range",
                     "equal temperament", "give 1 to " + std::to_string(kMostDivisions) + " steps"};
    Temperament equal;
    equal.id = std::string(kEqual) + std::to_string(divisions);
    equal.name = divisions == 1 ? "octaves" : std::to_string(divisions) + " equal steps of the octave";
    for (int k = 1; k <= divisions; ++k)
        equal.ratios.push_back(std::exp2(static_cast<double>(k) / divisions));
    equal.source = "2^(k/n) by definition";
    return equal;
}

const std::vector<Temperament>& temperaments()
{
    static const std::vector<Temperament> list = [] {
        Result<std::vector<Temperament>> read = readTemperaments(temperamentsTable());
        return read ? std::move(read).value() : std::vector<Temperament>{};
    }();
    return list;
}

Result<Temperament> findTemperament(std::string_view id)
{
    for (const Temperament& known : temperaments())
        if (known.id == id) return known;
    if (id.substr(0, kEqual.size()) == kEqual)
        if (const auto divisions = wholeNumber(id.substr(kEqual.size())); divisions)
            return equalTemperament(*divisions);
    std::vector<std::string> ids{"equal-12"};
    for (const Temperament& known : temperaments())
        ids.push_back(known.id);
    std::string nearest = nearestWord(id.substr(0, 100), ids);
    if (nearest.empty()) {
        for (const std::string& known : ids)
            nearest += (nearest.empty() ? "one of " : ", ") + known;
    }
    return Error{"there is no such temperament", "temperament", "write " + nearest};
}

const std::vector<FretPattern>& fretPatterns()
{
    static const std::vector<FretPattern> list = [] {
        Result<std::vector<FretPattern>> read = readFretPatterns(fretPatternsTable());
        return read ? std::move(read).value() : std::vector<FretPattern>{};
    }();
    return list;
}

const FretPattern* findFretPattern(std::string_view id)
{
    const auto at = std::find_if(fretPatterns().begin(), fretPatterns().end(),
                                 [&](const FretPattern& pattern) { return pattern.id == id; });
    return at == fretPatterns().end() ? nullptr : &*at;
}

Result<std::vector<FretNote>> fretNotes(const Temperament& temperament, int count)
{
    return frets(
        temperament, count, [](int k) { return k + 1; }, [](int k) { return std::to_string(k + 1); });
}

Result<std::vector<FretNote>> fretNotes(const Temperament& temperament, const FretPattern& pattern, int count)
{
    if (const auto fault = patternFault(pattern))
        return Error{*fault, pattern.id, "give notes 1 to 12 and a label for each"};
    if (pattern.whole()) return fretNotes(temperament, count);
    if (temperament.ratios.size() != kPatternNotes || !temperament.repeats)
        return Error{"the pattern " + pattern.name + " keeps some of twelve notes, and " + temperament.name +
                         " has not twelve to the octave",
                     pattern.id, "take a temperament of twelve notes or a fret for every note"};
    const int size = static_cast<int>(pattern.notes.size());
    const int octaveLabel = labelOf(pattern.labels.back())->number;
    const auto in = [size](int k) { return static_cast<std::size_t>(k % size); };
    return frets(
        temperament, count, [&](int k) { return pattern.notes[in(k)] + kPatternNotes * (k / size); },
        [&](int k) {
            const Label label = *labelOf(pattern.labels[in(k)]);
            return std::to_string(label.number + octaveLabel * (k / size)) + std::string(label.sign);
        });
}

Result<std::vector<Temperament>> readTemperaments(std::string_view text)
{
    const Result<Table> table = Table::read(text, "temperaments.csv", {"id", "name", "ratios", "source"});
    return readEntries<Temperament>(table, [](RowReader& row) {
        Temperament temperament;
        const Result<Temperament> list = readNoteList(row.text("ratios"));
        if (list)
            temperament.ratios = list->ratios;
        else
            row.refuse("ratios", list.error().where + ": " + list.error().what, list.error().mend);
        temperament.id = row.id("id");
        temperament.name = row.text("name");
        temperament.source = row.text("source");
        if (list && list->ratios.back() != 2)
            row.refuse("ratios", "the last note is not the octave", "end with 2/1");
        return temperament;
    });
}

Result<std::vector<FretPattern>> readFretPatterns(std::string_view text)
{
    const Result<Table> table =
        Table::read(text, "fret_patterns.csv", {"id", "name", "labels", "notes", "source"});
    return readEntries<FretPattern>(table, [](RowReader& row) {
        FretPattern pattern;
        pattern.id = row.id("id");
        pattern.name = row.text("name");
        pattern.labels = words(row.text("labels"));
        for (const std::string& note : words(row.text("notes")))
            pattern.notes.push_back(wholeNumber(note).value_or(0));
        if (const auto fault = patternFault(pattern))
            row.refuse("notes", *fault, "give notes 1 to 12, the last 12, and a label for each");
        pattern.source = row.text("source");
        return pattern;
    });
}

}  // namespace lidwright
