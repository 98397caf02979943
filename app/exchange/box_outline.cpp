#include "app/exchange/box_outline.h"

#include "core/plan/catalogue.h"

#include <array>
#include <memory>
#include <utility>

namespace lidwright {

Ring largestOutline(const Artwork& art)
{
    std::vector<Region> parts;
    for (const ArtRun& run : art.runs)
        parts.push_back(run.enclosed.empty() ? run.painted : run.enclosed);
    const Region whole = unite(parts);
    const Ring* largest = nullptr;
    double most = 0;
    for (const Ring& ring : whole.rings) {
        // Holes run clockwise and so never count.
        const double size = signedArea(ring);
        if (size > most) {
            most = size;
            largest = &ring;
        }
    }
    return largest ? *largest : Ring();
}

Ring turnedToHead(Ring ring, HeadSide head)
{
    for (Point& p : ring) {
        switch (head) {
            case HeadSide::Left:
                break;
            case HeadSide::Top:
                p = {-p.y, p.x};
                break;
            case HeadSide::Right:
                p = {-p.x, -p.y};
                break;
            case HeadSide::Bottom:
                p = {p.y, -p.x};
                break;
        }
    }
    return ring;
}

Result<Plan> withBoxOutline(const Plan& plan, const Ring& ring, const std::string& fileName)
{
    const Bounds box = bounds(ring);
    Plan next = plan;
    next.box.outline = std::make_shared<const FreeOutline>(FreeOutline{ring, fileName});
    const std::array<Edit, 3> edits{Edit{"box.shape", static_cast<double>(BoxShape::Outline)},
                                    Edit{"box.length", box.width()}, Edit{"box.width", box.height()}};
    return applyEdits(next, edits);
}

}  // namespace lidwright
