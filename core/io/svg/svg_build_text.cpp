#include "core/io/svg/svg_builder.h"
#include "core/io/svg/svg_font.h"
#include "core/io/svg/svg_letters.h"
#include "core/io/svg/svg_scan.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <deque>
#include <limits>
#include <utility>

namespace lidwright::svg {

namespace {

/// Sizes of letters, px, between which fonts can be asked for; what lies outside shows nothing or all.
constexpr double kSmallestLetters = 1e-9, kLargestLetters = 1e9;

constexpr std::array<std::string_view, 5> kUnknownSpans{"textPath", "tref", "altGlyph", "glyphRef", "font"};

Outline moved(const Outline& outline, Point by)
{
    Outline out = outline;
    for (SubPath& part : out.parts) {
        part.start = part.start + by;
        for (Segment& s : part.segments) {
            s.control1 = s.control1 + by;
            s.control2 = s.control2 + by;
            s.end = s.end + by;
        }
    }
    return out;
}

bool turnsLetters(const pugi::xml_node& node)
{
    const std::vector<double> turns = numberList(attributeOf(node, "rotate"));
    return std::any_of(turns.begin(), turns.end(), [](double turn) { return turn != 0; });
}

double baselineDrop(Baseline baseline, const TextShape& shape)
{
    // CSS Inline 3, section 4.2 ("Baseline Metrics").
    switch (baseline) {
        case Baseline::Middle:
            return shape.xHeight / 2;
        case Baseline::Central:
            return (shape.ascent - shape.descent) / 2;
        case Baseline::Top:
            return shape.ascent;
        case Baseline::Bottom:
            return -shape.descent;
        case Baseline::Alphabetic:
        case Baseline::Other:
            break;
    }
    return 0;
}

}  // namespace

/// Letters in one style.
struct SceneBuilder::TextSpan {
    Style style;
    double rise = 0;  ///< of the base line, user units
    double opacity = 1;
};

/// A text element taken apart.
struct SceneBuilder::TextParts {
    Letters letters;
    std::deque<TextSpan> spans;
    bool plain = true;  ///< nothing in it that is not followed
};

/// Words that stand together.
struct SceneBuilder::TextPiece {
    const TextSpan* span = nullptr;
    const TextShape* shape = nullptr;
    Point at;
    bool beginsChunk = false;
};

/// Draws a text element by its letters' outlines; false where that is not possible, and nothing is drawn.
bool SceneBuilder::text(const pugi::xml_node& node, const Style& style, const Place& place)
{
    if (!m_outlineText) return false;
    TextParts parts;
    gatherText(node, style, {0, 1}, place, parts);
    parts.letters.finish();
    if (m_budget.broken()) return true;
    if (!parts.plain || !parts.letters.leftToRight()) return false;
    std::vector<TextPiece> pieces;
    if (!layPieces(parts, pieces)) return m_budget.broken();
    anchorChunks(pieces);

    bool painted = false;
    std::vector<std::string> fonts;
    for (const TextPiece& piece : pieces) {
        const std::size_t before = m_scene.items.size();
        paintPiece(piece, place);
        if (m_budget.broken()) return true;
        painted |= m_scene.items.size() > before;
        // A blank shows no font.
        if (piece.shape->letters.empty()) continue;
        fonts.insert(fonts.end(), piece.shape->fonts.begin(), piece.shape->fonts.end());
    }
    if (painted) m_notes.addDrawnText(parts.letters.lines(), fonts);
    return true;
}

void SceneBuilder::gatherText(const pugi::xml_node& node, const Style& style, TextLevel level,
                              const Place& place, TextParts& parts)
{
    const bool preserve = preservesSpace(node);
    const std::size_t span = parts.spans.size();
    parts.spans.push_back({style, level.rise, level.opacity});
    parts.letters.open(node, lengths(style, place));
    const bool upright = style.leftToRightLines && style.leftToRightLetters;
    if (turnsLetters(node) || !upright || style.baseline == Baseline::Other) parts.plain = false;
    Place inside = place;
    ++inside.depth;
    for (const pugi::xml_node child : node.children()) {
        if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata) {
            parts.letters.add(child.value(), preserve, span);
            continue;
        }
        const std::string_view name = svgName(child);
        if (std::find(kUnknownSpans.begin(), kUnknownSpans.end(), name) != kUnknownSpans.end()) {
            parts.plain = false;
        }
        if (name != "tspan" && name != "a") continue;
        if (!m_budget.elements(1) || !m_budget.depth(inside.depth)) break;
        const Style own = styleOf(child, style, m_sheet, m_budget);
        if (!own.displayed) continue;
        LengthContext ofShift = lengths(own, place);
        ofShift.fontSize = style.fontSize.value;
        const TextLevel next{level.rise + ofShift.user(own.baselineShift, Axis::Y),
                             level.opacity * own.opacity};
        gatherText(child, own, next, inside, parts);
        if (m_budget.broken()) break;
    }
    parts.letters.close();
}

/// Splits the letters where a place is given or the style changes, and lets the words follow one another.
bool SceneBuilder::layPieces(const TextParts& parts, std::vector<TextPiece>& pieces)
{
    const std::vector<Letter>& letters = parts.letters.all();
    if (!m_budget.points(letters.size())) return false;
    Point pen;
    for (std::size_t first = 0, last = 0; first < letters.size(); first = last) {
        const Letter& begin = letters[first];
        last = first + 1;
        const auto goesOn = [&](const Letter& next) {
            return next.span == begin.span && !next.x && !next.y && next.dx == 0 && next.dy == 0;
        };
        while (last < letters.size() && goesOn(letters[last]))
            ++last;
        const TextSpan& span = parts.spans[begin.span];
        const TextShape* shape = outlined(parts.letters.words(first, last), span.style);
        if (!shape) return false;
        pen = Point{begin.x.value_or(pen.x) + begin.dx, begin.y.value_or(pen.y) + begin.dy};
        const double drop = baselineDrop(span.style.baseline, *shape) - span.rise;
        pieces.push_back({&span, shape, {pen.x, pen.y + drop}, first == 0 || begin.x || begin.y});
        pen.x += shape->advance;
    }
    return true;
}

/// Moves every chunk so that its anchor comes to its place (SVG 2, section 11.5, "Apply anchoring").
void SceneBuilder::anchorChunks(std::vector<TextPiece>& pieces) const
{
    for (std::size_t first = 0, last = 0; first < pieces.size(); first = last) {
        double low = std::numeric_limits<double>::infinity(), high = -low;
        for (last = first; last < pieces.size() && (last == first || !pieces[last].beginsChunk); ++last) {
            const double end = pieces[last].at.x + pieces[last].shape->advance;
            low = std::min({low, pieces[last].at.x, end});
            high = std::max({high, pieces[last].at.x, end});
        }
        const TextAnchor anchor = pieces[first].span->style.textAnchor;
        const double held = anchor == TextAnchor::Start ? low
                            : anchor == TextAnchor::End ? high
                                                        : (low + high) / 2;
        const double shift = pieces[first].at.x - held;
        for (std::size_t i = first; i < last; ++i)
            pieces[i].at.x += shift;
    }
}

/// The outlines of the words; null where there are none to be had.
const TextShape* SceneBuilder::outlined(std::string words, const Style& style)
{
    const double size = style.fontSize.value;
    static const TextShape nothing;
    if (size == 0) return &nothing;
    TextRun run;
    run.words = std::move(words);
    run.families = parseFamilies(style.fontFamily).value_or(std::vector<std::string>());
    run.size = size;
    run.weight = style.fontWeight;
    run.stretch = style.fontStretch;
    run.italic = style.italic;
    run.smallCapitals = style.smallCapitals;
    run.letterSpacing = style.letterSpacing.value;
    run.wordSpacing = style.wordSpacing.value;
    run.underline = style.underline;
    run.overline = style.overline;
    run.strikeOut = style.strikeOut;
    const auto ownFont = [&](const std::string& family) { return m_ownFonts.count(lowered(family)) != 0; };
    if (std::any_of(run.families.begin(), run.families.end(), ownFont)) return nullptr;
    if (!(size >= kSmallestLetters && size <= kLargestLetters)) return nullptr;

    auto known = m_textShapes.find(run);
    if (known == m_textShapes.end()) {
        if (!m_budget.textRuns(1)) return nullptr;
        known = m_textShapes.emplace(run, m_outlineText(run)).first;
    }
    return known->second ? &*known->second : nullptr;
}

void SceneBuilder::paintPiece(const TextPiece& piece, const Place& place)
{
    Style style = piece.span->style;
    style.fillRule = style.clipRule = FillRule::NonZero;
    Place inside = place;
    inside.style = &style;
    inside.opacity *= piece.span->opacity;
    if (m_purpose == Purpose::Paint && inside.opacity == 0) return;
    for (const Outline* outline : {&piece.shape->lines, &piece.shape->letters}) {
        if (!outline->empty()) outlinedShape(moved(*outline, piece.at), {}, false, style, inside);
    }
}

}  // namespace lidwright::svg
