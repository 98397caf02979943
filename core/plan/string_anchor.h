#pragma once

namespace lidwright {

/// Where the strings are held behind the bridge.
enum class AnchorKind {
    TailEnd,    ///< through the tail, at the stick's end
    WallPins,   ///< at pins or screws on the outside of the tail-end wall
    Tailpiece,  ///< at a tailpiece on the lid
};

struct StringAnchor {
    AnchorKind kind = AnchorKind::TailEnd;
    double depth = 8;  ///< of the holding points below the lid's top, mm; of a tailpiece its height above it
    double behind = 50;  ///< of a tailpiece: behind the saddle line, mm

    bool operator==(const StringAnchor&) const = default;
};

}  // namespace lidwright
