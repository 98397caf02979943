#include "core/io/cut/cut_dxf_text.h"

#include "core/base/length_text.h"

namespace lidwright {

void DxfText::text(int code, std::string_view words)
{
    const std::string number = std::to_string(code);
    m_text.append(number.size() < 3 ? 3 - number.size() : 0, ' ');
    m_text.append(number).append("\n").append(words).append("\n");
}

void DxfText::real(int code, double value)
{
    constexpr int kDecimals = 4;
    std::string number = decimalNumber(value, kDecimals);
    // Some readers take a number without a point for a whole one.
    if (number.find('.') == std::string::npos) number += ".0";
    text(code, number);
}

void DxfText::point(int code, Point p)
{
    real(code, p.x);
    real(code + 10, p.y);
}

void DxfText::point3(int code, Point p)
{
    point(code, p);
    real(code + 20, 0);
}

void DxfText::handle(int code, std::uint64_t handle)
{
    constexpr std::string_view digits = "0123456789ABCDEF";
    std::string out;
    do {
        out.insert(out.begin(), digits[handle & 0xFU]);
        handle >>= 4U;
    } while (handle > 0);
    text(code, out);
}

}  // namespace lidwright
