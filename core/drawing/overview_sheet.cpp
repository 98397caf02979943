#include "core/drawing/overview_sheet.h"

#include "core/drawing/board_views.h"
#include "core/drawing/free_paper.h"
#include "core/drawing/lettering.h"
#include "core/drawing/overview_table.h"
#include "core/drawing/sheet_frame.h"
#include "core/drawing/template_parts.h"

#include <array>

namespace lidwright {
namespace {

// mm of paper, common practice, no source.
constexpr double kInset = 3;         // drawing to the frame
constexpr double kBetweenViews = 8;  // and between other things on the sheet

/// Reductions of ISO 5455, the largest drawing first.
constexpr double kScales[] = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000};

std::string scaleWords(double scale)
{
    return "1:" + std::to_string(std::lround(scale));
}

/// Something to place: in mm of paper about an origin of its own.
struct Piece {
    std::vector<Element> elements;
    Bounds extent;
};

Bounds shifted(const Bounds& b, Point by)
{
    return {b.minX + by.x, b.minY + by.y, b.maxX + by.x, b.maxY + by.y};
}

/// From drawing mm to mm of paper. Heights of words are such already.
Element onPaper(Element element, double scale)
{
    const double by = 1 / scale;
    const auto shrink = [by](std::vector<Point>& points) {
        for (Point& p : points)
            p = by * p;
    };
    if (auto* stroke = std::get_if<Stroke>(&element.what)) {
        shrink(stroke->points);
    } else if (auto* fill = std::get_if<Fill>(&element.what)) {
        shrink(fill->ring);
    } else if (auto* text = std::get_if<Text>(&element.what)) {
        text->at = by * text->at;
    } else if (auto* d = std::get_if<Dimension>(&element.what)) {
        d->a = by * d->a;
        d->b = by * d->b;
        for (double* length : {&d->offset, &d->reachA, &d->reachB, &d->shift})
            *length *= by;
    }
    return element;
}

Piece pieceOf(std::vector<Element> elements, double scale)
{
    Piece piece;
    for (Element& element : elements) {
        Element placed = onPaper(std::move(element), scale);
        const Bounds b = elementBounds(placed, 1);
        // What the plan leaves no room for has no place to stand.
        if (!std::isfinite(b.width() + b.height() + b.minX + b.minY)) continue;
        piece.extent.include(b);
        piece.elements.push_back(std::move(placed));
    }
    return piece;
}

/// Where dimensions' words would lie over others, as happens at a small scale, those beside their line go to
/// its other end; of dimensions within a view the rest is left out: the table has what matters.
std::vector<Element> withRoomForWords(std::vector<Element> elements, double scale)
{
    const auto boundsOf = [&](const Text& text) { return bounds(textOutline(text, scale)); };
    std::vector<Bounds> words;
    const auto clear = [&](const Bounds& own) {
        return std::none_of(words.begin(), words.end(), [&](const Bounds& b) { return b.touches(own); });
    };
    for (const Element& e : elements)
        if (const auto* text = std::get_if<Text>(&e.what)) words.push_back(boundsOf(*text));
    const auto settle = [&](Dimension& d) {
        Dimension turned = d;
        turned.shift = -d.shift;
        const bool beside = std::abs(d.shift) > distance(d.a, d.b) / 2;
        const Bounds own = boundsOf(dimensionText(d, scale));
        const Bounds other = boundsOf(dimensionText(turned, scale));
        if (!clear(own) && beside && clear(other)) d = turned;
        const bool fits = clear(boundsOf(dimensionText(d, scale)));
        if (fits || !d.boxed) words.push_back(boundsOf(dimensionText(d, scale)));
        return fits || !d.boxed;
    };
    // What stands around the views first.
    for (Element& e : elements)
        if (auto* d = std::get_if<Dimension>(&e.what); d != nullptr && !d->boxed) settle(*d);
    std::vector<Element> out;
    for (Element& e : elements) {
        auto* d = std::get_if<Dimension>(&e.what);
        if (d == nullptr || !d->boxed || settle(*d)) out.push_back(std::move(e));
    }
    return out;
}

/// The four views with the places of their origins.
struct Views {
    double scale = 1;
    Piece top, section, head, tail;
    std::array<Point, 4> at;

    std::array<const Piece*, 4> pieces() const { return {&top, &section, &head, &tail}; }
};

class Overview {
public:
    Overview(const Plan& plan, const Layout& layout, const UnitStyle& style, OverviewPaper paper)
        : m_plan(plan),
          m_layout(layout),
          m_style(style),
          m_paper(paper),
          m_size(overviewSize(paper)),
          m_free(frameOf(m_size).grown(-kInset))
    {
        const Bounds frame = frameOf(m_size);
        m_titleCorner = {frame.maxX, frame.minY};
        m_free.take({frame.maxX - kTitleBlockWidth, frame.minY, frame.maxX, frame.minY + kTitleBlockHeight},
                    kBetweenViews);
        m_placed = centringMarkBounds(m_size);
        for (const Bounds& mark : m_placed)
            m_free.take(mark, kInset);
    }

    Sheet compose()
    {
        m_sheet.title = m_plan.sheet.title + ": overview";
        m_sheet.extent = {0, 0, m_size.x, m_size.y};
        append(sheetFrame(m_size), {});
        double scale = 0;
        for (const double tried : kScales) {
            if (!mayFit(tried) || !placeViews(tried)) continue;
            scale = tried;
            break;
        }
        addTable();
        addLidBelow(scale);
        addTitleBlock(scale);
        return std::move(m_sheet);
    }

private:
    const Plan& m_plan;
    const Layout& m_layout;
    const UnitStyle& m_style;
    OverviewPaper m_paper;
    Point m_size;
    FreePaper m_free;
    std::vector<Bounds> m_placed;  ///< with the centring marks, without the title block
    Point m_titleCorner;
    Sheet m_sheet;

    void append(std::vector<Element> elements, Point by)
    {
        for (Element& element : elements)
            m_sheet.elements.push_back(moved(std::move(element), by));
    }
    void put(const Piece& piece, Point at)
    {
        append(piece.elements, at);
        m_placed.push_back(shifted(piece.extent, at));
        m_free.take(m_placed.back(), kBetweenViews);
    }

    /// Spares composing views that are too long without their dimensions.
    bool mayFit(double scale) const
    {
        Bounds all = m_layout.body;
        all.include(bounds(m_layout.neckOutline));
        return all.width() / scale <= m_size.x && all.height() / scale <= m_size.y;
    }

    bool firstAngle() const { return m_plan.sheet.projection == Projection::FirstAngle; }

    Views viewsAt(double scale) const
    {
        BoardOptions options;
        options.style = m_style;
        options.projection = m_plan.sheet.projection;
        options.paper = scale;
        // As on the board, dimensions along the neck stand between the two views that share its stations.
        const ViewInput in{m_plan, m_layout, options, firstAngle() ? Side::Above : Side::Below};
        const auto drawn = [&](View view) {
            return pieceOf(withRoomForWords(drawnView(view, in).elements, scale), scale);
        };
        Views views;
        views.scale = scale;
        views.top = drawn(View::Top);
        views.section = drawn(View::Section);
        views.head = drawn(View::HeadEnd);
        views.tail = drawn(View::TailEnd);
        return views;
    }

    /// By the projection, all in line with the section (ISO 128-3); the top view's origin stays (0, 0).
    void putInLine(Views& v) const
    {
        const double sectionY = firstAngle() ? v.top.extent.maxY + kBetweenViews - v.section.extent.minY
                                             : v.top.extent.minY - kBetweenViews - v.section.extent.maxY;
        const Bounds section = shifted(v.section.extent, {0, sectionY});
        const auto beside = [&](const Piece& piece, bool right) {
            const Bounds end = shifted(piece.extent, {0, sectionY});
            // An end view that is higher than the section reaches beside the top view.
            const bool meetsTop =
                end.minY < v.top.extent.maxY + kBetweenViews && v.top.extent.minY - kBetweenViews < end.maxY;
            Bounds inner = section;
            if (meetsTop) inner.include(v.top.extent);
            return Point{right ? inner.maxX + kBetweenViews - piece.extent.minX
                               : inner.minX - kBetweenViews - piece.extent.maxX,
                         sectionY};
        };
        v.at = {Point{}, Point{0, sectionY}, beside(v.head, firstAngle()), beside(v.tail, !firstAngle())};
    }

    /// Moves all of them to a place where nothing else is; false where there is none.
    bool placeTogether(Views& v, std::size_t count, bool atLeft) const
    {
        const auto pieces = v.pieces();
        std::vector<Bounds> group;
        for (std::size_t i = 0; i < count; ++i)
            group.push_back(shifted(pieces[i]->extent, v.at[i]));
        const auto by = m_free.placeForAll(group, atLeft);
        if (!by) return false;
        for (std::size_t i = 0; i < count; ++i)
            v.at[i] = v.at[i] + *by;
        return true;
    }

    /// In line where there is room for it, otherwise the end views wherever they find a place: they are
    /// named, which makes them removed views (ISO 128-3).
    bool placeViews(double scale)
    {
        Views v = viewsAt(scale);
        for (const Piece* piece : v.pieces())
            if (piece->extent.empty()) return false;
        putInLine(v);
        bool found = placeTogether(v, 4, false);
        if (!found) {
            putInLine(v);
            found = placeTogether(v, 2, true);
            FreePaper left = m_free;
            for (std::size_t i = 0; found && i < 4; ++i) {
                const Bounds& extent = v.pieces()[i]->extent;
                if (i >= 2) {
                    const auto at = left.placeFor({extent.width(), extent.height()}, FreePaper::Toward::Top);
                    found = at.has_value();
                    if (found) v.at[i] = *at - Point{extent.minX, extent.minY};
                }
                left.take(shifted(extent, v.at[i]), kBetweenViews);
            }
        }
        if (!found) return false;
        for (std::size_t i = 0; i < 4; ++i)
            put(*v.pieces()[i], v.at[i]);
        return true;
    }

    /// The main dimensions on top of the title block, as a list of items would stand there (ISO 7573, from
    /// memory), or wherever there is room.
    void addTable()
    {
        const Piece wide = pieceOf(mainDimensionsTable(m_plan, m_layout, m_style, true), 1);
        const Point onTop = m_titleCorner + Point{-kTitleBlockWidth, kTitleBlockHeight};
        const Bounds place = shifted(wide.extent, onTop).grown(kBetweenViews);
        if (std::none_of(m_placed.begin(), m_placed.end(),
                         [&](const Bounds& b) { return b.touches(place); })) {
            put(wide, onTop);
            return;
        }
        const Piece narrow = pieceOf(mainDimensionsTable(m_plan, m_layout, m_style, false), 1);
        const Point size{narrow.extent.width(), narrow.extent.height()};
        if (const auto at = m_free.placeFor(size, FreePaper::Toward::LowerRight)) put(narrow, *at);
    }

    Piece lidBelowAt(double scale, double mainScale, bool dimensions) const
    {
        BoardOptions options;
        options.style = m_style;
        options.paper = scale;
        options.dimensions = dimensions;
        const ViewInput in{m_plan, m_layout, options, Side::Below};
        ViewPen pen(View::Under, true, in);
        drawLidBelow(pen, in, true);
        const Bounds drawn = pen.extent();
        std::string caption = "Lid from below, mirrored; bass side above";
        // A scale that is not the sheet's own stands beside its view (ISO 5455).
        if (scale != mainScale) caption += " (" + scaleWords(scale) + ")";
        pen.addSheetElements(
            {{"", "words", Text{{drawn.minX, drawn.maxY + 3 * scale}, caption, 3.5, 0, Anchor::Left}}});
        return pieceOf(pen.take(), scale);
    }

    /// The lid from below as large as there is room for, no smaller than the other views.
    void addLidBelow(double mainScale)
    {
        if (m_layout.lidOutline.empty()) return;
        for (const double scale : kScales) {
            if (scale > mainScale) return;
            const Bounds lid = bounds(m_layout.lidOutline);
            if (lid.width() / scale > m_size.x || lid.height() / scale > m_size.y) continue;
            for (const bool dimensions : {true, false}) {
                const Piece piece = lidBelowAt(scale, mainScale, dimensions);
                if (piece.extent.empty()) return;
                const auto corner = m_free.placeFor({piece.extent.width(), piece.extent.height()},
                                                    FreePaper::Toward::LowerLeft);
                if (!corner) continue;
                const Point at = *corner - Point{piece.extent.minX, piece.extent.minY};
                put(piece, at + m_free.toTheMiddle(shifted(piece.extent, at)));
                return;
            }
        }
    }

    void addTitleBlock(double scale)
    {
        TitleBlock block;
        block.title = m_plan.sheet.title;
        block.maker = m_plan.sheet.maker;
        block.kind = "Overview, all views";
        block.scale = scale > 0 ? scaleWords(scale) : "too large to show";
        block.paper = m_paper == OverviewPaper::A3 ? "A3" : "Tabloid";
        block.units = m_style.unit == LengthUnit::Millimetre ? "Millimetres" : "Inches";
        block.projection = m_plan.sheet.projection;
        append(titleBlockElements(block), m_titleCorner);
    }
};

}  // namespace

Point overviewSize(OverviewPaper paper)
{
    return paper == OverviewPaper::A3 ? Point{420, 297} : Point{17 * 25.4, 11 * 25.4};
}

Sheet overviewSheet(const Plan& plan, const Layout& layout, const UnitStyle& style, OverviewPaper paper)
{
    return Overview(plan, layout, style, paper).compose();
}

}  // namespace lidwright
