#include "core/io/plan/unknown_keys.h"

#include "core/io/plan/plan_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace lidwright {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

// A key in every kind of group that a plan has.
constexpr const char* kEverywhere = R"({
  "format": "lidwright-plan", "version": 1, "units": "mm", "first": [1, {"deep": null}],
  "box": {"length": 300, "lacquer": "shellac",
          "outline": {"source": "b.svg", "points": [[0,0],[9,0],[9,9]], "smooth": true}},
  "hole": [{"kind": "circle"}, {"kind": "circle", "bevel": 1.50}],
  "art": [{"x": 1, "ink": "a/b~c",
           "source": {"name": "a.svg", "hash": 18446744073709551615},
           "paints": [{"name": "p", "use": "cut", "depth": 2}],
           "runs": [{"paint": 0, "painted": [[[0,0],[1,0],[0,1]]], "speed": [1, 2]}]}],
  "odd/name~": {}, "": "no name"
})";

TEST(UnknownKeys, SurviveInPlaceAndAreTold)
{
    const auto first = readPlan(kEverywhere, "f.lidplan");
    ASSERT_TRUE(first.ok()) << first.error().text();
    EXPECT_EQ(first->plan.box.length, 300);
    EXPECT_THAT(first->notes, SizeIs(10));
    EXPECT_THAT(first->notes[0], HasSubstr("box.outline.smooth is not known"));

    const std::string written = writePlan(first->plan);
    const auto json = nlohmann::json::parse(written);
    EXPECT_EQ(json["first"].dump(), R"([1,{"deep":null}])");
    EXPECT_EQ(json["box"]["lacquer"], "shellac");
    EXPECT_EQ(json["box"]["outline"]["smooth"], true);
    EXPECT_FALSE(json["hole"][0].contains("bevel"));
    EXPECT_EQ(json["hole"][1]["bevel"], 1.5);
    EXPECT_EQ(json["art"][0]["ink"], "a/b~c");
    EXPECT_EQ(json["art"][0]["source"]["hash"], 18446744073709551615u);
    EXPECT_EQ(json["art"][0]["paints"][0]["depth"], 2);
    EXPECT_EQ(json["art"][0]["runs"][0]["speed"], nlohmann::json({1, 2}));
    EXPECT_TRUE(json["odd/name~"].is_object());
    EXPECT_EQ(json[""], "no name");

    const auto second = readPlan(written, "f.lidplan");
    ASSERT_TRUE(second.ok());
    EXPECT_EQ(second->plan, first->plan);
    EXPECT_EQ(second->notes, first->notes);
    EXPECT_EQ(writePlan(second->plan), written);
}

TEST(UnknownKeys, GoWithTheMemberThatHeldThem)
{
    auto reading = readPlan(kEverywhere, "f.lidplan");
    ASSERT_TRUE(reading.ok());
    Plan plan = reading->plan;
    plan.holes.pop_back();
    const auto json = nlohmann::json::parse(writePlan(plan));
    ASSERT_EQ(json["hole"].size(), 1u);
    EXPECT_FALSE(json["hole"][0].contains("bevel"));
    EXPECT_EQ(json["box"]["lacquer"], "shellac");
}

TEST(UnknownKeys, NeverStandBesideTheKeyItself)
{
    Plan plan;
    plan.unknownKeys = R"({"/box/length":1,"/box/glue":"hide","/format":"x"})";
    const std::string text = writePlan(plan);
    const auto back = readPlan(text, "f.lidplan");
    ASSERT_TRUE(back.ok()) << back.error().text();
    EXPECT_EQ(back->plan.box.length, plan.box.length);
    EXPECT_EQ(back->plan.unknownKeys, R"({"/box/glue":"hide"})");
}

TEST(UnknownKeys, ATextThatIsNoneIsLeftOut)
{
    for (const char* text : {"{", "[]", "7", "{\"no pointer\":1}"}) {
        Plan plan;
        plan.unknownKeys = text;
        const auto back = readPlan(writePlan(plan), "f.lidplan");
        ASSERT_TRUE(back.ok());
        EXPECT_EQ(back->plan.unknownKeys, "");
    }
}

TEST(UnknownKeys, ManyAreCountedInOneNote)
{
    std::string text = R"({"format":"lidwright-plan","version":1)";
    for (int i = 0; i < 50; ++i)
        text += ",\"new-" + std::to_string(i) + "\":" + std::to_string(i);
    const auto reading = readPlan(text + "}", "f.lidplan");
    ASSERT_TRUE(reading.ok());
    ASSERT_THAT(reading->notes, SizeIs(21));
    EXPECT_THAT(reading->notes.back(), HasSubstr("30 more keys"));
    EXPECT_EQ(nlohmann::json::parse(writePlan(reading->plan))["new-49"], 49);
}

TEST(UnknownKeys, PointersAreEscapedAsRfc6901Says)
{
    const PlanPath path = PlanPath{}.member("art").item(0).member("a/b").member("m~n");
    EXPECT_EQ(path.pointer, "/art/0/a~1b/m~0n");
    EXPECT_EQ(path.shown, "art.1.a/b.m~n");
}

TEST(UnknownKeys, NotesShowLongAndUnprintableNamesInPart)
{
    const std::string name(300, 'n');
    const auto reading =
        readPlan(R"({"format":"lidwright-plan","version":1,"a\nb":1,")" + name + "\":2}", "f.lidplan");
    ASSERT_TRUE(reading.ok());
    EXPECT_THAT(reading->notes, ElementsAre(HasSubstr("a?b is not known"), HasSubstr("nnn... is not known")));
    EXPECT_LT(reading->notes[1].size(), 120u);
    EXPECT_EQ(nlohmann::json::parse(writePlan(reading->plan))[name], 2);
}

TEST(UnknownKeys, AnOrdinaryPlanHasNone)
{
    const auto reading = readPlan(writePlan(Plan{}), "f.lidplan");
    ASSERT_TRUE(reading.ok());
    EXPECT_THAT(reading->notes, IsEmpty());
    EXPECT_EQ(reading->plan.unknownKeys, "");
}

}  // namespace
}  // namespace lidwright
