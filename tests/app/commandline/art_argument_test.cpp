#include "app/commandline/art_argument.h"

#include "tests/app/commandline/program.h"

#include <gmock/gmock.h>

namespace lidwright {
namespace {

using ::testing::HasSubstr;

class ArtArgumentTest : public testing::ProgramTest {};

TEST_F(ArtArgumentTest, TakesSettingsOffTheEnd)
{
    const auto a = parseArtArgument("leaf.svg,x=120,wide=80 mm,turn=45,per-inch=90");
    ASSERT_TRUE(a.ok()) << a.error().text();
    EXPECT_EQ(a->file, "leaf.svg");
    EXPECT_EQ(a->wide, "80 mm");
    EXPECT_EQ(a->perInch, "90");
    ASSERT_EQ(a->settings.size(), 2U);
    EXPECT_EQ(a->settings[0], (std::pair<std::string, std::string>("x", "120")));
    EXPECT_EQ(a->settings[1], (std::pair<std::string, std::string>("turn", "45")));
}

TEST_F(ArtArgumentTest, CommasAndEqualsInFileNamesDoNoHarm)
{
    EXPECT_EQ(parseArtArgument("a,b.svg")->file, "a,b.svg");
    EXPECT_EQ(parseArtArgument("a=b.svg")->file, "a=b.svg");
    const std::string odd = file("odd,x=1.svg", "<svg/>").toStdString();
    EXPECT_EQ(parseArtArgument(odd)->file, odd);
    EXPECT_TRUE(parseArtArgument(odd)->settings.empty());
    const auto more = parseArtArgument(odd + ",y=2");
    EXPECT_EQ(more->file, odd);
    EXPECT_EQ(more->settings.size(), 1U);
}

TEST_F(ArtArgumentTest, NamesTheNearestSetting)
{
    const auto bad = parseArtArgument("leaf.svg,trun=45");
    ASSERT_FALSE(bad.ok());
    EXPECT_THAT(bad.error().mend, HasSubstr("turn"));
}

}  // namespace
}  // namespace lidwright
