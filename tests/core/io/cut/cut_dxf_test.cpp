#include "core/io/cut/cut_dxf.h"

#include "tests/core/io/cut/cut_files.h"

#include <set>
#include <sstream>

namespace lidwright {
namespace {

using testing::countOf;
using testing::filedLid;

struct Group {
    int code = 0;
    std::string value;
};

std::vector<Group> groupsOf(const std::string& dxf)
{
    std::vector<Group> groups;
    std::istringstream in(dxf);
    for (std::string code, value; std::getline(in, code) && std::getline(in, value);)
        groups.push_back({std::stoi(code), value});
    return groups;
}

/// The names of all entities, in order, with their layers: "LINE cut-outline".
std::vector<std::string> entitiesOf(const std::string& dxf)
{
    std::vector<std::string> out;
    bool in = false;
    std::string type;
    for (const Group& group : groupsOf(dxf)) {
        if (group.code == 2 && group.value == "ENTITIES") in = true;
        if (group.code == 0 && group.value == "ENDSEC") in = false;
        if (!in) continue;
        if (group.code == 0) type = group.value;
        const bool part = type == "VERTEX" || type == "SEQEND";
        if (group.code == 8 && !part) out.push_back(std::string(type).append(" ").append(group.value));
    }
    return out;
}

constexpr DxfVersion kBoth[] = {DxfVersion::R12, DxfVersion::R2000};

TEST(CutDxf, SaysItsVersionAndItsUnit)
{
    const std::string old = writeCutDxf(filedLid(), DxfVersion::R12);
    EXPECT_NE(old.find("AC1009"), std::string::npos);
    EXPECT_NE(old.find("999\nMillimetres, full size\n"), std::string::npos);
    EXPECT_EQ(old.find("$INSUNITS"), std::string::npos);
    EXPECT_EQ(old.find("LWPOLYLINE"), std::string::npos);
    const std::string later = writeCutDxf(filedLid(), DxfVersion::R2000);
    EXPECT_NE(later.find("AC1015"), std::string::npos);
    EXPECT_NE(later.find("$INSUNITS\n 70\n4\n"), std::string::npos);
    EXPECT_NE(later.find("$MEASUREMENT\n 70\n1\n"), std::string::npos);
    EXPECT_STREQ(word(DxfVersion::R12), "r12");
    EXPECT_STREQ(word(DxfVersion::R2000), "r2000");
}

TEST(CutDxf, EntitiesStandInCuttingOrderOnTheirLayers)
{
    const CutDrawing drawing = filedLid();
    for (const DxfVersion version : kBoth) {
        const std::string poly = version == DxfVersion::R12 ? "POLYLINE " : "LWPOLYLINE ";
        const std::vector<std::string> entities = entitiesOf(writeCutDxf(drawing, version));
        ASSERT_EQ(entities.size(), drawing.paths.size());
        const std::vector<std::string> cuts(entities.begin(), entities.begin() + 6);
        EXPECT_EQ(cuts,
                  (std::vector<std::string>{poly + "engrave", poly + "cut-inside", poly + "cut-inside",
                                            "CIRCLE cut-inside", "CIRCLE cut-holes", poly + "cut-outline"}));
        for (const char* never : {"TEXT", "SPLINE", "HATCH", "SOLID"})
            for (const std::string& entity : entities)
                EXPECT_EQ(entity.find(never), std::string::npos) << entity;
    }
}

TEST(CutDxf, HandlesAreUniqueAndBelowTheSeed)
{
    std::set<std::string> handles;
    unsigned long highest = 0, seed = 0;
    std::string variable;
    for (const Group& group : groupsOf(writeCutDxf(filedLid(), DxfVersion::R2000))) {
        if (group.code == 9) variable = group.value;
        if (group.code == 0) variable.clear();
        if (group.code != 5 && group.code != 105) continue;
        const unsigned long handle = std::stoul(group.value, nullptr, 16);
        if (variable == "$HANDSEED") {
            seed = handle;
            continue;
        }
        EXPECT_TRUE(handles.insert(group.value).second) << group.value;
        highest = std::max(highest, handle);
    }
    EXPECT_GT(handles.size(), 20U);
    EXPECT_GT(seed, highest);
}

TEST(CutDxf, EveryRealNumberHasAPoint)
{
    for (const DxfVersion version : kBoth)
        for (const Group& group : groupsOf(writeCutDxf(filedLid(), version)))
            if (group.code >= 10 && group.code < 60) EXPECT_NE(group.value.find('.'), std::string::npos);
}

TEST(CutDxf, ClosedOutlinesAreFlaggedSo)
{
    const CutDrawing drawing = filedLid();
    int closed = 0;
    for (const CutPath& path : drawing.paths)
        closed += path.closed && path.radius == 0 ? 1 : 0;
    const std::string dxf = writeCutDxf(drawing, DxfVersion::R2000);
    EXPECT_EQ(countOf(dxf.substr(dxf.find("ENTITIES")), "\n 70\n1\n"),
              closed + 2);  // and the two layouts' flags
}

TEST(CutDxf, ForeignLettersInTheTitleStayOutOfTheComments)
{
    CutDrawing drawing = filedLid();
    drawing.title = "M\xc3\xa4rz\n  0\nEOF";
    for (const DxfVersion version : kBoth) {
        const std::string dxf = writeCutDxf(drawing, version);
        EXPECT_EQ(dxf.rfind("999\nM??rz?  0?EOF\n", 0), 0U);
        EXPECT_TRUE(
            std::all_of(dxf.begin(), dxf.end(), [](char c) { return c == '\n' || (c >= 32 && c < 127); }));
    }
}

}  // namespace
}  // namespace lidwright
