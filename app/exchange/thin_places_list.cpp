#include "app/exchange/thin_places_list.h"

#include "core/base/length_text.h"
#include "core/checks/artwork/thin_verdict.h"

namespace lidwright {

namespace {

const char* kindWord(NarrowKind kind)
{
    switch (kind) {
        case NarrowKind::Web:
            return "web";
        case NarrowKind::Tongue:
            return "tongue";
        case NarrowKind::DropOut:
            break;
    }
    return "drop-out";
}

ThinRow rowOf(const Plan& plan, const LidPlace& lid)
{
    ThinRow row;
    const NarrowPlace& place = lid.place;
    row.kind = kindWord(place.kind);
    row.drawing = lid.art < 0 ? std::string("the lid") : plan.art[static_cast<std::size_t>(lid.art)].name;
    row.at = place.at;
    row.width = place.width;
    row.run = place.run;
    row.direction = degrees(place.direction);
    row.outlineA = place.outlineA;
    row.outlineB = place.outlineB;
    row.freed = place.freed;
    return row;
}

std::string quoted(const std::string& text)
{
    std::string out = "\"";
    for (const char c : text) {
        out += c;
        if (c == '"') out += '"';
    }
    return out + "\"";
}

std::string number(double value)
{
    return decimalNumber(value, 3);
}

}  // namespace

ThinList thinList(const Plan& plan, const Layout& layout)
{
    ThinList out;
    const WeakPlaces weak = weakPlaces(plan, layout);
    out.searchedTo = weak.searchedTo;
    out.problem = weak.problem;
    for (const WeakPlace& p : weak.places) {
        ThinRow row = rowOf(plan, p.lid);
        row.number = static_cast<int>(out.rows.size()) + 1;
        row.grainAngle = degrees(p.grainAngle);
        row.backed = p.backed;
        if (p.lid.place.kind != NarrowKind::DropOut) row.left = p.width;
        row.verdict = thinVerdict(plan, p);
        if (p.judged) {
            row.breaksAt_N = p.breaksAt_N;
            row.factorOfSafety = p.strength.factorOfSafety;
        }
        out.rows.push_back(std::move(row));
    }
    const LidPlaces closed = closedByKerf(layout, plan.cutter.kerf);
    if (!out.problem) out.problem = closed.problem;
    for (const LidPlace& p : closed.places) {
        ThinRow row = rowOf(plan, p);
        row.kind = "kerf-closing";
        row.verdict = Verdict::Tight;
        out.rows.push_back(std::move(row));
    }
    return out;
}

std::string thinCsv(const ThinList& list)
{
    std::string out =
        "number,kind,drawing,x mm,y mm,width mm,once cut mm,run mm,direction deg,angle to grain deg,outline "
        "A,outline B,"
        "loose mm2,backed,breaks at N,factor of safety,verdict\r\n";
    for (const ThinRow& row : list.rows) {
        const bool judged = row.factorOfSafety.has_value();
        out += (row.number > 0 ? std::to_string(row.number) : std::string()) + "," + row.kind + "," +
               quoted(row.drawing) + "," + number(row.at.x) + "," + number(row.at.y) + "," +
               number(row.width) + "," + (row.left ? number(*row.left) : std::string()) + "," +
               number(row.run) + "," + number(row.direction) + "," +
               (judged ? number(row.grainAngle) : std::string()) + "," + std::to_string(row.outlineA + 1) +
               "," + std::to_string(row.outlineB + 1) + "," + number(row.freed) + "," +
               (row.backed ? "yes" : "no") + "," + (judged ? number(*row.breaksAt_N) : std::string()) + "," +
               (judged ? number(*row.factorOfSafety) : std::string()) + "," + word(row.verdict) + "\r\n";
    }
    return out;
}

}  // namespace lidwright
