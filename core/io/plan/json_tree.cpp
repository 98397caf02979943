#include "core/io/plan/json_tree.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace lidwright::json {
namespace {

/// Whole numbers up to here are the same number as a double (IEEE 754, 53 bits).
constexpr double kWholeLimit = 9007199254740992.0;
constexpr std::size_t kShownName = 60;

std::string shown(std::string_view name)
{
    std::string out(name.substr(0, kShownName));
    for (char& c : out)
        if (static_cast<unsigned char>(c) < 32 || c == 127) c = '?';
    if (name.size() > kShownName) {
        // No half of a character at the end.
        while (!out.empty() && (static_cast<unsigned char>(name[out.size()]) & 0xC0u) == 0x80u)
            out.pop_back();
        out += "...";
    }
    return out;
}

/// "line 3, column 7" of a byte; columns count characters.
std::string lineAndColumn(std::string_view text, std::size_t byte)
{
    const std::string_view before = text.substr(0, byte);
    const auto lines = std::count(before.begin(), before.end(), '\n');
    const std::size_t start = before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1;
    const auto column =
        std::count_if(before.begin() + static_cast<std::ptrdiff_t>(start), before.end(),
                      [](char c) { return (static_cast<unsigned char>(c) & 0xC0u) != 0x80u; });
    return "line " + std::to_string(lines + 1) + ", column " + std::to_string(column + 1);
}

/// The number where it is the same number as a double.
std::optional<double> exactDouble(const Value& value)
{
    const auto n = number(value);
    if (!n) return std::nullopt;
    if (value.as<double>() == nullptr && std::abs(*n) > kWholeLimit) return std::nullopt;
    return n;
}

/// Puts the values together as the parser meets them.
class Builder {
public:
    Builder(std::string_view text, const Limits& limits, const HeaderCheck& check)
        : m_text(text), m_limits(limits), m_check(check)
    {}

    bool null() { return put({}); }
    bool boolean(bool b) { return put({b}); }
    bool number_integer(std::int64_t n) { return put({n}); }
    bool number_unsigned(std::uint64_t n) { return put({n}); }
    bool number_float(double n, const std::string&) { return put({n}); }
    bool string(std::string& s) { return put({std::move(s)}); }
    // JSON has none; the interface asks for it.
    bool binary(std::vector<std::uint8_t>&) { return false; }
    bool start_object(std::size_t) { return open({Value::Object{}}); }
    bool start_array(std::size_t) { return open({Value::Array{}}); }
    bool key(std::string& name)
    {
        m_open.back().name = std::move(name);
        return true;
    }
    bool end_object()
    {
        if (!namesDiffer(std::get<Value::Object>(m_open.back().value.data))) return false;
        return close();
    }
    bool end_array()
    {
        const auto& items = std::get<Value::Array>(m_open.back().value.data);
        if (items.size() == 2) {
            const auto x = exactDouble(items[0]);
            const auto y = exactDouble(items[1]);
            if (x && y) {
                m_values -= 3;
                ++m_points;
                m_open.back().value = {Point{*x, *y}};
                if (m_points > m_limits.points)
                    return fail("more than " + std::to_string(m_limits.points) + " outline points",
                                "simplify the drawings");
            }
        }
        return close();
    }
    bool parse_error(std::size_t position, const std::string& token,
                     const nlohmann::detail::exception& problem)
    {
        constexpr int kOverflow = 406;  // out_of_range.406: "number overflow"
        const std::size_t byte = std::min(position > 0 ? position - 1 : 0, m_text.size());
        Error error{"", lineAndColumn(m_text, byte), "", static_cast<int>(byte)};
        if (problem.id == kOverflow) {
            error.what = "the number " + shown(token) + " is too large";
        } else if (byte >= m_text.size()) {
            error.what = "the text ends too early, so it is not valid JSON";
            error.mend = "a part of the file is missing: use a copy of it";
        } else if (std::string_view(problem.what()).find("UTF-8") != std::string_view::npos) {
            error.what = "the text is not UTF-8, so it is not valid JSON";
            error.mend = "save it as UTF-8";
        } else {
            error.what = "not valid JSON, unexpected " + shown(token);
        }
        m_error = std::move(error);
        return false;
    }

    std::optional<Error>& error() { return m_error; }
    Value& result() { return m_result; }

private:
    struct Frame {
        Value value;       ///< the array or object that is being filled
        std::string name;  ///< of the member that is being read
    };
    std::string_view m_text;
    const Limits& m_limits;
    const HeaderCheck& m_check;
    std::vector<Frame> m_open;
    std::size_t m_points = 0;
    std::size_t m_values = 0;
    Value m_result;
    std::optional<Error> m_error;

    bool fail(std::string what, std::string mend)
    {
        m_error = Error{std::move(what), place(), std::move(mend)};
        return false;
    }

    std::string place() const
    {
        std::string path;
        for (const Frame& frame : m_open) {
            if (const auto* items = frame.value.as<Value::Array>())
                path = joined(path, items->size());
            else if (frame.value.as<Value::Object>() != nullptr && !frame.name.empty())
                path = joined(path, frame.name);
        }
        return path;
    }

    bool count()
    {
        if (++m_values <= m_limits.values) return true;
        return fail("more than " + std::to_string(m_limits.values) + " values", "simplify the drawings");
    }

    bool open(Value value)
    {
        if (m_open.size() >= static_cast<std::size_t>(m_limits.depth))
            return fail("more than " + std::to_string(m_limits.depth) + " lists inside one another",
                        "no plan is made like this: use a copy of the file");
        if (!count()) return false;
        m_open.push_back({std::move(value), {}});
        return true;
    }

    bool close()
    {
        Value value = std::move(m_open.back().value);
        m_open.pop_back();
        return keep(std::move(value));
    }

    bool put(Value value) { return count() && keep(std::move(value)); }

    bool keep(Value value)
    {
        if (m_open.empty()) {
            m_result = std::move(value);
            return true;
        }
        Frame& frame = m_open.back();
        if (auto* items = std::get_if<Value::Array>(&frame.value.data)) {
            items->push_back(std::move(value));
            return true;
        }
        if (m_open.size() == 1 && m_check) {
            if (auto refused = m_check(frame.name, value)) {
                m_error = std::move(refused);
                return false;
            }
        }
        std::get<Value::Object>(frame.value.data).push_back({std::move(frame.name), std::move(value)});
        frame.name.clear();
        return true;
    }

    /// Sorted, so that an object of a million members is no trap.
    bool namesDiffer(const Value::Object& object)
    {
        std::vector<std::string_view> names;
        names.reserve(object.size());
        for (const Member& member : object)
            names.push_back(member.name);
        std::sort(names.begin(), names.end());
        const auto twice = std::adjacent_find(names.begin(), names.end());
        if (twice == names.end()) return true;
        m_open.back().name = std::string(*twice);
        return fail("the key stands here twice", "remove one of the two");
    }
};

}  // namespace

std::optional<double> number(const Value& value)
{
    if (const auto* n = value.as<double>()) return *n;
    if (const auto* n = value.as<std::int64_t>()) return static_cast<double>(*n);
    if (const auto* n = value.as<std::uint64_t>()) return static_cast<double>(*n);
    return std::nullopt;
}

const Value* find(const Value::Object& object, std::string_view name)
{
    for (const Member& member : object)
        if (member.name == name) return &member.value;
    return nullptr;
}

Amount amountOf(const Value& value)
{
    if (value.as<Point>() != nullptr) return {1, 0};
    Amount sum{0, 1};
    const auto add = [&](const Value& part) {
        const Amount more = amountOf(part);
        sum.points += more.points;
        sum.values += more.values;
    };
    if (const auto* items = value.as<Value::Array>())
        for (const Value& item : *items)
            add(item);
    else if (const auto* object = value.as<Value::Object>())
        for (const Member& member : *object)
            add(member.value);
    return sum;
}

std::string joined(const std::string& path, std::string_view name)
{
    return path.empty() ? shown(name) : path + "." + shown(name);
}

std::string joined(const std::string& path, std::size_t index)
{
    return joined(path, std::to_string(index + 1));
}

Result<Value> parse(std::string_view text, const Limits& limits, const HeaderCheck& check)
{
    if (text.size() > limits.bytes)
        return Error{"larger than " + std::to_string(limits.bytes >> 20) + " MiB", "",
                     "simplify the drawings"};
    Builder builder(text, limits, check);
    const bool done = nlohmann::json::sax_parse(text, &builder);
    if (builder.error()) return *builder.error();
    if (!done) return Error{"not valid JSON", "", ""};
    return std::move(builder.result());
}

}  // namespace lidwright::json
