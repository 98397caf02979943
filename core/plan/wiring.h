#pragma once

namespace lidwright {

enum class DeviceKind {
    DiscPickup,      ///< contact pickup, a disc glued on
    RodPickup,       ///< contact pickup, a rod under or beside the saddle
    MagneticPickup,  ///< in a cavity under the strings
    Pot,             ///< potentiometer for the volume
    Socket,          ///< output socket
};

/// What a part of the wiring is fixed to.
enum class DevicePlace {
    Lid,         ///< from inside, its shaft or top through the lid where it has a hole
    Neck,        ///< let into the stick's top
    HeadWall,    ///< end wall at the head
    TailWall,    ///< end wall at the tail
    BassWall,    ///< side wall
    TrebleWall,  ///< side wall
};

/// One part of the wiring, measured in hand. mm.
struct Device {
    DeviceKind kind = DeviceKind::DiscPickup;
    DevicePlace place = DevicePlace::Lid;
    double along = 240;  ///< lid, neck, side walls: from the head-end wall's outer face; end walls: from the
                         ///< centre line to the treble side
    double aside = 30;   ///< lid and neck: from the centre line to the treble side
    double down = 25;    ///< walls: from their top edge
    double hole = 0;     ///< diameter of the hole through what it is fixed to; 0: none
    double bodyLength = 27;  ///< along the neck (on an end wall across it); of a round body its diameter
    double bodyWidth = 27;   ///< the other way; of a round body its diameter
    double bodyDepth = 1.5;  ///< how far it reaches into the box, or into the stick, from the face it sits on
    double bush = 0;         ///< length of the threaded bush, flange to its end; 0: it has none

    bool round() const { return kind != DeviceKind::RodPickup && kind != DeviceKind::MagneticPickup; }
    bool operator==(const Device&) const = default;
};

}  // namespace lidwright
