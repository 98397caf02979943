#pragma once

#include "core/io/build/bench_sheet.h"

#include <string>

namespace lidwright {

/// The sheet as one HTML 5 page that needs nothing else, its drawings within it as SVG at the size at which
/// their words can be read. Black on white, made to be printed; well-formed XML but for named entities and
/// the head's void elements. Words are escaped, control characters left out.
std::string benchHtml(const BenchSheet& sheet);

}  // namespace lidwright
