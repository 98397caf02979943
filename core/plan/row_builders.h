#pragma once

#include "core/plan/parameter.h"

#include <type_traits>

/// How the catalogue's rows are written. Private to the row files of core/plan.
namespace lidwright::rows {

template <auto Part, auto Member>
double getOf(const Plan& plan, int)
{
    return static_cast<double>((plan.*Part).*Member);
}

template <auto Part, auto Member>
void setOf(Plan& plan, int, double value)
{
    auto& member = (plan.*Part).*Member;
    member = static_cast<std::remove_reference_t<decltype(member)>>(value);
}

template <auto Part, auto Member>
const std::string& textOf(const Plan& plan, int)
{
    return (plan.*Part).*Member;
}

template <auto Part, auto Member>
void setTextOf(Plan& plan, int, const std::string& value)
{
    (plan.*Part).*Member = value;
}

template <auto List>
int sizeOf(const Plan& plan)
{
    return static_cast<int>((plan.*List).size());
}

template <auto List, auto Member>
double getEach(const Plan& plan, int index)
{
    return static_cast<double>((plan.*List)[static_cast<std::size_t>(index)].*Member);
}

template <auto List, auto Member>
void setEach(Plan& plan, int index, double value)
{
    auto& member = (plan.*List)[static_cast<std::size_t>(index)].*Member;
    member = static_cast<std::remove_reference_t<decltype(member)>>(value);
}

template <auto List>
double getCount(const Plan& plan, int)
{
    return static_cast<double>((plan.*List).size());
}

template <auto List>
void setCount(Plan& plan, int, double value)
{
    (plan.*List).resize(static_cast<std::size_t>(value));
}

/// Hard range, inside units.
struct Range {
    double least;
    double most;
};
/// Customary range and where it comes from.
struct Customary {
    double least = 0;
    double most = 0;
    const char* source = "";
};

using ActiveTest = bool (*)(const Plan&, int);

template <auto Part, auto Member>
Parameter number(const char* key, const char* label, Quantity quantity, Range range, Customary customary,
                 const char* help, ActiveTest active = nullptr)
{
    Parameter p{
        key,  label, quantity, range.least, range.most, customary.least, customary.most, customary.source,
        help, {}};
    p.get = getOf<Part, Member>;
    p.set = setOf<Part, Member>;
    p.active = active;
    return p;
}

template <auto Part, auto Member>
Parameter length(const char* key, const char* label, Range range, Customary customary, const char* help,
                 ActiveTest active = nullptr)
{
    return number<Part, Member>(key, label, Quantity::Length, range, customary, help, active);
}

template <auto Part, auto Member>
Parameter choice(const char* key, const char* label, std::span<const ChoiceWord> words, const char* help,
                 ActiveTest active = nullptr)
{
    Parameter p = number<Part, Member>(key, label, Quantity::Choice,
                                       {0, static_cast<double>(words.size()) - 1}, {}, help, active);
    p.choices = words;
    return p;
}

template <auto Part, auto Member>
Parameter flag(const char* key, const char* label, const char* help)
{
    return number<Part, Member>(key, label, Quantity::Flag, {0, 1}, {}, help);
}

template <auto Part, auto Member>
Parameter text(const char* key, const char* label, double mostBytes, const char* help)
{
    Parameter p{key, label, Quantity::Text, 0, mostBytes, 0, 0, "", help, {}};
    p.getText = textOf<Part, Member>;
    p.setText = setTextOf<Part, Member>;
    return p;
}

template <auto List, auto Member>
Parameter eachNumber(const char* key, const char* label, Quantity quantity, Range range, Customary customary,
                     const char* help, ActiveTest active = nullptr)
{
    Parameter p{
        key,  label, quantity, range.least, range.most, customary.least, customary.most, customary.source,
        help, {}};
    p.get = getEach<List, Member>;
    p.set = setEach<List, Member>;
    p.size = sizeOf<List>;
    p.active = active;
    return p;
}

template <auto List, auto Member>
Parameter eachLength(const char* key, const char* label, Range range, Customary customary, const char* help,
                     ActiveTest active = nullptr)
{
    return eachNumber<List, Member>(key, label, Quantity::Length, range, customary, help, active);
}

template <auto List, auto Member>
Parameter eachChoice(const char* key, const char* label, std::span<const ChoiceWord> words, const char* help)
{
    Parameter p = eachNumber<List, Member>(key, label, Quantity::Choice,
                                           {0, static_cast<double>(words.size()) - 1}, {}, help);
    p.choices = words;
    return p;
}

/// The words of a table whose entries have an id and a name; the table lasts as long as the program.
template <typename Entry>
std::vector<ChoiceWord> wordsOf(const std::vector<Entry>& entries)
{
    std::vector<ChoiceWord> words;
    for (const Entry& entry : entries)
        words.push_back({entry.id.c_str(), entry.name.c_str()});
    return words;
}

/// Where an id stands among the words, the first where it is none of them.
inline double placeOf(std::span<const ChoiceWord> words, const std::string& id)
{
    for (std::size_t i = 0; i < words.size(); ++i)
        if (id == words[i].word) return static_cast<double>(i);
    return 0;
}

/// A choice among the words of a table of which the plan keeps the id. Words is a function that gives them.
template <auto Part, auto Member, auto Words>
Parameter idChoice(const char* key, const char* label, const char* help, ActiveTest active = nullptr)
{
    Parameter p{key, label, Quantity::Choice, 0, static_cast<double>(Words().size()) - 1, 0, 0,
                "",  help,  Words()};
    p.get = [](const Plan& plan, int) { return placeOf(Words(), (plan.*Part).*Member); };
    p.set = [](Plan& plan, int, double value) {
        (plan.*Part).*Member = Words()[static_cast<std::size_t>(value)].word;
    };
    p.active = active;
    return p;
}

/// The same of each member of a list.
template <auto List, auto Member, auto Words>
Parameter eachIdChoice(const char* key, const char* label, const char* help)
{
    Parameter p{key, label, Quantity::Choice, 0, static_cast<double>(Words().size()) - 1, 0, 0,
                "",  help,  Words()};
    p.get = [](const Plan& plan, int index) {
        return placeOf(Words(), (plan.*List)[static_cast<std::size_t>(index)].*Member);
    };
    p.set = [](Plan& plan, int index, double value) {
        (plan.*List)[static_cast<std::size_t>(index)].*Member = Words()[static_cast<std::size_t>(value)].word;
    };
    p.size = sizeOf<List>;
    return p;
}

template <auto List>
Parameter count(const char* key, const char* label, const char* help)
{
    Parameter p{key, label, Quantity::Count, 0, kMostPieces, 0, 0, "", help, {}};
    p.get = getCount<List>;
    p.set = setCount<List>;
    return p;
}

/// Nothing is known of a customary range.
inline constexpr Customary kNone{};
/// A customary range that every shop would give and nobody published.
constexpr Customary practice(double least, double most)
{
    return {least, most, "common practice, no source"};
}

/// Woods; woods and then panels: as the tables in resources/data have them.
std::span<const ChoiceWord> woodWords();
std::span<const ChoiceWord> materialWords();

// The rows of each group of parts, in catalogue order.
std::vector<Parameter> bodyRows();
std::vector<Parameter> lidWoodRows();
std::vector<Parameter> artMendRows();
std::vector<Parameter> tieRows();
std::vector<Parameter> fixingRows();
std::vector<Parameter> backingRows();
std::vector<Parameter> cutterRows();
std::vector<Parameter> neckRows();
std::vector<Parameter> headRows();
std::vector<Parameter> playingRows();
std::vector<Parameter> holdingRows();
std::vector<Parameter> reliefRows();
std::vector<Parameter> supportRows();
std::vector<Parameter> wiringRows();
std::vector<Parameter> stockRows();
std::vector<Parameter> shopRows();

/// The row of a quantity whose 0 means that there is none, or that it is not known.
inline Parameter zeroForNone(Parameter row)
{
    row.zeroIsNone = true;
    return row;
}

}  // namespace lidwright::rows
