#pragma once

#include "core/base/result.h"

#include <string>
#include <string_view>

namespace lidwright::svg {

struct ExpandedText {
    std::string text;       ///< the document without its internal subset, entities replaced
    bool external = false;  ///< an entity stands in another file; nothing was put in its place
};

/// True where the document declares entities of its own, which must be expanded before it is parsed.
bool declaresEntities(std::string_view document);

/// Replaces the entities that the document's internal DTD subset declares (XML 1.0, section 4.4).
/// Nothing is fetched. Errors: an entity that contains itself, growth beyond kSvgEntityGrowthLimit, a
/// DTD without end.
Result<ExpandedText> expandEntities(std::string_view document);

}  // namespace lidwright::svg
