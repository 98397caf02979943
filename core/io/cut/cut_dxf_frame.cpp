#include "core/io/cut/cut_dxf_frame.h"

#include "core/io/dxf/dxf_colour.h"

#include <array>

namespace lidwright {
namespace {

// Handles of what every file has. Zero is the owner of what nobody owns.
enum Handle : std::uint64_t {
    kNobody = 0,
    kBlockRecordTable = 1,
    kLayerTable,
    kStyleTable,
    kLtypeTable,
    kViewTable,
    kUcsTable,
    kVportTable,
    kAppidTable,
    kDimstyleTable,
    kRoot,
    kGroups,
    kLayouts,
    kPlotStyles,
    kNormalStyle,
    kByBlock,
    kByLayer,
    kContinuous,
    kStandardStyle,
    kAppid,
    kDimstyle,
    kViewport,
    kLayerZero,
    kPaperSpace = kDxfModelSpace + 1,
    kModelBegin,
    kModelEnd,
    kPaperBegin,
    kPaperEnd,
    kModelLayout,
    kPaperLayout,
    kFirstLayer = 0x40  ///< then one for each layer of the drawing
};

std::string plainAscii(const std::string& text)
{
    std::string out;
    for (const char c : text)
        out += c >= 0x20 && c < 0x7f ? c : '?';
    return out;
}

void comments(DxfText& out, const CutDrawing& drawing)
{
    out.text(999, plainAscii(drawing.title));
    for (const std::string& note : drawing.notes)
        out.text(999, plainAscii(note));
}

void variable(DxfText& out, const char* name)
{
    out.text(9, name);
}

void extents(DxfText& out, const CutDrawing& drawing)
{
    const Point low{drawing.extent.minX, drawing.extent.minY}, high{drawing.extent.maxX, drawing.extent.maxY};
    variable(out, "$EXTMIN");
    out.point3(10, low);
    variable(out, "$EXTMAX");
    out.point3(10, high);
    variable(out, "$LIMMIN");
    out.point(10, low);
    variable(out, "$LIMMAX");
    out.point(10, high);
}

void section(DxfText& out, const char* name)
{
    out.text(0, "SECTION");
    out.text(2, name);
}

void table(DxfText& out, const char* name, Handle handle, int entries)
{
    out.text(0, "TABLE");
    out.text(2, name);
    out.handle(5, handle);
    out.handle(330, kNobody);
    out.text(100, "AcDbSymbolTable");
    out.whole(70, entries);
}

void record(DxfText& out, const char* type, std::uint64_t handle, Handle owner, const char* subclass,
            std::string_view name)
{
    out.text(0, type);
    // Dimension styles have their handle in another group.
    out.handle(std::string_view(type) == "DIMSTYLE" ? 105 : 5, handle);
    out.handle(330, owner);
    out.text(100, "AcDbSymbolTableRecord");
    out.text(100, subclass);
    out.text(2, name);
}

/// Line weights of R2000 are these hundredths of a millimetre only (DXF Reference 2000, group 370).
int lineWeight(double mm)
{
    constexpr std::array kWeights{5,  9,  13, 15, 18, 20,  25,  30,  35,  40,  50,
                                  53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200};
    constexpr double kPerMillimetre = 100;
    int best = kWeights.front();
    for (const int weight : kWeights)
        if (std::abs(weight - mm * kPerMillimetre) < std::abs(best - mm * kPerMillimetre)) best = weight;
    return best;
}

void layerRecord(DxfText& out, std::uint64_t handle, const std::string& name, int colour, double width)
{
    record(out, "LAYER", handle, kLayerTable, "AcDbLayerTableRecord", name);
    out.whole(70, 0);
    out.whole(62, colour);
    out.text(6, "Continuous");
    out.whole(370, lineWeight(width));
    out.handle(390, kNormalStyle);
}

void linetype(DxfText& out, Handle handle, const char* name)
{
    record(out, "LTYPE", handle, kLtypeTable, "AcDbLinetypeTableRecord", name);
    out.whole(70, 0);
    out.text(3, "");
    out.whole(72, 65);
    out.whole(73, 0);
    out.real(40, 0);
}

void viewport(DxfText& out, const CutDrawing& drawing)
{
    record(out, "VPORT", kViewport, kVportTable, "AcDbViewportTableRecord", "*Active");
    out.whole(70, 0);
    out.point(10, {0, 0});
    out.point(11, {1, 1});
    out.point(12, drawing.extent.centre());
    out.point(13, {0, 0});
    out.point(14, {10, 10});
    out.point(15, {10, 10});
    out.point(16, {0, 0});
    out.real(36, 1);  // looked at from above
    out.point3(17, {0, 0});
    out.real(40, std::max(drawing.extent.height(), 1.0));
    out.real(41, drawing.extent.height() > 0 ? drawing.extent.width() / drawing.extent.height() : 1);
}

void tables2000(DxfText& out, const CutDrawing& drawing)
{
    section(out, "TABLES");
    table(out, "VPORT", kVportTable, 1);
    viewport(out, drawing);
    out.text(0, "ENDTAB");
    table(out, "LTYPE", kLtypeTable, 3);
    linetype(out, kByBlock, "ByBlock");
    linetype(out, kByLayer, "ByLayer");
    linetype(out, kContinuous, "Continuous");
    out.text(0, "ENDTAB");
    table(out, "LAYER", kLayerTable, static_cast<int>(drawing.layers.size()) + 1);
    layerRecord(out, kLayerZero, "0", 7, 0.25);
    std::uint64_t next = kFirstLayer;
    for (const CutLayer& layer : drawing.layers)
        layerRecord(out, next++, layer.name, nearestDxfColour(colourOf(layer.colour)), layer.lineWidth);
    out.text(0, "ENDTAB");
    table(out, "STYLE", kStyleTable, 1);
    record(out, "STYLE", kStandardStyle, kStyleTable, "AcDbTextStyleTableRecord", "Standard");
    out.whole(70, 0);
    out.real(40, 0);
    out.real(41, 1);
    out.real(50, 0);
    out.whole(71, 0);
    out.real(42, 2.5);
    out.text(3, "txt");
    out.text(4, "");
    out.text(0, "ENDTAB");
    table(out, "VIEW", kViewTable, 0);
    out.text(0, "ENDTAB");
    table(out, "UCS", kUcsTable, 0);
    out.text(0, "ENDTAB");
    table(out, "APPID", kAppidTable, 1);
    record(out, "APPID", kAppid, kAppidTable, "AcDbRegAppTableRecord", "ACAD");
    out.whole(70, 0);
    out.text(0, "ENDTAB");
    table(out, "DIMSTYLE", kDimstyleTable, 1);
    out.text(100, "AcDbDimStyleTable");
    record(out, "DIMSTYLE", kDimstyle, kDimstyleTable, "AcDbDimStyleTableRecord", "Standard");
    out.whole(70, 0);
    out.text(0, "ENDTAB");
    table(out, "BLOCK_RECORD", kBlockRecordTable, 2);
    record(out, "BLOCK_RECORD", kDxfModelSpace, kBlockRecordTable, "AcDbBlockTableRecord", "*Model_Space");
    out.handle(340, kModelLayout);
    record(out, "BLOCK_RECORD", kPaperSpace, kBlockRecordTable, "AcDbBlockTableRecord", "*Paper_Space");
    out.handle(340, kPaperLayout);
    out.text(0, "ENDTAB");
    out.text(0, "ENDSEC");
}

void block2000(DxfText& out, const char* name, std::uint64_t owner, Handle begin, Handle end, bool paper)
{
    out.text(0, "BLOCK");
    out.handle(5, begin);
    out.handle(330, owner);
    out.text(100, "AcDbEntity");
    if (paper) out.whole(67, 1);
    out.text(8, "0");
    out.text(100, "AcDbBlockBegin");
    out.text(2, name);
    out.whole(70, 0);
    out.point3(10, {0, 0});
    out.text(3, name);
    out.text(1, "");
    out.text(0, "ENDBLK");
    out.handle(5, end);
    out.handle(330, owner);
    out.text(100, "AcDbEntity");
    if (paper) out.whole(67, 1);
    out.text(8, "0");
    out.text(100, "AcDbBlockEnd");
}

void dictionary(DxfText& out, Handle handle, Handle owner,
                const std::vector<std::pair<const char*, Handle>>& entries)
{
    out.text(0, "DICTIONARY");
    out.handle(5, handle);
    out.handle(330, owner);
    out.text(100, "AcDbDictionary");
    out.whole(281, 1);
    for (const auto& [name, entry] : entries) {
        out.text(3, name);
        out.handle(350, entry);
    }
}

void layout(DxfText& out, Handle handle, const char* name, int order, std::uint64_t space)
{
    constexpr int kModelType = 1024;  // plot flags: the model's tab
    out.text(0, "LAYOUT");
    out.handle(5, handle);
    out.handle(330, kLayouts);
    out.text(100, "AcDbPlotSettings");
    for (const int code : {1, 4, 6})
        out.text(code, "");
    out.text(2, "none_device");
    for (int code = 40; code <= 49; ++code)
        out.real(code, 0);
    out.real(140, 0);
    out.real(141, 0);
    out.real(142, 1);
    out.real(143, 1);
    out.whole(70, order == 0 ? kModelType : 0);
    out.whole(72, 1);  // millimetres
    out.whole(73, 0);
    out.whole(74, 5);
    out.text(7, "");
    out.whole(75, 16);
    out.real(147, 1);
    out.real(148, 0);
    out.real(149, 0);
    out.text(100, "AcDbLayout");
    out.text(1, name);
    out.whole(70, 1);
    out.whole(71, order);
    out.point(10, {0, 0});
    out.point(11, {297, 210});
    out.point3(12, {0, 0});
    out.point3(14, {0, 0});
    out.point3(15, {0, 0});
    out.real(146, 0);
    out.point3(13, {0, 0});
    out.point3(16, {1, 0});
    out.point3(17, {0, 1});
    out.whole(76, 0);
    out.handle(330, space);
}

}  // namespace

void writeDxfHead12(DxfText& out, const CutDrawing& drawing)
{
    comments(out, drawing);
    section(out, "HEADER");
    variable(out, "$ACADVER");
    out.text(1, "AC1009");
    extents(out, drawing);
    out.text(0, "ENDSEC");
    section(out, "TABLES");
    out.text(0, "TABLE");
    out.text(2, "LTYPE");
    out.whole(70, 1);
    out.text(0, "LTYPE");
    out.text(2, "CONTINUOUS");
    out.whole(70, 0);
    out.text(3, "Solid line");
    out.whole(72, 65);
    out.whole(73, 0);
    out.real(40, 0);
    out.text(0, "ENDTAB");
    out.text(0, "TABLE");
    out.text(2, "LAYER");
    out.whole(70, static_cast<int>(drawing.layers.size()) + 1);
    const auto layer = [&](const std::string& name, int colour) {
        out.text(0, "LAYER");
        out.text(2, name);
        out.whole(70, 0);
        out.whole(62, colour);
        out.text(6, "CONTINUOUS");
    };
    layer("0", 7);
    for (const CutLayer& l : drawing.layers)
        layer(l.name, nearestDxfColour(colourOf(l.colour)));
    out.text(0, "ENDTAB");
    out.text(0, "ENDSEC");
    section(out, "BLOCKS");
    out.text(0, "ENDSEC");
    section(out, "ENTITIES");
}

void writeDxfHead2000(DxfText& out, const CutDrawing& drawing, std::uint64_t seed)
{
    comments(out, drawing);
    section(out, "HEADER");
    variable(out, "$ACADVER");
    out.text(1, "AC1015");
    variable(out, "$DWGCODEPAGE");
    out.text(3, "ANSI_1252");
    variable(out, "$INSUNITS");
    out.whole(70, 4);
    variable(out, "$MEASUREMENT");
    out.whole(70, 1);
    extents(out, drawing);
    variable(out, "$HANDSEED");
    out.handle(5, seed);
    out.text(0, "ENDSEC");
    section(out, "CLASSES");
    out.text(0, "ENDSEC");
    tables2000(out, drawing);
    section(out, "BLOCKS");
    block2000(out, "*Model_Space", kDxfModelSpace, kModelBegin, kModelEnd, false);
    block2000(out, "*Paper_Space", kPaperSpace, kPaperBegin, kPaperEnd, true);
    out.text(0, "ENDSEC");
    section(out, "ENTITIES");
}

void writeDxfTail12(DxfText& out)
{
    out.text(0, "ENDSEC");
    out.text(0, "EOF");
}

void writeDxfTail2000(DxfText& out)
{
    out.text(0, "ENDSEC");
    section(out, "OBJECTS");
    dictionary(out, kRoot, kNobody,
               {{"ACAD_GROUP", kGroups}, {"ACAD_LAYOUT", kLayouts}, {"ACAD_PLOTSTYLENAME", kPlotStyles}});
    dictionary(out, kGroups, kRoot, {});
    dictionary(out, kLayouts, kRoot, {{"Model", kModelLayout}, {"Layout1", kPaperLayout}});
    out.text(0, "ACDBDICTIONARYWDFLT");
    out.handle(5, kPlotStyles);
    out.handle(330, kRoot);
    out.text(100, "AcDbDictionary");
    out.whole(281, 1);
    out.text(3, "Normal");
    out.handle(350, kNormalStyle);
    out.text(100, "AcDbDictionaryWithDefault");
    out.handle(340, kNormalStyle);
    out.text(0, "ACDBPLACEHOLDER");
    out.handle(5, kNormalStyle);
    out.handle(330, kPlotStyles);
    layout(out, kModelLayout, "Model", 0, kDxfModelSpace);
    layout(out, kPaperLayout, "Layout1", 1, kPaperSpace);
    out.text(0, "ENDSEC");
    out.text(0, "EOF");
}

}  // namespace lidwright
