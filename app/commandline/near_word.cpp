#include "app/commandline/near_word.h"

#include <algorithm>
#include <numeric>

namespace lidwright {

namespace {
// Longer words are no spelling of ours; the cap keeps the quadratic table small whatever is typed.
constexpr std::size_t kLongestWord = 64;
}  // namespace

std::size_t editDistance(std::string_view a, std::string_view b)
{
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 0; i < a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < b.size(); ++j) {
            const std::size_t changed = diagonal + (a[i] == b[j] ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({changed, row[j] + 1, diagonal + 1});
        }
    }
    return row.back();
}

std::string nearestWord(std::string_view word, const std::vector<std::string>& known)
{
    if (word.empty() || word.size() > kLongestWord) return {};
    std::string best;
    std::size_t least = std::max<std::size_t>(1, word.size() / 3) + 1;
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
