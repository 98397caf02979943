#include "core/io/dxf/dxf_notes.h"

#include <array>

namespace lidwright::dxf {
namespace {

constexpr std::size_t kShownDetails = 8;
constexpr std::size_t kKeptDetails = 100;

struct Wording {
    Issue issue;
    std::string_view one;
    std::string_view many;  ///< %n is the number
    std::string_view rest;  ///< what was done, and what to do
};

constexpr std::array kWordings{
    Wording{Issue::Kind, "1 thing that is no line was left out", "%n things that are no lines were left out",
            "explode them or turn them into polylines in the drawing program"},
    Wording{Issue::FitPoints, "1 spline is given by fit points only and was left out",
            "%n splines are given by fit points only and were left out",
            "save it with control points, or turn it into a polyline"},
    Wording{Issue::Broken, "1 line has numbers that cannot be read or go beyond all bounds",
            "%n lines have numbers that cannot be read or go beyond all bounds", "they were left out"},
    Wording{Issue::NoBlock, "1 insert names a block that is not in the file",
            "%n inserts name a block that is not in the file", "bind outside references before saving"},
    Wording{Issue::Cycle, "1 block contains itself and was left out there",
            "%n times a block contains itself and was left out there", "explode it in the drawing program"},
    Wording{Issue::TooDeep, "1 block lies in more than 16 others and was left out",
            "%n blocks lie in more than 16 others and were left out", "explode the outer ones"},
    Wording{Issue::Hidden, "1 line on a layer that is off or frozen was left out",
            "%n lines on layers that are off or frozen were left out",
            "switch the layer on if it belongs to it"},
    Wording{Issue::Paper, "1 thing in paper space was left out", "%n things in paper space were left out",
            "only the model is read"},
    Wording{Issue::Tilted, "1 line does not lie in the drawing's plane",
            "%n lines do not lie in the drawing's plane", "they were taken as seen from above"},
    Wording{Issue::Doubled, "1 line is drawn twice", "%n lines are drawn twice", "each was taken once"},
    Wording{Issue::CutOff, "The file breaks off before its end", "The file breaks off before its end",
            "what may have followed is missing"},
};

std::string sentence(const Wording& wording, std::size_t count,
                     const std::map<std::string, std::size_t>& details)
{
    std::string text(count == 1 ? wording.one : wording.many);
    const std::size_t mark = text.find("%n");
    if (mark != std::string::npos) text.replace(mark, 2, std::to_string(count));
    std::size_t shown = 0;
    for (const auto& [detail, times] : details) {
        text += shown == 0 ? " (" : ", ";
        if (shown++ == kShownDetails) {
            text += "...";
            break;
        }
        text += std::to_string(times) + ' ';
        text += detail;
    }
    if (shown > 0) text += ')';
    return text + ": " + std::string(wording.rest) + ".";
}

}  // namespace

void Notes::add(Issue issue, std::string_view detail)
{
    Entry& entry = m_entries[issue];
    ++entry.count;
    if (detail.empty()) return;
    if (entry.details.size() < kKeptDetails || entry.details.count(std::string(detail)) != 0)
        ++entry.details[std::string(detail)];
}

std::vector<std::string> Notes::sentences() const
{
    std::vector<std::string> out;
    for (const Wording& wording : kWordings) {
        const auto entry = m_entries.find(wording.issue);
        if (entry != m_entries.end())
            out.push_back(sentence(wording, entry->second.count, entry->second.details));
    }
    out.insert(out.end(), m_said.begin(), m_said.end());
    return out;
}

}  // namespace lidwright::dxf
