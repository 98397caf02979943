#include "app/commandline/console.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdio>

namespace lidwright {

bool print(const std::string& text)
{
    return std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
}

bool print(const nlohmann::ordered_json& json)
{
    return print(jsonText(json));
}

std::string jsonText(const nlohmann::ordered_json& json)
{
    // Names come from files and may hold bytes that are no UTF-8: shown replaced, never thrown about.
    return json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

int refuse(const Error& error)
{
    remark(error.text());
    return kExitUnusable;
}

void remark(const std::string& text)
{
    std::fprintf(stderr, "lidwright: %s\n", text.c_str());
}

int finish(bool printed, int code)
{
    if (printed) return code;
    return refuse({"could not be written", "standard output", "look whether the disk is full"});
}

std::size_t characters(const std::string& text)
{
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string padded(const std::string& text, std::size_t width)
{
    const std::size_t own = characters(text);
    return text + std::string(own < width ? width - own : 1, ' ');
}

}  // namespace lidwright
