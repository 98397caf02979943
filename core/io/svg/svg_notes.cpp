#include "core/io/svg/svg_notes.h"

#include <algorithm>
#include <array>

namespace lidwright::svg {

namespace {

constexpr std::size_t kShownDetails = 3;
constexpr std::size_t kDetailBytes = 40;
constexpr std::size_t kShownFonts = 5;

struct Wording {
    Issue issue;
    std::string_view one;
    std::string_view many;  ///< %n is the number
    std::string_view rest;  ///< what was done, and what to do
};

constexpr std::array kWordings{
    Wording{Issue::Text, "1 piece of text was left out", "%n pieces of text were left out",
            "turn text into outlines (paths) in the drawing program"},
    Wording{Issue::Image, "1 picture made of pixels was left out", "%n pictures made of pixels were left out",
            "only outlines can be cut: trace it in the drawing program"},
    Wording{Issue::Filter, "1 filter (blur, shadow) was not followed",
            "%n filters (blur, shadow) were not followed", "the shapes are taken as they are without it"},
    Wording{Issue::Mask, "1 mask was not followed", "%n masks were not followed",
            "what they would hide is taken whole: use a clipping path"},
    Wording{Issue::Pattern, "1 pattern was taken as a plain area", "%n patterns were taken as plain areas",
            "turn patterns into objects in the drawing program"},
    Wording{Issue::PaintServer, "1 kind of paint is not known, the shape was left out",
            "%n paints are of a kind not known, their shapes were left out", "give them a plain colour"},
    Wording{Issue::Focus, "1 gradient shines from outside its circle",
            "%n gradients shine from outside their circles",
            "viewers differ on how much of the shape that paints: it was taken whole"},
    Wording{Issue::ForeignObject, "1 part in another language than SVG was left out",
            "%n parts in another language than SVG were left out", "turn it into outlines"},
    Wording{Issue::External, "1 reference to another file was not followed",
            "%n references to other files were not followed", "put everything into one file"},
    Wording{Issue::Broken, "1 reference leads nowhere", "%n references lead nowhere",
            "what they would paint or cut off is missing in the drawing itself"},
    Wording{Issue::Cycle, "1 part refers to itself and was left out",
            "%n parts refer to themselves and were left out", "undo the cloning in the drawing program"},
    Wording{Issue::BadPath, "1 shape breaks off at a mistake in its numbers",
            "%n shapes break off at a mistake in their numbers", "they are drawn up to there"},
    Wording{Issue::BadTransform, "1 transform or size could not be read or goes beyond all bounds",
            "%n transforms or sizes could not be read or go beyond all bounds",
            "what they move may stand wrong or be missing"},
    Wording{Issue::BadStyle, "1 style rule could not be read", "%n style rules could not be read",
            "what it paints may look different"},
    Wording{Issue::Unsized, "1 part has no usable size and was left out",
            "%n parts have no usable size and were left out", "give it a width and height"},
    Wording{Issue::Tangled, "1 shape could not be united with the rest",
            "%n shapes could not be united with the rest", "simplify it in the drawing program"},
    Wording{Issue::Outside, "1 shape reaches beyond the page and was cut off there",
            "%n shapes reach beyond the page and were cut off there",
            "make the page larger in the drawing program if they belong to the drawing"},
    Wording{Issue::SeeThrough, "1 shape is see-through and was taken as solid",
            "%n shapes are see-through and were taken as solid", "a saw knows no half tones"},
    Wording{Issue::FixedWidth, "1 line keeps its width at any zoom; it was taken as an ordinary line",
            "%n lines keep their width at any zoom; they were taken as ordinary lines", "check the width"},
    Wording{Issue::Animation, "1 animation was left out", "%n animations were left out",
            "the drawing is taken as it stands at rest"},
    Wording{Issue::Script, "1 script was left out", "%n scripts were left out",
            "what it would draw is missing"},
};

/// ` ("a", "b" ...)`, or nothing where there are no details.
std::string quoted(std::size_t count, const std::vector<std::string>& details)
{
    std::string text;
    for (std::size_t i = 0; i < details.size(); ++i)
        text += (i == 0 ? " (\"" : ", \"") + details[i] + "\"";
    if (!details.empty()) text += count > details.size() ? " ...)" : ")";
    return text;
}

std::string sentence(const Wording& wording, std::size_t count, const std::vector<std::string>& details)
{
    std::string text(count == 1 ? wording.one : wording.many);
    const std::size_t mark = text.find("%n");
    if (mark != text.npos) text.replace(mark, 2, std::to_string(count));
    return text + quoted(count, details) + ": " + std::string(wording.rest) + ".";
}

std::string drawnSentence(std::size_t count, const std::vector<std::string>& details,
                          const std::vector<std::string>& fonts)
{
    std::string names;
    for (std::size_t i = 0; i < fonts.size() && i < kShownFonts; ++i) {
        const bool last = i + 1 == fonts.size();
        names += (i == 0 ? " " : last ? " and " : ", ") + fonts[i];
    }
    if (fonts.size() > kShownFonts) names += " and " + std::to_string(fonts.size() - kShownFonts) + " more";
    const bool one = count == 1;
    return (one ? "1 piece of text" : std::to_string(count) + " pieces of text") + quoted(count, details) +
           (one ? " was" : " were") + " drawn with the font" + (fonts.size() > 1 ? "s" : "") + names +
           " of this computer: if the letters should look otherwise, turn text into outlines (paths) in the "
           "drawing program.";
}

/// The detail on one line, short, cut between characters of UTF-8.
std::string shortened(std::string_view detail)
{
    std::string out;
    for (const char c : detail) {
        const bool control = static_cast<unsigned char>(c) < 0x20 || c == 0x7f;
        if (control || c == ' ') {
            if (!out.empty() && out.back() != ' ') out += ' ';
        } else {
            out += c;
        }
        if (out.size() > kDetailBytes + 4) break;
    }
    while (!out.empty() && out.back() == ' ')
        out.pop_back();
    if (out.size() <= kDetailBytes) return out;
    std::size_t end = kDetailBytes;
    while (end > 0 && (static_cast<unsigned char>(out[end]) & 0xC0) == 0x80)
        --end;
    return out.substr(0, end) + "...";
}

}  // namespace

void Notes::Entry::add(std::string_view detail)
{
    ++count;
    if (details.size() >= kShownDetails) return;
    const std::string text = shortened(detail);
    if (text.empty()) return;
    if (std::find(details.begin(), details.end(), text) == details.end()) details.push_back(text);
}

void Notes::add(Issue issue, std::string_view detail)
{
    m_entries[issue].add(detail);
}

void Notes::addDrawnText(std::string_view words, const std::vector<std::string>& fonts)
{
    m_drawnText.add(words);
    for (const std::string& font : fonts) {
        const std::string name = shortened(font);
        if (std::find(m_fonts.begin(), m_fonts.end(), name) == m_fonts.end()) m_fonts.push_back(name);
    }
}

void Notes::say(const std::string& text)
{
    if (std::find(m_said.begin(), m_said.end(), text) == m_said.end()) m_said.push_back(text);
}

std::vector<std::string> Notes::sentences() const
{
    std::vector<std::string> out;
    for (const Wording& wording : kWordings) {
        const auto entry = m_entries.find(wording.issue);
        if (entry != m_entries.end()) {
            out.push_back(sentence(wording, entry->second.count, entry->second.details));
        }
        if (wording.issue == Issue::Text && m_drawnText.count > 0) {
            out.push_back(drawnSentence(m_drawnText.count, m_drawnText.details, m_fonts));
        }
    }
    out.insert(out.end(), m_said.begin(), m_said.end());
    return out;
}

}  // namespace lidwright::svg
