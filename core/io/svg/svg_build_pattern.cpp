#include "core/io/svg/svg_builder.h"
#include "core/io/svg/svg_viewport.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace lidwright::svg {

namespace {

constexpr double kTileLimit = 20'000;

/// The first of the chain that gives the attribute.
std::string_view given(const std::vector<pugi::xml_node>& chain, const char* name)
{
    for (const pugi::xml_node& step : chain) {
        const std::string_view text = attributeOf(step, name);
        if (!text.empty()) return text;
    }
    return {};
}

pugi::xml_node contentOf(const std::vector<pugi::xml_node>& chain)
{
    for (const pugi::xml_node& step : chain) {
        for (const pugi::xml_node child : step.children()) {
            if (!svgName(child).empty()) return step;
        }
    }
    return {};
}

}  // namespace

/// Paints the pattern's content over the area, tile by tile (SVG 1.1, section 13.3). False where that is
/// not possible; the caller then takes the area as a whole.
bool SceneBuilder::layTiles(const pugi::xml_node& pattern, const SceneShape& area, const Place& place)
{
    const std::vector<pugi::xml_node> chain = templateChain(pattern);
    const pugi::xml_node contentNode = contentOf(chain);
    // A pattern without content, or without size, paints nothing.
    if (!contentNode) return true;
    const Bounds shapeBox = tightBounds(*area.outline, {});
    const bool byBox = given(chain, "patternUnits") != "userSpaceOnUse";
    const bool contentByBox = given(chain, "patternContentUnits") == "objectBoundingBox";
    if ((byBox || contentByBox) && !(shapeBox.width() > 0 && shapeBox.height() > 0)) return true;

    LengthContext context = lengths(*place.style, place);
    if (byBox) context.viewportWidth = context.viewportHeight = 1;
    const auto length = [&](const char* name, Axis axis) {
        const auto parsed = parseLength(given(chain, name));
        return parsed ? context.user(*parsed, axis) : 0.0;
    };
    Bounds tile;
    tile.minX = length("x", Axis::X), tile.minY = length("y", Axis::Y);
    tile.maxX = tile.minX + length("width", Axis::X);
    tile.maxY = tile.minY + length("height", Axis::Y);
    if (byBox) {
        const auto placed = [&](Point p) {
            return Point{shapeBox.minX + p.x * shapeBox.width(), shapeBox.minY + p.y * shapeBox.height()};
        };
        const Point low = placed({tile.minX, tile.minY}), high = placed({tile.maxX, tile.maxY});
        tile = {low.x, low.y, high.x, high.y};
    }
    if (!(tile.width() > 0 && tile.height() > 0)) return true;

    const auto own = parseTransform(given(chain, "patternTransform"));
    const Transform turned = own.value_or(Transform{});
    if (turned.determinant() == 0 || !isFinite(inverse(turned))) return true;
    Transform inTile;
    double viewportWidth = place.viewportWidth, viewportHeight = place.viewportHeight;
    if (const auto box = parseViewBox(given(chain, "viewBox"))) {
        if (!(box->width > 0 && box->height > 0)) return true;
        inTile = Transform::translation(tile.minX, tile.minY) *
                 viewBoxMap(*box, tile.width(), tile.height(), given(chain, "preserveAspectRatio"));
        viewportWidth = box->width, viewportHeight = box->height;
    } else if (contentByBox) {
        inTile = {shapeBox.width(), 0, 0, shapeBox.height(), shapeBox.minX, shapeBox.minY};
    }

    // Only tiles that can be seen: over the shape, and over the page.
    const double reach = area.line ? area.line->width * std::max(1.0, area.line->miterLimit) / 2 : 0;
    Bounds covered = tightBounds(*area.outline, inverse(turned));
    if (reach > 0) {
        const double scale = std::sqrt(std::abs(inverse(turned).determinant()));
        covered = covered.grown(2 * reach * scale);
    }
    const Transform fromPage = inverse(place.map * turned);
    if (m_page.bounded && isFinite(fromPage)) {
        Bounds page;
        for (const double x : {0.0, m_page.width}) {
            for (const double y : {0.0, m_page.height})
                page.include(fromPage({x, y}));
        }
        covered = {std::max(covered.minX, page.minX), std::max(covered.minY, page.minY),
                   std::min(covered.maxX, page.maxX), std::min(covered.maxY, page.maxY)};
        if (covered.empty()) return true;
    }
    const double fromX = std::floor((covered.minX - tile.minX) / tile.width());
    const double toX = std::ceil((covered.maxX - tile.minX) / tile.width());
    const double fromY = std::floor((covered.minY - tile.minY) / tile.height());
    const double toY = std::ceil((covered.maxY - tile.minY) / tile.height());
    if (!((toX - fromX) * (toY - fromY) <= kTileLimit)) return false;
    if (!follow(pattern)) return true;

    auto clip = std::make_shared<Clip>();
    clip->shapes.push_back(area);
    clip->shapes.back().clip = nullptr;
    clip->outer = place.clip;
    const Style& style = treeStyle(contentNode);
    for (double j = fromY; j < toY && !m_budget.broken(); ++j) {
        for (double i = fromX; i < toX && !m_budget.broken(); ++i) {
            Place inside = place;
            inside.style = &style;
            inside.context = nullptr;
            ++inside.depth;
            inside.map = place.map * turned * Transform::translation(i * tile.width(), j * tile.height());
            if (!isFinite(inside.map)) continue;
            inside.clip = style.overflowVisible ? clip : rectangleClip(inside.map, tile, clip);
            inside.map = inside.map * inTile;
            inside.viewportWidth = viewportWidth;
            inside.viewportHeight = viewportHeight;
            m_budget.elements(1);
            visitChildren(contentNode, inside);
        }
    }
    m_following.pop_back();
    return true;
}

}  // namespace lidwright::svg
