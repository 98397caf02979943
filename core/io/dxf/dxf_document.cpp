#include "core/io/dxf/dxf_document.h"

#include "core/base/units.h"
#include "core/io/dxf/dxf_entity.h"
#include "core/io/dxf/dxf_groups.h"
#include "core/io/dxf/dxf_reader.h"

#include <algorithm>
#include <array>

namespace lidwright::dxf {
namespace {

/// Millimetres in the units that $INSUNITS numbers (DXF Reference 2018, header variables); 0 for none.
double unitOf(int number)
{
    constexpr double kFoot = 12 * kMillimetresPerInch;
    constexpr std::array kUnits{0.0,
                                kMillimetresPerInch,
                                kFoot,
                                5280 * kFoot,
                                1.0,
                                10.0,
                                1000.0,
                                1e6,
                                kMillimetresPerInch * 1e-6,
                                kMillimetresPerInch * 1e-3,
                                3 * kFoot,
                                1e-7,
                                1e-6,
                                1e-3,
                                100.0,
                                1e4,
                                1e5};
    if (number < 0 || number >= static_cast<int>(kUnits.size())) return 0;
    return kUnits[static_cast<std::size_t>(number)];
}

class Parser {
public:
    Parser(std::string_view text, Notes& notes) : m_reader(text), m_notes(notes) {}

    Result<Document> parse()
    {
        bool ended = false, sections = false;
        while (const auto group = next()) {
            if (group->code != 0) continue;
            if (group->value == "EOF") {
                ended = true;
                break;
            }
            if (group->value != "SECTION") continue;
            const auto name = next();
            if (!name || name->code != 2) continue;
            sections = true;
            section(name->value);
        }
        if (m_error) return *m_error;
        if (m_reader.broken())
            return Error{"a group code is no number", "line " + std::to_string(m_reader.line()),
                         "save the drawing as DXF anew", -1};
        if (!sections) return Error{"it is no DXF drawing", {}, "save the drawing as ASCII DXF"};
        if (!ended) m_notes.add(Issue::CutOff);
        return std::move(m_out);
    }

private:
    GroupReader m_reader;
    Notes& m_notes;
    Document m_out;
    std::optional<Error> m_error;
    std::vector<Group> m_groups;
    std::size_t m_entities = 0, m_points = 0;

    std::optional<Group> next()
    {
        if (m_error) return std::nullopt;
        return m_reader.next();
    }

    void section(std::string_view name)
    {
        if (name == "HEADER") return header();
        if (name == "TABLES") return tables();
        if (name == "BLOCKS") return blocks();
        if (name == "ENTITIES") return entities(m_out.entities, true);
        while (const auto group = next())
            if (group->code == 0 && group->value == "ENDSEC") return;
    }

    void header()
    {
        std::string_view variable;
        while (const auto group = next()) {
            if (group->code == 0) return;
            if (group->code == 9) variable = group->value;
            if (group->code == 70 && variable == "$INSUNITS")
                m_out.unit_mm = unitOf(wholeOf(group->value).value_or(0));
        }
    }

    /// The groups up to the next one with code 0, which stays.
    void gather()
    {
        m_groups.clear();
        while (const auto group = next()) {
            if (group->code == 0) return m_reader.putBack();
            m_groups.push_back(*group);
        }
    }

    void tables()
    {
        while (const auto group = next()) {
            if (group->code != 0) continue;
            if (group->value == "ENDSEC") return;
            if (group->value != "LAYER") continue;
            gather();
            EntityGroups groups(m_groups);
            const std::string_view name = groups.text(2).value_or("");
            const int colour = groups.whole(62, 7);
            constexpr int kFrozen = 1;
            Layer& layer = m_out.layers[static_cast<std::size_t>(layerNumber(name))];
            layer.off = colour < 0;
            layer.frozen = (groups.whole(70) & kFrozen) != 0;
            layer.colour = dxfColour(std::abs(std::max(colour, -255)));
            if (groups.text(420)) layer.colour = static_cast<DxfRgb>(groups.whole(420)) & 0xffffffU;
            // Nothing on it is ever put out.
            if (nameKey(name) == "defpoints") layer.frozen = true;
        }
    }

    int layerNumber(std::string_view name)
    {
        const auto [at, made] = m_out.layerOf.emplace(nameKey(name), static_cast<int>(m_out.layers.size()));
        if (made) {
            spend(1, 0);
            Layer layer;
            layer.name = cleanName(name);
            if (layer.name.empty()) layer.name = "(no name)";
            m_out.layers.push_back(std::move(layer));
        }
        return at->second;
    }

    void blocks()
    {
        while (const auto group = next()) {
            if (group->code != 0) continue;
            if (group->value == "ENDSEC") return;
            if (group->value != "BLOCK") continue;
            gather();
            EntityGroups groups(m_groups);
            Block block;
            block.base = groups.point(10);
            const std::string key = nameKey(groups.text(2).value_or(""));
            entities(block.entities, false);
            if (spend(1, 0)) m_out.blocks.emplace(key, std::move(block));
        }
    }

    bool spend(std::size_t entities, std::size_t points)
    {
        m_entities += entities;
        m_points += points;
        if (m_entities > kDxfEntityLimit)
            m_error =
                Error{"more than 200,000 entities, layers and blocks", {}, "leave out part of the drawing"};
        if (m_points > kDxfPointLimit)
            m_error = Error{"more than 2,000,000 points", {}, "simplify the drawing"};
        return !m_error;
    }

    /// Entities up to ENDSEC or, in a block, ENDBLK.
    void entities(std::vector<Entity>& list, bool model)
    {
        while (const auto group = next()) {
            if (group->code != 0) continue;
            const std::string_view type = group->value;
            if (type == "ENDSEC" || type == "EOF") return m_reader.putBack();
            if (type == "ENDBLK") return;
            if (type == "SEQEND" || type == "VERTEX") continue;
            gather();
            EntityGroups groups(m_groups);
            const bool paper = model && groups.whole(67) == 1;
            const bool invisible = groups.whole(60) == 1;
            Entity entity = readShape(type, groups);
            entity.layer = layerNumber(groups.text(8).value_or("0"));
            entity.colourNumber = groups.whole(62, 256);
            if (groups.text(420)) entity.trueColour = static_cast<DxfRgb>(groups.whole(420)) & 0xffffffU;
            if (type == "POLYLINE") vertices(entity);
            if (!spend(1, pointsOf(entity))) return;
            if (paper) {
                // Every file has viewports there; they are no drawing.
                if (type != "VIEWPORT") m_notes.add(Issue::Paper);
                continue;
            }
            if (invisible) entity.shape = Foreign{Issue::Hidden, {}};
            list.push_back(std::move(entity));
        }
    }

    static std::size_t pointsOf(const Entity& entity)
    {
        if (const auto* line = std::get_if<BulgeLine>(&entity.shape)) return line->vertices.size();
        if (const auto* spline = std::get_if<Spline>(&entity.shape)) return spline->points.size();
        return 1;
    }

    void vertices(Entity& entity)
    {
        auto* line = std::get_if<BulgeLine>(&entity.shape);
        constexpr int kFrame = 16;  // of a spline that the polyline approximates: not on the curve
        bool bad = false;
        while (const auto group = next()) {
            if (group->code != 0) continue;
            if (group->value == "SEQEND") break;
            if (group->value != "VERTEX") {
                m_reader.putBack();
                break;
            }
            gather();
            EntityGroups groups(m_groups);
            if (line && (groups.whole(70) & kFrame) == 0) {
                line->vertices.push_back({groups.point(10), groups.real(42)});
                if (line->vertices.size() > kDxfPointLimit) break;
            }
            bad = bad || groups.bad();
        }
        if (bad && line) entity.shape = Foreign{Issue::Broken, "POLYLINE"};
    }
};

}  // namespace

Result<Document> parse(std::string_view text, Notes& notes)
{
    return Parser(text, notes).parse();
}

}  // namespace lidwright::dxf
