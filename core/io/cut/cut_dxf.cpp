#include "core/io/cut/cut_dxf.h"

#include "core/io/cut/cut_dxf_frame.h"

namespace lidwright {
namespace {

/// Spells the lines of a drawing as entities.
class EntityWriter {
public:
    EntityWriter(DxfText& out, DxfVersion version) : m_out(out), m_full(version == DxfVersion::R2000) {}

    void write(const CutPath& path, const std::string& layer)
    {
        if (path.radius > 0) return circle(path, layer);
        if (path.points.size() < 2) return;
        if (path.points.size() == 2 && !path.closed) return line(path, layer);
        m_full ? lightPolyline(path, layer) : polyline(path, layer);
    }

private:
    DxfText& m_out;
    bool m_full;  ///< with handles, owners and subclasses

    void begin(const char* type, const std::string& layer, const char* subclass)
    {
        m_out.text(0, type);
        if (m_full) {
            m_out.handle(5, m_out.newHandle());
            m_out.handle(330, kDxfModelSpace);
            m_out.text(100, "AcDbEntity");
        }
        m_out.text(8, layer);
        if (m_full) m_out.text(100, subclass);
    }

    void circle(const CutPath& path, const std::string& layer)
    {
        begin("CIRCLE", layer, "AcDbCircle");
        m_out.point3(10, path.points.front());
        m_out.real(40, path.radius);
    }

    void line(const CutPath& path, const std::string& layer)
    {
        begin("LINE", layer, "AcDbLine");
        m_out.point3(10, path.points.front());
        m_out.point3(11, path.points.back());
    }

    void lightPolyline(const CutPath& path, const std::string& layer)
    {
        begin("LWPOLYLINE", layer, "AcDbPolyline");
        m_out.whole(90, static_cast<int>(path.points.size()));
        m_out.whole(70, path.closed ? 1 : 0);
        for (const Point& p : path.points)
            m_out.point(10, p);
    }

    void polyline(const CutPath& path, const std::string& layer)
    {
        begin("POLYLINE", layer, "");
        m_out.whole(66, 1);
        m_out.point3(10, {0, 0});
        m_out.whole(70, path.closed ? 1 : 0);
        for (const Point& p : path.points) {
            begin("VERTEX", layer, "");
            m_out.point3(10, p);
        }
        begin("SEQEND", layer, "");
    }
};

void writeEntities(DxfText& out, const CutDrawing& drawing, DxfVersion version)
{
    EntityWriter writer(out, version);
    for (const CutLayer& layer : drawing.layers)
        for (const CutPath& path : drawing.paths)
            if (path.operation == layer.operation) writer.write(path, layer.name);
}

}  // namespace

const char* word(DxfVersion version)
{
    return version == DxfVersion::R12 ? "r12" : "r2000";
}

std::string writeCutDxf(const CutDrawing& drawing, DxfVersion version)
{
    if (version == DxfVersion::R12) {
        DxfText out;
        writeDxfHead12(out, drawing);
        writeEntities(out, drawing, version);
        writeDxfTail12(out);
        return out.take();
    }
    // The header names a handle above all others: the entities are spelled first.
    DxfText body, head;
    writeEntities(body, drawing, version);
    const std::uint64_t seed = body.newHandle();
    writeDxfTail2000(body);
    writeDxfHead2000(head, drawing, seed);
    return head.take() + body.take();
}

}  // namespace lidwright
