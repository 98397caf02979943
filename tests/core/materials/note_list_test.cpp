#include "core/materials/temperament.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

using ::testing::HasSubstr;

TEST(NoteList, ThreeSpellingsOfOneNote)
{
    const Result<Temperament> list = readNoteList("9/8 1.25,498.0449991346125c\n\t3/2 , 2");
    ASSERT_TRUE(list) << list.error().text();
    ASSERT_EQ(list->ratios.size(), 5U);
    EXPECT_EQ(list->ratios[0], 1.125);
    EXPECT_EQ(list->ratios[1], 1.25);
    EXPECT_NEAR(list->ratios[2], 4.0 / 3, 1e-14);
    EXPECT_EQ(list->ratios[3], 1.5);
    EXPECT_EQ(list->ratios[4], 2);
    EXPECT_FALSE(list->repeats);
    // 203.91 cents are 9/8 to the printed digits.
    EXPECT_NEAR(readNoteList("203.91c")->ratios[0], 1.125, 1e-5);
    EXPECT_NEAR(cents(readNoteList("1.125")->ratios[0]), 203.91, 1e-5);
    EXPECT_EQ(readNoteList("8")->ratios[0], 8);
    EXPECT_NEAR(readNoteList("3600c")->ratios[0], 8, 1e-12);
    EXPECT_EQ(readNoteList("1c")->ratios.size(), 1U);
}

TEST(NoteList, FretsAreThoseOfTheListAndNoMore)
{
    const Temperament list = *readNoteList("9/8 5/4 3/2 2 9/4");
    const Result<std::vector<FretNote>> all = fretNotes(list, 5);
    ASSERT_TRUE(all);
    EXPECT_EQ((*all)[4], (FretNote{"5", 2.25}));
    const Result<std::vector<FretNote>> more = fretNotes(list, 6);
    ASSERT_FALSE(more);
    EXPECT_THAT(more.error().what, HasSubstr("has 5 frets and 6 are wanted"));
    // Told to repeat, it goes on from its last note.
    Temperament again = *readNoteList("9/8 3/2 2");
    again.repeats = true;
    EXPECT_EQ(fretNotes(again, 5)->back(), (FretNote{"5", 3}));
}

TEST(NoteList, ErrorsNameTheEntryAndHowToMendIt)
{
    const auto refused = [](const std::string& text) {
        const Result<Temperament> list = readNoteList(text);
        EXPECT_FALSE(list) << text;
        return list ? Error{} : list.error();
    };
    Error error = refused("9/8 5//4 3/2");
    EXPECT_EQ(error.what, "\"5//4\" is no note");
    EXPECT_EQ(error.where, "notes, entry 2");
    EXPECT_EQ(error.mend, "write it as 9/8, 1.125 or 203.91c");
    EXPECT_EQ(error.position, 4);
    for (const char* bad :
         {"x",   "9/",  "/8", "9/0", "9/8/7", "9.5/8",       "-9/8", "+1.5",         "1.5.2", "1e0", "inf",
          "nan", "0x2", "c",  ".",   "1.5C",  "203.91cents", "9\\8", "\xe2\x99\xad", "1;2",   "1_2"})
        EXPECT_THAT(refused(bad).what, HasSubstr("is no note")) << bad;
    // A comma parts entries, so a decimal comma is seen as a note on the open string.
    error = refused("1,125");
    EXPECT_EQ(error.where, "notes, entry 1");
    EXPECT_THAT(error.mend, HasSubstr("decimal mark is a point"));
    EXPECT_THAT(refused("9/8 203.91").what, HasSubstr("more than three octaves"));
    EXPECT_THAT(refused("9/8 203.91").mend, HasSubstr("3600c"));
    EXPECT_THAT(refused("3601c").what, HasSubstr("three octaves"));
    EXPECT_THAT(refused("999999999999999999999999999999c").what, HasSubstr("three octaves"));
    EXPECT_THAT(refused("8/9").what, HasSubstr("not above the open string"));
    EXPECT_THAT(refused("0").what, HasSubstr("not above the open string"));
    EXPECT_THAT(refused("0c").what, HasSubstr("not above the open string"));
    EXPECT_THAT(refused("1.0001").what, HasSubstr("less than 1 cent"));
    EXPECT_EQ(refused("5/4 9/8").what, "\"9/8\" is not above \"5/4\" by 1 cent or more");
    EXPECT_EQ(refused("9/8 203.92c").where, "notes, entry 2");
    EXPECT_THAT(refused("").what, HasSubstr("no note"));
    EXPECT_THAT(refused(" ,, \n").what, HasSubstr("no note"));
    EXPECT_THAT(refused(std::string(500, 'x')).what, HasSubstr("x...\" is no note"));
    EXPECT_THAT(refused(std::string(kMaxNoteListBytes + 1, ' ')).what, HasSubstr("longer than 2000 bytes"));
}

TEST(NoteList, HoldsSeventyTwoNotesAndNoMore)
{
    std::string text;
    for (int k = 1; k <= kMostDivisions; ++k)
        text += std::to_string(50 * k) + "c ";
    const Result<Temperament> list = readNoteList(text);
    ASSERT_TRUE(list);
    EXPECT_EQ(list->ratios.size(), 72U);
    const Result<Temperament> more = readNoteList(text + "7.9999");
    ASSERT_FALSE(more);
    EXPECT_EQ(more.error().where, "notes, entry 73");
    EXPECT_THAT(more.error().what, HasSubstr("one note too many"));
}

TEST(NoteList, NoBytesMakeItCrash)
{
    constexpr std::string_view kBytes = "0123456789./c, \t\n+-eE\"x\xff\xc3";
    std::mt19937 dice(5);
    int taken = 0;
    for (int round = 0; round < 20000; ++round) {
        std::string text(dice() % 12, ' ');
        for (char& c : text)
            c = kBytes[dice() % kBytes.size()];
        const Result<Temperament> list = readNoteList(text);
        if (!list) {
            EXPECT_LE(list.error().position, static_cast<int>(text.size()));
            EXPECT_FALSE(list.error().mend.empty());
            continue;
        }
        ++taken;
        double before = 1;
        for (double ratio : list->ratios) {
            EXPECT_GT(ratio, before);
            before = ratio;
        }
        EXPECT_LE(before, 8 * (1 + 1e-9));
    }
    EXPECT_GT(taken, 50);
}

}  // namespace
}  // namespace lidwright
