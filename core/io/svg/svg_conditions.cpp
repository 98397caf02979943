#include "core/io/svg/svg_conditions.h"

#include "core/io/svg/svg_scan.h"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

namespace lidwright::svg {

namespace {

bool featureKnown(std::string_view feature)
{
    if (!startsWith(feature, "http://www.w3.org/TR/SVG11/feature#")) {
        return feature.find("static") != feature.npos;
    }
    constexpr std::array<std::string_view, 8> kMissing{"Animation", "Script", "Font",     "Cursor",
                                                       "Event",     "View",   "Extensib", "dynamic"};
    return std::none_of(kMissing.begin(), kMissing.end(),
                        [&](std::string_view word) { return feature.find(word) != feature.npos; });
}

bool languageFits(std::string_view list)
{
    while (true) {
        const std::size_t comma = list.find(',');
        const std::string tag = lowered(trimmed(list.substr(0, comma)));
        if (tag == "en" || startsWith(tag, "en-")) return true;
        if (comma == list.npos) return false;
        list.remove_prefix(comma + 1);
    }
}

}  // namespace

bool conditionsHold(const pugi::xml_node& node)
{
    const pugi::xml_attribute extensions = node.attribute("requiredExtensions");
    if (extensions && !words(extensions.value()).empty()) return false;
    const pugi::xml_attribute features = node.attribute("requiredFeatures");
    if (features) {
        const auto list = words(features.value());
        if (!std::all_of(list.begin(), list.end(), featureKnown)) return false;
    }
    const pugi::xml_attribute language = node.attribute("systemLanguage");
    return !language || languageFits(language.value());
}

}  // namespace lidwright::svg
