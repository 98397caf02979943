#include "core/io/cut/cut_svg.h"

#include "core/base/length_text.h"
#include "core/drawing/stroke_font.h"

#include <cstdint>

namespace lidwright {
namespace {

std::string number(double mm)
{
    constexpr int kDecimals = 4;
    return decimalNumber(mm, kDecimals);
}

void appendUtf8(std::string& out, char32_t code)
{
    const auto c = static_cast<std::uint32_t>(code);
    const auto byte = [&](std::uint32_t bits) { out += static_cast<char>(bits); };
    if (c < 0x80) return byte(c);
    if (c < 0x800) {
        byte(0xC0U | (c >> 6U));
    } else {
        if (c < 0x10000) {
            byte(0xE0U | (c >> 12U));
        } else {
            byte(0xF0U | (c >> 18U));
            byte(0x80U | ((c >> 12U) & 0x3FU));
        }
        byte(0x80U | ((c >> 6U) & 0x3FU));
    }
    byte(0x80U | (c & 0x3FU));
}

/// Character data that is well formed whatever the bytes are.
std::string escaped(const std::string& utf8)
{
    std::string out;
    for (char32_t code : codePoints(utf8)) {
        if (code < 0x20 || code == 0xFFFE || code == 0xFFFF) code = 0xFFFD;
        if (code == '&')
            out += "&amp;";
        else if (code == '<')
            out += "&lt;";
        else if (code == '>')
            out += "&gt;";
        else if (code == '"')
            out += "&quot;";
        else
            appendUtf8(out, code);
    }
    return out;
}

class CutSvgWriter {
public:
    explicit CutSvgWriter(const CutDrawing& drawing) : m_drawing(drawing) {}

    std::string write()
    {
        const std::string width = number(m_drawing.extent.width());
        const std::string height = number(m_drawing.extent.height());
        m_out +=
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" +
            width + "mm\" height=\"" + height + "mm\" viewBox=\"0 0 " + width + ' ' + height +
            "\">\n<title>" + escaped(m_drawing.title) + "</title>\n<desc>";
        for (const std::string& note : m_drawing.notes)
            m_out += escaped(note) + ". ";
        m_out += "</desc>\n";
        for (const CutLayer& layer : m_drawing.layers)
            writeLayer(layer);
        m_out += "</svg>\n";
        return std::move(m_out);
    }

private:
    const CutDrawing& m_drawing;
    std::string m_out;

    std::string x(double v) const { return number(v - m_drawing.extent.minX); }
    std::string y(double v) const { return number(m_drawing.extent.maxY - v); }

    std::string data(const CutPath& path) const
    {
        std::string d = "M";
        for (std::size_t i = 0; i < path.points.size(); ++i)
            d += (i == 0 ? "" : i == 1 ? "L" : " ") + x(path.points[i].x) + ' ' + y(path.points[i].y);
        return path.closed ? d + "Z" : d;
    }

    void writeLayer(const CutLayer& layer)
    {
        m_out += "<g id=\"" + layer.name + "\"";
        if (layer.filled)
            m_out += " fill=\"" + layer.colour + "\" fill-rule=\"evenodd\" stroke=\"none\">\n";
        else
            m_out += " fill=\"none\" stroke=\"" + layer.colour + "\" stroke-width=\"" +
                     number(layer.lineWidth) + "\" stroke-linejoin=\"round\">\n";
        std::string areas;
        for (const CutPath& path : m_drawing.paths) {
            if (path.operation != layer.operation) continue;
            if (path.radius > 0)
                m_out += "<circle cx=\"" + x(path.points.front().x) + "\" cy=\"" + y(path.points.front().y) +
                         "\" r=\"" + number(path.radius) + "\"/>\n";
            else if (layer.filled)
                areas += data(path);
            else
                m_out += "<path d=\"" + data(path) + "\"/>\n";
        }
        if (!areas.empty()) m_out += "<path d=\"" + areas + "\"/>\n";
        m_out += "</g>\n";
    }
};

}  // namespace

std::string writeCutSvg(const CutDrawing& drawing)
{
    return CutSvgWriter(drawing).write();
}

}  // namespace lidwright
