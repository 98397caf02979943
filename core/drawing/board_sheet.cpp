#include "core/drawing/board_sheet.h"

#include "core/drawing/board_views.h"
#include "core/drawing/lettering.h"
#include "core/drawing/sheet_furniture.h"

namespace lidwright {
namespace {

constexpr double kBetweenViews = 12;    // mm on paper
constexpr double kAround = 8;           // bare paper around everything, mm on paper
constexpr std::size_t kMostTitle = 48;  // characters of title and maker

const char* labelOf(View view)
{
    switch (view) {
        case View::Top:
            return "Top view";
        case View::Under:
            return "Underside";
        case View::Section:
            return "Long section";
        case View::HeadEnd:
            return "Head end";
        case View::TailEnd:
            return "Tail end";
    }
    return "";
}

void put(DrawnView&& drawn, Point origin, BoardSheet& board)
{
    drawn.placed.origin = origin;
    Bounds& e = drawn.placed.extent;
    if (!e.empty()) e = {e.minX + origin.x, e.minY + origin.y, e.maxX + origin.x, e.maxY + origin.y};
    board.sheet.extent.include(e);
    board.sheet.elements.reserve(board.sheet.elements.size() + drawn.elements.size());
    for (Element& element : drawn.elements)
        board.sheet.elements.push_back(origin == Point{} ? std::move(element)
                                                         : moved(std::move(element), origin));
    board.views.push_back(std::move(drawn.placed));
}

/// Title, maker, unit and projection sign, from `corner` downward and to the right.
std::vector<Element> titleBlock(const Plan& plan, const BoardOptions& options, Point corner)
{
    const double p = options.paper;
    std::vector<Element> out;
    double y = corner.y;
    const auto line = [&](const std::string& words, double height) {
        if (words.empty()) return;
        y -= (out.empty() ? 1 : kLinePitch) * height * p;
        out.push_back({"sheet", "words", Text{{corner.x, y}, words, height, 0, Anchor::Left}});
    };
    line(shortened(plan.sheet.title, kMostTitle), 5);
    line(shortened(plan.sheet.maker, kMostTitle), 3.5);
    line(unitNote(options.style), 2.5);
    constexpr double kSign = 8;  // mm on paper
    y -= (kSign + 4) * p;
    for (Element& e : projectionSign(options.projection, kSign * p))
        out.push_back(moved(std::move(e), {corner.x + 1.2 * p, y}));
    return out;
}

void addTitleBlock(const Plan& plan, const BoardOptions& options, const PlacedView& rightEnd,
                   BoardSheet& board)
{
    const double gap = kBetweenViews * options.paper;
    std::vector<Element> block = titleBlock(plan, options, {rightEnd.extent.minX, 0});
    Bounds size;
    for (const Element& e : block)
        size.include(elementBounds(e, options.paper));
    // In the corner that the end view leaves free beside the top view.
    const double y =
        options.projection == Projection::FirstAngle
            ? std::min(board.sheet.extent.minY - size.minY, rightEnd.extent.minY - gap - size.maxY)
            : std::max(board.sheet.extent.maxY - size.maxY, rightEnd.extent.maxY + gap - size.minY);
    for (Element& e : block) {
        board.sheet.elements.push_back(moved(std::move(e), {0, y}));
        board.sheet.extent.include(elementBounds(board.sheet.elements.back(), options.paper));
    }
}

BoardOptions sound(BoardOptions options)
{
    constexpr double kLeast = 0.01;
    constexpr double kMost = 1000;
    options.paper = options.paper >= kLeast ? std::min(options.paper, kMost) : 1;
    return options;
}

void placeAll(const Plan& plan, const ViewInput& in, BoardSheet& board)
{
    const BoardOptions& options = in.options;
    const bool first = options.projection == Projection::FirstAngle;
    const double gap = kBetweenViews * options.paper;
    DrawnView top = drawnView(options.under ? View::Under : View::Top, in);
    DrawnView section = drawnView(View::Section, in);
    DrawnView head = drawnView(View::HeadEnd, in);
    DrawnView tail = drawnView(View::TailEnd, in);

    // First angle: seen from above drawn below, seen from the left drawn at the right; third angle the
    // opposite.
    const Bounds& t = top.placed.extent;
    const Bounds& s = section.placed.extent;
    const double sectionY = first ? t.maxY + gap - s.minY : t.minY - gap - s.maxY;
    const double right = std::max(t.maxX, s.maxX) + gap;
    const double left = std::min(t.minX, s.minX) - gap;
    DrawnView& atRight = first ? head : tail;
    DrawnView& atLeft = first ? tail : head;
    const Point rightOrigin{right - atRight.placed.extent.minX, sectionY};
    const Point leftOrigin{left - atLeft.placed.extent.maxX, sectionY};
    put(std::move(top), {}, board);
    put(std::move(section), {0, sectionY}, board);
    put(std::move(head), first ? rightOrigin : leftOrigin, board);
    put(std::move(tail), first ? leftOrigin : rightOrigin, board);
    addTitleBlock(plan, options, board.views[first ? 2 : 3], board);
}

}  // namespace

DrawnView drawnView(View view, const ViewInput& in)
{
    ViewPen pen(view, view == View::Under || view == View::HeadEnd, in);
    switch (view) {
        case View::Top:
            drawTopView(pen, in);
            break;
        case View::Under:
            drawUnderView(pen, in);
            break;
        case View::Section:
            drawSectionView(pen, in);
            break;
        case View::HeadEnd:
        case View::TailEnd:
            drawEndView(pen, in, view == View::HeadEnd);
            break;
    }
    DrawnView drawn;
    drawn.placed = pen.placed();
    drawn.placed.label = labelOf(view);
    drawn.placed.extent = pen.extent();
    drawn.elements = pen.take();
    return drawn;
}

BoardSheet boardSheet(const Plan& plan, const Layout& layout, const BoardOptions& given)
{
    const BoardOptions options = sound(given);
    // Dimensions along the neck stand between the two views that share its stations.
    const Side stations = options.projection == Projection::FirstAngle ? Side::Above : Side::Below;
    const ViewInput in{plan, layout, options, stations};
    BoardSheet board;
    board.sheet.title = plan.sheet.title;
    board.sheet.paper = options.paper;
    if (options.only)
        put(drawnView(*options.only, in), {}, board);
    else
        placeAll(plan, in, board);
    if (!board.sheet.extent.empty()) board.sheet.extent = board.sheet.extent.grown(kAround * options.paper);
    return board;
}

}  // namespace lidwright
