// Files written by ezdxf, against what ezdxf and shapely find in them: tests/scripts/make_dxf_samples.py
// wrote the files and tests/data/dxf/expected.csv.

#include "tests/core/io/dxf/dxf_support.h"

#include "core/io/dxf/dxf_expand.h"
#include "core/materials/table_reader.h"

#include <fstream>
#include <iterator>

namespace lidwright {
namespace {

std::string contentOf(const std::string& name)
{
    std::string path = LIDWRIGHT_SOURCE_DIR;
    path.append("/tests/data/dxf/").append(name);
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

struct Expected {
    std::string name, layer;
    double area = 0, length = 0;
};

std::vector<Expected> expected()
{
    const auto table =
        Table::read(contentOf("expected.csv"), "expected.csv", {"name", "layer", "area_mm2", "length_mm"});
    std::vector<Expected> out;
    if (!table) {
        ADD_FAILURE() << table.error().text();
        return out;
    }
    for (const Table::Row& line : table->rows) {
        RowReader row(*table, line);
        out.push_back({row.text("name"), row.text("layer"), row.number("area_mm2", 0, 1e9),
                       row.number("length_mm", 0, 1e9)});
        EXPECT_FALSE(row.error()) << row.error()->text();
    }
    return out;
}

double lineLength(const dxf::FlatLine& line)
{
    double sum = 0;
    for (std::size_t i = 1; i < line.points.size(); ++i)
        sum += distance(line.points[i - 1], line.points[i]);
    if (line.closed) sum += distance(line.points.back(), line.points.front());
    return sum;
}

TEST(DxfSample, AreasAreThoseOfShapely)
{
    const std::vector<Expected> all = expected();
    ASSERT_GE(all.size(), 17U);
    for (const Expected& e : all) {
        const DrawingReading reading = testing::readGood(contentOf(e.name + ".dxf"));
        EXPECT_EQ(reading.hasPhysicalSize, e.name != "old");
        EXPECT_TRUE(reading.art.messages.empty()) << e.name << ": " << reading.art.messages.front();
        bool found = false;
        for (const ArtRun& run : reading.art.runs) {
            if (reading.art.paints[static_cast<std::size_t>(run.paint)].name != "layer " + e.layer) continue;
            found = true;
            // Chords of 0.002 mm here and of 0.0005 mm there, and ends of loose pieces off by 0.003 mm.
            EXPECT_NEAR(area(run.enclosed), e.area, 0.0055 * e.length) << e.name << " " << e.layer;
        }
        EXPECT_TRUE(found) << e.name << " " << e.layer;
    }
}

TEST(DxfSample, LengthsAreThoseOfEzdxf)
{
    for (const Expected& e : expected()) {
        dxf::Notes notes;
        const auto document = dxf::parse(contentOf(e.name + ".dxf"), notes);
        ASSERT_TRUE(document.ok());
        const double unit = document->unit_mm > 0 ? document->unit_mm : 1;
        const dxf::Expanded drawn = dxf::expand(*document, Transform::scaling(unit, unit), 0.0005, &notes);
        double sum = 0;
        for (const dxf::PaintLines& paint : drawn.paints)
            if (document->layers[static_cast<std::size_t>(paint.layer)].name == e.layer)
                for (const dxf::FlatLine& line : paint.lines)
                    sum += lineLength(line);
        EXPECT_NEAR(sum, e.length, 1e-3 * e.length) << e.name << " " << e.layer;
    }
}

}  // namespace
}  // namespace lidwright
