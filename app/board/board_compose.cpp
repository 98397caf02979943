#include "app/board/board_private.h"
#include "app/document/plan_document.h"
#include "app/text/texts.h"

#include "core/plan/catalogue.h"

#include <algorithm>
#include <cmath>

namespace lidwright {

namespace {

constexpr double kCapital = 2.5;      // mm on paper, capital height of dimension words (ISO 3098)
constexpr double kReadable = 6;       // pixels of capital height below which words are no longer read
constexpr double kMostWords = 1.2;    // words and gaps take at most this many times the parts' own size
constexpr double kWorthwhile = 2.0;   // how much larger the parts must get for the end views to be left out
constexpr double kLeastPaper = 0.02;  // sheet mm per paper mm: bounds against a plan of absurd size
constexpr double kMostPaper = 500;

}  // namespace

BoardOptions BoardWidget::Private::options(double paperSize) const
{
    BoardOptions options;
    options.style = document.style();
    options.projection = document.plan().sheet.projection;
    options.under = under;
    options.paper = paperSize;
    options.selected = selected();
    return options;
}

void BoardWidget::Private::compose()
{
    // What the hand holds must stay under it, wherever the new sheet puts that view.
    const View held = session.pressed() ? session.handle().view : View::Section;
    const PlacedView* before = scene.placed(held);
    const bool wasPlaced = before != nullptr;
    const Point origin = wasPlaced ? before->origin : Point{};
    scene = BoardScene(boardSheet(shownPlan(), shownLayout(), options(paper)));
    const PlacedView* after = scene.placed(held);
    if (wasPlaced && after) transform.pan(transform.toWidget(origin) - transform.toWidget(after->origin));

    handles = placedHandles(scene, shownPlan(), shownLayout());
    rule->setStations(shownLayout().stations, document.style());
    cache.drop();
    placeBars();
    transformed();
}

const Plan& BoardWidget::Private::shownPlan() const
{
    return preview ? preview->plan : document.plan();
}

const Layout& BoardWidget::Private::shownLayout() const
{
    return preview ? preview->layout : document.layout();
}

void BoardWidget::Private::startPreview()
{
    if (!wanted || session.pressed() || document.dragging()) return;
    if (cutPoints(document.layout()) > kQuickPoints) return;
    auto next = applyEdits(document.plan(), wanted->edits);
    if (!next) return;
    Preview shownThen;
    shownThen.layout = derive(*next, &previewCache);
    shownThen.plan = std::move(next).value();
    //: over the drawing: what a proposed change would do
    shownThen.words = BoardWidget::tr("Preview: %1").arg(shown(wanted->label, document.style()));
    preview = std::move(shownThen);
    compose();
    board.update();
}

void BoardWidget::Private::stopPreview()
{
    wanted.reset();
    pause.stop();
    if (!preview) return;
    preview.reset();
    compose();
    board.update();
}

void BoardWidget::Private::documentChanged()
{
    wanted.reset();
    pause.stop();
    preview.reset();
    if (!document.dragging()) places.clear();
    compose();
    // Something has grown out of sight while everything was to be seen.
    if (fitted && !document.dragging()) {
        const QRectF sheet = transform.toWidget(fitExtent());
        if (!board.canvas().adjusted(-1, -1, 1, 1).contains(sheet)) fit();
    }
    board.update();
    announceParts();
}

void BoardWidget::Private::freshPlan()
{
    if (document.undoStack().count() > 0 || document.plan() == lastFresh) return;
    lastFresh = document.plan();
    pickedView.reset();
    board.fitAll();
}

double BoardWidget::Private::paperUnit() const
{
    // Dimension words (2.5 mm on paper) come out as large as the window's own words.
    return std::max(board.fontMetrics().capHeight(), 5) / kCapital;
}

Bounds BoardWidget::Private::fitExtent(const Sheet& sheet, const std::vector<PlacedView>& views) const
{
    if (wholeSheet) return sheet.extent;
    Bounds extent;
    for (const PlacedView& v : views)
        if (v.view == View::Top || v.view == View::Under || v.view == View::Section) extent.include(v.extent);
    return extent.empty() ? sheet.extent : extent;
}

double BoardWidget::Private::fittingPaper(const QRectF& room) const
{
    // The sheet's size grows about linearly with the size of its words: two looks give what the parts take
    // and what the words take, and so the paper size at which the words come out as large as wished once all
    // is fitted. (Coming nearer by rounds of fitting does not settle in small windows.)
    const double first = paper, second = 1.5 * paper;
    const auto extentAt = [&](double size) {
        const BoardSheet drawn = boardSheet(document.plan(), document.layout(), options(size));
        return fitExtent(drawn.sheet, drawn.views);
    };
    const Bounds small = extentAt(first);
    const Bounds large = extentAt(second);
    const auto along = [&](double sizeFirst, double sizeSecond, double available) {
        const double words = std::max((sizeSecond - sizeFirst) / (second - first), 1e-6);
        const double parts = std::max(sizeFirst - words * first, 1e-3);
        const double left = 1 - paperUnit() * words / available;
        // In a small window words must not push the parts aside: they get smaller instead.
        const double most = kMostWords * parts / words;
        return left > 0 ? std::min(paperUnit() * parts / (available * left), most) : most;
    };
    return std::clamp(std::max(along(small.width(), large.width(), room.width()),
                               along(small.height(), large.height(), room.height())),
                      kLeastPaper, kMostPaper);
}

void BoardWidget::Private::settle(bool whole)
{
    wholeSheet = whole;
    paper = fittingPaper(board.canvas().adjusted(kFitMargin, kFitMargin, -kFitMargin, -kFitMargin));
    compose();
    transform.fit(fitExtent(), board.canvas(), kFitMargin);
}

void BoardWidget::Private::fit()
{
    if (board.canvas().width() < 3 * kFitMargin || board.canvas().height() < 3 * kFitMargin) return;
    settle(true);
    // In a narrow window the end views would press the words below what can be read, or the parts to a
    // remnant between words: they wait beside the others.
    const bool readable = kCapital * paper * transform.scale() >= kReadable;
    const double whole = transform.scale();
    settle(false);
    if (readable && transform.scale() < kWorthwhile * whole) settle(true);
    fitted = true;
    transformed();
}

void BoardWidget::Private::transformed()
{
    if (const PlacedView* lid = scene.lidView()) {
        const QPointF zero = transform.toWidget(lid->toSheet({0, 0}));
        const bool mirrored = lid->toSheet({1, 0}).x < lid->toSheet({0, 0}).x;
        const NeckMapping mapping{zero.x(), transform.scale(), mirrored};
        rule->setMapping(mapping);
        lane->setMapping(mapping);
    }
    marks = markSpots(document.findings(), scene, transform);
    board.update();
    Q_EMIT board.zoomChanged(100 * transform.scale() * kMillimetresPerInch /
                             std::max(1, board.logicalDpiX()));
}

void BoardWidget::Private::placeBars()
{
    const PlacedView* lid = scene.lidView();
    const PlacedView* section = scene.placed(View::Section);
    // Beside the view of the lid: under it in first angle, over it in third.
    const bool below = !lid || !section || lid->extent.centre().y <= section->extent.centre().y;
    const int ruleTall = rule->sizeHint().height(), laneTall = lane->sizeHint().height();
    const int wide = board.width(), tall = board.height();
    rule->setSide(below ? StationRule::Side::DrawingAbove : StationRule::Side::DrawingBelow);
    if (below) {
        lane->setGeometry(0, tall - ruleTall - laneTall, wide, laneTall);
        rule->setGeometry(0, tall - ruleTall, wide, ruleTall);
    } else {
        rule->setGeometry(0, 0, wide, ruleTall);
        lane->setGeometry(0, ruleTall, wide, laneTall);
    }
}

PaintLook BoardWidget::Private::look() const
{
    PaintLook look;
    look.scale = transform.scale();
    look.origin = transform.toSheet({0, 0});
    // Words never grow with the zoom beyond the window's own; zoomed out they shrink with the drawing.
    look.paper = std::min(paper, paperUnit() / transform.scale());
    look.grainPaper = paper;
    look.visible = transform.visible(board.canvas());
    look.colours = boardColours(board.palette());
    look.font = board.font();
    look.deviceRatio = board.devicePixelRatioF();
    return look;
}

}  // namespace lidwright
