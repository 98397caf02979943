#include "app/board/station_labels.h"

#include <algorithm>

namespace lidwright {

namespace {

constexpr double kLeaderGap = 3;       // from a leader to the words beside it, px
constexpr std::size_t kBestKept = 48;  // arrangements that are followed up
constexpr int kPerWeight = 100;        // what a shown label gains, against the small costs of row and side

/// Some of the labels, from the last on, put somewhere.
struct Arrangement {
    std::vector<LabelPlace> places;
    int gain = 0;
};

class Staggering {
public:
    Staggering(const std::vector<LabelWish>& wishes, int rows, double from, double to, double gap)
        : m_wishes(wishes), m_rows(rows), m_from(from), m_to(to), m_gap(gap)
    {}

    std::vector<LabelPlace> best()
    {
        std::vector<Arrangement> kept(1);
        kept.front().places.resize(m_wishes.size());
        for (std::size_t i = m_wishes.size(); i-- > 0;)
            kept = extended(kept, i);
        return kept.front().places;
    }

private:
    std::vector<Arrangement> extended(const std::vector<Arrangement>& kept, std::size_t i) const
    {
        std::vector<Arrangement> next = kept;
        const LabelWish& w = m_wishes[i];
        for (const Arrangement& before : kept) {
            // Right of the leader is the usual side.
            for (const bool leftward : {false, true}) {
                const double left = leftward ? w.at - kLeaderGap - w.width : w.at + kLeaderGap;
                if (w.at < m_from || w.at > m_to || left < m_from || left + w.width > m_to) continue;
                for (int row = 0; row < m_rows; ++row) {
                    if (!free(before.places, i, row, left)) continue;
                    next.push_back(before);
                    next.back().places[i] = {true, row, left};
                    next.back().gain += kPerWeight * std::max(1, w.weight) - row - (leftward ? 2 : 0);
                }
            }
        }
        std::stable_sort(next.begin(), next.end(),
                         [](const Arrangement& a, const Arrangement& b) { return a.gain > b.gain; });
        if (next.size() > kBestKept) next.resize(kBestKept);
        return next;
    }

    bool free(const std::vector<LabelPlace>& places, std::size_t i, int row, double left) const
    {
        const double right = left + m_wishes[i].width;
        for (std::size_t j = i + 1; j < places.size(); ++j) {
            const LabelPlace& p = places[j];
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
};

}  // namespace

std::vector<LabelPlace> staggerLabels(const std::vector<LabelWish>& wishes, int rows, double from, double to,
                                      double gap)
{
    return Staggering(wishes, rows, from, to, gap).best();
}

}  // namespace lidwright
