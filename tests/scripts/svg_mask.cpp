// Draws what the SVG reader takes from a file as a grey picture (PGM): how much of each pixel is covered.
// usage: svg_mask FILE.svg OUT.pgm WIDTH HEIGHT
// Text is drawn with the fonts of this computer. The picture shows the file's page, or what is painted where
// the file has no page. Standard output tells "seconds S" (of the processor), "vertices N", "runs N", one
// "message ..." each; or "error ...". Status 0 unless misused.

#include "app/commandline/drawing_session.h"
#include "app/exchange/text_outlines.h"

#include "core/io/svg/svg_reader.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace {

using namespace lidwright;

/// Exact coverage of pixels by polygons, by the signed area left of every edge.
class Raster {
public:
    Raster(int width, int height) : m_width(width), m_height(height), m_pixels(size(), 0.0F) {}

    /// Adds the region (in pixels, y down): every pixel keeps the larger of its coverages.
    void add(const Region& region)
    {
        const Bounds box = bounds(region);
        const int top = std::max(0, static_cast<int>(std::floor(box.minY)));
        const int bottom = std::min(m_height, static_cast<int>(std::ceil(box.maxY)));
        if (top >= bottom) return;
        m_top = top;
        m_rows = bottom - top;
        m_cells.assign(static_cast<std::size_t>(m_rows) * stride(), 0.0);
        for (const Ring& ring : region.rings) {
            for (std::size_t i = 0; i < ring.size(); ++i)
                edge(ring[i], ring[(i + 1) % ring.size()]);
        }
        for (int y = 0; y < m_rows; ++y) {
            double sum = 0;
            for (int x = 0; x < m_width; ++x) {
                sum += m_cells[static_cast<std::size_t>(y) * stride() + static_cast<std::size_t>(x)];
                float& pixel =
                    m_pixels[static_cast<std::size_t>(y + top) * static_cast<std::size_t>(m_width) +
                             static_cast<std::size_t>(x)];
                pixel = std::max(pixel, static_cast<float>(std::abs(sum)));
            }
        }
    }

    bool write(const std::string& name) const
    {
        std::ofstream out(name, std::ios::binary);
        out << "P5\n" << m_width << ' ' << m_height << "\n255\n";
        for (const float pixel : m_pixels)
            out.put(static_cast<char>(std::min(255L, std::lround(pixel * 255.0F))));
        return static_cast<bool>(out);
    }

private:
    int m_width, m_height;
    int m_top = 0, m_rows = 0;
    std::vector<float> m_pixels;
    std::vector<double> m_cells;

    std::size_t size() const
    {
        return static_cast<std::size_t>(m_width) * static_cast<std::size_t>(m_height);
    }
    std::size_t stride() const { return static_cast<std::size_t>(m_width) + 2; }

    void edge(Point a, Point b)
    {
        if (a.y == b.y) return;
        const double sign = a.y < b.y ? 1 : -1;
        if (a.y > b.y) std::swap(a, b);
        const double slope = (b.x - a.x) / (b.y - a.y);
        const int first = std::max(m_top, static_cast<int>(std::floor(a.y)));
        const int last = std::min(m_top + m_rows - 1, static_cast<int>(std::floor(b.y)));
        for (int row = first; row <= last; ++row) {
            const double y1 = std::max(a.y, static_cast<double>(row)), y2 = std::min(b.y, row + 1.0);
            if (y2 > y1) span(row, a.x + (y1 - a.y) * slope, a.x + (y2 - a.y) * slope, sign * (y2 - y1));
        }
    }

    /// One row's part of an edge from x1 to x2 with signed height h.
    void span(int row, double x1, double x2, double h)
    {
        const double limit = m_width;
        x1 = std::clamp(x1, 0.0, limit);
        x2 = std::clamp(x2, 0.0, limit);
        if (x1 > x2) std::swap(x1, x2);
        const int from = static_cast<int>(std::floor(x1)), to = static_cast<int>(std::floor(x2));
        for (int x = from; x <= to; ++x) {
            const double l = std::max(x1, static_cast<double>(x)), r = std::min(x2, x + 1.0);
            const double part = x2 > x1 ? h * (r - l) / (x2 - x1) : h;
            const double left = x + 1 - (l + r) / 2;  // share of the pixel to the right of the edge
            double* cell =
                &m_cells[static_cast<std::size_t>(row - m_top) * stride() + static_cast<std::size_t>(x)];
            cell[0] += part * left;
            cell[1] += part * (1 - left);
        }
    }
};

}  // namespace

int main(int argc, char** argv)
{
    if (argc != 5) return 2;
    const int width = std::atoi(argv[3]), height = std::atoi(argv[4]);
    std::ifstream in(argv[1], std::ios::binary);
    if (!in || width < 1 || height < 1 || width > 20000 || height > 20000) return 2;
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    const DrawingSession session;
    const std::clock_t start = std::clock();
    // As fine as the picture asks for, whatever size the file has.
    SvgOptions options;
    options.outlineText = outlineByComputerFonts;
    Result<SvgReading> reading = readSvg(text, "file", options);
    if (!reading && reading.error().what.find("10 m") != std::string::npos) {
        options.width_mm = 300;
        reading = readSvg(text, "file", options);
    }
    const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    std::printf("seconds %.3f\n", seconds);
    Raster raster(width, height);
    if (!reading) {
        std::printf("error %s\n", reading.error().text().c_str());
        return raster.write(argv[2]) ? 0 : 1;
    }
    Bounds page = reading->page;
    if (page.empty()) {
        for (const ArtRun& run : reading->art.runs)
            page.include(bounds(run.painted));
    }
    const double sx = width / page.width(), sy = height / page.height();
    const Transform toPixels{sx, 0, 0, -sy, -page.minX * sx, page.maxY * sy};
    std::size_t vertices = 0;
    for (const ArtRun& run : reading->art.runs) {
        raster.add(transformed(run.painted, toPixels));
        for (const Ring& ring : run.painted.rings)
            vertices += ring.size();
    }
    std::printf("vertices %zu\nruns %zu\n", vertices, reading->art.runs.size());
    for (const std::string& message : reading->art.messages)
        std::printf("message %s\n", message.c_str());
    return raster.write(argv[2]) ? 0 : 1;
}
