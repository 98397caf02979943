#include "core/plan/artwork.h"

#include <cstdlib>

namespace lidwright {
namespace {

/// Strokes narrower than this show where the cutter goes, not what it takes away (common practice, no
/// source).
constexpr double kHairline = 0.5;
/// Relative luminance limits of dark paint and of paper white (our choice; the formula is WCAG 2.2's).
constexpr double kDark = 0.25;
constexpr double kNearWhite = 0.85;

/// Relative luminance of "#rrggbb", 0 to 1 (W3C, Web Content Accessibility Guidelines 2.2, "relative
/// luminance").
double luminance(const std::string& colour)
{
    if (colour.size() != 7) return 0;
    const long rgb = std::strtol(colour.c_str() + 1, nullptr, 16);
    const auto channel = [&](int shift) {
        const double x = static_cast<double>((rgb >> shift) & 0xff) / 255;
        return x <= 0.04045 ? x / 12.92 : std::pow((x + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * channel(16) + 0.7152 * channel(8) + 0.0722 * channel(0);
}

ArtUse guessOf(const ArtPaint& paint)
{
    const double light = luminance(paint.colour);
    if (paint.line && paint.thinnest < kHairline) return ArtUse::CutInside;
    if (!paint.line && light >= kNearWhite) return ArtUse::Wood;
    if (!paint.line && light <= kDark) return ArtUse::Cut;
    return ArtUse::Engraved;
}

}  // namespace

std::vector<ArtUse> firstGuess(const Artwork& art)
{
    if (art.paints.size() == 1) {
        const ArtPaint& only = art.paints.front();
        return {only.line && only.thinnest < kHairline ? ArtUse::CutInside : ArtUse::Cut};
    }
    std::vector<ArtUse> uses;
    for (const ArtPaint& paint : art.paints)
        uses.push_back(guessOf(paint));
    return uses;
}

ArtAreas areas(const Artwork& art, const std::vector<ArtUse>& uses)
{
    const auto useOf = [&](const ArtRun& run) {
        const auto i = static_cast<std::size_t>(run.paint);
        return i < uses.size() ? uses[i] : ArtUse::Ignored;
    };
    ArtAreas out;
    std::vector<Region> group;
    // Neighbouring runs of one use are united at once: the number of set operations is the number of changes.
    for (std::size_t i = 0; i < art.runs.size();) {
        const ArtUse use = useOf(art.runs[i]);
        group.clear();
        for (; i < art.runs.size() && useOf(art.runs[i]) == use; ++i)
            group.push_back(use == ArtUse::CutInside ? art.runs[i].enclosed : art.runs[i].painted);
        if (use == ArtUse::Ignored) continue;
        const Region all = unite(group);
        switch (use) {
            case ArtUse::Cut:
            case ArtUse::CutInside:
                out.cut = out.cut.empty() ? all : unite(out.cut, all);
                break;
            case ArtUse::Engraved:
                out.engraved = out.engraved.empty() ? all : unite(out.engraved, all);
                break;
            case ArtUse::Wood:
                out.cut = subtract(out.cut, all);
                out.engraved = subtract(out.engraved, all);
                break;
            case ArtUse::Ignored:
                break;
        }
    }
    if (!out.engraved.empty() && !out.cut.empty()) out.engraved = subtract(out.engraved, out.cut);
    return out;
}

}  // namespace lidwright
