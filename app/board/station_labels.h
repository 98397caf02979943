#pragma once

#include <vector>

namespace lidwright {

/// A label that wants to stand at a pixel of the rule.
struct LabelWish {
    double at = 0;     ///< pixel of its leader
    double width = 0;  ///< of its words
    int weight = 0;    ///< where there is no room for all, those of less weight are left out
};

/// Where a label was put.
struct LabelPlace {
    bool shown = false;
    int row = 0;      ///< 0 is next to the rule's edge
    double left = 0;  ///< pixel where its words begin
};

/// Gives every label a row and a place between `from` and `to`, so that no words touch one another (at least
/// `gap` pixels between them in a row) and no leader runs through words. Wishes sorted by `at`; answers in
/// their order.
std::vector<LabelPlace> staggerLabels(const std::vector<LabelWish>& wishes, int rows, double from, double to,
                                      double gap);

}  // namespace lidwright
