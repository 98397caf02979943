#include "core/plan/artwork.h"

#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <iterator>
#include <utility>

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

/// What some successive runs do to whatever lies below them.
struct Layer {
    Region cut;
    Region engraved;
    Region wood;  ///< takes cuts and engraving below away
};

Region together(Region a, Region b)
{
    if (a.empty()) return b;
    if (b.empty()) return a;
    if (bounds(a).touches(bounds(b))) return unite(a, b);
    std::move(b.rings.begin(), b.rings.end(), std::back_inserter(a.rings));
    return a;
}

Region without(Region from, const Region& what)
{
    if (from.empty() || what.empty() || !bounds(from).touches(bounds(what))) return from;
    return subtract(from, what);
}

Layer laid(Layer upper, Layer lower)
{
    Layer both;
    both.cut = together(without(std::move(lower.cut), upper.wood), std::move(upper.cut));
    both.engraved = together(without(std::move(lower.engraved), upper.wood), std::move(upper.engraved));
    both.wood = together(std::move(lower.wood), std::move(upper.wood));
    return both;
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
    std::vector<Layer> layers;
    std::vector<Region> group;
    for (std::size_t i = 0; i < art.runs.size();) {
        const ArtUse use = useOf(art.runs[i]);
        group.clear();
        for (; i < art.runs.size() && useOf(art.runs[i]) == use; ++i)
            group.push_back(use == ArtUse::CutInside ? art.runs[i].enclosed : art.runs[i].painted);
        if (use == ArtUse::Ignored) continue;
        Layer layer;
        const bool cut = use == ArtUse::Cut || use == ArtUse::CutInside;
        (cut ? layer.cut : use == ArtUse::Engraved ? layer.engraved : layer.wood) = unite(group);
        layers.push_back(std::move(layer));
    }
    // Neighbours are laid together in pairs, then pairs of pairs: a drawing of n layers costs n log n.
    while (layers.size() > 1) {
        std::vector<Layer> fewer;
        for (std::size_t i = 0; i < layers.size(); i += 2) {
            const bool alone = i + 1 == layers.size();
            fewer.push_back(alone ? std::move(layers[i])
                                  : laid(std::move(layers[i + 1]), std::move(layers[i])));
        }
        layers = std::move(fewer);
    }
    if (layers.empty()) return {};
    return {layers.front().cut, without(layers.front().engraved, layers.front().cut)};
}

}  // namespace lidwright
