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
    pause.setSingleShot(true);
    QObject::connect(&pause, &QTimer::timeout, &board, [this] { startPreview(); });
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
        tr("Tab goes through the parts, arrow keys move the selected part, Return opens its form, F2 its "
           "dimension."));
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

std::string BoardWidget::Private::selected() const
{
    return document.selectedPart().toStdString();
}

void BoardWidget::Private::announceParts()
{
    announceChange(board);
}

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
    d->transform.fit(placed->extent, canvas(), Private::kFitMargin);
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

bool BoardWidget::underView() const
{
    return d->under;
}

void BoardWidget::setSnapping(bool on)
{
    d->snapping = on;
    d->lane->setSnapping(on);
}

bool BoardWidget::snapping() const
{
    return d->snapping;
}

void BoardWidget::showPlaces(const std::vector<Place>& places)
{
    d->places = places;
    const bool underneath = !places.empty() && std::all_of(places.begin(), places.end(), [](const Place& p) {
        return p.view == View::Under;
    });
    if (underneath) setUnderView(true);
    QRectF all;
    for (const Place& place : places)
        all = all.united(placeBox(place, d->scene, d->transform));
    const QRectF room =
        canvas().adjusted(kZoomStepMargin, kZoomStepMargin, -kZoomStepMargin, -kZoomStepMargin);
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

void BoardWidget::showPlacesClose(const std::vector<Place>& places)
{
    showPlaces(places);
    QRectF all;
    for (const Place& place : places)
        all = all.united(placeBox(place, d->scene, d->transform));
    constexpr double kSmall = 80;   // px
    constexpr double kAround = 40;  // mm of the drawing
    if (all.isEmpty() || std::max(all.width(), all.height()) > kSmall) return;
    const Bounds near = d->transform.visible(all).grown(kAround);
    const Bounds now = d->transform.visible(canvas());
    if (near.width() >= now.width() || near.height() >= now.height()) return;
    d->fitted = false;
    d->transform.fit(near, canvas(), kZoomStepMargin);
    d->transformed();
    update();
}

void BoardWidget::showPreview(const Remedy& remedy)
{
    constexpr int kPause = 150;  // ms: a pointer that only passes shows nothing
    d->wanted = remedy;
    d->pause.start(kPause);
}

void BoardWidget::endPreview()
{
    d->stopPreview();
}

bool BoardWidget::previewing() const
{
    return d->preview.has_value();
}

const BoardScene& BoardWidget::scene() const
{
    return d->scene;
}
const ViewTransform& BoardWidget::transform() const
{
    return d->transform;
}
void BoardWidget::showPicture(const StudyPicture& picture)
{
    d->contours = picture;
    update();
}

const StudyPicture& BoardWidget::shownPicture() const
{
    return d->contours;
}

const std::vector<Place>& BoardWidget::markedPlaces() const
{
    return d->places;
}
StationRule& BoardWidget::stationRule() const
{
    return *d->rule;
}
BridgeLaneBar& BoardWidget::bridgeLaneBar() const
{
    return *d->lane;
}
DimensionEditor& BoardWidget::dimensionEditor() const
{
    return *d->editor;
}
PlanDocument& BoardWidget::document() const
{
    return d->document;
}

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
        const double large = std::max(size.width(), size.height()),
                     small = std::min(size.width(), size.height());
        words += tr(", %1 by %2")
                     .arg(QString::fromStdString(formatLength(large, style, false).text),
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
