#pragma once

#include "core/base/pitch.h"
#include "core/base/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

inline constexpr std::size_t kMostTunedStrings = 12;  ///< a row with more is refused

/// A string of a tuning.
struct TunedString {
    Pitch pitch;
    std::optional<double> gauge_in;  ///< where a source has one
    std::string kind;                ///< StringKind::id; empty without a gauge

    bool operator==(const TunedString&) const = default;
};

/// How an instrument is tuned; a row of resources/data/tunings.csv.
struct Tuning {
    std::string id;                    ///< stable word: "gdg", "dadf-sharp"
    std::string name;                  ///< plain English: the pitches, and what players call them
    std::vector<TunedString> strings;  ///< from bass side to treble side; pitches need not rise
    std::string source;
    std::string gaugeSource;  ///< empty without gauges

    /// Every string has its gauge; if not, none has.
    bool gauged() const { return !strings.empty() && strings.front().gauge_in.has_value(); }

    bool operator==(const Tuning&) const = default;
};

/// The tunings that the program knows, in the order of resources/data/tunings.csv.
const std::vector<Tuning>& tunings();

/// The tuning with that id, or nullptr.
const Tuning* findTuning(std::string_view id);

/// Reads a table with the columns of resources/data/tunings.csv; "none" stands for no gauges, no kinds and no
/// source of gauges. Errors name line and column: see Table::read; pitches that parsePitch refuses or with
/// cents, other numbers of gauges or kinds than of pitches, kinds that are not known, gauges that their kind
/// has not, gauges without kinds or source and the other way round, ids that stand there twice.
Result<std::vector<Tuning>> readTunings(std::string_view text);

}  // namespace lidwright
