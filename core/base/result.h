#pragma once

#include <optional>
#include <string>
#include <utility>
#include <variant>

namespace lidwright {

/// What went wrong, to which thing, and how to mend it, in plain English for a maker.
struct Error {
    std::string what;   ///< what is the matter: "the number has no end"
    std::string where;  ///< file, key path, character position: "box.length", "art.svg, line 12"
    std::string mend;   ///< what to do next: "write it as 12.5"
    /// Byte position in the text that was read, or -1 where there is none.
    int position = -1;

    bool operator==(const Error&) const = default;

    /// All three parts as one line, for a log or a terminal.
    std::string text() const
    {
        std::string s = where.empty() ? what : where + ": " + what;
        if (!mend.empty()) s += " (" + mend + ")";
        return s;
    }
};

/// A value or the error that stands in its place. Core never throws for bad outside data.
template <typename T>
class [[nodiscard]] Result {
public:
    Result(T value) : m_state(std::in_place_index<0>, std::move(value)) {}
    Result(Error error) : m_state(std::in_place_index<1>, std::move(error)) {}

    bool ok() const { return m_state.index() == 0; }
    explicit operator bool() const { return ok(); }

    /// The value; ask ok() first.
    const T& value() const& { return std::get<0>(m_state); }
    T& value() & { return std::get<0>(m_state); }
    T&& value() && { return std::get<0>(std::move(m_state)); }
    const T& operator*() const& { return value(); }
    const T* operator->() const { return &value(); }

    /// The error; ask !ok() first.
    const Error& error() const { return std::get<1>(m_state); }

private:
    std::variant<T, Error> m_state;
};

}  // namespace lidwright
