#include "core/materials/temperament.h"

#include <algorithm>
#include <charconv>

namespace lidwright {
namespace {

constexpr std::string_view kGaps = " \t\r\n,";
constexpr std::string_view kSpelling = "write it as 9/8, 1.125 or 203.91c";

/// A number of digits with at most one point; none where there is anything else.
std::optional<double> plainNumber(std::string_view s, bool pointAllowed)
{
    const std::string_view known = pointAllowed ? "0123456789." : "0123456789";
    if (s.empty() || s.size() > 30 || s.find_first_not_of(known) != std::string_view::npos)
        return std::nullopt;
    double value = 0;
    const auto [end, code] = std::from_chars(s.data(), s.data() + s.size(), value);
    if (code != std::errc() || end != s.data() + s.size()) return std::nullopt;
    return value;
}

/// The ratio that an entry stands for, or nothing where it is spelled otherwise.
std::optional<double> ratioOf(std::string_view entry)
{
    if (const std::size_t bar = entry.find('/'); bar != std::string_view::npos) {
        const auto above = plainNumber(entry.substr(0, bar), false);
        const auto below = plainNumber(entry.substr(bar + 1), false);
        if (!above || !below || *below == 0) return std::nullopt;
        return *above / *below;
    }
    if (entry.back() == 'c') {
        const auto value = plainNumber(entry.substr(0, entry.size() - 1), true);
        if (!value) return std::nullopt;
        return ratioOfCents(*value);
    }
    return plainNumber(entry, true);
}

/// At most 40 bytes of an entry, cut before a character and not amid one.
std::string quoted(std::string_view entry)
{
    constexpr std::size_t kShown = 40;
    if (entry.size() <= kShown) return "\"" + std::string(entry) + "\"";
    std::size_t end = kShown;
    while (end > 0 && (static_cast<unsigned char>(entry[end]) & 0xc0) == 0x80)
        --end;
    return "\"" + std::string(entry.substr(0, end)) + "...\"";
}

}  // namespace

Result<Temperament> readNoteList(std::string_view text)
{
    if (text.size() > kMaxNoteListBytes)
        return Error{"the list is longer than " + std::to_string(kMaxNoteListBytes) + " bytes", "notes",
                     "shorten it", static_cast<int>(kMaxNoteListBytes)};
    Temperament own;
    own.id = "own";
    own.name = "own list of notes";
    own.repeats = false;
    own.source = "the maker's own list";
    double before = 1;
    std::string_view entryBefore;
    std::size_t at = 0;
    while ((at = text.find_first_not_of(kGaps, at)) != std::string_view::npos) {
        const std::size_t end = std::min(text.find_first_of(kGaps, at), text.size());
        const std::string_view entry = text.substr(at, end - at);
        const auto refusal = [&](const std::string& what, std::string mend) {
            return Error{quoted(entry) + " " + what, "notes, entry " + std::to_string(own.ratios.size() + 1),
                         std::move(mend), static_cast<int>(at)};
        };
        if (own.ratios.size() == kMostDivisions)
            return refusal("is one note too many", "leave at most " + std::to_string(kMostDivisions));
        const std::optional<double> ratio = ratioOf(entry);
        if (!ratio) return refusal("is no note", std::string(kSpelling));
        if (!(*ratio > 1))
            return refusal("is not above the open string",
                           "give a ratio above 1; the decimal mark is a point, cents end with c");
        // A hair of room, so that 3600c is the third octave however the power was rounded.
        if (!(*ratio <= kHighestNote * (1 + 1e-12)))
            return refusal("is more than three octaves above the open string",
                           "give at most 8 or 3600c; a number without c is a ratio");
        if (cents(*ratio / before) < kClosest_cents * (1 - 1e-9)) {
            if (own.ratios.empty())
                return refusal("is less than 1 cent above the open string", "give a higher note");
            return refusal("is not above " + quoted(entryBefore) + " by 1 cent or more",
                           "put the notes in rising order, each once");
        }
        own.ratios.push_back(*ratio);
        before = *ratio;
        entryBefore = entry;
        at = end;
    }
    if (own.ratios.empty())
        return Error{"the list has no note", "notes",
                     "write the ratios to the open string: 9/8, 1.25, 498.04c", 0};
    return own;
}

}  // namespace lidwright
