// What holds of every template: nothing outside the sheet, no words over other words, letters large enough to
// be read at the bench.
#include "tests/support/random_plan.h"
#include "tests/support/sample_plans.h"

#include "core/drawing/lettering.h"
#include "core/drawing/template_sheets.h"

#include <gtest/gtest.h>

#include <cmath>

namespace lidwright {
namespace {

std::vector<Text> wordsOf(const Sheet& sheet)
{
    std::vector<Text> out;
    for (const Element& e : sheet.elements) {
        if (const auto* text = std::get_if<Text>(&e.what)) out.push_back(*text);
        if (const auto* d = std::get_if<Dimension>(&e.what)) out.push_back(dimensionText(*d, sheet.paper));
    }
    std::erase_if(out, [](const Text& t) { return t.words.empty(); });
    return out;
}

/// The outline of the words, a little less than the estimate, which is of a wide face.
Region bodyOf(const Text& text, double paper)
{
    constexpr double kEstimate = 0.4;  // mm
    return offset(fill({textOutline(text, paper)}, FillRule::NonZero), -kEstimate);
}

void expectReadable(const Sheet& sheet, const std::string& name)
{
    const std::vector<Text> words = wordsOf(sheet);
    EXPECT_FALSE(words.empty()) << name;
    std::vector<Region> bodies;
    for (const Text& text : words) {
        EXPECT_GE(text.height, 2.5 - 1e-9) << name << ": " << text.words;
        bodies.push_back(bodyOf(text, sheet.paper));
    }
    for (std::size_t i = 0; i < words.size(); ++i)
        for (std::size_t k = i + 1; k < words.size(); ++k) {
            if (words[i].words == words[k].words && distance(words[i].at, words[k].at) < 1e-6) continue;
            EXPECT_TRUE(intersect(bodies[i], bodies[k]).empty())
                << name << ": \"" << words[i].words << "\" lies over \"" << words[k].words << "\"";
        }
}

void expectWithin(const Sheet& sheet, const std::string& name)
{
    for (const Element& e : sheet.elements) {
        const Bounds b = elementBounds(e, sheet.paper);
        if (b.empty()) continue;
        ASSERT_TRUE(std::isfinite(b.minX + b.minY + b.maxX + b.maxY)) << name;
        EXPECT_GE(b.minX, sheet.extent.minX - 1e-6) << name << " " << e.layer;
        EXPECT_LE(b.maxX, sheet.extent.maxX + 1e-6) << name << " " << e.layer;
        EXPECT_GE(b.minY, sheet.extent.minY - 1e-6) << name << " " << e.layer;
        EXPECT_LE(b.maxY, sheet.extent.maxY + 1e-6) << name << " " << e.layer;
    }
}

TEST(TemplateWords, StandClearOfOneAnotherInTheSamples)
{
    for (const testing::Sample& sample :
         testing::samplePlans(std::filesystem::path(LIDWRIGHT_SOURCE_DIR) / "resources/samples")) {
        const Layout layout = derive(sample.plan);
        for (const TemplateKind kind : kTemplateKinds) {
            const Sheet sheet = templateSheet(sample.plan, layout, kind, unitStyle(sample.plan));
            const std::string name = sample.file + " " + word(kind);
            expectReadable(sheet, name);
            expectWithin(sheet, name);
        }
    }
}

TEST(TemplateWords, LieOnTheSheetWhateverThePlanIs)
{
    testing::RandomPlans random(2026);
    for (int i = 0; i < 25; ++i) {
        const Plan plan = random.next();
        const Layout layout = derive(plan);
        for (const TemplateKind kind : kTemplateKinds)
            expectWithin(templateSheet(plan, layout, kind, unitStyle(plan)),
                         std::to_string(i) + " " + word(kind));
    }
}

}  // namespace
}  // namespace lidwright
