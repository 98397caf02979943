#include "core/io/plan/unknown_keys.h"

#include "core/io/plan/json_spelling.h"
#include "core/io/plan/plan_file.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr std::size_t kMostNotes = 20;

std::string escaped(std::string_view name)
{
    std::string out;
    for (const char c : name) {
        if (c == '~')
            out += "~0";
        else if (c == '/')
            out += "~1";
        else
            out += c;
    }
    return out;
}

std::string unescaped(std::string_view name)
{
    std::string out;
    for (std::size_t i = 0; i < name.size(); ++i) {
        if (name[i] == '~' && i + 1 < name.size() && (name[i + 1] == '0' || name[i + 1] == '1')) {
            out += name[i + 1] == '0' ? '~' : '/';
            ++i;
        } else {
            out += name[i];
        }
    }
    return out;
}

}  // namespace

PlanPath PlanPath::member(std::string_view name) const
{
    return {pointer + "/" + escaped(name), json::joined(shown, name)};
}

PlanPath PlanPath::item(std::size_t index) const
{
    return {pointer + "/" + std::to_string(index), json::joined(shown, index)};
}

UnknownKeys::UnknownKeys(std::string_view text)
{
    if (text.empty()) return;
    // One level more than in the file, for the object that holds the keys; names may be longer by their path.
    const json::Limits limits{2 * kPlanFileLimit, kPlanDepthLimit + 1, kPlanPointLimit, kPlanValueLimit};
    auto kept = json::parse(text, limits);
    if (!kept) return;
    m_kept = std::move(kept).value();
    const auto* members = m_kept.as<json::Value::Object>();
    if (members == nullptr) return;
    for (const json::Member& member : *members) {
        const std::size_t slash = member.name.rfind('/');
        if (slash == std::string::npos) continue;
        m_byObject[member.name.substr(0, slash)].emplace_back(unescaped(member.name.substr(slash + 1)),
                                                              &member.value);
    }
}

void UnknownKeys::collect(const json::Value::Object& object, const PlanPath& path,
                          const std::vector<std::string_view>& known)
{
    for (const json::Member& member : object)
        if (std::find(known.begin(), known.end(), member.name) == known.end())
            m_found.push_back({path.member(member.name), &member.value});
}

std::string UnknownKeys::text() const
{
    if (m_found.empty()) return {};
    std::string out = "{";
    for (const Found& found : m_found) {
        if (out.size() > 1) out += ',';
        json::appendString(out, found.path.pointer);
        out += ':';
        json::appendValue(out, *found.value);
    }
    return out + "}";
}

std::vector<std::string> UnknownKeys::notes() const
{
    std::vector<std::string> out;
    for (const Found& found : m_found) {
        if (out.size() == kMostNotes) {
            out.push_back(std::to_string(m_found.size() - kMostNotes) +
                          " more keys are not known to this version and were kept");
            break;
        }
        out.push_back(found.path.shown + " is not known to this version and was kept");
    }
    return out;
}

const UnknownKeys::Members& UnknownKeys::of(const std::string& objectPointer) const
{
    static const Members none;
    const auto found = m_byObject.find(objectPointer);
    return found == m_byObject.end() ? none : found->second;
}

}  // namespace lidwright
