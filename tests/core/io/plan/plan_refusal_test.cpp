#include "core/io/plan/plan_file.h"
#include "core/plan/catalogue.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <ostream>

// What the reader refuses, and how it says so.
namespace lidwright {
namespace {

using ::testing::HasSubstr;

/// A plan file with these members.
std::string plan(const std::string& members)
{
    return R"({"format":"lidwright-plan","version":1)" + (members.empty() ? "" : "," + members) + "}";
}

std::string drawing(const std::string& paints, const std::string& runs)
{
    return R"("art":[{"paints":[)" + paints + R"(],"runs":[)" + runs + "]}]";
}

Error refusal(const std::string& text)
{
    const auto reading = readPlan(text, "f.lidplan");
    EXPECT_FALSE(reading.ok()) << text.substr(0, 200);
    return reading.ok() ? Error{} : reading.error();
}

std::string repeated(const std::string& what, int times)
{
    std::string out;
    for (int i = 0; i < times; ++i)
        out += what;
    return out;
}

struct Case {
    std::string text;
    const char* where;
    const char* what;
};
void PrintTo(const Case& c, std::ostream* out)
{
    *out << c.text.substr(0, 200);
}

class Refusal : public ::testing::TestWithParam<Case> {};

TEST_P(Refusal, NamesFilePlaceAndReason)
{
    const Error error = refusal(GetParam().text);
    const std::string place = GetParam().where;
    EXPECT_EQ(error.where, place.empty() ? "f.lidplan" : "f.lidplan, " + place);
    EXPECT_THAT(error.what, HasSubstr(GetParam().what));
}

INSTANTIATE_TEST_SUITE_P(
    Syntax, Refusal,
    ::testing::Values(Case{"", "line 1, column 1", "ends too early"},
                      Case{"{\"format\":", "line 1, column 11", "ends too early"},
                      Case{"{\n  \"format\": \"lidwright-plan\",\n  \"title\": oak\n}", "line 3, column 12",
                           "not valid JSON"},
                      Case{"{\n  \"\u00e9\u00e9\": }", "line 2, column 9", "not valid JSON"},
                      Case{plan("") + "}", "line 1, column 40", "not valid JSON"},
                      Case{plan(R"("box":{"length":NaN})"), "line 1, column 56", "not valid JSON"},
                      Case{plan(R"("box":{"length":Infinity})"), "line 1, column 56", "not valid JSON"},
                      Case{plan(R"("box":{"length":01})"), "line 1, column 57", "not valid JSON"},
                      Case{plan("// a comment\n\"box\":{}"), "line 1, column 40", "not valid JSON"},
                      Case{plan(R"("box":{"length":1e999})"), "line 1, column 60", "1e999 is too large"},
                      Case{plan("\"sheet\":{\"title\":\"a\xff\"}"), "line 1, column 59", "not UTF-8"},
                      Case{plan("\"sheet\":{\"title\":\"a\nb\"}"), "line 1, column 59", "not valid JSON"},
                      Case{plan(R"("box":{"length":300,"width":200,"length":301})"), "box.length", "twice"},
                      Case{plan(R"("later":[1,{"a":1,"a":1}])"), "later.2.a", "twice"}));

INSTANTIATE_TEST_SUITE_P(
    Header, Refusal,
    ::testing::Values(Case{"[]", "", "a group of keys"}, Case{"7", "", "a group of keys"},
                      Case{"{}", "format", "not a plan of Lidwright"},
                      Case{R"({"format":"picture","version":1})", "format", "not a plan of Lidwright"},
                      Case{R"({"format":7,"version":1})", "format", "not a plan of Lidwright"},
                      Case{R"({"format":"lidwright-plan"})", "version", "is missing"},
                      Case{R"({"format":"lidwright-plan","version":0})", "version", "whole number"},
                      Case{R"({"format":"lidwright-plan","version":-1})", "version", "whole number"},
                      Case{R"({"format":"lidwright-plan","version":1.5})", "version", "whole number"},
                      Case{R"({"format":"lidwright-plan","version":"1"})", "version", "whole number"},
                      Case{plan(R"("units":"inch")"), "units", "millimetres"},
                      Case{plan(R"("units":1)"), "units", "text"}));

INSTANTIATE_TEST_SUITE_P(
    Values, Refusal,
    ::testing::Values(
        Case{plan(R"("box":[])"), "box", "a group of keys"},
        Case{plan(R"("box":null)"), "box", "a group of keys"},
        Case{plan(R"("box":{"length":"300"})"), "box.length", "a number is needed"},
        Case{plan(R"("box":{"length":null})"), "box.length", "a number is needed"},
        Case{plan(R"("box":{"length":2000})"), "box.length", "2000 mm is out of range"},
        Case{plan(R"("sheet":{"unit":"inch"},"box":{"length":2540})"), "box.length",
             "100 in is out of range"},
        Case{plan(R"("box":{"shape":"star"})"), "box.shape", "rectangle, outline"},
        Case{plan(R"("box":{"shape":0})"), "box.shape", "rectangle, outline"},
        Case{plan(R"("strings":{"count":3.5})"), "strings.count", "whole number"},
        Case{plan(R"("head-opening":{"cut":1})"), "head-opening.cut", "true or false"},
        Case{plan(R"("sheet":{"title":5})"), "sheet.title", "a text is needed"},
        Case{plan(R"("sheet":{"title":")" + std::string(201, 'x') + "\"}"), "sheet.title", "too long"},
        Case{plan(R"("hole":{})"), "hole", "a list"}, Case{plan(R"("hole":[1,2])"), "hole", "a list"},
        Case{plan(R"("hole":[{},7])"), "hole.2", "a group of keys"},
        Case{plan(R"("hole":[{},{},{"width":-1}])"), "hole.3.width", "out of range"},
        Case{plan(R"("block":[{"wall":"roof"}])"), "block.1.wall", "head-end, tail-end"},
        Case{plan("\"hole\":[{}" + repeated(",{}", 64) + "]"), "hole", "65 is longer than 64"},
        Case{plan("\"block\":[{}" + repeated(",{}", 64) + "]"), "block", "65 is longer than 64"},
        Case{plan("\"art\":[{}" + repeated(",{}", 64) + "]"), "art", "65 is longer than 64"},
        Case{plan(R"("box":{"outline":7})"), "box.outline", "a group of keys"},
        Case{plan(R"("box":{"outline":{}})"), "box.outline.points", "missing"},
        Case{plan(R"("box":{"outline":{"points":[[0,0],[1,1]]}})"), "box.outline.points", "three points"},
        Case{plan(R"("box":{"outline":{"points":[[0,0],[1,1],[5000.1,0]]}})"), "box.outline.points.3",
             "more than 5000 mm"}));

INSTANTIATE_TEST_SUITE_P(
    Drawings, Refusal,
    ::testing::Values(
        Case{plan(R"("art":[{"x":1}])"), "art.1.runs", "missing"},
        Case{plan(drawing("", R"({"paint":0})")), "art.1.runs.1.paint", "one of the drawing's paints"},
        Case{plan(drawing("{}", R"({"paint":1})")), "art.1.runs.1.paint", "one of the drawing's paints"},
        Case{plan(drawing("{}", R"({"paint":-1})")), "art.1.runs.1.paint", "one of the drawing's paints"},
        Case{plan(drawing("{}", R"({"paint":0.5})")), "art.1.runs.1.paint", "one of the drawing's paints"},
        Case{plan(drawing("{}", R"({})")), "art.1.runs.1.paint", "one of the drawing's paints"},
        Case{plan(drawing("{},{\"use\":\"burned\"}", "")), "art.1.paints.2.use", "cut, cut-inside, engraved"},
        Case{plan(drawing("{\"use\":1}", "")), "art.1.paints.1.use", "cut, cut-inside, engraved"},
        Case{plan(drawing("{\"line\":\"yes\"}", "")), "art.1.paints.1.line", "true or false"},
        Case{plan(drawing("{\"thinnest\":-1}", "")), "art.1.paints.1.thinnest", "not negative"},
        Case{plan(drawing("7", "")), "art.1.paints.1", "a group of keys"},
        Case{plan(drawing("{}", R"({"paint":0,"painted":7})")), "art.1.runs.1.painted", "a list"},
        Case{plan(drawing("{}", R"({"paint":0,"painted":[[]]})")), "art.1.runs.1.painted.1", "three points"},
        Case{plan(drawing("{}", R"({"paint":0,"painted":[[[0,0],[1,1]]]})")), "art.1.runs.1.painted.1",
             "three points"},
        Case{plan(drawing("{}", R"({"paint":0,"enclosed":[[[0,0],[1,1],[2]]]})")),
             "art.1.runs.1.enclosed.1.3", "two numbers"},
        Case{plan(drawing("{}", R"({"paint":0,"painted":[[[0,0],[1,"1"],[2,2]]]})")),
             "art.1.runs.1.painted.1.2", "two numbers"},
        Case{plan(drawing("{}", R"({"paint":0,"painted":[[[0,0],[1,-5001],[2,2]]]})")),
             "art.1.runs.1.painted.1.2", "more than 5000 mm"},
        Case{plan(R"("art":[{"source":{"bytes":-1},"runs":[]}])"), "art.1.source.bytes", "whole number"},
        Case{plan(R"("art":[{"messages":[1],"runs":[]}])"), "art.1.messages.1", "a text is needed"},
        Case{plan(R"("art":[{"drawing-of":1}])"), "art.1.drawing-of", "earlier piece"},
        Case{plan(R"("art":[{"runs":[]},{"drawing-of":0}])"), "art.2.drawing-of", "earlier piece"},
        Case{plan(R"("art":[{"runs":[]},{"drawing-of":2}])"), "art.2.drawing-of", "earlier piece"},
        Case{plan(R"("art":[{"runs":[]},{"drawing-of":1,"runs":[]}])"), "art.2.drawing-of", "either"},
        Case{plan(R"("art":[{"runs":[]},{"drawing-of":1,"uses":["cut"]}])"), "art.2.uses", "more uses"},
        Case{plan(R"("art":[{"paints":[{}],"runs":[]},{"drawing-of":1,"uses":["sawn"]}])"), "art.2.uses.1",
             "cut, cut-inside"}));

TEST(PlanRefusal, ANewerFormatIsRefusedBeforeAnythingElseIsJudged)
{
    for (const char* rest : {"}", ",\"box\":7}", ",\"box\":{\"a\":1,\"a\":1}}", ",!"}) {
        const Error error = refusal(std::string(R"({"format":"lidwright-plan","version":2)") + rest);
        EXPECT_EQ(error.what, "made by a newer version, format 2; this program reads up to 1");
        EXPECT_EQ(error.where, "f.lidplan");
    }
    EXPECT_THAT(refusal(R"({"version":12,"box":{},"format":"lidwright-plan"})").what, HasSubstr("format 12"));
    // Another program's file with a version of its own is not called newer.
    EXPECT_THAT(refusal(R"({"version":12,"format":"else"})").what, HasSubstr("not a plan of Lidwright"));
}

TEST(PlanRefusal, PointsAtTheByteOfASyntaxError)
{
    const std::string text = plan(R"("box":{"length":oak})");
    EXPECT_EQ(refusal(text).position, static_cast<int>(text.find("oak")));
}

TEST(PlanRefusal, EveryQuantityIsHeldToItsRange)
{
    for (const Parameter& p : catalogue()) {
        const std::string key = p.key;
        const std::string part = key.substr(0, key.find('.')), name = key.substr(key.rfind('.') + 1);
        if (p.isText() || key.ends_with(".count")) continue;
        const auto fileWith = [&](const std::string& value) {
            const std::string member = "{\"" + name + "\":" + value + (part == "art" ? ",\"runs\":[]}" : "}");
            return plan("\"" + part + "\":" + (p.inList() ? "[" + member + "]" : member));
        };
        const std::string place = "f.lidplan, " + keyOf(p, 0);
        for (const double outside : {p.least - 1, p.most + 1})
            EXPECT_EQ(refusal(fileWith(std::to_string(outside))).where, place);
        for (const char* wrong : {"\"nonsense\"", "[]", "{}", "null", "[1,2]"})
            EXPECT_EQ(refusal(fileWith(wrong)).where, place) << wrong;
    }
}

TEST(PlanRefusal, NestingIsLimitedAndCostsNoStack)
{
    // The outermost object is the first level.
    const auto nested = [](int levels) {
        return plan("\"later\":" + repeated("[", levels - 1) + repeated("]", levels - 1));
    };
    EXPECT_TRUE(readPlan(nested(kPlanDepthLimit), "f.lidplan").ok());
    EXPECT_THAT(refusal(nested(kPlanDepthLimit + 1)).what,
                HasSubstr("more than 32 lists inside one another"));
    EXPECT_THAT(refusal(repeated("[", 1'000'000)).what, HasSubstr("more than 32"));
    EXPECT_THAT(refusal(repeated("{\"a\":", 1'000'000)).what, HasSubstr("more than 32"));
}

TEST(PlanRefusal, PointsAreLimited)
{
    const auto outline = [](int points) {
        return plan("\"box\":{\"outline\":{\"points\":[[0,0]" + repeated(",[0,0]", points - 1) + "]}}");
    };
    EXPECT_TRUE(readPlan(outline(kPlanPointLimit), "f.lidplan").ok());
    EXPECT_THAT(refusal(outline(kPlanPointLimit + 1)).what, HasSubstr("more than 2000000 outline points"));
}

TEST(PlanRefusal, ValuesAreLimited)
{
    // The object, its three members and the list's first item.
    const auto list = [](int items) { return plan("\"later\":[0" + repeated(",0", items - 1) + "]"); };
    EXPECT_TRUE(readPlan(list(kPlanValueLimit - 4), "f.lidplan").ok());
    EXPECT_THAT(refusal(list(kPlanValueLimit - 3)).what, HasSubstr("more than 4000000 values"));
}

TEST(PlanRefusal, SizeIsLimited)
{
    const std::string large(kPlanFileLimit + 1, ' ');
    EXPECT_THAT(refusal(large).what, HasSubstr("larger than 256 MiB"));
    EXPECT_EQ(refusal(large).where, "f.lidplan");
}

TEST(PlanRefusal, CoordinatesMayReachTheLimit)
{
    EXPECT_TRUE(
        readPlan(plan(R"("box":{"outline":{"points":[[-5000,0],[5000,-5000],[0,5000]]}})"), "f.lidplan")
            .ok());
}

TEST(PlanRefusal, EveryCutOfAFileIsRefusedOrIsAPlan)
{
    const std::string whole = plan(
        drawing(R"({"name":"p\u00e9","use":"cut"})", R"({"paint":0,"painted":[[[0,0],[1.5e1,0],[0,1]]]})"));
    ASSERT_TRUE(readPlan(whole, "f.lidplan").ok());
    for (std::size_t size = 0; size < whole.size(); ++size)
        EXPECT_THAT(refusal(whole.substr(0, size)).where, HasSubstr("line 1, column")) << size;
}

}  // namespace
}  // namespace lidwright
