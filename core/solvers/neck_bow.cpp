#include "core/solvers/neck_bow.h"

#include "core/materials/wood.h"
#include "core/solvers/height_chain.h"
#include "core/solvers/laminated_section.h"
#include "core/solvers/string_forces.h"
#include "core/solvers/string_loads.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// Stations nearer than this are one.
constexpr double kSame = 0.01;
/// The stick touches the lid where its top lies no deeper under it, mm.
constexpr double kTouch = 0.05;
/// Thinner than this, mm, a layer adds nothing.
constexpr double kThinnest = 0.1;

/// The layers of the neck at x, from the bottom up.
struct NeckSections {
    const Plan& plan;
    const Layout& layout;
    const Wood& stick;
    const Wood& board;

    /// In the stick's own heights, as if it were not tilted.
    double top(double x) const { return stickTop(plan, layout, x) - layout.neckRise(x); }
    double boardThickness() const
    {
        const bool slots = plan.frets.kind == FretKind::Wire && !layout.frets.lines.empty();
        return plan.fretboard.thickness - (slots ? plan.frets.tang + plan.frets.slotSpare : 0);
    }
    /// `side`: just beyond x towards the head (-1) or the tail (+1), where something may begin.
    SectionAt at(double x, int side) const
    {
        const double just = x + side * kSame / 2;
        SectionAt out;
        out.underside = layout.neckZ.low;
        const auto add = [&](double width, double height) {
            out.layers.push_back(
                {width, height, stick.youngsModulus_MPa(), stick.density_kg_m3, stick.bending_MPa});
        };
        const double height = std::max(top(just) - layout.neckZ.low, kThinnest);
        const ReliefLayout& relief = layout.relief;
        if (relief.pad && relief.padWidth < plan.neck.width && just > relief.padFrom && just < relief.padTo &&
            height > plan.relief.depth + kThinnest) {
            add(plan.neck.width, height - plan.relief.depth);
            add(relief.padWidth, plan.relief.depth);
        } else {
            add(plan.neck.width, height);
        }
        if (just > layout.nutEdgeX && just < layout.fretboardEndX && boardThickness() > kThinnest)
            out.layers.push_back({boardWidth(plan, layout, x), boardThickness(), board.youngsModulus_MPa(),
                                  board.density_kg_m3, board.bending_MPa});
        return out;
    }
};

std::vector<double> stationsOf(const Plan& plan, const Layout& layout)
{
    std::vector<double> all{layout.headEndX, layout.nutX, layout.tailEndX};
    const auto add = [&](double x) {
        if (x > layout.headEndX && x < layout.tailEndX) all.push_back(x);
    };
    if (plan.head.shape == HeadShape::Thinned) {
        add(layout.nutX - plan.head.step);
        add(layout.nutX - plan.head.step - plan.head.ramp);
    }
    // Of a round end as many points as the beam can tell apart.
    constexpr double kApart = 3;
    for (const ReliefCut& cut : layout.relief.cuts) {
        double last = cut.from - 2 * kApart;
        for (std::size_t i = 0; i < cut.floor.size(); ++i) {
            const double x = cut.floor[i].x;
            const bool corner = i < 2 || i + 2 >= cut.floor.size();
            if (!corner && x - last < kApart) continue;
            add(x);
            last = x;
        }
    }
    if (layout.relief.pad) {
        add(layout.relief.padFrom);
        add(layout.relief.padTo);
    }
    if (!layout.fretboardOutline.empty()) add(layout.fretboardEndX);
    if (layout.seatDepth > 0) {
        add(layout.seatFrom);
        add(layout.seatTo);
    }
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end(), [](double a, double b) { return b - a < kSame; }),
              all.end());
    return all;
}

std::optional<Error> addPieces(const NeckSections& sections, NeckBeam& beam)
{
    const auto stations = stationsOf(sections.plan, sections.layout);
    beam.start = stations.front();
    for (std::size_t i = 1; i < stations.size(); ++i) {
        const SectionAt from = sections.at(stations[i - 1], 1), to = sections.at(stations[i], -1);
        // Where nothing tapers one piece is exact.
        const bool even = from.layers.size() == to.layers.size() &&
                          std::equal(from.layers.begin(), from.layers.end(), to.layers.begin(),
                                     [](const SectionLayer& a, const SectionLayer& b) {
                                         return std::abs(a.width - b.width) < kSame &&
                                                std::abs(a.thickness - b.thickness) < kSame;
                                     });
        const auto pieces = taperedPieces(stations[i] - stations[i - 1], from, to, even ? 1 : 4);
        if (!pieces) return pieces.error();
        beam.pieces.insert(beam.pieces.end(), pieces->begin(), pieces->end());
    }
    return std::nullopt;
}

double axisAt(const NeckBeam& beam, double x)
{
    double from = beam.start;
    for (const BeamPiece& piece : beam.pieces) {
        if (x <= from + piece.length) return piece.start.axis;
        from += piece.length;
    }
    return beam.pieces.back().end.axis;
}

/// How far a string bends down over the middle of three points, degrees.
double breakAt(const Point3& before, const Point3& at, const Point3& after)
{
    const auto down = [&](const Point3& to) {
        return std::atan2(at.z - to.z, std::hypot(to.x - at.x, to.y - at.y));
    };
    return degrees(down(before) + down(after));
}

/// Lays one string's pull on the neck.
std::optional<Error> addString(const std::vector<Point3>& way, double tension, const Plan& plan,
                               const Layout& layout, NeckBeam& beam, NeckBow& out)
{
    const auto forces = pathForces(way, tension);
    if (!forces) return forces.error();
    const std::size_t last = way.size() - 1, saddle = last - 1, nut = last - 2;
    const auto sum = [](StringsPull& pull, const Point3& force) {
        pull.along += force.x;
        pull.up += force.z;
    };
    sum(out.nut, (*forces)[nut]);
    sum(out.saddle, (*forces)[saddle]);
    sum(out.anchor, (*forces)[last]);
    const double saddleBreak = breakAt(way[nut], way[saddle], way[last]);
    out.saddleBreak = std::min(out.saddleBreak, saddleBreak);
    if (nut > 0) out.nutBreak = std::min(out.nutBreak, breakAt(way[nut - 1], way[nut], way[saddle]));

    // Every stretch of the string between two points that stand on the neck pulls these together. The saddle
    // is taken along; what the lid bears of its load is put back below.
    const bool onNeck = plan.anchor.kind == AnchorKind::TailEnd;
    const double wallX = (layout.tailWall.outerX + layout.tailWall.innerX) / 2;
    double modelled = 0;
    for (std::size_t i = 0; i + 1 < way.size(); ++i) {
        const bool tail = i + 1 == last;
        const double toX = tail && !onNeck ? wallX : way[i + 1].x;
        const double toZ = tail && !onNeck ? axisAt(beam, wallX) : way[i + 1].z;
        const double run = toX - way[i].x;
        if (std::abs(run) < 1) continue;  // a post right beside the nut adds nothing
        const double share =
            tension * std::abs(run) / std::hypot(run, way[i + 1].y - way[i].y, toZ - way[i].z);
        beam.axials.push_back({way[i].x, toX, -share, way[i].z, toZ, true});
        const double slope = share * (toZ - way[i].z) / run;
        if (i == saddle) modelled += slope;
        if (i + 1 == saddle) modelled -= slope;
    }
    const double wanted = out.bridgeOnNeck ? (*forces)[saddle].z : 0;
    if (std::abs(wanted - modelled) > 1e-9) beam.loads.push_back({way[saddle].x, wanted - modelled, 0});
    return std::nullopt;
}

void readLine(const Layout& layout, const BeamAnswer& answer, NeckBow& out)
{
    constexpr int kSteps = 200;
    for (int i = 0; i <= kSteps; ++i) {
        const double x = layout.headEndX + (layout.tailEndX - layout.headEndX) * i / kSteps;
        out.line.push_back({x, answer.at(x).deflection});
    }
    const double from = layout.nutEdgeX,
                 to = std::max(layout.nutEdgeX + 1, std::min(layout.headWall.outerX, layout.fretboardEndX));
    const double atNut = answer.at(from).deflection, atBox = answer.at(to).deflection;
    out.nutRise = atNut;
    for (int i = 0; i <= kSteps; ++i) {
        const double share = static_cast<double>(i) / kSteps, x = from + share * (to - from);
        const double hollow = atNut + share * (atBox - atNut) - answer.at(x).deflection;
        if (std::abs(hollow) > std::abs(out.hollow)) {
            out.hollow = hollow;
            out.hollowAt = x;
        }
    }
}

void readStress(const NeckSections& sections, const BeamAnswer& answer, NeckBow& out)
{
    out.factorOfSafety = 0;
    bool first = true;
    for (const BeamElement& element : answer.elements)
        for (const int side : {1, -1}) {
            const double x = side > 0 ? element.x : element.x + element.length;
            const BeamState state = answer.at(x, side > 0 ? BeamSide::TowardsEnd : BeamSide::TowardsStart);
            const auto section = laminatedSection(sections.at(x, side).layers);
            if (!section) continue;
            const auto stresses = layerStresses(*section, state.moment_Nmm, state.axial_N);
            for (std::size_t k = 0; k < stresses.size(); ++k) {
                if (!stresses[k].factorOfSafety) continue;
                if (!first && *stresses[k].factorOfSafety >= out.factorOfSafety) continue;
                first = false;
                out.factorOfSafety = *stresses[k].factorOfSafety;
                out.stress_MPa = std::abs(stresses[k].top_MPa) > std::abs(stresses[k].bottom_MPa)
                                     ? stresses[k].top_MPa
                                     : stresses[k].bottom_MPa;
                out.stressAt = x;
                out.stressedWood = k == 0 ? sections.stick.name : sections.board.name;
            }
        }
}

}  // namespace

double NeckBow::liftAt(double x) const
{
    if (line.empty()) return 0;
    const auto after =
        std::lower_bound(line.begin(), line.end(), x, [](Point p, double at) { return p.x < at; });
    if (after == line.begin()) return line.front().y;
    if (after == line.end()) return line.back().y;
    const Point a = *(after - 1), b = *after;
    const double run = b.x - a.x;
    return run > 0 ? a.y + (x - a.x) / run * (b.y - a.y) : b.y;
}

NeckBow neckBow(const Plan& plan, const Layout& layout)
{
    NeckBow out;
    const auto refuse = [&](Error error) {
        out.problem = std::move(error);
        return out;
    };
    const Wood* stick = findWood(plan.neck.wood);
    const Wood* board = findWood(plan.fretboard.wood);
    if (stick == nullptr || board == nullptr)
        return refuse({"this wood is not known", stick == nullptr ? "neck.wood" : "fretboard.wood",
                       "choose one of the list"});
    if (!layout.headWall.crossed || !layout.tailWall.crossed)
        return refuse({"the neck does not cross both end walls", "neck", "bring it over the box"});
    if (layout.nutX <= layout.headEndX || layout.nutX >= layout.headWall.outerX ||
        layout.saddleX <= layout.nutX)
        return refuse(
            {"nut, box and saddle do not follow one another", "scale", "set the nut before the box"});
    const NeckSections sections{plan, layout, *stick, *board};
    NeckBeam beam;
    if (const auto error = addPieces(sections, beam)) return refuse(*error);
    for (const EndWallLayout* wall : {&layout.headWall, &layout.tailWall})
        beam.supports.push_back({(wall->outerX + wall->innerX) / 2, SupportKind::Held, 0});
    const double under = layout.lid.low - stickTop(plan, layout, layout.saddleX);
    out.bridgeOnNeck = under <= kTouch && layout.saddleX < layout.tailEndX;
    out.nutBreak = out.saddleBreak = 180;
    const auto strings = playedStrings(plan, layout);
    for (std::size_t i = 0; i < strings.size(); ++i) {
        if (!strings[i].ok()) continue;
        out.pull_N += strings[i].load.tension_N;
        // The beam lies level, so the strings are seen from it.
        std::vector<Point3> way = stringWay(plan, layout, i).points;
        for (Point3& p : way)
            p.z -= layout.neckRise(p.x);
        if (const auto error = addString(way, strings[i].load.tension_N, plan, layout, beam, out))
            return refuse(*error);
    }
    if (out.pull_N <= 0)
        return refuse({"no string's tension is known", "strings", "see the findings of the strings"});
    const auto answer = solveBeam(beam);
    if (!answer) return refuse(answer.error());
    out.amplification = answer->amplification;
    out.bucklingFactor = answer->bucklingFactor;
    readLine(layout, *answer, out);
    readStress(sections, *answer, out);
    return out;
}

StringWay stringWay(const Plan& plan, const Layout& layout, std::size_t index)
{
    StringWay out;
    std::vector<Point3>& way = out.points;
    const auto& head = layout.head.strings[index].way;
    for (std::size_t k = head.size(); k-- > 1;)
        way.push_back({head[k].at.x, head[k].at.y, head[k].z + layout.neckRise(head[k].at.x)});
    out.nut = way.size();
    const auto& [nut, saddle] = layout.strings[index];
    const HeightChain chain = heightChain(plan, layout);
    way.push_back({nut.x, nut.y, chain.fretTops + chain.nutOverFrets + layout.neckRise(nut.x)});
    way.push_back({saddle.x, saddle.y, layout.bridgeZ.high});
    switch (plan.anchor.kind) {
        case AnchorKind::TailEnd:
            way.push_back({layout.tailEndX, saddle.y, -plan.anchor.depth});
            break;
        case AnchorKind::WallPins:
            way.push_back({std::max(layout.tailWall.outerX, saddle.x + 1), saddle.y, -plan.anchor.depth});
            break;
        case AnchorKind::Tailpiece:
            way.push_back({saddle.x + plan.anchor.behind, saddle.y, plan.anchor.depth});
            break;
    }
    return out;
}

}  // namespace lidwright
