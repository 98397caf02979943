#include "core/io/plan/json_layout.h"

#include "core/io/plan/json_spelling.h"

#include <algorithm>
#include <utility>

namespace lidwright::json {

void Layout::key(std::string_view name)
{
    place();
    appendString(m_out, name);
    m_out += ": ";
    m_afterKey = true;
    if (!m_open.empty()) m_open.back().names.emplace_back(name);
}

bool Layout::hasKey(std::string_view name) const
{
    return !m_open.empty() && std::find(m_open.back().names.begin(), m_open.back().names.end(), name) !=
                                  m_open.back().names.end();
}

void Layout::text(std::string_view value)
{
    place();
    appendString(m_out, value);
}

void Layout::number(double value)
{
    place();
    appendNumber(m_out, value);
}

void Layout::flag(bool value)
{
    raw(value ? "true" : "false");
}

void Layout::raw(std::string_view value)
{
    place();
    m_out += value;
}

std::string Layout::take()
{
    m_out += '\n';
    m_open.clear();
    m_afterKey = false;
    return std::exchange(m_out, {});
}

void Layout::begin(char bracket)
{
    place();
    m_out += bracket;
    m_open.emplace_back();
}

void Layout::end(char bracket)
{
    const bool empty = m_open.back().empty;
    m_open.pop_back();
    if (!empty) {
        m_out += '\n';
        m_out.append(2 * m_open.size(), ' ');
    }
    m_out += bracket;
}

/// Comma, line end and indent before an item or a key; nothing between a key and its value.
void Layout::place()
{
    if (std::exchange(m_afterKey, false) || m_open.empty()) return;
    if (!std::exchange(m_open.back().empty, false)) m_out += ',';
    m_out += '\n';
    m_out.append(2 * m_open.size(), ' ');
}

}  // namespace lidwright::json
