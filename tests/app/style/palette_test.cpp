#include "app/style/palette.h"

#include "app/style/contrast.h"
#include "tests/app/style/palettes.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

using testing::darkPalette;
using testing::lightPalette;

TEST(Palette, TellsLightFromDark)
{
    EXPECT_FALSE(isDark(lightPalette()));
    EXPECT_TRUE(isDark(darkPalette()));
}

TEST(Palette, SelectedTextIsReadableWhereTheDesktopsWasNot)
{
    EXPECT_LT(contrastRatio(lightPalette().color(QPalette::Highlight), Qt::white), kTextContrast)
        << "the desktop's own selection is what has to be mended";
    for (const QPalette& desktop : {lightPalette(), darkPalette()}) {
        const QPalette ours = withReadableHighlight(desktop);
        for (const QPalette::ColorGroup group : {QPalette::Active, QPalette::Inactive}) {
            const QColor highlight = ours.color(group, QPalette::Highlight);
            EXPECT_GE(contrastRatio(highlight, ours.color(group, QPalette::HighlightedText)), kTextContrast);
            EXPECT_GE(contrastRatio(highlight, ours.color(QPalette::Base)), kMarkContrast);
            EXPECT_GE(contrastRatio(highlight, ours.color(QPalette::Window)), kMarkContrast);
        }
        EXPECT_EQ(ours.color(QPalette::Window), desktop.color(QPalette::Window));
        EXPECT_EQ(ours.color(QPalette::Text), desktop.color(QPalette::Text));
    }
}

TEST(Palette, QuietTextStaysReadableAndIsQuieter)
{
    for (const QPalette& palette : {lightPalette(), darkPalette()}) {
        const QColor quiet = quietText(palette);
        const QColor window = palette.color(QPalette::Window);
        EXPECT_GE(contrastRatio(quiet, window), kTextContrast);
        EXPECT_GE(contrastRatio(quiet, palette.color(QPalette::Base)), kTextContrast);
        EXPECT_LT(contrastRatio(quiet, window), contrastRatio(palette.color(QPalette::WindowText), window));
    }
}

TEST(PaperTheme, EveryLineIsSeenOnPaperAndOnEveryWood)
{
    for (const bool dark : {false, true}) {
        const PaperTheme& theme = paperTheme(dark);
        const QColor grounds[] = {theme.paper, theme.wood, theme.woodAcross, theme.woodEnd, theme.block};
        for (const QColor& ground : grounds) {
            for (const LineKind kind : {LineKind::Visible, LineKind::Narrow, LineKind::Hidden,
                                        LineKind::Centre, LineKind::Phantom, LineKind::Cut, LineKind::Mark})
                EXPECT_GE(contrastRatio(lineColour(theme, kind), ground), kMarkContrast)
                    << "line " << static_cast<int>(kind) << " on " << ground.name().toStdString();
            for (const QColor& sign : {theme.warning, theme.selection, theme.handle})
                EXPECT_GE(contrastRatio(sign, ground), kMarkContrast)
                    << sign.name().toStdString() << " on " << ground.name().toStdString();
            EXPECT_GE(contrastRatio(theme.text, ground), kTextContrast);
        }
        // What is cut away must not be taken for wood.
        EXPECT_GE(contrastRatio(theme.cutThrough, theme.wood), dark ? 1.7 : kMarkContrast);
    }
}

TEST(PaperTheme, EveryFillHasAColourOfItsOwn)
{
    for (const bool dark : {false, true}) {
        const PaperTheme& theme = paperTheme(dark);
        std::vector<QRgb> seen;
        for (const FillKind kind :
             {FillKind::Paper, FillKind::Wood, FillKind::WoodAcross, FillKind::WoodEnd, FillKind::CutThrough,
              FillKind::Engraved, FillKind::Bridge, FillKind::Fretboard, FillKind::Backing, FillKind::Block,
              FillKind::Warning}) {
            const QRgb colour = fillColour(theme, kind).rgb();
            EXPECT_EQ(std::count(seen.begin(), seen.end(), colour), 0);
            seen.push_back(colour);
        }
    }
}

}  // namespace
}  // namespace lidwright
