#pragma once

#include "core/base/result.h"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

/// What the cutter does along a line.
enum class CutOperation {
    Engrave,     ///< takes the surface away between the outlines
    CutInside,   ///< cuts openings out of the lid
    Alignment,   ///< cuts round holes for pins and screws
    CutOutline,  ///< cuts the lid out of the sheet
    Mark         ///< not cut: for the eye only
};
inline constexpr int kCutOperations = 5;

/// "engrave", "cut-inside", "alignment", "cut-outline", "mark": the words of files.
const char* word(CutOperation operation);

/// How a shop wants one operation drawn.
struct CutLayer {
    CutOperation operation = CutOperation::CutInside;
    std::string name;              ///< of the layer: a letter, then letters, digits, - and _; at most 31
    std::string colour;            ///< "#rrggbb"
    double lineWidth = 0.1;        ///< mm, 0.01 to 2
    int order = 0;                 ///< 1 to 99; layers with a lower number are written, and cut, first
    bool filled = false;           ///< engraving only: painted as an area instead of as outlines
    std::string source = kOwnRow;  ///< where the habit comes from

    /// What stands in rows that a shop writes for itself.
    static constexpr const char* kOwnRow = "own choice";

    bool operator==(const CutLayer&) const = default;
};

/// How a shop wants its files: one layer for each operation, sorted by CutLayer::order. Shops differ; there
/// is no standard.
struct CutPreset {
    std::string name;
    std::vector<CutLayer> layers;

    /// The layer of an operation; a preset that was read has one for each.
    const CutLayer& layer(CutOperation operation) const;

    bool operator==(const CutPreset&) const = default;
};

inline constexpr int kMostCutPresets = 100;  ///< a longer list is refused

/// Reads a table with the columns of resources/data/cutter_presets.csv: rows with the same preset name make
/// one preset, in the order in which the names first appear. Errors name line and column: see Table::read;
/// unknown operations, colours that are no "#rrggbb", layer names that files cannot carry or that stand
/// twice in one preset (letters' case does not tell them apart), orders and operations that stand twice or
/// are missing, areas for anything but engraving.
Result<std::vector<CutPreset>> readCutPresets(std::string_view csv);

/// The table as text: read back, it gives the same presets.
std::string writeCutPresets(const std::vector<CutPreset>& presets);

/// The presets that the program brings along, at least one; the first is the default.
const std::vector<CutPreset>& cutPresets();
/// The one with that name, or nullptr.
const CutPreset* findCutPreset(std::string_view name);

}  // namespace lidwright
