#pragma once

#include "app/commandline/arguments.h"

#include "core/solvers/study.h"

#include <string>
#include <vector>

namespace lidwright {

/// How a study is given out.
enum class StudyFormat { Text, Json, Csv, CsvDecimalComma };

/// The option of every command that gives out tables.
inline constexpr OptionSpec kDecimalCommaOption{
    "--decimal-comma", nullptr,
    "as a table for spreadsheets with the decimal comma: semicolons between the cells"};

/// What --json, --csv and --decimal-comma ask for; the first of them that was given.
StudyFormat studyFormat(const Arguments& arguments);

/// A study as it is printed or written into a file. `plan`: the plan's name, for JSON.
std::string studyBytes(const Study& study, StudyFormat format, const std::string& plan,
                       const UnitStyle& style);

/// Ids and titles, a line each, under a heading.
std::string entryList(const std::string& heading, const std::vector<StudyEntry>& entries);

/// The entry of that id, or null.
const StudyEntry* findEntry(const std::vector<StudyEntry>& entries, const std::string& id);

/// "there is no such subject", with those that there are. `kind`: "subject", "list".
Error noSuchEntry(const std::string& kind, const std::string& word, const std::vector<StudyEntry>& entries);

}  // namespace lidwright
