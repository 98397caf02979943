#include "app/findings/count_strip.h"

#include "app/style/verdict_mark.h"
#include "tests/app/style/palettes.h"

#include <gtest/gtest.h>

#include <QSignalSpy>

namespace lidwright {
namespace {

std::vector<Finding> findings(std::initializer_list<Verdict> verdicts)
{
    std::vector<Finding> all;
    for (const Verdict verdict : verdicts) {
        all.emplace_back();
        all.back().verdict = verdict;
    }
    return all;
}

const auto kMixed = {Verdict::Wrong, Verdict::Wrong, Verdict::Tight,
                     Verdict::Good,  Verdict::Good,  Verdict::Good};

TEST(CountStrip, CountsGravestFirst)
{
    CountStrip strip;
    EXPECT_EQ(strip.words().toStdString(), "Nothing is judged yet");
    strip.setFindings(findings(kMixed), true);
    EXPECT_EQ(strip.words().toStdString(), "2 wrong, 1 tight, 3 good");
    EXPECT_EQ(strip.accessibleName(), strip.words());
    strip.setFindings(findings({Verdict::Unknown, Verdict::Good}), true);
    EXPECT_EQ(strip.words().toStdString(), "1 unknown, 1 good");
}

TEST(CountStrip, AnnouncesAChangeOnceAndNotDuringADrag)
{
    CountStrip strip;
    QSignalSpy told(&strip, &CountStrip::announced);
    strip.setFindings(findings(kMixed), true);
    ASSERT_EQ(told.size(), 1);
    EXPECT_EQ(told[0][0].toString().toStdString(), "2 wrong, 1 tight, 3 good");
    strip.setFindings(findings(kMixed), true);
    EXPECT_EQ(told.size(), 1) << "nothing new";
    strip.setFindings(findings({Verdict::Good}), false);
    EXPECT_EQ(told.size(), 1) << "something is being dragged";
    strip.setFindings(findings({Verdict::Good}), true);
    EXPECT_EQ(told.size(), 2) << "the end of the drag";
}

TEST(CountStrip, TakesMoreLinesWhereItIsNarrow)
{
    CountStrip strip;
    strip.setFindings(findings(kMixed), false);
    const int oneLine = strip.heightForWidth(1000);
    EXPECT_EQ(strip.sizeHint().height(), oneLine);
    EXPECT_GT(strip.heightForWidth(120), oneLine);
    EXPECT_LT(strip.minimumSizeHint().width(), 120);
}

TEST(CountStrip, ShowsTheMarksNotOnlyNumbers)
{
    CountStrip strip;
    strip.setPalette(testing::lightPalette());
    strip.setFindings(findings({Verdict::Wrong}), false);
    strip.resize(200, strip.heightForWidth(200));
    const QImage image = strip.grab().toImage();
    const QRgb wanted = markColour(Verdict::Wrong, strip.palette()).rgb();
    int marked = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            marked += image.pixelColor(x, y).rgb() == wanted ? 1 : 0;
    EXPECT_GT(marked, 50);
}

}  // namespace
}  // namespace lidwright
