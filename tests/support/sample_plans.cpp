#include "tests/support/sample_plans.h"

#include "core/io/svg/svg_reader.h"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <memory>
#include <sstream>

namespace lidwright::testing {
namespace {

constexpr double kInch = kMillimetresPerInch;

ArtPiece drawing(const std::filesystem::path& folder, const std::string& file, const std::string& name)
{
    std::ifstream in(folder / file, std::ios::binary);
    std::stringstream text;
    text << in.rdbuf();
    auto reading = readSvg(text.str(), file, {});
    if (!reading) {
        std::fprintf(stderr, "%s\n", reading.error().text().c_str());
        std::exit(2);
    }
    ArtPiece piece;
    piece.name = name;
    piece.art = std::make_shared<Artwork>(std::move(reading->art));
    piece.uses = firstGuess(*piece.art);
    return piece;
}

/// A shop-made plywood box, lid laid on, neck right under it: everything good.
Sample harbourLight(const std::filesystem::path& folder)
{
    Plan p;
    p.sheet.title = "Harbour Light";
    p.sheet.notes =
        "A made box of 8 mm plywood with a 3 mm lid. The neck runs right under the lid; the artwork leaves "
        "its strip free.";
    p.box.length = 340;
    p.box.width = 240;
    p.box.height = 66;
    p.neck.blankLength = 915;
    p.neck.headLength = 130;
    p.scale.length = 635;
    p.scale.nutToBox = 390;
    p.box.material = "birch-plywood-9mm";
    p.scale.setback = 3;
    p.bridge.angle = 1;
    p.bridge.height = 6.5;
    ArtPiece art = drawing(folder, "harbour-light.svg", "Harbour light");
    // The drawing's up points to the head.
    art.turn = 90;
    art.x = 124;
    art.scale = 1.04;
    art.strengthen = 6.5;
    p.art = {art};
    p.blocks = {{BoxWall::BassSide, 245, 60, 12, 15}, {BoxWall::TrebleSide, 245, 60, 12, 15}};
    p.stock = {{"sugar-maple", 915, 45, 25, 1, 0},         {"black-walnut", 500, 60, 6, 1, 9},
               {"birch-plywood-9mm", 1220, 305, 8, 1, 14}, {"birch-plywood-3mm", 400, 300, 3, 2, 5},
               {"yellow-poplar", 600, 40, 16, 1, 0},       {"sugar-maple", 300, 60, 8, 1, 0}};
    p.prices = {{"Tuner", 3.5}, {"String", 1.2}, {"Fret wire", 6}};
    return {"harbour-light.lidplan", p};
}

/// What a beginner would have spoiled: the artwork right where the bridge must stand, and a stick that is too
/// short.
Sample orchardDoor(const std::filesystem::path& folder)
{
    Plan p;
    p.sheet.title = "Orchard Door";
    p.sheet.notes =
        "The lid art sits under the bridge and the stick is too short. The findings offer ways out of both.";
    p.box.length = 310;
    p.box.width = 220;
    p.box.height = 58;
    p.box.endWall = 6;
    p.box.sideWall = 6;
    p.lid.thickness = 4;
    p.lid.material = "birch-plywood-4mm";
    p.cornerBlocks.height = 40;
    p.neck.blankLength = 760;
    p.neck.headLength = 125;
    p.neck.tailLength = 20;
    p.fretboard.blankLength = 400;
    p.scale.length = 580;
    p.scale.nutToBox = 350;
    p.scale.setback = 3.6;
    p.bridge.angle = 5.6;
    p.bridge.height = 6.5;
    p.stringSet = {{"phosphor-bronze", 55, 0.635, 0},
                   {"phosphor-bronze", 50, 0.8128, 0},
                   {"phosphor-bronze", 43, 1.0668, 0}};
    p.strings.spreadAtNut = 24;
    p.strings.spreadAtSaddle = 30;
    p.bridge.length = 70;
    p.bridge.width = 16;
    ArtPiece art = drawing(folder, "orchard-door.svg", "Apple tree");
    art.turn = 90;
    art.scale = 0.9;
    art.x = 165;
    p.art = {art};
    return {"orchard-door.lidplan", p};
}

/// A pear-like free outline in inches, lid let in, neck flush with the lid's top and a fretboard that runs
/// over it.
Sample moonKettle(const std::filesystem::path& folder)
{
    Plan p;
    p.sheet.title = "Moon Kettle";
    p.sheet.notes = "A bent-sided body in inches: lid let in, neck flush with it, fretboard over the lid.";
    p.sheet.unit = PlanUnit::InchFraction;
    p.sheet.fraction = 32;
    p.sheet.projection = Projection::ThirdAngle;
    p.box.shape = BoxShape::Outline;
    p.box.length = 13.5 * kInch;
    p.box.width = 10 * kInch;
    p.box.height = 2.5 * kInch;
    p.box.sideWall = 0.25 * kInch;
    p.box.base = 0.125 * kInch;
    // An egg: the half width along the length is that of an ellipse, fuller toward the tail, with flat ends
    // for the neck.
    auto outline = std::make_shared<FreeOutline>();
    outline->fileName = "moon-kettle outline";
    constexpr int kSteps = 120;
    for (int i = 0; i < kSteps; ++i) {
        const double t = 2 * kPi * i / kSteps;
        const double c = std::cos(t);
        const double s = std::sin(t);
        const auto power = [](double v, double e) { return std::copysign(std::pow(std::abs(v), e), v); };
        // Super-ellipse of exponent 3 (Lame's curve): nearly flat where the neck crosses.
        const double x = power(c, 2.0 / 3);
        const double y = power(s, 2.0 / 3) * (1 + 0.16 * x);
        outline->ring.push_back({std::round(x * 17145) / 100, std::round(y * 12700) / 100});
    }
    p.box.outline = outline;
    p.lid.thickness = 0.125 * kInch;
    p.lid.material = "sitka-spruce";
    p.lid.seat = LidSeat::LetIn;
    p.lid.edgeMargin = 0.375 * kInch;
    p.neck.blankLength = 37 * kInch;
    p.neck.width = 1.5 * kInch;
    p.neck.thickness = 1 * kInch;
    p.neck.top = p.lid.thickness;
    p.neck.headLength = 5.5 * kInch;
    p.neck.tailLength = 1 * kInch;
    p.fretboard.blankLength = 20 * kInch;
    p.fretboard.thickness = 0.25 * kInch;
    p.fretboard.widthAtNut = 1.375 * kInch;
    p.fretboard.widthAtEnd = 1.5 * kInch;
    p.fretboard.end = FretboardEnd::OverLid;
    p.fretboard.overLid = 1.5 * kInch;
    p.scale.length = 25 * kInch;
    p.scale.hold = ScaleHold::SaddleToTail;
    p.scale.saddleToTail = 3.25 * kInch;
    p.scale.nutToBox = 14.75 * kInch;
    p.strings.spreadAtNut = 1.0625 * kInch;
    p.strings.spreadAtSaddle = 1.3125 * kInch;
    p.bridge.length = 3.5 * kInch;
    p.bridge.width = 0.75 * kInch;
    p.bridge.height = 0.375 * kInch;
    p.scale.setback = 0.125 * kInch;
    p.bridge.angle = 1;
    p.frets.mark = MarkStep::Inch64;
    p.bridge.artMargin = 0.125 * kInch;
    p.cornerBlocks.present = false;
    p.shop.kerf = 0.0625 * kInch;
    p.shop.fit = 0.0078125 * kInch;
    ArtPiece art = drawing(folder, "moon-kettle.svg", "Moon and steam");
    art.turn = 90;
    art.x = 5.2 * kInch;
    art.scale = 1;
    art.strengthen = 0.25 * kInch;
    p.art = {art};
    return {"moon-kettle.lidplan", p};
}

}  // namespace

std::vector<Sample> samplePlans(const std::filesystem::path& folder)
{
    return {harbourLight(folder), orchardDoor(folder), moonKettle(folder)};
}

}  // namespace lidwright::testing
