#include "core/io/plan/json_spelling.h"

#include <array>
#include <charconv>
#include <cmath>

namespace lidwright::json {
namespace {

/// Bytes of the UTF-8 character at the start of `text`, 0 where there is none (RFC 3629: no overlong forms,
/// no surrogates, nothing above U+10FFFF).
std::size_t characterLength(std::string_view text)
{
    const auto byte = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : static_cast<unsigned char>(0);
    };
    const auto follows = [&](std::size_t i, unsigned least = 0x80, unsigned most = 0xBF) {
        return byte(i) >= least && byte(i) <= most;
    };
    const unsigned first = byte(0);
    if (first < 0x80) return 1;
    if (first >= 0xC2 && first <= 0xDF) return follows(1) ? 2 : 0;
    if (first >= 0xE0 && first <= 0xEF) {
        const unsigned least = first == 0xE0 ? 0xA0 : 0x80;
        const unsigned most = first == 0xED ? 0x9F : 0xBF;
        return follows(1, least, most) && follows(2) ? 3 : 0;
    }
    if (first >= 0xF0 && first <= 0xF4) {
        const unsigned least = first == 0xF0 ? 0x90 : 0x80;
        const unsigned most = first == 0xF4 ? 0x8F : 0xBF;
        return follows(1, least, most) && follows(2) && follows(3) ? 4 : 0;
    }
    return 0;
}

void appendEscaped(std::string& out, char c)
{
    constexpr char kHex[] = "0123456789abcdef";
    switch (c) {
        case '"':
            out += "\\\"";
            break;
        case '\\':
            out += "\\\\";
            break;
        case '\n':
            out += "\\n";
            break;
        case '\t':
            out += "\\t";
            break;
        case '\r':
            out += "\\r";
            break;
        case '\b':
            out += "\\b";
            break;
        case '\f':
            out += "\\f";
            break;
        default:
            if (static_cast<unsigned char>(c) < 0x20) {
                out += "\\u00";
                out += kHex[static_cast<unsigned char>(c) >> 4];
                out += kHex[static_cast<unsigned char>(c) & 15];
            } else {
                out += c;
            }
    }
}

template <typename Number>
void appendDigits(std::string& out, Number value)
{
    // 24 characters hold every double in its shortest form, 20 every whole number of 64 bits.
    std::array<char, 32> buffer{};
    const auto [end, failed] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
    if (failed == std::errc{}) out.append(buffer.data(), end);
}

struct Appender {
    std::string& out;

    void operator()(std::monostate) const { out += "null"; }
    void operator()(bool b) const { out += b ? "true" : "false"; }
    void operator()(std::int64_t n) const { appendDigits(out, n); }
    void operator()(std::uint64_t n) const { appendDigits(out, n); }
    void operator()(double n) const { appendNumber(out, n); }
    void operator()(Point p) const
    {
        out += '[';
        appendNumber(out, p.x);
        out += ',';
        appendNumber(out, p.y);
        out += ']';
    }
    void operator()(const std::string& s) const { appendString(out, s); }
    void operator()(const Value::Array& items) const
    {
        out += '[';
        for (std::size_t i = 0; i < items.size(); ++i) {
            if (i > 0) out += ',';
            appendValue(out, items[i]);
        }
        out += ']';
    }
    void operator()(const Value::Object& members) const
    {
        out += '{';
        for (std::size_t i = 0; i < members.size(); ++i) {
            if (i > 0) out += ',';
            appendString(out, members[i].name);
            out += ':';
            appendValue(out, members[i].value);
        }
        out += '}';
    }
};

}  // namespace

void appendNumber(std::string& out, double value)
{
    if (!std::isfinite(value)) {
        out += "null";
    } else if (value == 0 && std::signbit(value)) {
        // Readers take "-0" for a whole number, which has no sign at zero.
        out += "-0.0";
    } else {
        appendDigits(out, value);
    }
}

void appendString(std::string& out, std::string_view text)
{
    out += '"';
    while (!text.empty()) {
        const std::size_t size = characterLength(text);
        if (size == 1)
            appendEscaped(out, text.front());
        else if (size == 0)
            out += '?';
        else
            out += text.substr(0, size);
        text.remove_prefix(size == 0 ? 1 : size);
    }
    out += '"';
}

void appendValue(std::string& out, const Value& value)
{
    std::visit(Appender{out}, value.data);
}

}  // namespace lidwright::json
