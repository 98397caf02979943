#pragma once

#include "core/io/svg/svg_style.h"

#include <string_view>

namespace lidwright::svg {

/// One row of the table of properties.
struct Property {
    std::string_view name;
    bool inherited = false;
    /// Sets the property from its text; false, and nothing changed, where the text is no value of it.
    bool (*set)(Style&, std::string_view) = nullptr;
    void (*copy)(Style& to, const Style& from) = nullptr;
};

/// Null where the reader has no use for the property.
const Property* findProperty(std::string_view name);

/// True for properties that may stand as attributes of their own.
bool isPresentationAttribute(std::string_view name);

/// True for x, y, width, height, r, rx, ry, cx, cy and d, which a style may give as well.
bool isGeometryProperty(std::string_view name);

}  // namespace lidwright::svg
