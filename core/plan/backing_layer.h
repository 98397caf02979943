#pragma once

namespace lidwright {

enum class BackingKind { WireCloth, Perforated, Panel };
enum class BackingWeave { Woven, Welded };
enum class BackingHoles { RoundStaggered, RoundSquare, Square };

/// One layer glued under the artwork; the first of the list lies against the lid.
struct BackingLayer {
    BackingKind kind = BackingKind::WireCloth;
    // Wire cloth.
    double opening = 2.5;  ///< clear width between wires, mm
    double wire = 0.65;    ///< diameter, mm
    BackingWeave weave = BackingWeave::Woven;
    // Perforated sheet.
    BackingHoles holes = BackingHoles::RoundStaggered;
    double hole = 3;   ///< diameter or side, mm
    double pitch = 5;  ///< centre to centre, mm
    // Sheet and panel.
    double thickness = 1;  ///< mm
    double rim = 2;        ///< how much larger than the artwork a panel's own opening is, all round, mm

    bool operator==(const BackingLayer&) const = default;
};

/// What all layers share.
struct Backing {
    double overlap = 12;  ///< beyond the cuts, to glue to, mm
    double room = 1;      ///< kept from walls, blocks, neck and bridge, mm

    bool operator==(const Backing&) const = default;
};

}  // namespace lidwright
