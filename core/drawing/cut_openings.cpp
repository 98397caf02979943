#include "core/drawing/cut_openings.h"

#include "core/drawing/cut_lines.h"
#include "core/drawing/ring_nesting.h"
#include "core/layout/wiring_openings.h"

namespace lidwright {
namespace {

/// Beyond this, mm2, something of an engraving lies off the lid.
constexpr double kVisibleArea = 1e-3;

/// Where openings lie on the lid.
class LidEdge {
public:
    explicit LidEdge(const Ring& lid) : m_lid(lid), m_tree({lid}) {}

    /// For an opening with this outermost ring.
    bool meets(const Region& opening) const
    {
        if (m_tree.nearest(opening.rings.front()).distance <= kSameCutLine) return true;
        return contains(opening, m_lid.front());
    }
    bool meets(Point centre, double radius) const
    {
        return m_tree.nearest(centre).distance < radius + kSameCutLine;
    }
    bool holds(Point p) const { return m_tree.inside(p); }

private:
    const Ring& m_lid;
    SegmentTree m_tree;
};

/// True when the circle keeps clear of everything that the tree bounds.
bool clearOf(const SegmentTree& tree, Point centre, double radius)
{
    return tree.empty() || (!tree.inside(centre) && tree.nearest(centre).distance >= radius + kSameCutLine);
}

class Collector {
public:
    Collector(const Plan& plan, const Layout& layout, const CutJob& job)
        : m_plan(plan), m_layout(layout), m_job(job), m_edge(layout.lidOutline)
    {
        for (std::size_t i = 0; i < layout.holes.size(); ++i) {
            const bool circle = i < plan.holes.size() && plan.holes[i].kind == HoleKind::Circle;
            m_holes.push_back({{},
                               circle ? Point{plan.holes[i].x, plan.holes[i].y} : Point{},
                               circle ? plan.holes[i].width / 2 : 0,
                               layout.holes[i]});
        }
        for (WiringOpening& opening : wiringOpenings(plan, layout))
            m_holes.push_back(std::move(opening));
        for (const WiringOpening& hole : m_holes)
            m_holeTrees.emplace_back(std::vector<Ring>{hole.outline});
    }

    CutOpenings collect()
    {
        addHoles();
        addArt();
        divide(united());
        addAlignment();
        addEngraving();
        return std::move(m_out);
    }

private:
    const Plan& m_plan;
    const Layout& m_layout;
    const CutJob& m_job;
    LidEdge m_edge;
    std::vector<WiringOpening> m_holes;  ///< sound holes and those for wiring
    std::vector<SegmentTree> m_holeTrees;
    std::vector<Region> m_parts;
    CutOpenings m_out;

    void say(const char* pattern, std::vector<Sentence::Argument> arguments)
    {
        Sentence& sentence = m_out.messages.emplace_back();
        sentence.pattern = pattern;
        sentence.arguments = std::move(arguments);
    }

    bool aloneAmongArt(Point centre, double radius) const
    {
        for (const PlacedArtPtr& art : m_layout.art)
            if (art && !clearOf(art->cutTree, centre, radius)) return false;
        return true;
    }

    /// A hole keeps its true shape where nothing meets it.
    bool alone(std::size_t index, Point centre, double radius) const
    {
        if (!m_edge.holds(centre) || m_edge.meets(centre, radius)) return false;
        for (std::size_t i = 0; i < m_holeTrees.size(); ++i)
            if (i != index && !clearOf(m_holeTrees[i], centre, radius)) return false;
        return aloneAmongArt(centre, radius);
    }

    void addHoles()
    {
        for (std::size_t i = 0; i < m_holes.size(); ++i) {
            const WiringOpening& hole = m_holes[i];
            if (hole.outline.size() < 3) continue;
            if (hole.radius > 0 && alone(i, hole.at, hole.radius))
                m_out.circles.push_back({hole.at, hole.radius});
            else
                m_parts.push_back(fill({hole.outline}, FillRule::NonZero));
        }
    }

    void addArt()
    {
        for (const PlacedArtPtr& art : m_layout.art)
            if (art && !art->cut.empty()) m_parts.push_back(art->cut);
    }

    Region united()
    {
        if (m_parts.empty()) return {};
        if (m_parts.size() == 1) return std::move(m_parts.front());
        LinesOnce lines;
        for (const Region& part : m_parts)
            for (const Ring& ring : part.rings) {
                CutPath path;
                path.points = ring;
                path.closed = true;
                lines.fresh(path);
            }
        m_out.duplicates = lines.dropped();
        return unite(m_parts);
    }

    /// Openings within the lid, at its edge (part of the outline then), and beside it (left out).
    void divide(const Region& cut)
    {
        Region lid{{m_layout.lidOutline}};
        if (signedArea(m_layout.lidOutline) < 0)
            std::reverse(lid.rings.front().begin(), lid.rings.front().end());
        std::vector<Region> atEdge;
        for (Region& piece : connectedPieces(cut)) {
            const Point middle = bounds(piece).centre();
            if (m_edge.meets(piece)) {
                say("An opening near x %1, y %2 reaches the lid's edge.", {mm(middle.x), mm(middle.y)});
                (m_job.lidOutline ? atEdge : m_out.openings).push_back(piece);
            } else if (m_edge.holds(piece.rings.front().front())) {
                m_out.openings.push_back(piece);
            } else {
                say("An opening near x %1, y %2 lies beside the lid and is left out.",
                    {mm(middle.x), mm(middle.y)});
                continue;
            }
            m_out.cut.rings.insert(m_out.cut.rings.end(), piece.rings.begin(), piece.rings.end());
        }
        for (const CutOpenings::Circle& circle : m_out.circles)
            m_out.cut.rings.push_back(circleRing(circle.at, circle.radius));
        if (!m_job.lidOutline) return;
        m_out.lid = atEdge.empty() ? lid : subtract(lid, unite(atEdge));
        const std::size_t pieces = connectedPieces(m_out.lid).size();
        if (pieces > 1)
            say("The openings at the edge cut the lid into %1 pieces.",
                {Measure{static_cast<double>(pieces), Quantity::Count}});
    }

    void addAlignment()
    {
        const SegmentTree cut(m_out.cut.rings);
        std::vector<AlignmentHole> holes = m_job.alignment;
        for (const LidFixing& hole : m_plan.fixings)
            holes.push_back({{hole.x, hole.y}, hole.diameter});
        for (const AlignmentHole& hole : holes) {
            const double radius = hole.diameter / 2;
            const bool free =
                m_edge.holds(hole.at) && !m_edge.meets(hole.at, radius) && clearOf(cut, hole.at, radius);
            if (free)
                m_out.alignment.push_back({hole.at, radius});
            else
                say("The hole for a screw or pin at x %1, y %2 meets an opening or the lid's edge and is "
                    "left out.",
                    {mm(hole.at.x), mm(hole.at.y)});
        }
    }

    void addEngraving()
    {
        if (!m_job.engraving) return;
        std::vector<Region> parts;
        for (const PlacedArtPtr& art : m_layout.art)
            if (art && !art->engraved.empty()) parts.push_back(art->engraved);
        if (parts.empty()) return;
        Region all = parts.size() == 1 ? std::move(parts.front()) : unite(parts);
        all = subtract(all, m_out.cut);
        const Region lid = fill({m_layout.lidOutline}, FillRule::NonZero);
        if (area(subtract(all, lid)) > kVisibleArea) {
            say("Engraving that reaches beyond the lid is cut off at its edge.", {});
            all = intersect(all, lid);
        }
        m_out.engraved = std::move(all);
    }
};

void shrinkCircles(std::vector<CutOpenings::Circle>& circles, double by, std::vector<Sentence>& messages)
{
    std::vector<CutOpenings::Circle> left;
    for (CutOpenings::Circle circle : circles) {
        circle.radius -= by;
        if (circle.radius > 0) {
            left.push_back(circle);
            continue;
        }
        messages.push_back(
            {"The kerf closes the hole at x %1, y %2: it is not cut.", {mm(circle.at.x), mm(circle.at.y)}});
    }
    circles = std::move(left);
}

}  // namespace

CutOpenings openingsOf(const Plan& plan, const Layout& layout, const CutJob& job)
{
    return Collector(plan, layout, job).collect();
}

void takeKerfOff(CutOpenings& openings, double kerf)
{
    const double half = kerf / 2;
    std::vector<Region> left;
    for (const Region& opening : openings.openings) {
        const Bounds box = bounds(opening);
        const std::vector<Region> pieces = connectedPieces(offset(opening, -half, kKerfTolerance));
        if (pieces.empty())
            openings.messages.push_back(
                {"The kerf closes an opening of %1 by %2 near x %3, y %4: it is not cut.",
                 {mm(box.width()), mm(box.height()), mm(box.centre().x), mm(box.centre().y)}});
        if (pieces.size() > 1)
            openings.messages.push_back({"The kerf divides an opening near x %1, y %2 into %3.",
                                         {mm(box.centre().x), mm(box.centre().y),
                                          Measure{static_cast<double>(pieces.size()), Quantity::Count}}});
        left.insert(left.end(), pieces.begin(), pieces.end());
    }
    openings.openings = std::move(left);
    shrinkCircles(openings.circles, half, openings.messages);
    shrinkCircles(openings.alignment, half, openings.messages);
    openings.lid = offset(openings.lid, half, kKerfTolerance);
}

}  // namespace lidwright
