#include "core/io/build/bench_html.h"

#include "core/io/drawing/sheet_svg.h"

#include <charconv>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kStyle = R"(
@page{margin:12mm}
body{font:12pt/1.4 sans-serif;color:#000;background:#fff;max-width:186mm;margin:1em auto;padding:0 .5em}
h1{font-size:20pt;margin:0}h2{font-size:14pt;margin:1em 0 .2em}h3{font-size:12pt;margin:.8em 0 .2em}
h1,h2,h3{break-after:avoid}
section{border-top:1pt solid #000;margin-top:1em}section.together,figure,tr,.caution{break-inside:avoid}
section.page{break-before:page}
p{margin:.3em 0;white-space:pre-line}.indented{margin-left:1.5em;font-style:italic}.small{font-size:10pt}
table{border-collapse:collapse;margin:.4em 0}thead{display:table-header-group}
td,th{border:.5pt solid #000;padding:.15em .5em;text-align:left}td.number{text-align:right}
td.write{border-width:1.2pt;min-width:30mm;height:8mm}
.box{display:inline-block;width:.9em;height:.9em;border:1.2pt solid #000;margin-right:.4em}
.caution{border:1pt solid #000;border-left-width:5pt;padding:.2em .6em;margin:.4em 0}
.caution+.caution{border-top:0;margin-top:-.4em}
figure{margin:.6em 0}figure svg{display:block;width:100%;height:auto}figcaption{font-size:10pt}
@media print{body{margin:0;padding:0;max-width:none}})";

constexpr const char* kLying = R"(
@page{size:landscape}body{max-width:273mm})";

std::string escaped(const std::string& text)
{
    std::string out;
    for (const char c : text) {
        switch (c) {
            case '&':
                out += "&amp;";
                break;
            case '<':
                out += "&lt;";
                break;
            case '>':
                out += "&gt;";
                break;
            case '"':
                out += "&quot;";
                break;
            default:
                // No page may hold these, and none of them can be seen.
                if (const auto byte = static_cast<unsigned char>(c); byte >= 0x20 || c == '\n') out += c;
        }
    }
    return out;
}

class Writer {
public:
    explicit Writer(const BenchSheet& sheet) : m_sheet(sheet) {}

    std::string write()
    {
        m_out = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>" +
                escaped(m_sheet.title) + "</title>\n<style>" + kStyle + (m_sheet.lying ? kLying : "") +
                "</style>\n</head>\n<body>\n<h1>" + escaped(m_sheet.title) + "</h1>\n<p>" +
                words(m_sheet.below) + "</p>\n";
        for (const BenchSection& section : m_sheet.sections)
            add(section);
        m_out += "<p class=\"small\">" + escaped(m_sheet.footer) + "</p>\n</body>\n</html>\n";
        return std::move(m_out);
    }

private:
    std::string words(const Sentence& sentence) const { return escaped(spoken(sentence, m_sheet.style)); }

    void add(const BenchSection& section)
    {
        std::string kind;
        if (section.together) kind = "together";
        if (section.newPage) kind += kind.empty() ? "page" : " page";
        m_out +=
            "<section id=\"" + section.id + "\"" + (kind.empty() ? "" : " class=\"" + kind + "\"") + ">\n";
        if (!section.title.empty())
            m_out += std::string("<h2>") + (section.tick ? "<span class=\"box\"></span>" : "") +
                     (section.number > 0 ? std::to_string(section.number) + ". " : "") +
                     escaped(section.title) + "</h2>\n";
        for (const BenchBlock& block : section.blocks)
            std::visit([this](const auto& b) { add(b); }, block);
        m_out += "</section>\n";
    }

    void add(const BenchWords& block)
    {
        std::string lead;
        if (!block.lead.empty()) lead = "<b>" + escaped(block.lead) + "</b>";
        if (!block.name.empty()) lead += ", " + escaped(block.name);
        if (!lead.empty()) lead += block.look == BenchWords::Look::Caution ? ". " : ": ";
        const std::string said = lead + words(block.words);
        switch (block.look) {
            case BenchWords::Look::Plain:
                m_out += "<p>" + said + "</p>\n";
                break;
            case BenchWords::Look::Small:
                m_out += "<p class=\"small\">" + said + "</p>\n";
                break;
            case BenchWords::Look::Strong:
                m_out += "<p><b>" + said + "</b></p>\n";
                break;
            case BenchWords::Look::Caution:
                m_out += "<p class=\"caution\">" + said + "</p>\n";
                break;
            case BenchWords::Look::Indented:
                m_out += "<p class=\"indented\">" + said + "</p>\n";
                break;
            case BenchWords::Look::Heading:
                m_out += "<h3>" + said + "</h3>\n";
                break;
        }
    }

    void add(const BenchTable& table)
    {
        m_out += "<table>\n";
        if (!table.head.empty()) {
            m_out += "<thead><tr>";
            for (const BenchCell& cell : table.head)
                m_out += "<th>" + words(cell.words) + "</th>";
            m_out += "</tr></thead>\n";
        }
        m_out += "<tbody>\n";
        for (const auto& row : table.rows) {
            m_out += "<tr>";
            for (const BenchCell& cell : row) {
                const std::string said = words(cell.words);
                m_out += cell.write ? "<td class=\"write\">" : cell.number ? "<td class=\"number\">" : "<td>";
                m_out += (said.empty() ? "&nbsp;" : said) + "</td>";
            }
            m_out += "</tr>\n";
        }
        m_out += "</tbody></table>\n";
    }

    void add(const BenchPicture& picture)
    {
        if (picture.sheet.extent.empty()) return;
        SheetSvgOptions look;
        look.paper = "#ffffff";
        look.printed = true;
        look.idPrefix = "figure-" + std::to_string(++m_figures) + "-";
        const std::string svg = writeSheetSvg(picture.sheet, look);
        // Within a page there is no prologue.
        const std::size_t at = svg.find("<svg");
        char width[32];
        const auto end = std::to_chars(width, width + sizeof width, std::ceil(picture.width()));
        m_out += "<figure style=\"width:" + std::string(width, end.ptr) + "mm;max-width:100%\">\n" +
                 svg.substr(at == std::string::npos ? 0 : at);
        if (!picture.caption.empty()) m_out += "<figcaption>" + escaped(picture.caption) + "</figcaption>\n";
        m_out += "</figure>\n";
    }

    const BenchSheet& m_sheet;
    std::string m_out;
    int m_figures = 0;
};

}  // namespace

std::string benchHtml(const BenchSheet& sheet)
{
    return Writer(sheet).write();
}

}  // namespace lidwright
