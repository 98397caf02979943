#pragma once

#include "app/exchange/thin_places_list.h"

#include <nlohmann/json_fwd.hpp>

namespace lidwright {

/// The table as "webs", "tongues", "dropOuts" and "kerfClosings", each with unit-named members.
nlohmann::ordered_json thinJson(const ThinList& list);

}  // namespace lidwright
