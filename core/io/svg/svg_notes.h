#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright::svg {

/// What the reader meets and cannot take over as its author meant it.
enum class Issue {
    Text,
    Image,
    Filter,
    Mask,
    Pattern,
    PaintServer,
    Focus,
    ForeignObject,
    External,
    Broken,
    Cycle,
    BadPath,
    BadTransform,
    BadStyle,
    Unsized,
    Tangled,
    Outside,
    SeeThrough,
    FixedWidth,
    Animation,
    Script,
};

/// Gathers what was left out, so that one kind makes one sentence however often it occurs.
class Notes {
public:
    /// `detail` is shown (the first three different ones): a text's words, a missing name.
    void add(Issue issue, std::string_view detail = {});
    bool has(Issue issue) const { return m_entries.count(issue) != 0; }
    /// A text that was drawn, with the fonts that were used for it.
    void addDrawnText(std::string_view words, const std::vector<std::string>& fonts);
    /// A sentence that stands for itself, once.
    void say(const std::string& sentence);
    /// One sentence per kind, in the order of the list above (drawn text behind text left out), then those
    /// said.
    std::vector<std::string> sentences() const;

private:
    struct Entry {
        std::size_t count = 0;
        std::vector<std::string> details;
        void add(std::string_view detail);
    };
    std::map<Issue, Entry> m_entries;
    Entry m_drawnText;
    std::vector<std::string> m_fonts;  ///< of drawn text, in order of their first use
    std::vector<std::string> m_said;
};

}  // namespace lidwright::svg
