#include "core/layout/settled_edits.h"

#include <algorithm>

namespace lidwright {
namespace {

bool names(const std::vector<Edit>& edits, const std::string& key)
{
    return std::any_of(edits.begin(), edits.end(), [&](const Edit& e) { return e.key == key; });
}

void addUnlessNamed(std::vector<Edit>& to, const std::vector<Edit>& edits, const std::string& key,
                    double value)
{
    if (!names(edits, key)) to.push_back({key, value});
}

void addOpening(std::vector<Edit>& to, const std::vector<Edit>& edits, const std::string& part,
                const EndWallLayout& wall)
{
    addUnlessNamed(to, edits, part + ".centre", wall.openingCentre);
    addUnlessNamed(to, edits, part + ".width", wall.openingWidth);
    addUnlessNamed(to, edits, part + ".depth", wall.wall.high - wall.opening.low);
    addUnlessNamed(to, edits, part + ".strip", wall.stripAbove);
}

}  // namespace

std::vector<Edit> settled(const Plan& plan, const Layout& layout, const std::vector<Edit>& edits)
{
    std::vector<Edit> out = edits;
    for (const Edit& edit : edits) {
        const double* value = std::get_if<double>(&edit.value);
        if (value == nullptr) continue;
        if (edit.key == "scale.hold" && *value != static_cast<double>(plan.scale.hold)) {
            addUnlessNamed(out, edits, "scale.nut-to-box", layout.headWall.outerX - layout.nutX);
            addUnlessNamed(out, edits, "scale.saddle-to-tail", layout.tailWall.outerX - layout.saddleX);
        }
        if (edit.key == "head-opening.cut" && *value != 0 && !plan.headOpening.cut)
            addOpening(out, edits, "head-opening", layout.headWall);
        if (edit.key == "tail-opening.cut" && *value != 0 && !plan.tailOpening.cut)
            addOpening(out, edits, "tail-opening", layout.tailWall);
    }
    return out;
}

}  // namespace lidwright
