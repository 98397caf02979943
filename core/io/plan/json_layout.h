#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace lidwright::json {

/// Writes a JSON text as it is read best: one member or item a line, indented by two blanks.
class Layout {
public:
    /// Begin and end of the outermost value, of a member's value after key(), or of an item.
    void beginObject() { begin('{'); }
    void endObject() { end('}'); }
    void beginArray() { begin('['); }
    void endArray() { end(']'); }

    /// Name of the next member of the open object.
    void key(std::string_view name);
    /// True where the open object has a member of that name already.
    bool hasKey(std::string_view name) const;

    void text(std::string_view value);
    void number(double value);
    void flag(bool value);
    /// A value that is JSON already.
    void raw(std::string_view value);

    /// The text so far with a line end; empty afterwards.
    std::string take();

private:
    struct Open {
        bool empty = true;
        std::vector<std::string> names;
    };
    std::string m_out;
    std::vector<Open> m_open;
    bool m_afterKey = false;

    void begin(char bracket);
    void end(char bracket);
    void place();
};

}  // namespace lidwright::json
