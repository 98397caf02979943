#include "core/io/svg/svg_font.h"

#include "core/io/svg/svg_scan.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

namespace lidwright::svg {

namespace {

/// Commonest relation of neighbouring sizes (CSS 2.1, section 15.7: about 1.2).
constexpr double kSizeStep = 1.2;

/// CSS identifiers, without escapes: no digit in front, nor after one hyphen.
bool isIdentifier(std::string_view word)
{
    const auto letter = [](char c) {
        return std::isalpha(static_cast<unsigned char>(c)) != 0 || c == '_' || (c & 0x80) != 0;
    };
    const auto inner = [&](char c) {
        return letter(c) || c == '-' || std::isdigit(static_cast<unsigned char>(c)) != 0;
    };
    const std::string_view rest = startsWith(word, "-") ? word.substr(1) : word;
    return !rest.empty() && (letter(rest.front()) || rest.front() == '-') &&
           std::all_of(rest.begin(), rest.end(), inner);
}

std::optional<std::string> unquotedFamily(std::string_view text)
{
    std::string name;
    for (const std::string_view word : words(text)) {
        if (!isIdentifier(word)) return std::nullopt;
        name += (name.empty() ? "" : " ") + std::string(word);
    }
    return name.empty() ? std::nullopt : std::optional(name);
}

template <typename Value, std::size_t N>
bool pick(Value& value, std::string_view text,
          const std::array<std::pair<std::string_view, Value>, N>& choices)
{
    const auto found =
        std::find_if(choices.begin(), choices.end(), [&](const auto& row) { return row.first == text; });
    if (found == choices.end()) return false;
    value = found->second;
    return true;
}

/// One of the words in front of the size of a font shorthand.
bool setFontWord(Style& style, std::string_view word)
{
    return setFontStyle(style, word) || setFontVariant(style, word) || setFontWeight(style, word) ||
           setFontStretch(style, word);
}

}  // namespace

std::optional<std::vector<std::string>> parseFamilies(std::string_view text)
{
    std::vector<std::string> out;
    text = trimmed(text);
    while (true) {
        const char quote = text.empty() ? '\0' : text.front();
        if (quote == '"' || quote == '\'') {
            const std::size_t end = text.find(quote, 1);
            if (end == text.npos || end == 1) return std::nullopt;
            out.emplace_back(text.substr(1, end - 1));
            text = trimmed(text.substr(end + 1));
            if (!text.empty() && text.front() != ',') return std::nullopt;
        } else {
            const std::size_t end = std::min(text.find(','), text.size());
            const auto name = unquotedFamily(text.substr(0, end));
            if (!name) return std::nullopt;
            out.push_back(*name);
            text.remove_prefix(end);
        }
        if (text.empty()) return out;
        text = trimmed(text.substr(1));
    }
}

bool setFontFamily(Style& style, std::string_view text)
{
    if (!parseFamilies(text)) return false;
    style.fontFamily = std::string(text);
    return true;
}

bool setFontSize(Style& style, std::string_view text)
{
    // CSS Fonts 3, section 3.5: the scale of the size words about medium = 16 px.
    constexpr std::array<std::pair<std::string_view, Length>, 9> kWords{
        {{"xx-small", {9.6, Unit::User}},
         {"x-small", {12, Unit::User}},
         {"small", {14.2, Unit::User}},
         {"medium", {16, Unit::User}},
         {"large", {19.2, Unit::User}},
         {"x-large", {24, Unit::User}},
         {"xx-large", {32, Unit::User}},
         {"larger", {kSizeStep, Unit::Em}},
         {"smaller", {1 / kSizeStep, Unit::Em}}}};
    if (pick(style.fontSize, text, kWords)) return true;
    const auto length = parseLength(text);
    if (!length || length->value < 0) return false;
    style.fontSize = *length;
    return true;
}

bool setFontWeight(Style& style, std::string_view text)
{
    if (text == "bolder" || text == "lighter") {
        // CSS Fonts 3, section 3.2.
        const int w = style.fontWeight;
        style.fontWeight = text == "bolder" ? (w < 350   ? 400
                                               : w < 550 ? 700
                                                         : 900)
                                            : (w < 550   ? 100
                                               : w < 750 ? 400
                                                         : 700);
        return true;
    }
    constexpr std::array<std::pair<std::string_view, int>, 2> kWords{{{"normal", 400}, {"bold", 700}}};
    if (pick(style.fontWeight, text, kWords)) return true;
    Scanner scan(text);
    const auto value = scan.number();
    if (!value || !scan.atEnd() || !(*value >= 1 && *value <= 1000)) return false;
    style.fontWeight = static_cast<int>(*value);
    return true;
}

bool setFontStretch(Style& style, std::string_view text)
{
    // CSS Fonts 4, section 2.3.
    constexpr std::array<std::pair<std::string_view, double>, 9> kWords{{{"normal", 100},
                                                                         {"ultra-condensed", 50},
                                                                         {"extra-condensed", 62.5},
                                                                         {"condensed", 75},
                                                                         {"semi-condensed", 87.5},
                                                                         {"semi-expanded", 112.5},
                                                                         {"expanded", 125},
                                                                         {"extra-expanded", 150},
                                                                         {"ultra-expanded", 200}}};
    if (pick(style.fontStretch, text, kWords)) return true;
    const auto share = parseLength(text);
    if (!share || share->unit != Unit::Percent || !(share->value >= 50 && share->value <= 200)) return false;
    style.fontStretch = share->value;
    return true;
}

bool setFontStyle(Style& style, std::string_view text)
{
    constexpr std::array<std::pair<std::string_view, bool>, 3> kWords{
        {{"normal", false}, {"italic", true}, {"oblique", true}}};
    return pick(style.italic, text, kWords);
}

bool setFontVariant(Style& style, std::string_view text)
{
    constexpr std::array<std::pair<std::string_view, bool>, 2> kWords{
        {{"normal", false}, {"small-caps", true}}};
    return pick(style.smallCapitals, text, kWords);
}

bool setSpacing(Length& spacing, std::string_view text)
{
    const auto length = text == "normal" ? Length{} : parseLength(text);
    if (length) spacing = *length;
    return length.has_value();
}

bool setTextAnchor(Style& style, std::string_view text)
{
    constexpr std::array<std::pair<std::string_view, TextAnchor>, 3> kWords{
        {{"start", TextAnchor::Start}, {"middle", TextAnchor::Middle}, {"end", TextAnchor::End}}};
    return pick(style.textAnchor, text, kWords);
}

bool setWritingMode(Style& style, std::string_view text)
{
    constexpr std::array<std::pair<std::string_view, bool>, 11> kWords{{{"lr-tb", true},
                                                                        {"lr", true},
                                                                        {"horizontal-tb", true},
                                                                        {"rl-tb", false},
                                                                        {"rl", false},
                                                                        {"tb-rl", false},
                                                                        {"tb", false},
                                                                        {"vertical-rl", false},
                                                                        {"vertical-lr", false},
                                                                        {"sideways-rl", false},
                                                                        {"sideways-lr", false}}};
    return pick(style.leftToRightLines, text, kWords);
}

bool setDirection(Style& style, std::string_view text)
{
    constexpr std::array<std::pair<std::string_view, bool>, 2> kWords{{{"ltr", true}, {"rtl", false}}};
    return pick(style.leftToRightLetters, text, kWords);
}

bool setBaseline(Style& style, std::string_view text)
{
    constexpr std::array<std::pair<std::string_view, Baseline>, 16> kWords{
        {{"auto", Baseline::Alphabetic},
         {"alphabetic", Baseline::Alphabetic},
         {"baseline", Baseline::Alphabetic},
         {"use-script", Baseline::Alphabetic},
         {"no-change", Baseline::Alphabetic},
         {"reset-size", Baseline::Alphabetic},
         {"middle", Baseline::Middle},
         {"central", Baseline::Central},
         {"text-before-edge", Baseline::Top},
         {"before-edge", Baseline::Top},
         {"text-top", Baseline::Top},
         {"text-after-edge", Baseline::Bottom},
         {"after-edge", Baseline::Bottom},
         {"text-bottom", Baseline::Bottom},
         {"hanging", Baseline::Other},
         {"mathematical", Baseline::Other}}};
    return pick(style.baseline, text, kWords);
}

bool setBaselineShift(Style& style, std::string_view text)
{
    // How far sub and super go is left to the viewer; these are the usual parts of an em.
    constexpr std::array<std::pair<std::string_view, Length>, 3> kWords{
        {{"baseline", {0, Unit::User}}, {"sub", {-0.2, Unit::Em}}, {"super", {0.4, Unit::Em}}}};
    if (pick(style.baselineShift, text, kWords)) return true;
    auto length = parseLength(text);
    if (!length) return false;
    // Parts of the line height, which is the font size here (SVG 1.1, section 10.9.2).
    if (length->unit == Unit::Percent) length = Length{length->value / 100, Unit::Em};
    style.baselineShift = *length;
    return true;
}

bool setTextDecoration(Style& style, std::string_view text)
{
    if (text == "none") return true;
    bool any = false;
    for (const std::string_view word : words(text)) {
        // What stands around goes on through all that is inside (CSS 2.1, section 16.3.1).
        bool* line = word == "underline"      ? &style.underline
                     : word == "overline"     ? &style.overline
                     : word == "line-through" ? &style.strikeOut
                                              : nullptr;
        if (line) *line = any = true;
    }
    return any;
}

bool setFont(Style& style, std::string_view text)
{
    Style made = style;
    copyFont(made, Style{});
    std::size_t begin = 0;
    while (true) {
        while (begin < text.size() && isSpace(text[begin]))
            ++begin;
        std::size_t end = begin;
        while (end < text.size() && !isSpace(text[end]))
            ++end;
        const std::string_view word = text.substr(begin, end - begin);
        if (word.empty()) return false;
        begin = end;
        // A number alone is a weight in front of the size; only SVG would take it for a size without unit.
        if (setFontWord(made, word)) continue;
        if (!setFontSize(made, word.substr(0, word.find('/')))) return false;
        // "12px / 14px Serif": the line height does not matter to lines that the drawing itself places.
        std::string_view rest = trimmed(text.substr(begin));
        const bool slashBehind = word.back() == '/', slashAlone = startsWith(rest, "/");
        if (slashAlone) rest = trimmed(rest.substr(1));
        if (slashBehind || slashAlone) {
            std::size_t height = 0;
            while (height < rest.size() && !isSpace(rest[height]))
                ++height;
            rest = trimmed(rest.substr(height));
        }
        if (!setFontFamily(made, rest)) return false;
        style = made;
        return true;
    }
}

void copyFont(Style& to, const Style& from)
{
    to.fontFamily = from.fontFamily;
    to.fontSize = from.fontSize;
    to.fontWeight = from.fontWeight;
    to.fontStretch = from.fontStretch;
    to.italic = from.italic;
    to.smallCapitals = from.smallCapitals;
}

}  // namespace lidwright::svg
