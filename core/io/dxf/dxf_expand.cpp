#include "core/io/dxf/dxf_expand.h"

#include "core/io/dxf/dxf_groups.h"
#include "core/io/dxf/dxf_reader.h"

#include <algorithm>
#include <cmath>

namespace lidwright::dxf {
namespace {

constexpr int kByLayer = 256, kByBlock = 0;

class Expander {
public:
    Expander(const Document& document, double tolerance, Notes* notes)
        : m_document(document), m_tolerance(tolerance), m_notes(notes)
    {
        const auto zero = document.layerOf.find("0");
        if (zero != document.layerOf.end()) m_zero = zero->second;
    }

    Expanded run(const Transform& map)
    {
        Around top;
        top.map = map;
        entities(m_document.entities, top);
        return std::move(m_out);
    }

private:
    /// What an entity takes from the insert that it comes by.
    struct Around {
        Transform map;
        std::optional<int> layer;
        DxfRgb colour = 0;
        int depth = 0;
    };

    const Document& m_document;
    double m_tolerance;
    Notes* m_notes;
    int m_zero = -1;
    Expanded m_out;
    std::map<std::pair<int, DxfRgb>, std::size_t> m_paints;
    std::vector<const Block*> m_open;
    std::size_t m_entities = 0, m_points = 0;

    void note(Issue issue, const std::string& detail = {})
    {
        if (m_notes) m_notes->add(issue, detail);
    }

    bool spend(std::size_t entityCount, std::size_t pointCount)
    {
        m_entities += entityCount;
        m_points += pointCount;
        if (m_entities > kDxfEntityLimit)
            m_out.error = Error{"more than 200,000 entities, those of inserted blocks counted",
                                {},
                                "simplify the drawing or leave out part of it"};
        if (m_points > kDxfPointLimit)
            m_out.error = Error{"more than 2,000,000 points once its curves are divided",
                                {},
                                "simplify the drawing or leave out part of it"};
        return !m_out.error;
    }

    const Layer& layerAt(int number) const { return m_document.layers[static_cast<std::size_t>(number)]; }

    int layerOf(const Entity& entity, const Around& around) const
    {
        return around.layer && entity.layer == m_zero ? *around.layer : entity.layer;
    }

    DxfRgb colourOf(const Entity& entity, const Around& around) const
    {
        if (entity.trueColour) return *entity.trueColour;
        if (entity.colourNumber == kByBlock) return around.colour;
        if (entity.colourNumber == kByLayer) return layerAt(layerOf(entity, around)).colour;
        return dxfColour(entity.colourNumber);
    }

    void entities(const std::vector<Entity>& list, const Around& around)
    {
        for (const Entity& entity : list) {
            if (!spend(1, 0)) return;
            one(entity, around);
        }
    }

    void one(const Entity& entity, const Around& around)
    {
        const Layer& layer = layerAt(layerOf(entity, around));
        const auto* insert = std::get_if<Insert>(&entity.shape);
        // What an insert brings along lies on layers of its own, which stay when that of the insert is off.
        if (layer.frozen || (layer.off && !insert)) {
            if (m_notes) note(Issue::Hidden, "on \"" + layer.name + "\"");
            return;
        }
        if (const auto* foreign = std::get_if<Foreign>(&entity.shape))
            return note(foreign->issue, foreign->detail);
        if (entity.tilted) note(Issue::Tilted);
        const Transform map = around.map * entity.plane;
        if (insert) return inserted(entity, *insert, around, map);
        const std::size_t left = kDxfPointLimit - std::min(m_points, kDxfPointLimit) + 1;
        FlatLine line;
        if (const auto* bulges = std::get_if<BulgeLine>(&entity.shape))
            line = flattened(*bulges, map, m_tolerance, left);
        else if (const auto* arc = std::get_if<EllipseArc>(&entity.shape))
            line = flattened(*arc, map, m_tolerance);
        else
            line = flattened(std::get<Spline>(entity.shape), map, m_tolerance, left);
        if (spend(0, line.points.size()))
            keep(std::move(line), layerOf(entity, around), colourOf(entity, around));
    }

    void keep(FlatLine line, int layer, DxfRgb colour)
    {
        const Bounds box = bounds(line.points);
        const bool finite = std::isfinite(box.width()) && std::isfinite(box.height());
        if (line.points.empty() || !finite || std::abs(box.minX) > kDxfFarthest ||
            std::abs(box.maxX) > kDxfFarthest || std::abs(box.minY) > kDxfFarthest ||
            std::abs(box.maxY) > kDxfFarthest)
            return note(Issue::Broken, "out of bounds");
        // A line without length is nothing that could be cut.
        if (box.width() == 0 && box.height() == 0) return;
        m_out.box.include(box);
        const auto [at, made] = m_paints.emplace(std::pair(layer, colour), m_out.paints.size());
        if (made) m_out.paints.push_back({layer, colour, {}});
        m_out.paints[at->second].lines.push_back(std::move(line));
    }

    void inserted(const Entity& entity, const Insert& insert, const Around& around, const Transform& map)
    {
        const auto found = m_document.blocks.find(insert.block);
        if (found == m_document.blocks.end())
            return note(Issue::NoBlock, '"' + cleanName(insert.block) + '"');
        const Block& block = found->second;
        if (std::find(m_open.begin(), m_open.end(), &block) != m_open.end()) return note(Issue::Cycle);
        if (around.depth >= kDxfDepthLimit) return note(Issue::TooDeep);
        m_open.push_back(&block);
        Around inner;
        inner.layer = layerOf(entity, around);
        inner.colour = colourOf(entity, around);
        inner.depth = around.depth + 1;
        const Transform base = insert.placed * Transform::translation(-block.base.x, -block.base.y);
        for (int row = 0; row < insert.rows && !m_out.error; ++row) {
            for (int column = 0; column < insert.columns && !m_out.error; ++column) {
                const Point step = column * insert.columnStep + row * insert.rowStep;
                inner.map = map * Transform::translation(step.x, step.y) * base;
                if (spend(1, 0)) entities(block.entities, inner);
            }
        }
        m_open.pop_back();
    }
};

}  // namespace

Expanded expand(const Document& document, const Transform& map, double tolerance, Notes* notes)
{
    return Expander(document, tolerance, notes).run(map);
}

}  // namespace lidwright::dxf
