#pragma once

#include "core/drawing/board_sheet.h"
#include "core/drawing/dimension_rows.h"

namespace lidwright {

/// What every view is drawn from.
struct ViewInput {
    const Plan& plan;
    const Layout& layout;
    const BoardOptions& options;
    Side stationSide = Side::Below;  ///< where dimensions along the neck stand beside the top view
};

/// Draws one view: takes points of the view's own plane (top: x,y; section: x,z; ends: y,z) and keeps
/// elements as they lie on the sheet with the plane's (0, 0) at the sheet's.
class ViewPen {
public:
    ViewPen(View view, bool mirrored, const ViewInput& input);

    const PlacedView& placed() const { return m_placed; }
    double paper() const { return m_paper; }
    /// Drawing mm of a measure on paper.
    double paper(double mm) const { return mm * m_paper; }

    void fill(const std::string& part, const std::string& layer, const Ring& ring, FillKind kind);
    void outline(const std::string& part, const std::string& layer, const Ring& ring, LineKind kind);
    /// Fill and outline in one.
    void area(const std::string& part, const std::string& layer, const Ring& ring, FillKind fill,
              LineKind line);
    void line(const std::string& part, const std::string& layer, const Polyline& points, LineKind kind);
    /// `anchor` and `angle` as they come out on the sheet: words are never mirrored.
    void text(const std::string& part, const std::string& layer, Point at, const std::string& words,
              double height, Anchor anchor, double angle = 0, bool boxed = false);
    /// A single dimension; `offset` to the left of a->b in the view's plane.
    void dimension(const std::string& part, Point a, Point b, double offset, const std::string& key);

    /// What is drawn from now on in a section leans with the tilted neck: z rises by `slope` per mm of x from
    /// `about` on. 0 ends it.
    void lean(double slope, double about);

    /// Adds to rows a dimension of the distance along the rows' side; words and key are found here.
    void row(DimensionRows& rows, const std::string& part, Point a, Point b, const std::string& key) const;
    void add(const DimensionRows& rows);
    /// Elements that are composed in the sheet's own directions, moved to the place of `at`.
    void addAt(Point at, std::vector<Element> elements);
    /// Elements that lie on the sheet already.
    void addSheetElements(std::vector<Element> elements);

    /// The length as it is written at dimensions: without unit, which a note on the sheet names.
    std::string words(double mm) const;
    /// The key where the parameter can be edited in this plan; otherwise empty.
    std::string editable(const std::string& key) const;

    /// Bounds of everything drawn so far, on the sheet.
    Bounds extent() const;
    std::vector<Element> take() { return std::move(m_elements); }

private:
    const Plan& m_plan;
    UnitStyle m_style;
    PlacedView m_placed;
    double m_paper;
    bool m_dimensions;
    double m_slope = 0, m_about = 0;
    std::vector<Element> m_elements;

    std::vector<Point> mapped(const std::vector<Point>& points) const;
};

/// Whether dimensions are drawn by American practice (ASME Y14.5): where the plan is in inches.
inline bool american(const UnitStyle& style)
{
    return style.unit != LengthUnit::Millimetre;
}
/// A length without unit in the plan's style; ISO 129-1 leaves units to a note on the sheet.
std::string dimensionWords(double mm, const UnitStyle& style);
/// "Measures in millimetres" and so on: that note.
std::string unitNote(const UnitStyle& style);

}  // namespace lidwright
