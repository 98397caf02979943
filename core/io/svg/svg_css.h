#pragma once

#include "core/io/svg/svg_budget.h"
#include "core/io/svg/svg_notes.h"

#include <pugixml.hpp>

#include <cstddef>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace lidwright::svg {

struct Declaration {
    std::string property;  ///< lower case
    std::string value;     ///< trimmed, without "!important"
    bool important = false;
};

/// The declarations of a style attribute or of a rule's block; what is no declaration is passed over.
std::vector<Declaration> parseDeclarations(std::string_view text);

/// A selector without combinators: "path.cut#a[fill='red']".
struct SimpleSelector {
    std::string type;  ///< empty or "*" for any
    std::string id;
    std::vector<std::string> classes;
    struct AttributeTest {
        std::string name, value;
        bool exact = false;  ///< false: the attribute need only be there
    };
    std::vector<AttributeTest> attributes;
    bool child = false;  ///< bound to what stands before it by '>' rather than by descent

    bool matches(const pugi::xml_node& node) const;
};

struct StyleRule {
    std::vector<SimpleSelector> selector;  ///< outermost first
    int specificity = 0;
    std::size_t block = 0;  ///< which block of declarations, in the order of the sheet
};

/// The rules of all style elements of a drawing: type, class, id and attribute selectors, descendants and
/// children (Selectors Level 3). Rules with other selectors are noted and passed over.
class StyleSheet {
public:
    void add(std::string_view text, Notes& notes);
    bool empty() const { return m_rules.empty(); }

    /// The declaration blocks that apply to the element, the strongest last.
    std::vector<const std::vector<Declaration>*> blocksFor(const pugi::xml_node& node, Budget& budget) const;

private:
    std::vector<StyleRule> m_rules;
    std::vector<std::vector<Declaration>> m_blocks;
    /// Rules by what their last part asks for: "#id", ".class", "type" or "".
    std::unordered_map<std::string, std::vector<std::size_t>> m_byKey;

    void addRules(std::string_view text, Notes& notes, int depth);
    void addRule(std::string_view selectors, std::string_view block, Notes& notes);
};

}  // namespace lidwright::svg
