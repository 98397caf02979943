#pragma once

#include "core/io/plan/json_tree.h"

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace lidwright {

/// A place in a plan file, in the two spellings that are needed of it.
struct PlanPath {
    std::string pointer;  ///< JSON Pointer (RFC 6901): "/art/0/source"
    std::string shown;    ///< as errors and notes name it: "art.1.source"

    PlanPath member(std::string_view name) const;
    PlanPath item(std::size_t index) const;
};

/// Keys of a file that this version does not know. In Plan::unknownKeys they are the members of one JSON
/// object: the JSON Pointer of the key, and its value.
class UnknownKeys {
public:
    UnknownKeys() = default;
    /// From Plan::unknownKeys. A text that is no such object holds no keys.
    explicit UnknownKeys(std::string_view text);
    // Holds places within itself.
    UnknownKeys(const UnknownKeys&) = delete;
    UnknownKeys& operator=(const UnknownKeys&) = delete;

    /// Takes the members of `object` that are not among `known`; the values must outlive this.
    void collect(const json::Value::Object& object, const PlanPath& path,
                 const std::vector<std::string_view>& known);

    /// For Plan::unknownKeys; empty where there are none.
    std::string text() const;
    /// A sentence for each key, the last one counts the rest where there are many.
    std::vector<std::string> notes() const;

    /// Names and values of the unknown keys of one object, in the order in which they were read.
    using Members = std::vector<std::pair<std::string, const json::Value*>>;
    const Members& of(const std::string& objectPointer) const;
    /// What Plan::unknownKeys holds altogether.
    const json::Value& all() const { return m_kept; }

private:
    struct Found {
        PlanPath path;
        const json::Value* value;
    };
    std::vector<Found> m_found;
    json::Value m_kept;                         ///< what was read from Plan::unknownKeys
    std::map<std::string, Members> m_byObject;  ///< into m_kept
};

}  // namespace lidwright
