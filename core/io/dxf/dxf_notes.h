#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright::dxf {

/// What the reader meets and cannot take over as its author meant it.
enum class Issue { Kind, FitPoints, Broken, NoBlock, Cycle, TooDeep, Hidden, Paper, Tilted, Doubled, CutOff };

/// Gathers what was left out, so that one kind makes one sentence however often it occurs.
class Notes {
public:
    /// `detail` is shown, the first few different ones: an entity's kind, a layer's name.
    void add(Issue issue, std::string_view detail = {});
    /// A sentence that stands for itself.
    void say(std::string sentence) { m_said.push_back(std::move(sentence)); }
    /// One sentence for each kind, in the order of the list above, then those said.
    std::vector<std::string> sentences() const;

private:
    struct Entry {
        std::size_t count = 0;
        std::map<std::string, std::size_t> details;
    };
    std::map<Issue, Entry> m_entries;
    std::vector<std::string> m_said;
};

}  // namespace lidwright::dxf
