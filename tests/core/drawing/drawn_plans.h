#pragma once

#include "core/drawing/board_sheet.h"
#include "core/drawing/lettering.h"
#include "core/io/plan/plan_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

/// Plans and questions that the tests of the drawing share.
namespace lidwright::testing {

struct NamedPlan {
    std::string name;
    Plan plan;
};

inline Plan samplePlan(const std::string& file)
{
    std::ifstream in(std::string(LIDWRIGHT_SOURCE_DIR) + "/resources/samples/" + file, std::ios::binary);
    std::stringstream text;
    text << in.rdbuf();
    const auto reading = readPlan(text.str(), file);
    EXPECT_TRUE(reading.ok()) << file;
    return reading.ok() ? reading->plan : Plan{};
}

/// A drawing of one cut ring with an island and an engraved band around it.
inline ArtPiece roundel()
{
    auto art = std::make_shared<Artwork>();
    art->paints = {{"fill #000000", "#000000", false, 0}, {"fill #888888", "#888888", false, 0}};
    const Region cut = subtract(Region{{circleRing({0, 0}, 20)}}, Region{{circleRing({0, 0}, 12)}});
    const Region band = subtract(Region{{circleRing({0, 0}, 32)}}, Region{{circleRing({0, 0}, 20)}});
    art->runs = {{0, cut, {}}, {1, band, {}}};
    ArtPiece piece;
    piece.art = art;
    piece.uses = {ArtUse::Cut, ArtUse::Engraved};
    piece.x = 120;
    piece.y = 40;
    return piece;
}

/// The fresh plan, the samples and what else a bench sees.
inline std::vector<NamedPlan> drawnPlans()
{
    std::vector<NamedPlan> out{{"fresh", {}}};
    for (const char* file : {"harbour-light.lidplan", "moon-kettle.lidplan", "orchard-door.lidplan"})
        out.push_back({file, samplePlan(file)});
    Plan art;
    art.art.push_back(roundel());
    art.holes.push_back({});
    out.push_back({"roundel", art});
    Plan letIn = art;
    letIn.lid.seat = LidSeat::LetIn;
    letIn.neck.top = letIn.lid.thickness;
    letIn.neck.offset = 7;
    letIn.bridge.angle = 3;
    letIn.fretboard.end = FretboardEnd::OverLid;
    out.push_back({"let in", letIn});
    Plan mortise = art;
    mortise.neck.top = -12;
    mortise.scale.hold = ScaleHold::SaddleToTail;
    mortise.blocks = {{BoxWall::BassSide}, {BoxWall::TailEnd, 60, 40}};
    out.push_back({"mortise", mortise});
    Plan measured;
    measured.scale.hold = ScaleHold::BothAsMeasured;
    measured.headOpening.cut = measured.tailOpening.cut = true;
    measured.sheet.title = "A longer name than most, for a drawing that has to find room for it somewhere";
    out.push_back({"as measured", measured});
    Plan round;
    auto outline = std::make_shared<FreeOutline>();
    outline->ring = circleRing({0, 0}, 100);
    round.box.shape = BoxShape::Outline;
    round.box.outline = outline;
    out.push_back({"round body", round});
    return out;
}

inline BoardOptions optionsOf(const Plan& plan)
{
    BoardOptions options;
    options.style = unitStyle(plan);
    options.projection = plan.sheet.projection;
    return options;
}

template <typename T>
std::vector<T> all(const Sheet& sheet)
{
    std::vector<T> out;
    for (const Element& e : sheet.elements)
        if (const auto* what = std::get_if<T>(&e.what)) out.push_back(*what);
    return out;
}

/// Every text on the sheet, those of dimensions too.
inline std::vector<Text> allWords(const Sheet& sheet)
{
    std::vector<Text> out = all<Text>(sheet);
    for (const Dimension& d : all<Dimension>(sheet))
        out.push_back(dimensionText(d, sheet.paper));
    return out;
}

/// True when the two convex rings overlap: no edge of either keeps them apart.
inline bool overlap(const Ring& a, const Ring& b)
{
    for (const Ring* ring : {&a, &b})
        for (std::size_t i = 0; i < ring->size(); ++i) {
            const Point edge = (*ring)[(i + 1) % ring->size()] - (*ring)[i];
            const Point normal{-edge.y, edge.x};
            const auto reach = [&](const Ring& r) {
                double low = 1e300;
                double high = -1e300;
                for (const Point p : r) {
                    low = std::min(low, dot(p, normal));
                    high = std::max(high, dot(p, normal));
                }
                return std::pair{low, high};
            };
            const auto [la, ha] = reach(a);
            const auto [lb, hb] = reach(b);
            if (ha <= lb || hb <= la) return false;
        }
    return true;
}

/// Pairs of texts on the sheet that lie over one another, in words.
inline std::vector<std::string> wordsOverWords(const Sheet& sheet)
{
    std::vector<std::string> out;
    const std::vector<Text> words = allWords(sheet);
    for (std::size_t i = 0; i < words.size(); ++i)
        for (std::size_t k = i + 1; k < words.size(); ++k)
            if (overlap(textOutline(words[i], sheet.paper), textOutline(words[k], sheet.paper)))
                out.push_back(words[i].words + " / " + words[k].words);
    return out;
}

inline const PlacedView* viewOf(const BoardSheet& board, View view)
{
    for (const PlacedView& v : board.views)
        if (v.view == view) return &v;
    return nullptr;
}

}  // namespace lidwright::testing
