#pragma once

#include "core/base/units.h"
#include "core/plan/art_piece.h"
#include "core/plan/backing_layer.h"
#include "core/plan/blocks.h"
#include "core/plan/box.h"
#include "core/plan/bridge.h"
#include "core/plan/cutter.h"
#include "core/plan/fittings.h"
#include "core/plan/fretboard.h"
#include "core/plan/frets.h"
#include "core/plan/head.h"
#include "core/plan/lid.h"
#include "core/plan/lid_bar.h"
#include "core/plan/lid_fixing.h"
#include "core/plan/neck.h"
#include "core/plan/relief.h"
#include "core/plan/scale.h"
#include "core/plan/setup.h"
#include "core/plan/shop.h"
#include "core/plan/sound_hole.h"
#include "core/plan/stock.h"
#include "core/plan/string_anchor.h"
#include "core/plan/strings.h"
#include "core/plan/tie_spot.h"
#include "core/plan/trial.h"
#include "core/plan/wiring.h"

#include <vector>

namespace lidwright {

/// What the maker decided. Plain values, no geometry; drawings are shared, so a copy is cheap.
struct Plan {
    Sheetwork sheet;
    Box box;
    Lid lid;
    std::vector<ArtPiece> art;
    std::vector<TieSpot> ties;  ///< at picked places of the drawings
    std::vector<SoundHole> holes;
    std::vector<LidFixing> fixings;
    Backing backing;
    std::vector<BackingLayer> backingLayers;  ///< from the lid down
    Neck neck;
    WallOpening headOpening;
    WallOpening tailOpening;
    Relief relief;
    std::vector<Hollow> hollows;  ///< beside the relief
    Head head;
    Tuners tuners;
    Fretboard fretboard;
    Frets frets;
    Scale scale;
    Strings strings;
    std::vector<GuitarString> stringSet = ordinaryStrings();  ///< from the treble side; one to kMostStrings
    Bridge bridge;
    StringAnchor anchor;
    Setup setup;
    CornerBlocks cornerBlocks;
    std::vector<WallBlock> blocks;
    std::vector<LidBar> bars;
    std::vector<Device> wiring;
    Fittings fittings;
    Trial trial;
    Shop shop;
    std::vector<StockPiece> stock;
    std::vector<Price> prices;
    std::vector<Acceptance> accepted;
    Cutter cutter;
    /// JSON text of keys that this version of the file format does not know, kept for the next writer;
    /// empty where there are none.
    std::string unknownKeys;

    bool operator==(const Plan&) const = default;
};

/// Lists longer than this are refused.
inline constexpr int kMostPieces = 64;

/// How this plan's lengths are spoken.
UnitStyle unitStyle(const Plan& plan);

}  // namespace lidwright
