#include "core/checks/head/head_checks.h"
#include "core/checks/judging.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "head.splay";
/// Degrees by which a string turns aside at the nut: more binds in its slot when it is tuned (common
/// practice, no source).
constexpr double kFine = 14;
constexpr double kMost = 24;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const auto& strings = in.layout.head.strings;
    std::size_t worst = strings.size();
    for (std::size_t i = 0; i < strings.size(); ++i)
        if (worst == strings.size() || std::abs(strings[i].splay) > std::abs(strings[worst].splay)) worst = i;
    if (worst == strings.size()) return;
    const Measure turn{std::abs(strings[worst].splay), Quantity::Angle};
    Finding f = finding(kRule, "tuners", judgeAtMost(turn.value, kFine, kMost),
                        {"String %1 turns aside most at the nut, by %2.", {std::to_string(worst + 1), turn}});
    f.measured = turn;
    f.required = Measure{kMost, Quantity::Angle};
    f.comfortable = Measure{kFine, Quantity::Angle};
    f.bound = Bound::AtMost;
    f.places = {topPlace(strings[worst].way.front().at, strings[worst].way.back().at)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const Tuners& t = in.plan.tuners;
    for (const double more : {10.0, 20.0, 40.0}) {
        const double first = t.first + more, head = in.plan.neck.headLength + more;
        out.push_back({{"Set the first post %1 behind the nut, on a head %2 long", {mm(first), mm(head)}},
                       {{"tuners.first", first}, {"neck.head-length", head}}});
    }
    for (const double more : {2.0, 4.0})
        out.push_back(
            oneEdit({"Set the posts %1 from the edge", {mm(t.edge + more)}}, "tuners.edge", t.edge + more));
    if (const double spread = std::floor(in.plan.fretboard.widthAtNut - 6);
        spread > in.plan.strings.spreadAtNut)
        out.push_back(
            oneEdit({"Spread the strings %1 at the nut", {mm(spread)}}, "strings.spread-at-nut", spread));
    return out;
}

}  // namespace

const Check kHeadSplay{kRule, "Strings' turn at the nut", "common practice, no source", judge, propose};

}  // namespace lidwright
