#pragma once

#include "core/geometry/region.h"
#include "core/geometry/transform.h"
#include "core/io/svg/svg_outline.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace lidwright::svg {

/// How a line is painted, in user units of the outline that it belongs to.
struct LineStyle {
    double width = 1;
    Join join = Join::Miter;
    Cap cap = Cap::Butt;
    double miterLimit = 4;
    std::vector<double> dashes;  ///< even in number, empty for a solid line
    double dashOffset = 0;
};

struct Clip;
using ClipPtr = std::shared_ptr<const Clip>;
using OutlinePtr = std::shared_ptr<const Outline>;

/// An area, by its outline or, with `line`, by the line along the outline.
struct SceneShape {
    OutlinePtr outline;
    Transform map;  ///< user units to units of the page (px, y down)
    FillRule rule = FillRule::NonZero;
    std::optional<LineStyle> line;
    ClipPtr clip;  ///< what is cut off it; null where nothing is
};

/// What remains visible: inside one of the shapes, and inside the outer clip.
struct Clip {
    std::vector<SceneShape> shapes;
    ClipPtr outer;
    bool page = false;  ///< it is the edge of the page
};

struct ScenePaint {
    std::string name;
    std::string colour;
    bool line = false;
};

struct SceneItem {
    SceneShape shape;
    int paint = 0;  ///< index into Scene::paints
};

/// The drawing as a list of painted shapes, curves still exact.
struct Scene {
    std::vector<ScenePaint> paints;
    std::vector<SceneItem> items;  ///< in painting order
};

}  // namespace lidwright::svg
