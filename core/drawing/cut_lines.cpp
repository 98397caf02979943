#include "core/drawing/cut_lines.h"

#include <algorithm>

namespace lidwright {

std::vector<CutPath> LinesOnce::fresh(const CutPath& path)
{
    if (path.radius > 0) {
        const auto size = static_cast<std::int64_t>(std::llround(path.radius / kSameCutLine));
        if (m_circles.insert({m_snap.number(path.points.front()), size}).second) return {path};
        ++m_dropped;
        return {};
    }
    const std::size_t n = path.points.size();
    if (n < 2) return {};
    std::vector<int> numbers;
    for (const Point& p : path.points)
        numbers.push_back(m_snap.number(p));
    const std::size_t legs = path.closed ? n : n - 1;
    std::vector<bool> isNew(legs);
    std::size_t news = 0;
    for (std::size_t i = 0; i < legs; ++i) {
        const auto [low, high] = std::minmax({numbers[i], numbers[(i + 1) % n]});
        // A leg shorter than the tolerance cannot be told from a point and goes with its neighbours.
        isNew[i] = low == high || m_lines.insert({low, high}).second;
        news += isNew[i] ? 1 : 0;
    }
    m_dropped += static_cast<int>(legs - news);
    if (news == legs) return {path};

    std::vector<CutPath> pieces;
    // A closed path is walked from where a line was left out, so that no piece is torn at its beginning.
    std::size_t first = 0;
    if (path.closed)
        first = static_cast<std::size_t>(std::find(isNew.begin(), isNew.end(), false) - isNew.begin());
    for (std::size_t k = 0; k < legs;) {
        const std::size_t i = (first + k) % legs;
        if (!isNew[i]) {
            ++k;
            continue;
        }
        CutPath piece = path;
        piece.closed = false;
        piece.points = {path.points[i]};
        double length = 0;
        for (; k < legs && isNew[(first + k) % legs]; ++k) {
            piece.points.push_back(path.points[((first + k) % legs + 1) % n]);
            length += distance(piece.points[piece.points.size() - 2], piece.points.back());
        }
        if (length > kSameCutLine) pieces.push_back(std::move(piece));
    }
    return pieces;
}

}  // namespace lidwright
