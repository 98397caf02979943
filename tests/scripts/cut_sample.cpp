// Writes the cutter's files of a plan, with some more openings, into a folder, and what core says about them,
// for check_cut_files.py.
//
// usage: cut_sample PLAN FOLDER
// For every job NAME: NAME.svg, NAME-r12.dxf, NAME-r2000.dxf and NAME.txt, in which each line says of one
// layer: its name, how many closed outlines it has, the area between them in mm2 and its extent in mm.

#include "core/io/cut/cut_dxf.h"
#include "core/io/cut/cut_svg.h"
#include "core/io/plan/plan_file.h"

#include <cstdio>
#include <fstream>
#include <sstream>

namespace {

using namespace lidwright;

/// Adds what the sample plans lack: a round hole, an opening with an island, engraving around it.
Plan withMore(Plan plan)
{
    const Ring outer = circleRing({0, 0}, 9), middle = circleRing({0, 0}, 6), inner = circleRing({0, 0}, 3);
    auto art = std::make_shared<Artwork>();
    art->paints = {{"fill #000000", "#000000", false, 0}, {"fill #888888", "#888888", false, 0}};
    art->runs = {{0, fill({middle, inner}, FillRule::EvenOdd), {}},
                 {1, fill({outer, middle}, FillRule::EvenOdd), {}}};
    ArtPiece piece;
    piece.art = art;
    piece.uses = {ArtUse::Cut, ArtUse::Engraved};
    piece.x = 40;
    piece.y = 30;
    plan.art.push_back(piece);
    plan.holes.push_back({HoleKind::Circle, 40, -30, 11, 11, 0});
    return plan;
}

struct NamedJob {
    const char* name;
    CutJob job;
};

std::vector<NamedJob> jobs()
{
    CutJob plain, taken, bare;
    taken.kerf = 0.2;
    taken.compensate = true;
    taken.mirrored = true;
    taken.preset = cutPresets().at(1);
    taken.alignment = {{{12, 0}, 3}, {{318, 0}, 3}};
    bare.marks = bare.checkLine = bare.engraving = bare.lidOutline = false;
    bare.preset = cutPresets().back();
    return {{"plain", plain}, {"taken", taken}, {"bare", bare}};
}

std::string summary(const CutDrawing& drawing)
{
    std::string out;
    for (const CutLayer& layer : drawing.layers) {
        const CutTotals totals = totalsOf(drawing, layer.operation);
        Bounds box;
        for (const CutPath& path : drawing.paths)
            if (path.operation == layer.operation) box.include(bounds(path.points).grown(path.radius));
        char line[300];
        std::snprintf(line, sizeof line, "%s %d %.6f %.6f %.6f %.6f %.6f\n", layer.name.c_str(),
                      totals.closed, totals.area, box.minX, box.minY, box.maxX, box.maxY);
        out += line;
    }
    return out;
}

bool save(const std::string& path, const std::string& text)
{
    std::ofstream out(path, std::ios::binary);
    out << text;
    out.close();
    return out.good();
}

}  // namespace

int main(int argc, char** argv)
{
    if (argc != 3) {
        std::fputs("usage: cut_sample PLAN FOLDER\n", stderr);
        return 2;
    }
    std::ifstream in(argv[1], std::ios::binary);
    std::stringstream text;
    text << in.rdbuf();
    const auto reading = readPlan(text.str(), argv[1]);
    if (!reading) {
        std::fprintf(stderr, "%s\n", reading.error().text().c_str());
        return 1;
    }
    const Plan plan = withMore(reading->plan);
    const Layout layout = derive(plan);
    for (const NamedJob& named : jobs()) {
        const auto drawing = composeCutDrawing(plan, layout, named.job);
        if (!drawing) {
            std::fprintf(stderr, "%s\n", drawing.error().text().c_str());
            return 1;
        }
        const std::string base = std::string(argv[2]) + "/" + named.name;
        const bool saved = save(base + ".svg", writeCutSvg(*drawing)) &&
                           save(base + "-r12.dxf", writeCutDxf(*drawing, DxfVersion::R12)) &&
                           save(base + "-r2000.dxf", writeCutDxf(*drawing, DxfVersion::R2000)) &&
                           save(base + ".txt", summary(*drawing));
        if (!saved) return 1;
    }
    return 0;
}
