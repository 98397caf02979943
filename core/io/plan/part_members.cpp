#include "core/io/plan/part_members.h"

#include <algorithm>

namespace lidwright {
namespace {

const Parameter* listParameter(const PartInfo& part)
{
    const std::string start = std::string(part.key) + ".#.";
    const auto rows = catalogue();
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const Parameter& p) {
        return p.inList() && std::string_view(p.key).starts_with(start);
    });
    return found == rows.end() ? nullptr : &*found;
}

const Parameter* countParameter(const PartInfo& part)
{
    const auto rows = catalogue();
    // How many strings there are is asked for among what all strings share.
    for (const char* ending : {".count", "s.count"}) {
        const std::string key = part.key + std::string(ending);
        const auto found =
            std::find_if(rows.begin(), rows.end(), [&](const Parameter& p) { return p.key == key; });
        if (found != rows.end()) return &*found;
    }
    return nullptr;
}

}  // namespace

std::string_view memberName(const Parameter& parameter)
{
    const std::string_view key = parameter.key;
    return key.substr(key.rfind('.') + 1);
}

std::size_t listSize(const Plan& plan, const PartInfo& part)
{
    const Parameter* any = listParameter(part);
    return any == nullptr ? 0 : static_cast<std::size_t>(any->size(plan));
}

std::pair<std::size_t, std::size_t> listBounds(const PartInfo& part)
{
    const Parameter* count = countParameter(part);
    if (count == nullptr) return {0, kMostPieces};
    return {static_cast<std::size_t>(count->least), static_cast<std::size_t>(count->most)};
}

void resizeList(Plan& plan, const PartInfo& part, std::size_t size)
{
    const std::size_t members = std::min<std::size_t>(size, kMostPieces);
    if (const Parameter* count = countParameter(part))
        count->set(plan, 0, static_cast<double>(members));
    else if (std::string_view(part.key) == "art")
        // Pieces of artwork come with their drawings, so the catalogue has no count to set.
        plan.art.resize(members);
}

std::string listMemberKey(const PartInfo& part, std::size_t index)
{
    return std::string(part.key) + "." + std::to_string(index + 1);
}

}  // namespace lidwright
