#pragma once

#include "core/plan/catalogue.h"

#include <string>
#include <string_view>
#include <utility>

namespace lidwright {

/// What a plan file calls a parameter inside the object of its part: the last word of its key.
std::string_view memberName(const Parameter& parameter);

/// How many members the list of a part has; `part.list` must be true.
std::size_t listSize(const Plan& plan, const PartInfo& part);
/// Least and most members that the list of a part may have.
std::pair<std::size_t, std::size_t> listBounds(const PartInfo& part);
/// Gives the list that many members, new ones fresh; not more than kMostPieces.
void resizeList(Plan& plan, const PartInfo& part, std::size_t size);

/// "hole" and 1 give "hole.2", as parametersOf() takes it.
std::string listMemberKey(const PartInfo& part, std::size_t index);

}  // namespace lidwright
