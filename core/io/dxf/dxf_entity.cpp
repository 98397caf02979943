#include "core/io/dxf/dxf_entity.h"

#include "core/base/units.h"
#include "core/io/dxf/dxf_reader.h"

#include <algorithm>
#include <cmath>

namespace lidwright::dxf {
namespace {

constexpr double kFullTurn = 2 * kPi;
/// The cosine of a tilt below this is no tilt but rounding.
constexpr double kUpright = 1 - 1e-9;

Direction crossed(Direction a, Direction b)
{
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

Direction unit(Direction d)
{
    const double length = std::hypot(d.x, d.y, d.z);
    if (!(length > 0)) return {};
    return {d.x / length, d.y / length, d.z / length};
}

/// The angle from `from` on to `to`, above 0 and at most a full turn.
double sweepOf(double from, double to)
{
    double sweep = std::fmod(to - from, kFullTurn);
    if (sweep <= 0) sweep += kFullTurn;
    return sweep;
}

EllipseArc circleArc(Point centre, double radius, double from, double sweep, bool whole)
{
    return {centre, {radius, 0}, {0, radius}, from, sweep, whole};
}

std::variant<BulgeLine, EllipseArc, Spline, Insert, Foreign> ellipse(EntityGroups& groups, Direction normal)
{
    const Direction major{groups.real(11), groups.real(21), groups.real(31)};
    const double ratio = groups.real(40, 1);
    const Direction minor = crossed(normal, major);
    const double from = groups.real(41, 0), to = groups.real(42, kFullTurn);
    EllipseArc arc;
    arc.centre = groups.point(10);
    arc.u = {major.x, major.y};
    arc.v = {ratio * minor.x, ratio * minor.y};
    arc.from = std::fmod(from, kFullTurn);
    arc.sweep = sweepOf(from, to);
    arc.whole = arc.sweep >= kFullTurn - 1e-9;
    return arc;
}

BulgeLine lightPolyline(EntityGroups& groups)
{
    BulgeLine line;
    line.closed = (groups.whole(70) & 1) != 0;
    for (const Group& group : groups.all()) {
        if (group.code == 10) line.vertices.push_back({{groups.numberIn(group), 0}, 0});
        if (line.vertices.empty()) continue;
        if (group.code == 20) line.vertices.back().at.y = groups.numberIn(group);
        if (group.code == 42) line.vertices.back().bulge = groups.numberIn(group);
    }
    return line;
}

bool sound(const Spline& spline)
{
    const std::size_t degree = static_cast<std::size_t>(spline.degree), n = spline.points.size();
    if (spline.degree < 1 || spline.degree > kDxfDegreeLimit || n < degree + 1) return false;
    if (spline.knots.size() != n + degree + 1) return false;
    if (!std::is_sorted(spline.knots.begin(), spline.knots.end())) return false;
    if (!(spline.knots[degree] < spline.knots[n])) return false;
    const auto heavy = [](double weight) { return weight > 0; };
    return spline.weights.empty() ||
           (spline.weights.size() == n && std::all_of(spline.weights.begin(), spline.weights.end(), heavy));
}

std::variant<BulgeLine, EllipseArc, Spline, Insert, Foreign> splineOf(EntityGroups& groups)
{
    Spline spline;
    spline.degree = groups.whole(71, 3);
    bool fitted = false;
    for (const Group& group : groups.all()) {
        if (group.code == 40) spline.knots.push_back(groups.numberIn(group));
        if (group.code == 41) spline.weights.push_back(groups.numberIn(group));
        if (group.code == 10) spline.points.push_back({groups.numberIn(group), 0});
        if (group.code == 20 && !spline.points.empty()) spline.points.back().y = groups.numberIn(group);
        if (group.code == 11) fitted = true;
    }
    if (spline.points.empty() && fitted) return Foreign{Issue::FitPoints, {}};
    if (!sound(spline)) return Foreign{Issue::Broken, "SPLINE"};
    return spline;
}

Insert insertOf(EntityGroups& groups)
{
    Insert insert;
    insert.block = nameKey(groups.text(2).value_or(""));
    const Point at = groups.point(10);
    const Transform turn = Transform::rotation(radians(groups.real(50)));
    insert.placed = Transform::translation(at.x, at.y) * turn *
                    Transform::scaling(groups.real(41, 1), groups.real(42, 1));
    insert.columns = std::max(1, groups.whole(70, 1));
    insert.rows = std::max(1, groups.whole(71, 1));
    insert.columnStep = turn({groups.real(44), 0});
    insert.rowStep = turn({0, groups.real(45)});
    return insert;
}

/// The kind's name, as far as it is a name.
std::string kindName(std::string_view type)
{
    constexpr std::size_t kLongest = 24;
    std::string name;
    for (const char c : type.substr(0, kLongest)) {
        const bool plain =
            (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
        if (plain) name += c;
    }
    return name.empty() ? "unnamed" : name;
}

}  // namespace

std::optional<std::string_view> EntityGroups::text(int code) const
{
    const auto at =
        std::find_if(m_groups.begin(), m_groups.end(), [&](const Group& g) { return g.code == code; });
    if (at == m_groups.end()) return std::nullopt;
    return at->value;
}

double EntityGroups::real(int code, double otherwise)
{
    const auto found = text(code);
    return found ? numberIn({code, *found}) : otherwise;
}

int EntityGroups::whole(int code, int otherwise)
{
    const auto found = text(code);
    if (!found) return otherwise;
    const auto value = wholeOf(*found);
    m_bad = m_bad || !value;
    return value.value_or(otherwise);
}

double EntityGroups::numberIn(const Group& group)
{
    const auto value = numberOf(group.value);
    m_bad = m_bad || !value;
    return value.value_or(0);
}

Direction normalOf(EntityGroups& groups)
{
    return unit({groups.real(210, 0), groups.real(220, 0), groups.real(230, 1)});
}

Transform planeOf(Direction n, double elevation)
{
    constexpr double kNearlyUp = 1.0 / 64;
    const bool nearlyUp = std::abs(n.x) < kNearlyUp && std::abs(n.y) < kNearlyUp;
    const Direction x = unit(crossed(nearlyUp ? Direction{0, 1, 0} : Direction{0, 0, 1}, n));
    const Direction y = crossed(n, x);
    return {x.x, x.y, y.x, y.y, elevation * n.x, elevation * n.y};
}

Entity readShape(std::string_view type, EntityGroups& groups)
{
    Entity entity;
    const Direction normal = normalOf(groups);
    const auto inPlane = [&](double elevation) {
        entity.plane = planeOf(normal, elevation);
        entity.tilted = std::abs(normal.z) < kUpright;
    };
    if (type == "LINE") {
        entity.shape = BulgeLine{{{groups.point(10), 0}, {groups.point(11), 0}}, false};
    } else if (type == "CIRCLE") {
        inPlane(groups.real(30));
        entity.shape = circleArc(groups.point(10), groups.real(40), 0, kFullTurn, true);
        if (!(groups.real(40) > 0)) entity.shape = Foreign{Issue::Broken, "CIRCLE"};
    } else if (type == "ARC") {
        inPlane(groups.real(30));
        const double from = radians(std::fmod(groups.real(50), 360)), to = radians(groups.real(51));
        const double sweep = sweepOf(from, to);
        entity.shape = circleArc(groups.point(10), groups.real(40), from, sweep, sweep >= kFullTurn - 1e-9);
        if (!(groups.real(40) > 0)) entity.shape = Foreign{Issue::Broken, "ARC"};
    } else if (type == "ELLIPSE") {
        entity.tilted = std::abs(normal.z) < kUpright;
        entity.shape = ellipse(groups, normal);
    } else if (type == "LWPOLYLINE") {
        inPlane(groups.real(38));
        entity.shape = lightPolyline(groups);
    } else if (type == "POLYLINE") {
        constexpr int kClosed = 1, kSpatial = 8, kMesh = 16 | 64;
        const int flags = groups.whole(70);
        if ((flags & kSpatial) == 0) inPlane(groups.real(30));
        entity.shape = BulgeLine{{}, (flags & kClosed) != 0};
        if ((flags & kMesh) != 0) entity.shape = Foreign{Issue::Kind, "POLYLINE (mesh)"};
    } else if (type == "SPLINE") {
        entity.shape = splineOf(groups);
    } else if (type == "INSERT") {
        inPlane(groups.real(30));
        entity.shape = insertOf(groups);
    } else {
        entity.shape = Foreign{Issue::Kind, kindName(type)};
    }
    if (groups.bad() && !std::holds_alternative<Foreign>(entity.shape))
        entity.shape = Foreign{Issue::Broken, kindName(type)};
    return entity;
}

}  // namespace lidwright::dxf
