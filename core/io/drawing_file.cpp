#include "core/io/drawing_file.h"

#include "core/base/units.h"
#include "core/io/dxf/dxf_reader.h"

#include <algorithm>

namespace lidwright {

bool namedDxf(std::string_view fileName)
{
    constexpr std::string_view ending = ".dxf";
    if (fileName.size() < ending.size()) return false;
    return std::equal(ending.begin(), ending.end(),
                      fileName.end() - static_cast<std::ptrdiff_t>(ending.size()),
                      [](char a, char b) { return a == (b >= 'A' && b <= 'Z' ? b + 32 : b); });
}

Result<DrawingReading> readDrawingText(std::string_view text, std::string fileName, const SvgOptions& options)
{
    if (!namedDxf(fileName)) return readSvg(text, std::move(fileName), options);
    DxfOptions dxf;
    if (options.unitsPerInch) dxf.unit_mm = kMillimetresPerInch / *options.unitsPerInch;
    dxf.width_mm = options.width_mm;
    dxf.tolerance = options.tolerance;
    return readDxf(text, std::move(fileName), dxf);
}

}  // namespace lidwright
