#include "core/drawing/cut_preset.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <set>

namespace lidwright {
namespace {

const char* kHead = "preset,operation,colour,line_width_mm,layer,order,drawn,source\n";

/// A good table whose third row (cut-outline) is replaced.
std::string tableWith(const std::string& outlineRow)
{
    std::string csv = kHead;
    csv.append("mine,engrave,#000000,0.1,engrave,1,areas,own\n")
        .append("mine,cut-inside,#FF0000,0.1,inside,2,lines,own\n")
        .append(outlineRow)
        .append("\nmine,alignment,#ff0000,0.1,holes,3,lines,own\n")
        .append("mine,mark,#00a000,0.1,notes,5,lines,own\n");
    return csv;
}
const char* kGoodOutline = "mine,cut-outline,#0000ff,0.2,outline,4,lines,own";

void expectRefused(const std::string& csv, const std::string& where, const std::string& what)
{
    const auto presets = readCutPresets(csv);
    ASSERT_FALSE(presets.ok()) << csv;
    EXPECT_NE(presets.error().where.find(where), std::string::npos) << presets.error().text();
    EXPECT_NE(presets.error().what.find(what), std::string::npos) << presets.error().text();
    EXPECT_FALSE(presets.error().mend.empty());
}

TEST(CutPreset, ThoseBuiltInAreThoseOfTheTable)
{
    std::string path = LIDWRIGHT_SOURCE_DIR;
    std::ifstream in(path.append("/resources/data/cutter_presets.csv"));
    const std::string csv{std::istreambuf_iterator<char>(in), {}};
    const auto read = readCutPresets(csv);
    ASSERT_TRUE(read.ok()) << read.error().text();
    EXPECT_EQ(*read, cutPresets());
    EXPECT_GE(read->size(), 3U);
    std::set<std::string> names;
    for (const CutPreset& preset : *read) {
        EXPECT_TRUE(names.insert(preset.name).second);
        EXPECT_EQ(findCutPreset(preset.name), &cutPresets()[names.size() - 1]);
        ASSERT_EQ(preset.layers.size(), static_cast<std::size_t>(kCutOperations));
        for (const CutLayer& layer : preset.layers)
            EXPECT_EQ(layer.source, "common practice, no source; shops differ");
        // What lies inside is cut before the outline, engraving before both.
        const auto order = [&](CutOperation operation) { return preset.layer(operation).order; };
        EXPECT_LT(order(CutOperation::Engrave), order(CutOperation::CutInside));
        EXPECT_LT(order(CutOperation::CutInside), order(CutOperation::CutOutline));
        EXPECT_LT(order(CutOperation::Alignment), order(CutOperation::CutOutline));
        EXPECT_NE(preset.layer(CutOperation::Mark).name, preset.layer(CutOperation::CutOutline).name);
    }
    EXPECT_EQ(findCutPreset("no such preset"), nullptr);
}

TEST(CutPreset, LayersStandInTheirOrderWhateverTheRowsSay)
{
    const auto presets = readCutPresets(tableWith(kGoodOutline));
    ASSERT_TRUE(presets.ok()) << presets.error().text();
    const CutPreset& mine = presets->front();
    for (std::size_t i = 0; i < mine.layers.size(); ++i)
        EXPECT_EQ(mine.layers[i].order, static_cast<int>(i) + 1);
    EXPECT_EQ(mine.layer(CutOperation::CutInside).colour, "#ff0000");
    EXPECT_TRUE(mine.layer(CutOperation::Engrave).filled);
    EXPECT_DOUBLE_EQ(mine.layer(CutOperation::CutOutline).lineWidth, 0.2);
}

TEST(CutPreset, WrittenAndReadBackTheyAreTheSame)
{
    auto presets = *readCutPresets(tableWith(kGoodOutline));
    presets.front().name = "#1, \"the\" shop";
    presets.front().layers[2].source = "said on the phone, 3 May";
    presets.front().layers[1].lineWidth = 0.1 + 0.2;
    presets.insert(presets.end(), cutPresets().begin(), cutPresets().end());
    const auto back = readCutPresets(writeCutPresets(presets));
    ASSERT_TRUE(back.ok()) << back.error().text();
    EXPECT_EQ(*back, presets);
}

TEST(CutPreset, WhatIsWrongIsNamedWithItsLine)
{
    expectRefused(tableWith("mine,cut,#0000ff,0.2,outline,4,lines,own"), "line 4, column operation",
                  "unknown");
    expectRefused(tableWith("mine,cut-outline,blue,0.2,outline,4,lines,own"), "column colour", "no colour");
    expectRefused(tableWith("mine,cut-outline,#0000f,0.2,outline,4,lines,own"), "column colour", "no colour");
    expectRefused(tableWith("mine,cut-outline,#0000ff,0,outline,4,lines,own"), "line_width_mm", "range");
    expectRefused(tableWith("mine,cut-outline,#0000ff,nan,outline,4,lines,own"), "line_width_mm",
                  "no number");
    expectRefused(tableWith("mine,cut-outline,#0000ff,0.2,4 sides,4,lines,own"), "column layer",
                  "layer name");
    expectRefused(tableWith("mine,cut-outline,#0000ff,0.2,umriß,4,lines,own"), "column layer", "layer name");
    expectRefused(tableWith("mine,cut-outline,#0000ff,0.2,Defpoints,4,lines,own"), "column layer", "hide");
    expectRefused(tableWith("mine,cut-outline,#0000ff,0.2,INSIDE,4,lines,own"), "column layer", "twice");
    expectRefused(tableWith("mine,cut-outline,#0000ff,0.2,outline,2,lines,own"), "column order", "twice");
    expectRefused(tableWith("mine,cut-outline,#0000ff,0.2,outline,2.5,lines,own"), "column order", "whole");
    expectRefused(tableWith("mine,cut-outline,#0000ff,0.2,outline,4,areas,own"), "column drawn", "engraving");
    expectRefused(tableWith("mine,cut-outline,#0000ff,0.2,outline,4,lines,"), "column source", "empty");
    expectRefused(tableWith("mine,engrave,#0000ff,0.2,outline,4,lines,own"), "column operation", "twice");
    expectRefused(tableWith("# no outline"), "cutter_presets.csv", "no row for cut-outline");
    expectRefused(kHead, "cutter_presets.csv", "no presets");
    expectRefused("", "cutter_presets.csv", "no columns");
    expectRefused("a,b\n1,2\n", "cutter_presets.csv", "column");
}

TEST(CutPreset, TooManyAreRefused)
{
    std::string csv = kHead;
    for (int i = 0; i <= kMostCutPresets; ++i)
        csv += "p" + std::to_string(i) + ",mark,#000000,0.1,notes,1,lines,own\n";
    expectRefused(csv, "column preset", "more than 100");
}

}  // namespace
}  // namespace lidwright
