#pragma once

#include "core/base/result.h"
#include "core/geometry/transform.h"
#include "core/io/dxf/dxf_colour.h"
#include "core/io/dxf/dxf_notes.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace lidwright::dxf {

/// Corners with the bulge of what follows each: tan of a quarter of the arc's angle, positive to the left.
struct BulgeLine {
    struct Vertex {
        Point at;
        double bulge = 0;
    };
    std::vector<Vertex> vertices;
    bool closed = false;
};

/// centre + cos(t) u + sin(t) v, t from `from` over `sweep` (radians, above 0).
struct EllipseArc {
    Point centre, u, v;
    double from = 0, sweep = 0;
    bool whole = false;
};

/// A B-spline, rational where there are weights.
struct Spline {
    int degree = 3;
    std::vector<double> knots;
    std::vector<Point> points;
    std::vector<double> weights;  ///< as many as points, or none
};

struct Insert {
    std::string block;  ///< key
    Transform placed;   ///< of the block, its base point not yet taken off
    int columns = 1, rows = 1;
    Point columnStep, rowStep;
};

/// What cannot be drawn, kept so that it is named where it would be seen.
struct Foreign {
    Issue issue = Issue::Kind;
    std::string detail;
};

struct Entity {
    int layer = 0;
    int colourNumber = 256;  ///< 256: the layer's; 0: the insert's
    std::optional<DxfRgb> trueColour;
    Transform plane;      ///< from the entity's own plane to the drawing's, seen from above
    bool tilted = false;  ///< its plane is not the drawing's
    std::variant<BulgeLine, EllipseArc, Spline, Insert, Foreign> shape;
};

struct Layer {
    std::string name;
    DxfRgb colour = 0;
    bool off = false;
    bool frozen = false;
};

struct Block {
    Point base;
    std::vector<Entity> entities;
};

/// What of a file concerns us.
struct Document {
    double unit_mm = 0;  ///< 0 where the file names none
    std::vector<Layer> layers;
    std::map<std::string, int> layerOf;  ///< by key
    std::map<std::string, Block> blocks;
    std::vector<Entity> entities;  ///< of model space
};

/// Errors: a group code that is no number, no sections at all, more than kDxfEntityLimit entities or
/// kDxfPointLimit points.
Result<Document> parse(std::string_view text, Notes& notes);

}  // namespace lidwright::dxf
