#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/drawing_input.h"
#include "app/commandline/json_text.h"
#include "app/commandline/plan_input.h"
#include "app/commandline/thin_json.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace lidwright {

namespace {

using Json = nlohmann::ordered_json;

constexpr OptionSpec kOptions[] = {
    {"--json", nullptr, "as JSON, at full precision"},
    {"--per-inch", "96|90|72|N", "units of the drawing per inch, where the file does not say"},
    {"--wide", "LENGTH", "how wide the painted part is to be"},
    {"--lid-thickness", "LENGTH", "of the lid that it is cut from"},
    {"--material", "WORD", "of the lid; lidwright parameters lists the words under lid.material"},
    {"--grain", "along|across", "the drawing's width or across it"},
    {"--least-web", "LENGTH", "wood asked to be left between cuts"},
    {"--kerf", "LENGTH", "width that the beam takes away"},
};

/// The lid that the drawing is judged on: only these quantities of it matter.
struct LidOption {
    const char* option;
    const char* key;
};
constexpr LidOption kLidOptions[] = {{"--lid-thickness", "lid.thickness"},
                                     {"--material", "lid.material"},
                                     {"--grain", "lid.grain"},
                                     {"--least-web", "cutter.least-web"},
                                     {"--kerf", "cutter.kerf"}};

/// Thin places of the drawing on a lid far larger than itself; places are in the drawing's own frame.
Result<ThinList> thinOf(const DrawingInput& drawing, const std::vector<ArtUse>& uses,
                        const Arguments& arguments)
{
    Plan plan;
    for (const LidOption& option : kLidOptions) {
        const auto value = arguments.value(option.option);
        if (!value) continue;
        Result<Plan> next = applySetting(plan, std::string(option.key) + "=" + *value);
        if (!next) {
            Error error = next.error();
            error.where = std::string(option.option) + " " + *value;
            return error;
        }
        plan = std::move(next).value();
    }
    ArtPiece piece;
    piece.name = drawing.art->fileName;
    piece.art = drawing.art;
    piece.uses = uses;
    plan.art = {piece};
    // A box without walls to speak of, so that nothing but the drawing itself is near.
    const double room = 3 * searchWidth(plan) + 10;
    plan.box.length = drawing.art->width + 2 * room;
    plan.box.width = drawing.art->height + 2 * room;
    plan.box.cornerRadius = 0;
    plan.box.endWall = plan.box.sideWall = 1;
    plan.art[0].x = plan.box.length / 2;
    ThinList list = thinList(plan, derive(plan));
    if (list.problem) return *list.problem;
    for (ThinRow& row : list.rows)
        row.at = row.at - Point{plan.art[0].x, 0};
    return list;
}

const char* useName(ArtUse use)
{
    switch (use) {
        case ArtUse::Cut:
            return "cut";
        case ArtUse::CutInside:
            return "cut-inside";
        case ArtUse::Engraved:
            return "engraved";
        case ArtUse::Wood:
            return "wood";
        case ArtUse::Ignored:
            break;
    }
    return "ignored";
}

/// One closed outline of an area.
struct Outline {
    const char* use;
    const Ring* ring;
    double area() const { return std::abs(signedArea(*ring)); }
    /// Regions in normal form run clockwise round what stays within the area.
    bool island() const { return signedArea(*ring) < 0; }
};

std::vector<Outline> outlines(const ArtAreas& all)
{
    std::vector<Outline> list;
    for (const Ring& ring : all.cut.rings)
        list.push_back({useName(ArtUse::Cut), &ring});
    for (const Ring& ring : all.engraved.rings)
        list.push_back({useName(ArtUse::Engraved), &ring});
    return list;
}

bool printJson(const DrawingInput& drawing, const std::vector<ArtUse>& uses, const ArtAreas& all,
               const ThinList& thin)
{
    const Artwork& art = *drawing.art;
    Json json;
    json["file"] = art.fileName;
    json["bytes"] = art.fileSize;
    json["size"] = {{"width", art.width}, {"height", art.height}, {"unit", "mm"}};
    json["sizeFromFile"] = drawing.hasPhysicalSize && drawing.unitsPerInch == 0;
    json["unitsPerInch"] = drawing.unitsPerInch > 0 ? Json(drawing.unitsPerInch) : Json();
    json["cutArea"] = toJson(Measure{area(all.cut), Quantity::Area});
    json["engravedArea"] = toJson(Measure{area(all.engraved), Quantity::Area});
    json["paints"] = Json::array();
    for (std::size_t i = 0; i < art.paints.size(); ++i) {
        const ArtPaint& paint = art.paints[i];
        Json row{{"name", paint.name}, {"colour", paint.colour}, {"line", paint.line}};
        if (paint.line) row["thinnest"] = toJson(Measure{paint.thinnest, Quantity::Length});
        row["use"] = useName(i < uses.size() ? uses[i] : ArtUse::Ignored);
        json["paints"].push_back(row);
    }
    json["outlines"] = Json::array();
    for (const Outline& outline : outlines(all)) {
        const Bounds box = bounds(*outline.ring);
        json["outlines"].push_back({{"use", outline.use},
                                    {"island", outline.island()},
                                    {"points", outline.ring->size()},
                                    {"area", toJson(Measure{outline.area(), Quantity::Area})},
                                    {"from", {box.minX, box.minY}},
                                    {"to", {box.maxX, box.maxY}},
                                    {"unit", "mm"}});
    }
    json["thinSearchedTo"] = toJson(Measure{thin.searchedTo, Quantity::Length});
    json.update(thinJson(thin));
    json["messages"] = art.messages;
    return print(json);
}

bool printText(const DrawingInput& drawing, const std::vector<ArtUse>& uses, const ArtAreas& all,
               const ThinList& thin)
{
    const Artwork& art = *drawing.art;
    const UnitStyle style;
    const auto line = [](const char* what, const std::string& value) {
        return padded(what, 16) + value + "\n";
    };
    std::string out = line("drawing", art.fileName);
    out += line("size", spoken(mm(art.width), style) + " x " + spoken(mm(art.height), style));
    out += line("cut", spoken(Measure{area(all.cut), Quantity::Area}, style) + " in " +
                           std::to_string(all.cut.rings.size()) + " outlines");
    out += line("engraved", spoken(Measure{area(all.engraved), Quantity::Area}, style) + " in " +
                                std::to_string(all.engraved.rings.size()) + " outlines");
    for (std::size_t i = 0; i < art.paints.size(); ++i) {
        out += line("paint",
                    padded(art.paints[i].name, 26) + useName(i < uses.size() ? uses[i] : ArtUse::Ignored));
    }
    for (const ThinRow& row : thin.rows)
        out += line(
            row.kind.c_str(),
            padded(word(row.verdict), 8) +
                (row.kind == "drop-out"
                     ? spoken(Measure{row.freed, Quantity::Area}, style) + " falls out"
                     : spoken(mm(row.width), style) + " wide, " + spoken(mm(row.run), style) + " long") +
                (row.breaksAt_N ? ", breaks at " + spoken(Measure{*row.breaksAt_N, Quantity::Force}, style)
                                : ""));
    return print(out);
}

int run(const Arguments& arguments)
{
    if (arguments.plain().empty())
        return refuse({"which drawing?", "art", "name an SVG file: lidwright art lid.svg"});
    const Result<DrawingInput> drawing =
        readDrawing(arguments.plain().front(), arguments.value("--per-inch").value_or(""),
                    arguments.value("--wide").value_or(""), UnitStyle{});
    if (!drawing) return refuse(drawing.error());
    for (const std::string& message : drawing->remarks)
        remark(message);
    const std::vector<ArtUse> uses = firstGuess(*drawing->art);
    const ArtAreas all = areas(*drawing->art, uses);
    const Result<ThinList> thin = thinOf(*drawing, uses, arguments);
    if (!thin) return refuse(thin.error());
    const bool printed = arguments.has("--json") ? printJson(*drawing, uses, all, *thin)
                                                 : printText(*drawing, uses, all, *thin);
    return finish(printed, kExitFine);
}

}  // namespace

constinit const Command kArtCommand{
    "art",
    "what a drawing holds: size, paints, outlines, areas",
    "FILE.svg [--json] [--per-inch 96|90|72|N] [--wide LENGTH] [--lid-thickness LENGTH] [--material WORD]\n"
    "              [--grain along|across] [--least-web LENGTH] [--kerf LENGTH]",
    "Reads a drawing as the program would: its size, what each paint is first taken for (cut, engraved, "
    "wood),\n"
    "the closed outlines and areas that follow, and what could not be taken over. Then where wood is thin "
    "between\n"
    "its cuts: webs, tongues, pieces that fall out, and cuts that the kerf closes, by the lid's thickness "
    "and wood.\n"
    "Exit code: 0, or 2 when the drawing cannot be used.",
    kOptions,
    1,
    run};

}  // namespace lidwright
