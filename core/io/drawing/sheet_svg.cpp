#include "core/io/drawing/sheet_svg.h"

#include "core/drawing/fill_pattern.h"
#include "core/drawing/lettering.h"

#include <charconv>
#include <cstdint>
#include <map>
#include <set>

namespace lidwright {
namespace {

constexpr const char* kInk = "#22201d";
constexpr const char* kPrintedInk = "#000000";

/// Tint of an area and the colour of the lines over it; own choice, light enough that dimensions over it keep
/// a contrast above 7:1 (dark cut-outs aside).
struct Tint {
    const char* area;
    const char* lines;
};
/// The same in black and greys.
Tint printedTint(FillKind kind)
{
    constexpr const char* kHatch = "#707070";
    switch (kind) {
        case FillKind::Paper:
            return {"", ""};
        case FillKind::CutThrough:
            return {"#e6e6e6", ""};
        case FillKind::WoodEnd:
        case FillKind::Engraved:
        case FillKind::Backing:
        case FillKind::Warning:
            return {"#ffffff", kHatch};
        default:
            return {"#ffffff", ""};
    }
}

Tint tintOf(FillKind kind)
{
    switch (kind) {
        case FillKind::Paper:
            return {"", ""};
        case FillKind::Wood:
        case FillKind::WoodAcross:
            return {"#f6ead3", "#dcc39a"};
        case FillKind::WoodEnd:
            return {"#f0dfc0", "#a88d62"};
        case FillKind::CutThrough:
            return {"#37322c", ""};
        case FillKind::Engraved:
            return {"#ecd9b4", "#8a6f48"};
        case FillKind::Bridge:
            return {"#c9a274", ""};
        case FillKind::Fretboard:
            return {"#d9b98c", ""};
        case FillKind::Backing:
            return {"#ece8df", "#b9b2a4"};
        case FillKind::Block:
            return {"#e8d2a6", ""};
        case FillKind::Warning:
            return {"#f8d9cc", "#c0462a"};
    }
    return {"", ""};
}

class SvgWriter {
public:
    SvgWriter(const Sheet& sheet, const SheetSvgOptions& options)
        : m_sheet(sheet), m_options(options), m_paper(sheet.paper > 0 ? sheet.paper : 1)
    {
        m_box = sheet.extent;
        if (m_box.empty()) m_box = {0, 0, 1, 1};
    }

    std::string write()
    {
        head();
        std::string layer;
        bool open = false;
        for (const Element& e : m_sheet.elements) {
            if (!open || e.layer != layer) {
                if (open) m_out += "</g>\n";
                layer = e.layer;
                openLayer(layer);
                open = true;
            }
            element(e);
        }
        if (open) m_out += "</g>\n";
        m_out += "</svg>\n";
        return std::move(m_out);
    }

private:
    const Sheet& m_sheet;
    const SheetSvgOptions& m_options;
    double m_paper;
    Bounds m_box;
    std::string m_out;
    std::set<std::string> m_ids{"paper"};
    std::map<std::string, int> m_times;

    const char* ink() const { return m_options.printed ? kPrintedInk : kInk; }

    void number(double value)
    {
        constexpr double kPerMillimetre = 1000;
        // Beyond this no sheet is drawn; it also keeps the whole number in range.
        constexpr double kMost = 1e9;
        const double held = value >= -kMost && value <= kMost ? value : 0;
        auto thousandths = static_cast<std::int64_t>(std::llround(held * kPerMillimetre));
        if (thousandths < 0) m_out += '-';
        if (thousandths < 0) thousandths = -thousandths;
        char text[32];
        const auto whole = std::to_chars(text, text + sizeof text, thousandths / 1000);
        std::int64_t rest = thousandths % 1000;
        if (rest == 0 || thousandths >= 1000) m_out.append(text, whole.ptr);
        if (rest == 0) return;
        m_out += '.';
        for (std::int64_t place = 100; rest > 0; place /= 10) {
            m_out += static_cast<char>('0' + rest / place);
            rest %= place;
        }
    }
    void point(Point p)
    {
        number(p.x - m_box.minX);
        m_out += ' ';
        number(m_box.maxY - p.y);
    }
    void attribute(const char* name, double value)
    {
        m_out += ' ';
        m_out += name;
        m_out += "=\"";
        number(value);
        m_out += '"';
    }

    /// Appends text as XML character data, well formed whatever the bytes are.
    void escaped(const std::string& utf8)
    {
        for (std::size_t i = 0; i < utf8.size();) {
            const std::size_t n = sequenceLength(utf8, i);
            const auto c = static_cast<unsigned char>(utf8[i]);
            if (n == 0 || (n == 1 && c < 0x20)) {
                m_out += "\xEF\xBF\xBD";
                i += 1;
                continue;
            }
            if (c == '&')
                m_out += "&amp;";
            else if (c == '<')
                m_out += "&lt;";
            else if (c == '>')
                m_out += "&gt;";
            else if (c == '"')
                m_out += "&quot;";
            else
                m_out.append(utf8, i, n);
            i += n;
        }
    }
    /// Length of the UTF-8 sequence at i, 0 where it is not one that XML may hold.
    static std::size_t sequenceLength(const std::string& s, std::size_t i)
    {
        const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(s[k]); };
        const unsigned char c = byte(i);
        if (c < 0x80) return 1;
        const std::size_t n = c >= 0xF0 && c < 0xF5   ? 4
                              : c >= 0xE0 && c < 0xF0 ? 3
                              : c >= 0xC2 && c < 0xE0 ? 2
                                                      : 0;
        if (n == 0 || i + n > s.size()) return 0;
        std::uint32_t code = c & (0x7FU >> n);
        for (std::size_t k = 1; k < n; ++k) {
            if ((byte(i + k) & 0xC0U) != 0x80U) return 0;
            code = (code << 6U) | (byte(i + k) & 0x3FU);
        }
        const bool overlong = (n == 3 && code < 0x800) || (n == 4 && code < 0x10000);
        const bool barred =
            (code >= 0xD800 && code < 0xE000) || code > 0x10FFFF || code == 0xFFFE || code == 0xFFFF;
        return overlong || barred ? 0 : n;
    }

    void head()
    {
        m_out +=
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"";
        number(m_box.width());
        m_out += "mm\" height=\"";
        number(m_box.height());
        m_out += "mm\" viewBox=\"0 0 ";
        number(m_box.width());
        m_out += ' ';
        number(m_box.height());
        m_out +=
            "\" font-family=\"sans-serif\" fill=\"none\" stroke-linecap=\"butt\" "
            "stroke-linejoin=\"round\">\n<title>";
        escaped(m_sheet.title);
        m_out += "</title>\n";
        if (m_options.paper.empty() || !m_options.tinted) return;
        m_out += "<rect id=\"" + m_options.idPrefix + "paper\"";
        attribute("width", m_box.width());
        attribute("height", m_box.height());
        paint("fill", m_options.paper);
        m_out += "/>\n";
    }

    void openLayer(const std::string& name)
    {
        std::string id;
        for (const char c : name) {
            const bool plain =
                (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
            id += plain ? c : '-';
        }
        if (id.empty() || !((id[0] >= 'a' && id[0] <= 'z') || (id[0] >= 'A' && id[0] <= 'Z')))
            id = "layer-" + id;
        // A numbered name might itself be a layer's: go on until it is new.
        std::string unique = id;
        for (int& times = m_times[id]; !m_ids.insert(unique).second;)
            unique = id + "-" + std::to_string(++times + 1);
        m_out += "<g id=\"" + m_options.idPrefix + unique + "\">\n";
    }

    void paint(const char* name, const std::string& colour)
    {
        m_out += ' ';
        m_out += name;
        m_out += "=\"";
        escaped(colour);
        m_out += '"';
    }

    void path(const std::vector<Point>& points, bool closed)
    {
        m_out += " d=\"M";
        for (std::size_t i = 0; i < points.size(); ++i) {
            if (i == 1) m_out += 'L';
            if (i > 1) m_out += ' ';
            point(points[i]);
        }
        m_out += closed ? "Z\"" : "\"";
    }

    void element(const Element& e)
    {
        if (const auto* s = std::get_if<Stroke>(&e.what)) return stroke(*s);
        if (const auto* f = std::get_if<Fill>(&e.what)) return fill(*f);
        if (const auto* t = std::get_if<Text>(&e.what)) return text(*t);
        for (const Element& part : dimensionElements(std::get<Dimension>(e.what), e.part, m_paper))
            element(part);
    }

    void stroke(const Stroke& s)
    {
        if (s.points.size() < 2) return;
        m_out += "<path";
        paint("stroke", ink());
        attribute("stroke-width", lineWidth(s.kind) * m_paper);
        const std::vector<double> dashes = dashPattern(s.kind);
        if (!dashes.empty()) {
            m_out += " stroke-dasharray=\"";
            for (std::size_t i = 0; i < dashes.size(); ++i) {
                if (i > 0) m_out += ' ';
                number(dashes[i] * m_paper);
            }
            m_out += '"';
        }
        path(s.points, s.closed);
        m_out += "/>\n";
    }

    void fill(const Fill& f)
    {
        if (!m_options.tinted || f.ring.size() < 3) return;
        const Tint tint = m_options.printed ? printedTint(f.kind) : tintOf(f.kind);
        const std::string area = f.kind == FillKind::Paper ? m_options.paper : tint.area;
        if (area.empty()) return;
        m_out += "<path";
        paint("fill", area);
        path(f.ring, true);
        m_out += "/>\n";
        if (*tint.lines == '\0') return;
        const std::vector<Polyline> lines = fillPattern(f.ring, f.kind, m_paper);
        if (lines.empty()) return;
        m_out += "<path";
        paint("stroke", tint.lines);
        attribute("stroke-width", patternLineWidth(f.kind) * m_paper);
        m_out += " d=\"";
        for (const Polyline& line : lines)
            for (std::size_t i = 0; i < line.size(); ++i) {
                m_out += i == 0 ? 'M' : i == 1 ? 'L' : ' ';
                point(line[i]);
            }
        m_out += "\"/>\n";
    }

    void text(const Text& t)
    {
        if (t.boxed && m_options.tinted && !m_options.paper.empty()) {
            m_out += "<path";
            paint("fill", m_options.paper);
            path(textOutline(t, m_paper), true);
            m_out += "/>\n";
        }
        m_out += "<text";
        paint("fill", ink());
        attribute("font-size", t.height / kCapitalShare * m_paper);
        if (t.anchor != Anchor::Left) paint("text-anchor", t.anchor == Anchor::Middle ? "middle" : "end");
        if (t.angle == 0) {
            attribute("x", t.at.x - m_box.minX);
            attribute("y", m_box.maxY - t.at.y);
        } else {
            m_out += " transform=\"translate(";
            point(t.at);
            m_out += ") rotate(";
            number(-t.angle);
            m_out += ")\"";
        }
        m_out += '>';
        escaped(t.words);
        m_out += "</text>\n";
    }
};

}  // namespace

std::string writeSheetSvg(const Sheet& sheet, const SheetSvgOptions& options)
{
    return SvgWriter(sheet, options).write();
}

}  // namespace lidwright
