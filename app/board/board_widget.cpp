#include "app/board/board_widget.h"

#include "app/board/board_accessible.h"
#include "app/board/board_private.h"
#include "app/document/plan_document.h"
#include "app/text/texts.h"

#include "core/base/length_text.h"

#include <QEvent>

#include <algorithm>

namespace lidwright {

namespace {

constexpr double kZoomStepMargin = 40;  // px kept free around places that are shown
constexpr double kFitMargin = 10;       // px between the sheet and the canvas's edge
constexpr double kCapital = 2.5;    // mm on paper, capital height of dimension words (ISO 3098)
constexpr double kMostPaper = 5;    // sheet mm per paper mm
constexpr double kReadable = 6;     // pixels of capital height below which words are no longer read
constexpr double kMostWords = 1.2;      // words and gaps take at most this many times the parts' own size
constexpr int kRest_ms = 90;            // after the last pan or zoom the picture is made sharp

}  // namespace

BoardWidget::Private::Private(BoardWidget& widget, PlanDocument& plan)
    : board(widget),
      document(plan),
      session(plan),
      burst(plan),
      rule(new StationRule(&widget)),
      lane(new BridgeLaneBar(plan, &widget)),
      editor(new DimensionEditor(plan, &widget))
{
    rest.setSingleShot(true);
    rest.setInterval(kRest_ms);
}

BoardWidget::BoardWidget(PlanDocument& document, QWidget* parent)
    : QWidget(parent), d(std::make_unique<Private>(*this, document))
{
    installBoardAccessibility();
    setObjectName(QStringLiteral("board"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setAccessibleName(tr("Drawing board"));
    setAccessibleDescription(
        tr("Tab goes through the parts, arrow keys move the selected part, Return opens its form, F2 its dimension."));
    setTabOrder(this, d->lane);
    setTabOrder(d->lane, d->rule);

    connect(&document, &PlanDocument::changed, this, [this] { d->documentChanged(); });
    connect(&document, &PlanDocument::fileChanged, this, [this] { d->freshPlan(); });
    connect(&document, &PlanDocument::selectionChanged, this, [this] {
        d->compose();
        update();
        announceSelection(*this, d->selected());
    });
    connect(&d->rest, &QTimer::timeout, this, [this] { update(); });

    const auto point = [this](double x) { d->setHairline({x, {}, {}}); };
    const auto leave = [this] { d->setHairline({}); };
    connect(d->rule, &StationRule::pointedAt, this, point);
    connect(d->rule, &StationRule::pointerLeft, this, leave);
    connect(d->lane, &BridgeLaneBar::pointedAt, this, point);
    connect(d->lane, &BridgeLaneBar::pointerLeft, this, leave);
    connect(d->lane, &BridgeLaneBar::caption, this, &BoardWidget::caption);
    connect(d->editor, &DimensionEditor::nextWanted, this, [this](bool forward) {
        const std::string key = d->editor->key();
        if (!d->openDimensionOf(d->selected(), key, forward)) d->editor->close();
    });
    d->compose();
}

BoardWidget::~BoardWidget()
{
    // The field's farewell (focus, signals) must not reach a board that is half gone.
    d->editor->disconnect(this);
    disconnect(&d->document, nullptr, this, nullptr);
}

std::string BoardWidget::Private::selected() const { return document.selectedPart().toStdString(); }

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
    scene = BoardScene(boardSheet(document.plan(), document.layout(), options(paper)));
    const PlacedView* after = scene.placed(held);
    if (wasPlaced && after) transform.pan(transform.toWidget(origin) - transform.toWidget(after->origin));

    handles = placedHandles(scene, document.plan(), document.layout());
    rule->setStations(document.layout().stations, document.style());
    cache.drop();
    placeBars();
    transformed();
}

void BoardWidget::Private::documentChanged()
{
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

Bounds BoardWidget::Private::fitExtent() const
{
    if (wholeSheet) return scene.sheet().extent;
    Bounds extent;
    for (const View view : {View::Top, View::Under, View::Section})
        if (const PlacedView* placed = scene.placed(view)) extent.include(placed->extent);
    return extent.empty() ? scene.sheet().extent : extent;
}

void BoardWidget::Private::settle(int rounds)
{
    // Texts of a fixed size make the sheet larger or smaller, and that changes the scale: a few rounds settle it.
    // Beyond kMostPaper the words would take more room than the drawing, and no round would settle anything.
    for (int i = 0; i < rounds; ++i) {
        transform.fit(fitExtent(), board.canvas(), kFitMargin);
        const double wanted = std::min(kMostPaper, paperUnit() / transform.scale());
        if (std::abs(wanted - paper) < 0.01 * paper) break;
        paper = wanted;
        compose();
    }
    transform.fit(fitExtent(), board.canvas(), kFitMargin);
}

double BoardWidget::Private::fittingPaper(const QRectF& room) const
{
    // The sheet's size grows about linearly with the size of its words: two looks give what the parts take and
    // what the words take, and so the paper size at which the words come out as large as wished once all is fitted.
    const double first = paper, second = 1.5 * paper;
    const Bounds small = boardSheet(document.plan(), document.layout(), options(first)).sheet.extent;
    const Bounds large = boardSheet(document.plan(), document.layout(), options(second)).sheet.extent;
    const auto wanted = [&](double sizeFirst, double sizeSecond, double available) {
        const double words = std::max((sizeSecond - sizeFirst) / (second - first), 1e-6);
        const double parts = std::max(sizeFirst - words * first, 1e-3);
        const double left = 1 - paperUnit() * words / available;
        // In a small window words must not push the parts aside: they get smaller instead.
        const double most = kMostWords * parts / words;
        return left > 0 ? std::min(paperUnit() * parts / (available * left), most) : most;
    };
    return std::clamp(std::max(wanted(small.width(), large.width(), room.width()),
                               wanted(small.height(), large.height(), room.height())),
                      0.02, 500.0);
}

void BoardWidget::Private::fit()
{
    const QRectF canvas = board.canvas();
    const QRectF room = canvas.adjusted(kFitMargin, kFitMargin, -kFitMargin, -kFitMargin);
    if (room.width() < 10 || room.height() < 10) return;
    paper = fittingPaper(room);
    compose();
    transform.fit(scene.sheet().extent, canvas, kFitMargin);
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
    Q_EMIT board.zoomChanged(100 * transform.scale() * kMillimetresPerInch / std::max(1, board.logicalDpiX()));
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

void BoardWidget::Private::announceParts() { announceChange(board); }

void BoardWidget::fitAll()
{
    d->fit();
    update();
}

void BoardWidget::fitView(View view)
{
    if (view == View::Under || view == View::Top) setUnderView(view == View::Under);
    const PlacedView* placed = d->scene.placed(view);
    if (!placed) return;
    d->fitted = false;
    d->transform.fit(placed->extent, canvas(), kFitMargin);
    d->transformed();
}

void BoardWidget::zoomBy(double factor)
{
    d->fitted = false;
    d->transform.zoomAbout(canvas().center(), factor);
    d->transformed();
}

void BoardWidget::setUnderView(bool under)
{
    if (under == d->under) return;
    d->under = under;
    d->pickedView.reset();
    d->compose();
    if (d->fitted) d->fit();
    d->announceParts();
}

bool BoardWidget::underView() const { return d->under; }

void BoardWidget::setSnapping(bool on)
{
    d->snapping = on;
    d->lane->setSnapping(on);
}

bool BoardWidget::snapping() const { return d->snapping; }

void BoardWidget::showPlaces(const std::vector<Place>& places)
{
    d->places = places;
    const bool underneath = !places.empty() && std::all_of(places.begin(), places.end(), [](const Place& p) {
        return p.view == View::Under;
    });
    if (underneath) setUnderView(true);
    QRectF all;
    for (const Place& place : places) all = all.united(placeBox(place, d->scene, d->transform));
    const QRectF room = canvas().adjusted(kZoomStepMargin, kZoomStepMargin, -kZoomStepMargin, -kZoomStepMargin);
    if (!all.isEmpty() && !canvas().adjusted(8, 8, -8, -8).contains(all)) {
        d->fitted = false;
        if (all.width() > room.width() || all.height() > room.height()) {
            const Bounds sheet = d->transform.visible(all);
            d->transform.fit(sheet, canvas(), kZoomStepMargin);
        } else {
            d->transform.centre(d->transform.toSheet(all.center()), canvas());
        }
        d->transformed();
    }
    update();
}

const BoardScene& BoardWidget::scene() const { return d->scene; }
const ViewTransform& BoardWidget::transform() const { return d->transform; }
const std::vector<Place>& BoardWidget::markedPlaces() const { return d->places; }
StationRule& BoardWidget::stationRule() const { return *d->rule; }
BridgeLaneBar& BoardWidget::bridgeLaneBar() const { return *d->lane; }
DimensionEditor& BoardWidget::dimensionEditor() const { return *d->editor; }
PlanDocument& BoardWidget::document() const { return d->document; }

QRectF BoardWidget::canvas() const
{
    const int taken = d->rule->height() + d->lane->height();
    const bool below = d->rule->y() > 0;
    return QRectF(0, below ? 0 : taken, width(), std::max(0, height() - taken));
}

QString BoardWidget::describePart(const std::string& part) const
{
    QString words = partLabel(d->document.plan(), QString::fromStdString(part));
    if (const PlacedView* view = d->scene.viewOf(part)) {
        const Bounds size = d->scene.extentOf(part, *view);
        const UnitStyle style = d->document.style();
        const double large = std::max(size.width(), size.height()), small = std::min(size.width(), size.height());
        words += tr(", %1 by %2").arg(QString::fromStdString(formatLength(large, style, false).text),
                                      QString::fromStdString(formatLength(small, style).text));
    }
    int wrong = 0, tight = 0;
    for (const Finding& f : d->document.findings()) {
        if (f.part != part) continue;
        wrong += f.verdict == Verdict::Wrong;
        tight += f.verdict == Verdict::Tight;
    }
    if (wrong > 0) words += tr(", %1 wrong").arg(wrong == 1 ? tr("1 finding") : tr("%1 findings").arg(wrong));
    if (tight > 0) words += tr(", %1 tight").arg(tight == 1 ? tr("1 finding") : tr("%1 findings").arg(tight));
    return words;
}

void BoardWidget::resizeEvent(QResizeEvent*)
{
    d->placeBars();
    if (d->fitted)
        d->fit();
    else
        d->transformed();
}

void BoardWidget::changeEvent(QEvent* event)
{
    switch (event->type()) {
        case QEvent::PaletteChange:
            d->cache.drop();
            update();
            break;
        case QEvent::FontChange:
            d->placeBars();
            if (d->fitted)
                d->fit();
            else
                d->compose();
            break;
        default:
            break;
    }
    QWidget::changeEvent(event);
}

}  // namespace lidwright
