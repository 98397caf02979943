#pragma once

#include "core/drawing/cut_drawing.h"
#include "core/io/cut/cut_dxf.h"

#include <QByteArray>
#include <QString>

#include <optional>

namespace lidwright {

enum class CutFormat { Svg, DxfR12, DxfR2000, Pdf };

/// The format that a file name asks for by its ending; for .dxf the version that is wished.
std::optional<CutFormat> cutFormatOf(const QString& path, DxfVersion version);

/// What the plan asks of the cutter's file.
CutJob cutJobOf(const Plan& plan, const CutPreset& preset);

/// The cutter's file as bytes. PDF is one page at full size that asks viewers not to scale it; it needs a
/// QGuiApplication.
Result<QByteArray> cutFileBytes(const CutDrawing& drawing, CutFormat format);

}  // namespace lidwright
