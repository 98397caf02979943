#include "core/checks/gravest.h"
#include "core/checks/wiring/device_words.h"
#include "core/checks/wiring/wiring_checks.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "wiring.wall";
/// Wood about a hole through a wall (common practice, no source): less breaks out under the nut.
constexpr double kLeastWood = 3;
constexpr double kFineWood = 5;

bool onEndWall(const Device& d)
{
    return d.place == DevicePlace::HeadWall || d.place == DevicePlace::TailWall;
}

/// Inside of the box along the wall.
Span insideAlong(const Layout& l, const Device& d)
{
    const Bounds b = bounds(l.boxInner);
    if (b.empty()) return {};
    return onEndWall(d) ? Span{b.minY, b.maxY} : Span{b.minX, b.maxX};
}

/// From the hole's rim to the opening that the neck passes; below 0 inside it.
double toOpening(const EndWallLayout& wall, Point hole, double radius)
{
    const double dx = std::abs(hole.x - wall.openingCentre) - wall.openingWidth / 2;
    const double dz = std::max(wall.opening.low - hole.y, hole.y - wall.opening.high);
    if (dx > 0 && dz > 0) return std::hypot(dx, dz) - radius;
    return std::max(dx, dz) - radius;
}

/// One thing that must keep off another.
struct Room {
    double value = 0;
    bool wood = false;  ///< about the hole, not air about the body
    const char* wrong = "";
};

std::vector<Room> roomsOf(const CheckInput& in, std::size_t i)
{
    const Layout& l = in.layout;
    const Device& d = in.plan.wiring[i];
    const DeviceLayout& placed = l.devices[i];
    const Span along = insideAlong(l, d);
    const double half = d.bodyLength / 2;
    std::vector<Room> out{
        {l.lid.low - placed.high, false, "%1 reaches %2 into the lid."},
        {placed.low - l.base.high, false, "%1 reaches %2 into the base."},
        {std::min(d.along - half - along.low, along.high - d.along - half), false,
         "%1 reaches %2 into the next wall."},
    };
    const double r = placed.diameter / 2;
    if (r > 0) {
        out.push_back({l.walls.high - placed.hole.y - r, true,
                       "The hole of %1 leaves only %2 up to the wall's top edge."});
        out.push_back(
            {placed.hole.y - r - l.base.high, true, "The hole of %1 leaves only %2 down to the base."});
        if (onEndWall(d)) {
            const EndWallLayout& wall = d.place == DevicePlace::HeadWall ? l.headWall : l.tailWall;
            if (wall.crossed)
                out.push_back({toOpening(wall, placed.hole, r), true,
                               "The hole of %1 leaves only %2 of wood up to the neck's opening."});
        }
    }
    return out;
}

Place placeOf(const CheckInput& in, std::size_t i)
{
    const Bounds face = bounds(in.layout.devices[i].face);
    return {wallView(in.plan.wiring[i].place), face};
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    if (in.layout.boxInner.empty()) return;
    for (std::size_t i = 0; i < in.plan.wiring.size(); ++i) {
        const DeviceLayout& placed = in.layout.devices[i];
        const Device& d = in.plan.wiring[i];
        if (!placed.onWall) continue;
        const auto says = [&](const char* pattern, std::vector<Sentence::Argument> rest) {
            rest.insert(rest.begin(), deviceWords(in.plan, i, pattern));
            return Sentence{pattern, std::move(rest)};
        };
        if (!placed.reaches) {
            Finding f =
                finding(kRule, placed.part, Verdict::Wrong,
                        says("There is no %2 where %1 is to sit.", {std::string(placeName(d.place))}));
            f.measured = mm(0);
            f.required = mm(std::max(d.bodyLength, d.hole));
            f.places = {{View::Top, in.layout.body}};
            out.push_back(std::move(f));
            continue;
        }
        Gravest gravest;
        for (const Room& room : roomsOf(in, i)) {
            Finding f = room.wood ? atLeast(kRule, placed.part, room.value, kLeastWood, kFineWood)
                                  : atLeast(kRule, placed.part, room.value, 0, kBenchRoom);
            if (room.wood && room.value < 0)
                f.sentence = says("The hole of %1 runs %2 out of the wall's wood.", {mm(-room.value)});
            else if (f.verdict == Verdict::Wrong)
                f.sentence = says(room.wrong, {mm(std::abs(room.value))});
            else if (f.verdict == Verdict::Tight)
                f.sentence = says(room.wood ? "The hole of %1 has only %2 of wood beside it."
                                            : "%1 has only %2 of air beside it.",
                                  {mm(room.value)});
            else
                f.sentence = says("%1 fits the %2.", {std::string(placeName(d.place))});
            f.places = {placeOf(in, i)};
            gravest.take(std::move(f));
        }
        gravest.pourInto(out);
    }
}

/// Places along the wall where body and hole fit, the nearest first.
std::vector<double> placesAlong(const CheckInput& in, std::size_t i)
{
    const Device& d = in.plan.wiring[i];
    const Layout& l = in.layout;
    const Span inside = insideAlong(l, d);
    const CornerBlocks& corner = in.plan.cornerBlocks;
    const bool blocks = in.plan.box.shape == BoxShape::Rectangle && corner.present;
    const double half = d.bodyLength / 2 + kBenchRoom;
    std::vector<double> out;
    for (const double block : {0.0, blocks ? (onEndWall(d) ? corner.alongEnd : corner.alongSide) : 0.0}) {
        std::vector<Span> rooms{{inside.low + block + half, inside.high - block - half}};
        if (onEndWall(d)) {
            const EndWallLayout& wall = d.place == DevicePlace::HeadWall ? l.headWall : l.tailWall;
            const double off =
                std::max(wall.openingWidth, in.plan.neck.width) / 2 + std::max(d.hole / 2 + kFineWood, half);
            rooms = {{rooms[0].low, std::min(rooms[0].high, wall.openingCentre - off)},
                     {std::max(rooms[0].low, wall.openingCentre + off), rooms[0].high}};
        }
        for (const Span& room : rooms) {
            if (room.size() < 0) continue;
            const double to = std::clamp(d.along, room.low, room.high);
            // A full millimetre where the room has one.
            const double full = d.along < to ? std::ceil(to) : std::floor(to);
            out.push_back(full >= room.low && full <= room.high ? full : to);
        }
    }
    std::stable_sort(out.begin(), out.end(),
                     [&](double a, double b) { return std::abs(a - d.along) < std::abs(b - d.along); });
    return out;
}

/// The nearest place below the wall's top edge where body and hole fit.
double placeDown(const CheckInput& in, std::size_t i)
{
    const Device& d = in.plan.wiring[i];
    const Layout& l = in.layout;
    const double half = in.layout.devices[i].reaches ? (l.devices[i].high - l.devices[i].low) / 2
                                                     : (d.round() ? d.bodyLength : d.bodyWidth) / 2;
    const double hole = d.hole > 0 ? d.hole / 2 + kFineWood : 0;
    const double least = std::max(l.walls.high - l.lid.low + half + kBenchRoom, hole);
    const double most = l.walls.high - l.base.high - std::max(half + kBenchRoom, hole);
    return least > most ? (least + most) / 2 : std::clamp(d.down, least, most);
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const std::size_t i = memberIndex(f.part);
    const Device& d = in.plan.wiring[i];
    const double down = placeDown(in, i);
    if (down != d.down)
        out.push_back(oneEdit({"Set it %1 below the wall's top edge", {mm(down)}}, f.part + ".down", down));
    for (const double along : placesAlong(in, i)) {
        if (along == d.along) continue;
        const bool end = onEndWall(d);
        const Measure shown = mm(end ? std::abs(along) : along);
        out.push_back(oneEdit({!end        ? "Set it %1 from the head-end wall's outer face"
                               : along < 0 ? "Set it %1 from the centre line, on the bass side"
                                           : "Set it %1 from the centre line, on the treble side",
                               {shown}},
                              f.part + ".along", along));
        if (down == d.down) continue;
        out.push_back(
            {{!end ? "Set it %1 from the head-end wall and %2 below the wall's top edge"
              : along < 0
                  ? "Set it %1 from the centre line, on the bass side, and %2 below the wall's top edge"
                  : "Set it %1 from the centre line, on the treble side, and %2 below the wall's top "
                    "edge",
              {shown, mm(down)}},
             {{f.part + ".along", along}, {f.part + ".down", down}}});
    }
    return out;
}

}  // namespace

const Check kWiringWall{kRule, "Wiring in the walls",
                        "lengths add up; wood about a hole, 1 mm bench room: common practice, no source",
                        judge, propose};

}  // namespace lidwright
