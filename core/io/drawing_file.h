#pragma once

#include "core/io/svg/svg_reader.h"

namespace lidwright {

/// True where the name's ending says that the file is DXF.
bool namedDxf(std::string_view fileName);

/// Reads a drawing by its name's ending: DXF, anything else as SVG. Options are those of the SVG reader; of a
/// DXF that names no unit `unitsPerInch` says how many of its units make an inch: 25.4 where it is drawn in
/// millimetres, which is taken without it, 1 where in inches. Errors as of readSvg() and readDxf().
Result<DrawingReading> readDrawingText(std::string_view text, std::string fileName,
                                       const SvgOptions& options = {});

}  // namespace lidwright
