#pragma once

#include "core/geometry/transform.h"

#include <optional>
#include <string_view>

namespace lidwright::svg {

struct ViewBox {
    double x = 0, y = 0, width = 0, height = 0;
};

/// The four numbers of a viewBox; nothing where they are not four or a size is negative.
std::optional<ViewBox> parseViewBox(std::string_view text);

/// The map from the view box into a viewport of the given size at the origin, by the rules of
/// preserveAspectRatio (SVG 1.1, section 7.8); unreadable text counts as xMidYMid meet.
Transform viewBoxMap(const ViewBox& box, double width, double height, std::string_view aspect);

/// Reads a list of transforms (SVG 1.1, section 7.6; units px, deg and rad as CSS allows them).
/// Nothing where there is a mistake in it.
std::optional<Transform> parseTransform(std::string_view text);

bool isFinite(const Transform& map);

}  // namespace lidwright::svg
