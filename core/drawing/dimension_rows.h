#pragma once

#include "core/drawing/sheet.h"

#include <cmath>

namespace lidwright {

enum class Side { Below, Above, Left, Right };

/// Linear dimensions in rows along one side of a view: the shortest nearest to the part, none over another,
/// words moved along their line where an extension line of a farther row would run through them.
class DimensionRows {
public:
    /// `edge`: sheet y (Below, Above) or x (Left, Right) that the first row keeps its distance from.
    DimensionRows(Side side, double edge, double paper) : m_side(side), m_edge(edge), m_paper(paper) {}

    /// A dimension between two places on the part; measured along the side only. Those shorter than a
    /// hundredth of a millimetre, and what is not finite, are left out.
    void add(const std::string& part, Point a, Point b, const std::string& words, const std::string& key);

    /// What lies between two places, measured along the side.
    double measure(Point a, Point b) const { return level() ? std::abs(b.x - a.x) : std::abs(b.y - a.y); }

    std::vector<Element> place() const;

    /// Distance of the first row from the edge and of the rows from one another, mm on paper (ASME Y14.5: at
    /// least 10 and 6).
    static constexpr double kFirstRow = 10;
    static constexpr double kNextRow = 7;

private:
    struct Item {
        std::string part;
        Point a, b;                ///< a lies left of or below b
        double low = 0, high = 0;  ///< along the side
        std::string words;
        std::string key;
        double width = 0;   ///< of the words
        double middle = 0;  ///< of the words
        std::size_t row = 0;
    };

    Side m_side;
    double m_edge;
    double m_paper;
    std::vector<Item> m_items;

    bool level() const { return m_side == Side::Below || m_side == Side::Above; }
    bool fits(const Item& item) const;
    std::vector<double> placesOfWords(const Item& item) const;
    bool disturbs(const Item& a, const Item& b) const;
    void assignRows(std::vector<Item>& items) const;
    void clearWords(std::vector<Item>& items) const;
    Dimension dimensionOf(const Item& item) const;
    static void shareExtensionLines(const std::vector<Item>& items, std::vector<Dimension>& dimensions);
};

}  // namespace lidwright
