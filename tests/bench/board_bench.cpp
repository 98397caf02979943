// What the maker does on the board with a drawing of 50,000 points: redraw, pan, zoom, one step of a drag.
#include "app/board/board_scene.h"
#include "app/board/board_widget.h"
#include "app/board/view_transform.h"
#include "app/document/plan_document.h"

#include "core/plan/artwork.h"

#include <benchmark/benchmark.h>

#include <QApplication>
#include <QMouseEvent>
#include <QWheelEvent>

#include <cmath>
#include <memory>

namespace {

using namespace lidwright;

/// 1000 wavy rings of 50 points in a square of 120 mm.
ArtPiece largeDrawing()
{
    constexpr int kSide = 32, kRings = 1000, kPoints = 50;
    Region region;
    for (int i = 0; i < kRings; ++i) {
        const Point c{(i % kSide - kSide / 2.0) * 3.7, (i / kSide - kSide / 2.0) * 3.7};
        Ring ring;
        for (int k = 0; k < kPoints; ++k) {
            const double angle = 2 * kPi * k / kPoints;
            const double r = 1.4 * (1 + 0.2 * std::sin(5 * angle + i));
            ring.push_back({c.x + r * std::cos(angle), c.y + r * std::sin(angle)});
        }
        region.rings.push_back(std::move(ring));
    }
    auto art = std::make_shared<Artwork>();
    art->fileName = "bench.svg";
    const Bounds b = bounds(region);
    art->width = b.width();
    art->height = b.height();
    art->paints = {{"fill #000000", "#000000", false, 0}};
    art->runs = {{0, std::move(region), {}}};
    ArtPiece piece;
    piece.art = art;
    piece.uses = {ArtUse::Cut};
    piece.x = 110;
    return piece;
}

/// A board of 1280 by 800 with the large drawing, shown.
struct LargeBoard {
    LargeBoard()
    {
        Plan plan;
        plan.art = {largeDrawing()};
        document.reset(plan, {});
        board.resize(1280, 800);
        board.show();
        QApplication::processEvents();
    }
    void redraw() { board.grab(board.rect()); }
    void send(QEvent::Type type, QPointF at, Qt::MouseButton button, Qt::MouseButtons buttons)
    {
        QMouseEvent event(type, at, board.mapToGlobal(at), button, buttons, Qt::NoModifier);
        QApplication::sendEvent(&board, &event);
    }
    PlanDocument document;
    BoardWidget board{document};
};

/// The whole drawing painted anew, as after a change.
void redrawAfterChange(benchmark::State& state)
{
    LargeBoard b;
    QPalette palette = b.board.palette();
    for (auto _ : state) {
        b.board.setPalette(palette);
        QEvent changed(QEvent::PaletteChange);
        QApplication::sendEvent(&b.board, &changed);
        b.redraw();
    }
}
BENCHMARK(redrawAfterChange)->Unit(benchmark::kMillisecond);

/// The pointer moves: hairlines over the kept picture.
void hover(benchmark::State& state)
{
    LargeBoard b;
    int i = 0;
    for (auto _ : state) {
        b.send(QEvent::MouseMove, {700.0 + i++ % 200, 480}, Qt::NoButton, Qt::NoButton);
        b.redraw();
    }
}
BENCHMARK(hover)->Unit(benchmark::kMillisecond);

/// A step of panning with the middle button, to and fro.
void pan(benchmark::State& state)
{
    LargeBoard b;
    b.send(QEvent::MouseButtonPress, {600, 300}, Qt::MiddleButton, Qt::MiddleButton);
    int i = 0;
    for (auto _ : state) {
        ++i;
        b.send(QEvent::MouseMove, {600.0 + 4 * std::abs(i % 40 - 20), 300}, Qt::NoButton, Qt::MiddleButton);
        b.redraw();
    }
    b.send(QEvent::MouseButtonRelease, {600, 300}, Qt::MiddleButton, Qt::NoButton);
}
BENCHMARK(pan)->Unit(benchmark::kMillisecond);

/// A notch of the wheel, in and out.
void zoom(benchmark::State& state)
{
    LargeBoard b;
    int i = 0;
    for (auto _ : state) {
        QWheelEvent event({760, 460}, b.board.mapToGlobal(QPointF(760, 460)), {},
                          {0, ++i / 8 % 2 ? -120 : 120}, Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase,
                          false);
        QApplication::sendEvent(&b.board, &event);
        b.redraw();
    }
}
BENCHMARK(zoom)->Unit(benchmark::kMillisecond);

/// A step of dragging the bridge: derive, check, compose, paint.
void dragStep(benchmark::State& state)
{
    LargeBoard b;
    const PlacedView* top = b.board.scene().placed(View::Top);
    const Layout& layout = b.document.layout();
    const Bounds bridge = bounds(layout.bridgeOutline);
    const QPointF from = b.board.transform().toWidget(
        top->toSheet({bridge.centre().x + 3, bridge.minY + bridge.height() * 0.1}));
    b.send(QEvent::MouseButtonPress, from, Qt::LeftButton, Qt::LeftButton);
    int i = 0;
    for (auto _ : state) {
        b.send(QEvent::MouseMove, from + QPointF(10 + i++ % 20, 0), Qt::NoButton, Qt::LeftButton);
        b.redraw();
    }
    if (!b.document.dragging()) state.SkipWithError("nothing was dragged");
    b.send(QEvent::MouseButtonRelease, from, Qt::LeftButton, Qt::NoButton);
}
BENCHMARK(dragStep)->Unit(benchmark::kMillisecond);

}  // namespace

int main(int argc, char** argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication app(argc, argv);
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
