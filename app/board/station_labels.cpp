#include "app/board/station_labels.h"

#include <algorithm>
#include <optional>

namespace lidwright {

namespace {

/// From a leader to the words beside it, px.
constexpr double kLeaderGap = 3;

class Staggering {
public:
    Staggering(const std::vector<LabelWish>& wishes, int rows, double from, double to, double gap)
        : m_wishes(wishes), m_rows(rows), m_from(from), m_to(to), m_gap(gap), m_places(wishes.size())
    {
    }

    /// Puts the labels that `wanted` names, from the last to the first; returns one that found no room.
    std::optional<std::size_t> put(const std::vector<bool>& wanted)
    {
        m_places.assign(m_wishes.size(), {});
        for (std::size_t i = m_wishes.size(); i-- > 0;)
            if (wanted[i] && !putOne(i)) return i;
        return std::nullopt;
    }
    const std::vector<LabelPlace>& places() const { return m_places; }

private:
    bool putOne(std::size_t i)
    {
        const LabelWish& w = m_wishes[i];
        if (w.at < m_from || w.at > m_to) return false;
        // Right of the leader is the usual side; beside the rule's end the words stand left of it.
        for (const double left : {w.at + kLeaderGap, w.at - kLeaderGap - w.width}) {
            if (left < m_from || left + w.width > m_to) continue;
            for (int row = 0; row < m_rows; ++row) {
                if (!free(i, row, left)) continue;
                m_places[i] = {true, row, left};
                return true;
            }
        }
        return false;
    }

    bool free(std::size_t i, int row, double left) const
    {
        const double right = left + m_wishes[i].width;
        for (std::size_t j = i + 1; j < m_places.size(); ++j) {
            const LabelPlace& p = m_places[j];
            if (!p.shown) continue;
            const double end = p.left + m_wishes[j].width;
            if (p.row == row && left < end + m_gap && p.left < right + m_gap) return false;
            // A leader runs through all rows below its own and beside its own words.
            const double mine = m_wishes[i].at, other = m_wishes[j].at;
            if (p.row >= row && other > left - kLeaderGap / 2 && other < right + kLeaderGap / 2) return false;
            if (row >= p.row && mine > p.left - kLeaderGap / 2 && mine < end + kLeaderGap / 2) return false;
        }
        return true;
    }

    const std::vector<LabelWish>& m_wishes;
    int m_rows;
    double m_from, m_to, m_gap;
    std::vector<LabelPlace> m_places;
};

}  // namespace

std::vector<LabelPlace> staggerLabels(const std::vector<LabelWish>& wishes, int rows, double from, double to,
                                      double gap)
{
    Staggering staggering(wishes, rows, from, to, gap);
    std::vector<bool> wanted(wishes.size(), true);
    while (const auto stuck = staggering.put(wanted)) {
        // The stuck label or the nearest one that stands in its way, whichever weighs less, gives up its words.
        std::size_t out = *stuck;
        for (std::size_t j = *stuck + 1; j < wishes.size(); ++j) {
            if (!wanted[j]) continue;
            const bool inTheWay = wishes[j].at - wishes[*stuck].at < wishes[*stuck].width + gap + 2 * kLeaderGap;
            const bool room = wishes[*stuck].at >= from && wishes[*stuck].at <= to;
            if (inTheWay && room && wishes[j].weight < wishes[out].weight) out = j;
        }
        wanted[out] = false;
    }
    return staggering.places();
}

}  // namespace lidwright
