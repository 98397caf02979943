#include "app/commandline/arguments.h"

#include "core/base/near_word.h"

#include <gmock/gmock.h>

#include <random>

namespace lidwright {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

constexpr OptionSpec kKnown[] = {
    {"--set", "KEY=VALUE", "", true}, {"--json", nullptr, ""}, {"--width", "PX", ""}, {"-o", "FILE", ""}};

Result<Arguments> parse(std::vector<std::string> words, std::size_t mostPlain = 1)
{
    return Arguments::parse(words, kKnown, mostPlain);
}

TEST(Arguments, SortsOptionsAndTheRest)
{
    const auto a = parse({"--set", "a=1", "plan", "--json", "--set=b=2", "-o", "x=y.png", "--width=7"});
    ASSERT_TRUE(a.ok()) << a.error().text();
    EXPECT_THAT(a->plain(), ElementsAre("plan"));
    EXPECT_THAT(a->values("--set"), ElementsAre("a=1", "b=2"));
    EXPECT_TRUE(a->has("--json"));
    EXPECT_EQ(a->value("-o"), "x=y.png");
    EXPECT_EQ(a->value("--width"), "7");
    EXPECT_FALSE(a->value("--nothing").has_value());
}

TEST(Arguments, ADoubleDashEndsTheOptions)
{
    const auto a = parse({"--", "--json"});
    ASSERT_TRUE(a.ok());
    EXPECT_FALSE(a->has("--json"));
    EXPECT_THAT(a->plain(), ElementsAre("--json"));
    EXPECT_THAT(parse({"-"})->plain(), ElementsAre("-"));
}

TEST(Arguments, NamesWhatIsWrong)
{
    EXPECT_THAT(parse({"--jsn"}).error().mend, HasSubstr("--json"));
    EXPECT_THAT(parse({"--wdith", "3"}).error().mend, HasSubstr("--width"));
    EXPECT_THAT(parse({"--zzzzzzzz"}).error().mend, HasSubstr("--set"));
    EXPECT_THAT(parse({"--set"}).error().what, HasSubstr("value"));
    EXPECT_THAT(parse({"--json=1"}).error().what, HasSubstr("no value"));
    EXPECT_THAT(parse({"--width", "1", "--width", "2"}).error().what, HasSubstr("twice"));
    EXPECT_THAT(parse({"a", "b"}).error().where, "b");
    EXPECT_FALSE(parse({"a"}, 0).ok());
}

TEST(NearWord, DistanceIsAMetric)
{
    EXPECT_EQ(editDistance("kitten", "sitting"), 3U);  // the textbook pair
    EXPECT_EQ(editDistance("", "abc"), 3U);
    std::mt19937 random(5);
    const auto word = [&] {
        std::string w(random() % 8, 'a');
        for (char& c : w)
            c = static_cast<char>('a' + random() % 3);
        return w;
    };
    for (int i = 0; i < 500; ++i) {
        const std::string a = word(), b = word(), c = word();
        EXPECT_EQ(editDistance(a, b), editDistance(b, a));
        EXPECT_EQ(editDistance(a, b) == 0, a == b);
        EXPECT_LE(editDistance(a, c), editDistance(a, b) + editDistance(b, c));
    }
}

TEST(NearWord, FindsSlipsOnly)
{
    const std::vector<std::string> known{"findings", "values", "paper"};
    EXPECT_EQ(nearestWord("findngs", known), "findings");
    EXPECT_EQ(nearestWord("find", known), "findings");
    EXPECT_EQ(nearestWord("papre", known), "paper");
    EXPECT_EQ(nearestWord("guitar", known), "");
    EXPECT_EQ(nearestWord("", known), "");
    EXPECT_EQ(nearestWord(std::string(100'000, 'x'), known), "");
}

}  // namespace
}  // namespace lidwright
