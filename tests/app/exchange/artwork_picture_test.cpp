#include "app/exchange/artwork_picture.h"

#include "tests/support/plans.h"

#include <gtest/gtest.h>

#include <QTest>

namespace lidwright {
namespace {

ArtPicture discOnFrame()
{
    auto art = std::make_shared<Artwork>();
    art->paints = {{"fill #0000ff", "#0000ff", false, 0}, {"fill #ffffff", "#ffffff", false, 0}};
    art->runs = {{0, {{circleRing({0, 0}, 40)}}, {}}, {1, {{circleRing({0, 0}, 10)}}, {}}};
    ArtPicture picture;
    picture.art = art;
    picture.uses = {ArtUse::Cut, ArtUse::Wood};
    picture.size = {200, 200};
    picture.ground = QColor(250, 250, 250);
    picture.wood = QColor(200, 160, 100);
    picture.gone = QColor(20, 20, 20);
    picture.engraving = QColor(90, 0, 0);
    picture.line = QColor(0, 200, 0);
    return picture;
}

TEST(ArtworkPicture, ShowsTheAuthorsColoursOrTheLid)
{
    ArtPicture picture = discOnFrame();
    QImage image = renderArtwork(picture);
    EXPECT_EQ(image.pixelColor(100, 100), QColor(Qt::white));
    EXPECT_EQ(image.pixelColor(100, 40), QColor(Qt::blue));
    EXPECT_EQ(image.pixelColor(3, 3), picture.ground);

    picture.look = ArtLook::Lid;
    image = renderArtwork(picture);
    EXPECT_EQ(image.pixelColor(100, 100), picture.wood) << "white on black keeps the wood";
    EXPECT_EQ(image.pixelColor(100, 40), picture.gone);
    EXPECT_EQ(image.pixelColor(3, 3), picture.wood);
    picture.uses = {ArtUse::Engraved, ArtUse::Ignored};
    image = renderArtwork(picture);
    EXPECT_NE(image.pixelColor(100, 40), picture.gone);
}

TEST(ArtworkPicture, NothingAndOddSizesDoNoHarm)
{
    ArtPicture picture = discOnFrame();
    for (const QSize size : {QSize(), QSize(1, 1), QSize(10, 300)}) {
        picture.size = size;
        EXPECT_FALSE(renderArtwork(picture).isNull());
    }
    picture.art = std::make_shared<Artwork>();
    EXPECT_FALSE(renderArtwork(picture).isNull());
}

TEST(ArtworkPicture, TheWidgetIsPaintedInTheBackground)
{
    ArtworkPicture widget;
    widget.resize(300, 200);
    widget.QWidget::show();
    widget.show(discOnFrame().art, {ArtUse::Cut}, ArtLook::Colours);
    ASSERT_TRUE(QTest::qWaitFor([&] { return widget.settled() && !widget.image().isNull(); }, 10'000));
    EXPECT_EQ(widget.image().size(), (QSizeF(widget.size()) * widget.devicePixelRatioF()).toSize());
    EXPECT_EQ(widget.grab().toImage().pixelColor(widget.grab().width() / 2, widget.grab().height() / 4),
              QColor(Qt::blue));
    widget.clear();
    EXPECT_TRUE(widget.image().isNull());
}

}  // namespace
}  // namespace lidwright
