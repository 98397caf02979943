#pragma once

#include "app/settings/setting.h"

#include <QByteArray>
#include <QStringList>

namespace lidwright {

// Every choice that the window remembers, with its fallback.

inline const Setting<QStringList> kRecentFiles{"files/recent", {}};
inline const Setting<QString> kLastFolder{"files/folder", {}};
inline const Setting<QByteArray> kWindowGeometry{"window/geometry", {}};
inline const Setting<QByteArray> kPanelSizes{"window/panels", {}};
inline const Setting<bool> kPartsFolded{"window/parts-folded", false};
inline const Setting<bool> kFindingsFolded{"window/findings-folded", false};
inline const Setting<bool> kFirstStepsDismissed{"window/first-steps-dismissed", false};
inline const Setting<bool> kSnapping{"board/snapping", true};

}  // namespace lidwright
