#include "core/io/svg/svg_reader.h"

#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string_view>

namespace {

/// Not an assert: the property must hold in every build kind.
void demand(bool holds)
{
    if (!holds) std::abort();
}

void demandSound(const lidwright::Region& region)
{
    for (const lidwright::Ring& ring : region.rings) {
        demand(ring.size() >= 3);
        for (const lidwright::Point p : ring)
            demand(std::isfinite(p.x) && std::isfinite(p.y));
    }
}

}  // namespace

/// Any bytes are either a drawing with sound outlines, centred and of the size that it names, or an error in
/// words.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    constexpr std::size_t kLongest = 1 << 16;  // longer inputs only make the search slow
    if (size > kLongest) return 0;
    const auto reading = lidwright::readSvg({reinterpret_cast<const char*>(data), size}, "fuzz.svg", {});
    if (!reading) {
        demand(!reading.error().what.empty());
        return 0;
    }
    const lidwright::Artwork& art = reading->art;
    lidwright::Bounds all;
    for (const lidwright::ArtRun& run : art.runs) {
        demand(run.paint >= 0 && run.paint < static_cast<int>(art.paints.size()));
        demandSound(run.painted);
        demandSound(run.enclosed);
        all.include(lidwright::bounds(run.painted));
    }
    if (all.empty()) return 0;
    constexpr double kSame = 1e-3;  // mm; the outlines lie on a 10 nm grid
    demand(std::abs(all.width() - art.width) < kSame && std::abs(all.height() - art.height) < kSame);
    demand(std::abs(all.centre().x) < kSame && std::abs(all.centre().y) < kSame);
    return 0;
}
