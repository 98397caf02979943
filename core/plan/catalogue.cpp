#include "core/plan/catalogue.h"

#include "core/base/length_text.h"
#include "core/base/near_word.h"
#include "core/plan/row_builders.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace lidwright {
namespace {

constexpr PartInfo kParts[] = {
    {"sheet", "Plan", false},
    {"box", "Box", false},
    {"lid", "Lid", false},
    {"art", "Artwork", true},
    {"tie", "Tie", true},
    {"hole", "Plain hole", true},
    {"fixing", "Fixing hole", true},
    {"backing-fit", "Backing", false},
    {"backing", "Backing layer", true},
    {"scale", "Scale", false},
    {"neck", "Neck", false},
    {"head-opening", "Head-end opening", false},
    {"tail-opening", "Tail-end opening", false},
    {"relief", "Relief under the lid", false},
    {"hollow", "Hollow of the stick", true},
    {"head", "Head", false},
    {"tuners", "Tuners", false},
    {"fretboard", "Fretboard", false},
    {"frets", "Frets", false},
    {"strings", "Strings", false},
    {"string", "String", true},
    {"bridge", "Bridge", false},
    {"anchor", "String anchor", false},
    {"setup", "Set-up", false},
    {"corner-blocks", "Corner blocks", false},
    {"block", "Wall block", true},
    {"bar", "Bar under the lid", true},
    {"wiring", "Wiring", true},
    {"fittings", "Feet and straps", false},
    {"trial", "Trials of the lid", false},
    {"shop", "Shop", false},
    {"cutter", "Cutter", false},
    {"stock", "Stock", true},
    {"price", "Price", true},
    {"accepted", "Accepted finding", true},
};

/// Where the part of a row stands in kParts.
std::ptrdiff_t partPlace(const Parameter& row)
{
    const std::string_view key = row.key;
    const std::string_view part = key.substr(0, key.find('.'));
    return std::find_if(std::begin(kParts), std::end(kParts),
                        [&](const PartInfo& p) { return part == p.key; }) -
           std::begin(kParts);
}

const std::vector<Parameter>& allRows()
{
    static const std::vector<Parameter> rows = [] {
        std::vector<Parameter> all = rows::bodyRows();
        for (auto&& group : {rows::neckRows(), rows::headRows(), rows::playingRows(), rows::holdingRows(),
                             rows::reliefRows(), rows::supportRows(), rows::wiringRows(), rows::stockRows(),
                             rows::shopRows(), rows::cutterRows()})
            all.insert(all.end(), group.begin(), group.end());
        // Rows stand in files by subject; everybody meets them in the order of the parts.
        std::stable_sort(all.begin(), all.end(),
                         [](const Parameter& a, const Parameter& b) { return partPlace(a) < partPlace(b); });
        return all;
    }();
    return rows;
}

/// Splits "art.2.x" into pattern "art.#.x" and index 1; index -1 where the key has no number.
struct SplitKey {
    std::string pattern;
    int index = -1;
};

SplitKey split(std::string_view key)
{
    SplitKey out;
    std::size_t start = 0;
    while (start <= key.size()) {
        const std::size_t end = std::min(key.find('.', start), key.size());
        const std::string_view piece = key.substr(start, end - start);
        int number = 0;
        const auto [rest, problem] = std::from_chars(piece.data(), piece.data() + piece.size(), number);
        if (!out.pattern.empty()) out.pattern += '.';
        if (problem == std::errc{} && rest == piece.data() + piece.size() && out.index < 0 && number >= 0) {
            out.pattern += '#';
            out.index = number - 1;
        } else {
            out.pattern += piece;
        }
        start = end + 1;
    }
    return out;
}

std::string nearestKey(std::string_view pattern)
{
    const Parameter* best = nullptr;
    // More slips than this are another word.
    constexpr std::size_t kMostSlips = 8;
    std::size_t least = kMostSlips + 1;
    for (const Parameter& p : allRows()) {
        const std::size_t d = editDistance(pattern.substr(0, 80), p.key);
        if (d < least) {
            least = d;
            best = &p;
        }
    }
    return best != nullptr ? best->key : "";
}

/// A plan whose lists have one fresh member each, so that defaults can be read from it.
const Plan& freshPlan()
{
    static const Plan plan = [] {
        Plan p;
        p.art.resize(1);
        p.ties.resize(1);
        p.holes.resize(1);
        p.fixings.resize(1);
        p.blocks.resize(1);
        p.backingLayers.resize(1);
        p.hollows.resize(1);
        p.bars.resize(1);
        p.wiring.resize(1);
        p.stock.resize(1);
        p.prices.resize(1);
        p.accepted.resize(1);
        return p;
    }();
    return plan;
}

bool wholeNumber(const Parameter& p)
{
    return p.quantity == Quantity::Count || p.quantity == Quantity::Choice || p.quantity == Quantity::Flag;
}

}  // namespace

UnitStyle unitStyle(const Plan& plan)
{
    UnitStyle style;
    switch (plan.sheet.unit) {
        case PlanUnit::Millimetre:
            style.unit = LengthUnit::Millimetre;
            break;
        case PlanUnit::InchDecimal:
            style.unit = LengthUnit::InchDecimal;
            break;
        case PlanUnit::InchFraction:
            style.unit = LengthUnit::InchFraction;
            break;
    }
    style.denominator = plan.sheet.fraction <= 16 ? 16 : plan.sheet.fraction <= 32 ? 32 : 64;
    return style;
}

std::string keyOf(const Parameter& parameter, int index)
{
    std::string key = parameter.key;
    if (const auto at = key.find('#'); at != std::string::npos) key.replace(at, 1, std::to_string(index + 1));
    return key;
}

std::string ParameterRef::key() const
{
    return keyOf(*parameter, index);
}

std::span<const Parameter> catalogue()
{
    return allRows();
}
std::span<const PartInfo> parts()
{
    return kParts;
}

Result<ParameterRef> findParameter(const Plan& plan, std::string_view key)
{
    const SplitKey wanted = split(key.substr(0, 200));
    for (const Parameter& p : allRows()) {
        if (p.key != wanted.pattern) continue;
        if (!p.inList()) return ParameterRef{&p, 0};
        const int size = p.size(plan);
        if (wanted.index >= 0 && wanted.index < size) return ParameterRef{&p, wanted.index};
        return Error{"the plan has " + std::to_string(size) + " of these", std::string(key),
                     size == 0 ? "add one first" : "use a number from 1 to " + std::to_string(size)};
    }
    const std::string near = nearestKey(wanted.pattern);
    return Error{"no such quantity", std::string(key.substr(0, 200)),
                 near.empty() ? "the list of parameters names them all" : "did you mean " + near + "?"};
}

std::vector<ParameterRef> parametersOf(const Plan& plan, std::string_view partKey)
{
    const std::string probe = std::string(partKey) + ".";
    std::vector<ParameterRef> out;
    for (const Parameter& p : allRows()) {
        const int members = p.inList() ? p.size(plan) : 1;
        for (int i = 0; i < members; ++i) {
            const std::string key = keyOf(p, i);
            const std::string_view rest = std::string_view(key).substr(std::min(key.size(), probe.size()));
            if (key.starts_with(probe) && rest.find('.') == std::string_view::npos) out.push_back({&p, i});
        }
    }
    return out;
}

ParameterValue get(const Plan& plan, const ParameterRef& ref)
{
    if (ref.parameter->isText()) return ref.parameter->getText(plan, ref.index);
    return ref.parameter->get(plan, ref.index);
}

ParameterValue defaultValue(const Parameter& parameter)
{
    // Counts of lists are 0 in a real fresh plan, not the one member that freshPlan() holds.
    static const Plan empty;
    return get(parameter.inList() ? freshPlan() : empty, {&parameter, 0});
}

bool active(const Plan& plan, const ParameterRef& ref)
{
    return ref.parameter->active == nullptr || ref.parameter->active(plan, ref.index);
}

Result<Plan> set(const Plan& plan, const ParameterRef& ref, const ParameterValue& value)
{
    const Parameter& p = *ref.parameter;
    Plan next = plan;
    if (p.isText()) {
        const auto* text = std::get_if<std::string>(&value);
        if (text == nullptr)
            return Error{"a text is needed, not a number", ref.key(), "put it in quotation marks"};
        if (text->size() > static_cast<std::size_t>(p.most))
            return Error{"the text is too long", ref.key(),
                         "keep it under " + decimalNumber(p.most, 0) + " bytes"};
        p.setText(next, ref.index, *text);
        return next;
    }
    const auto* number = std::get_if<double>(&value);
    if (number == nullptr) return Error{"a number is needed, not a text", ref.key(), ""};
    if (!std::isfinite(*number))
        return Error{"the number is not finite", ref.key(), "type an ordinary number"};
    if (wholeNumber(p) && *number != std::floor(*number))
        return Error{exactNumber(*number) + " is not a whole number", ref.key(), "use a whole number"};
    if (*number < p.least || *number > p.most) {
        const UnitStyle style = unitStyle(plan);
        return Error{formatValue(p, *number, style) + " is out of range", ref.key(),
                     "it must lie between " + formatValue(p, p.least, style) + " and " +
                         formatValue(p, p.most, style)};
    }
    p.set(next, ref.index, *number);
    return next;
}

Result<Plan> applyEdits(const Plan& plan, std::span<const Edit> edits)
{
    Plan next = plan;
    for (const Edit& edit : edits) {
        const auto ref = findParameter(next, edit.key);
        if (!ref) return ref.error();
        auto changed = set(next, *ref, edit.value);
        if (!changed) return changed.error();
        next = std::move(changed).value();
    }
    return next;
}

}  // namespace lidwright
