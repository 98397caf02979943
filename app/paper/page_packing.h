#pragma once

#include "app/paper/tiling.h"

#include <vector>

namespace lidwright {

/// A drawing that shares a page with others, and by how much it is moved for that.
struct PackedPart {
    std::size_t index = 0;  ///< of the drawings given
    Point by;               ///< the packed drawing's place = its own + by
};

/// What lies on one page.
using PackedPage = std::vector<PackedPart>;

/// Lays small drawings together on as few pages as the packing finds, none turned or split, kBetweenPacked
/// apart; `areas` is what of each must lie on paper. Drawings that fit on no page get one of their own. Pages
/// are in the order of their first drawing.
std::vector<PackedPage> packOnPages(const std::vector<Bounds>& areas, const TilePaper& paper);

inline constexpr double kBetweenPacked = 8;  ///< mm, room for scissors

/// The part of a page that a drawing may use, upright or on its side, mm; zero where nothing is left.
Point usableSize(const TilePaper& paper, bool turned);

}  // namespace lidwright
