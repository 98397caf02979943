#include "core/base/near_word.h"

#include <algorithm>
#include <numeric>

namespace lidwright {

namespace {
// Longer words are no spelling of ours; the cap keeps the quadratic table small whatever is typed.
constexpr std::size_t kLongestWord = 64;
}  // namespace

std::size_t editDistance(std::string_view a, std::string_view b)
{
    // Optimal string alignment: a letter changed, left out, put in, or two neighbours swapped is one slip.
    std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i)
        d[i][0] = i;
    std::iota(d[0].begin(), d[0].end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i)
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t changed = d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            d[i][j] = std::min({changed, d[i - 1][j] + 1, d[i][j - 1] + 1});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
        }
    return d[a.size()][b.size()];
}

std::string nearestWord(std::string_view word, const std::vector<std::string>& known)
{
    if (word.empty() || word.size() > kLongestWord) return {};
    std::string best;
    std::size_t least = std::max<std::size_t>(word.size() > 3 ? 2 : 1, word.size() / 3) + 1;
    for (const std::string& candidate : known) {
        const bool beginning = word.size() >= 3 && candidate.compare(0, word.size(), word) == 0;
        const std::size_t d = beginning ? 0 : editDistance(word, candidate);
        if (d < least) {
            least = d;
            best = candidate;
        }
    }
    return best;
}

}  // namespace lidwright
