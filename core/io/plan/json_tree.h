#pragma once

#include "core/base/result.h"
#include "core/geometry/point.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace lidwright::json {

struct Member;

/// A JSON value. Arrays of two numbers are kept as Point, since plans consist of little else; every other
/// array is an Array. Whole numbers keep their digits, all other numbers are doubles.
struct Value {
    using Array = std::vector<Value>;
    using Object = std::vector<Member>;  ///< in the order of the text, no name twice
    std::variant<std::monostate, bool, std::int64_t, std::uint64_t, double, Point, std::string, Array, Object>
        data;

    template <typename T>
    const T* as() const
    {
        return std::get_if<T>(&data);
    }
};

struct Member {
    std::string name;
    Value value;
};

/// The value of a number; empty for everything else.
std::optional<double> number(const Value& value);
/// The member of that name; null where the object has none.
const Value* find(const Value::Object& object, std::string_view name);

/// "box.length", "art.2.runs.1": a place as a maker reads it, members of lists counted from 1.
/// `name` is cut where it is long, and unprintable bytes become "?".
std::string joined(const std::string& path, std::string_view name);
std::string joined(const std::string& path, std::size_t index);

/// What a text may have at most.
struct Limits {
    std::size_t bytes = 0;
    int depth = 0;           ///< arrays and objects inside one another
    std::size_t points = 0;  ///< arrays of two numbers
    std::size_t values = 0;  ///< everything else
};

struct Amount {
    std::size_t points = 0;
    std::size_t values = 0;
};
/// What the limits would count of a value.
Amount amountOf(const Value& value);

/// Looks at each member of the outermost object that is a word or a number, as soon as it is read, so that
/// a file of another kind or a newer format is refused before anything else in it is judged.
using HeaderCheck = std::function<std::optional<Error>(const std::string& name, const Value& value)>;

/// Reads a JSON text (RFC 8259; a byte order mark is passed over). Errors: no JSON (where = "line 3, column
/// 7", with the byte's position), a name twice in one object, a number too large for a double, a limit
/// exceeded. Nesting costs no stack.
Result<Value> parse(std::string_view text, const Limits& limits, const HeaderCheck& check = {});

}  // namespace lidwright::json
