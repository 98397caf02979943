#pragma once

#include "core/base/units.h"
#include "core/plan/catalogue.h"

#include <cmath>
#include <memory>
#include <random>

/// Plans that use everything a plan can carry, from a seed: the same seed gives the same plan.
namespace lidwright::testing {

class RandomPlans {
public:
    explicit RandomPlans(std::uint64_t seed) : m_bits(seed) {}

    /// Every quantity anywhere in its hard range, often at an end of it; drawings with any outlines.
    Plan next()
    {
        Plan plan;
        plan.art.resize(below(4));
        plan.ties.resize(below(4));
        plan.holes.resize(below(5));
        plan.fixings.resize(below(4));
        plan.stringSet.resize(1 + below(kMostStrings));
        plan.blocks.resize(below(5));
        plan.backingLayers.resize(below(4));
        plan.hollows.resize(below(3));
        plan.bars.resize(below(4));
        plan.wiring.resize(below(4));
        plan.stock.resize(below(4));
        plan.prices.resize(below(3));
        plan.accepted.resize(below(3));
        for (const Parameter& p : catalogue()) {
            if (std::string_view(p.key).ends_with(".count")) continue;
            const int members = p.inList() ? p.size(plan) : 1;
            for (int i = 0; i < members; ++i) {
                if (p.isText())
                    p.setText(plan, i, text(static_cast<std::size_t>(p.most)));
                else
                    p.set(plan, i, within(p));
            }
        }
        for (std::size_t i = 0; i < plan.art.size(); ++i) {
            const bool shared = i > 0 && below(4) == 0;
            plan.art[i].art = shared ? plan.art[below(i)].art : drawing();
            // Paints without a use are allowed.
            const std::size_t paints = plan.art[i].art->paints.size();
            for (std::size_t k = below(3) == 0 ? below(paints + 1) : paints; k > 0; --k)
                plan.art[i].uses.push_back(static_cast<ArtUse>(below(5)));
        }
        if (below(2) == 0)
            plan.box.outline = std::make_shared<FreeOutline>(FreeOutline{ring(300), "body outline.svg"});
        return plan;
    }

    /// A whole number from 0 to n - 1.
    std::size_t below(std::size_t n) { return static_cast<std::size_t>(m_bits() % n); }
    /// Any double from least to most.
    double between(double least, double most)
    {
        return least + (most - least) * (static_cast<double>(m_bits() >> 11) * 0x1p-53);
    }

    /// A value that the parameter may have.
    double within(const Parameter& p)
    {
        const std::size_t pick = below(8);
        if (pick == 0) return p.least;
        if (pick == 1) return p.most;
        const bool whole =
            p.quantity == Quantity::Count || p.quantity == Quantity::Choice || p.quantity == Quantity::Flag;
        if (whole)
            return p.least + static_cast<double>(below(static_cast<std::size_t>(p.most - p.least) + 1));
        // A round number now and then, as people type them.
        const double value = between(p.least, p.most);
        return pick == 2 ? std::min(std::max(std::round(value), p.least), p.most) : value;
    }

    /// A ring about the origin or, one time in four, one whose edges cross anyhow.
    Ring ring(double radius)
    {
        Ring out;
        const std::size_t points = 3 + below(20);
        const bool crossing = below(4) == 0;
        for (std::size_t i = 0; i < points; ++i) {
            const double angle = 2 * kPi * static_cast<double>(i) / static_cast<double>(points);
            const double r = between(0.2, 1) * radius;
            if (crossing)
                out.push_back({between(-radius, radius), between(-radius, radius)});
            else
                out.push_back({r * std::cos(angle), r * std::sin(angle)});
        }
        return out;
    }

private:
    std::mt19937_64 m_bits;

    std::string text(std::size_t most)
    {
        static constexpr std::string_view kPieces[] = {"oak",    " ",          "\"",   "\\",   "/",
                                                       "\n",     "\t",         "\x01", "\x7f", "\u00e9",
                                                       "\u2300", "\U0001f3b8", "{",    "]",    ","};
        std::string out;
        for (std::size_t i = below(12); i > 0; --i) {
            const std::string_view piece = kPieces[below(std::size(kPieces))];
            if (out.size() + piece.size() <= most) out += piece;
        }
        return out;
    }

    Region region()
    {
        Region out;
        for (std::size_t i = below(4); i > 0; --i)
            out.rings.push_back(ring(between(0.01, 80)));
        return out;
    }

    ArtworkPtr drawing()
    {
        auto art = std::make_shared<Artwork>();
        art->fileName = text(100);
        art->fileSize = m_bits() >> below(64);
        art->width = between(0, 200);
        art->height = between(0, 200);
        for (std::size_t i = below(4); i > 0; --i)
            art->paints.push_back({text(40), "#0a0b0c", below(2) == 0, below(2) == 0 ? 0 : between(0, 3)});
        for (std::size_t i = art->paints.empty() ? 0 : below(5); i > 0; --i) {
            ArtRun run;
            run.paint = static_cast<int>(below(art->paints.size()));
            run.painted = region();
            if (art->paints[static_cast<std::size_t>(run.paint)].line) run.enclosed = region();
            art->runs.push_back(std::move(run));
        }
        for (std::size_t i = below(3); i > 0; --i)
            art->messages.push_back(text(60));
        return art;
    }
};

}  // namespace lidwright::testing
