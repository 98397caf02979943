#pragma once

#include "core/io/plan/plan_cursor.h"
#include "core/plan/plan.h"

namespace lidwright {

/// Reads what the catalogue does not describe of a piece of artwork: its drawing and the uses of its paints.
/// The pieces before it must have been read. Keys that are not understood go to the cursor, except those of
/// the piece itself.
void readDrawing(PlanCursor& cursor, const json::Value::Object& object, const PlanPath& path, Plan& plan,
                 std::size_t index);

/// The keys of a piece that readDrawing() understands.
std::vector<std::string_view> drawingKeys(const json::Value::Object& object);

}  // namespace lidwright
