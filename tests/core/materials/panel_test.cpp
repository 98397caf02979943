#include "core/materials/panel.h"

#include "core/materials/material_tables.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

TEST(Panels, EveryRowIsPlausibleAndHasASource)
{
    const Result<std::vector<Panel>> read = readPanels(panelsTable());
    ASSERT_TRUE(read) << read.error().text();
    EXPECT_EQ(panels(), *read);
    EXPECT_EQ(panels().size(), 13U);
    for (const Panel& panel : panels()) {
        SCOPED_TRACE(panel.id);
        EXPECT_GE(panel.density_kg_m3, 500);
        EXPECT_LE(panel.density_kg_m3, 900);
        EXPECT_GE(panel.bendingAlong_MPa, panel.bendingAcross_MPa);
        EXPECT_GT(panel.bendingAcross_MPa, 5);
        EXPECT_LT(panel.bendingAlong_MPa, 75);
        EXPECT_GE(panel.stiffnessAlong_MPa, panel.stiffnessAcross_MPa);
        EXPECT_LT(panel.stiffnessAlong_MPa, 17500);
        EXPECT_GT(panel.source.size(), 20U);
        EXPECT_EQ(panel.isotropic(), panel.id.rfind("mdf", 0) == 0);
        EXPECT_EQ(findPanel(panel.id), &panel);
    }
    EXPECT_EQ(findPanel("birch-plywood-5mm"), nullptr);
}

TEST(Panels, TheReadRowOfBirchPlywood)
{
    // Handbook of Finnish Plywood, Finnish Forest Industries Federation (2002), Tables 3-1 and 3-2, 18 mm:
    // bending 40.2 MPa, stiffness 10048 and 7452 MPa, 680 kg/m3.
    const Panel* panel = findPanel("birch-plywood-18mm");
    ASSERT_NE(panel, nullptr);
    EXPECT_EQ(panel->bendingAlong_MPa, 40.2);
    EXPECT_EQ(panel->stiffnessAlong_MPa, 10048);
    EXPECT_EQ(panel->stiffnessAcross_MPa, 7452);
    EXPECT_EQ(panel->density_kg_m3, 680);
}

/// Crossed plies bent as one beam in one direction, a ply stiff and strong only along its own grain.
struct PlyBeam {
    double stiffness = 0, bending = 0, shear = 0;
};

PlyBeam plyBeam(int plies, double ply, double sanded, bool alongFace)
{
    constexpr double kStiffness = 17500, kBending = 70, kRolling = 2.5;
    std::vector<double> height(static_cast<std::size_t>(plies), ply);
    height.front() -= sanded;
    height.back() -= sanded;
    double total = 0;
    for (double h : height)
        total += h;
    double inertia = 0, farthest = 0, z = -total / 2;
    for (std::size_t i = 0; i < height.size(); z += height[i], ++i) {
        if ((i % 2 == 0) != alongFace) continue;
        const double top = z + height[i];
        inertia += (top * top * top - z * z * z) / 3;
        farthest = std::max({farthest, std::abs(z), std::abs(top)});
    }
    // Rolling shear in the plies that bear nothing: Jourawski's V S / (I b), S of what lies above.
    double moment = 0, worst = 0;
    z = -total / 2;
    for (std::size_t i = 0; i < height.size(); z += height[i], ++i) {
        if ((i % 2 == 0) == alongFace)
            moment += ((z + height[i]) * (z + height[i]) - z * z) / 2;
        else
            worst = std::max(worst, std::abs(moment));
    }
    const double full = total * total * total / 12;
    PlyBeam beam;
    beam.stiffness = kStiffness * inertia / full;
    beam.bending = kBending * inertia / full * (total / 2) / farthest;
    beam.shear = worst > 0 ? kRolling * (1.5 / total) * inertia / worst : 0;
    return beam;
}

TEST(Panels, BirchPlywoodFollowsFromItsPlies)
{
    // The rows of the handbook, of which 18 mm is read and the rest recalled, are one build-up: each is
    // computed here from the plies anew.
    struct Row {
        const char* id;
        int plies;
        double ply, sanded;
    };
    for (const Row& row : {Row{"birch-plywood-3mm", 3, 1.0, 0}, Row{"birch-plywood-4mm", 3, 1.4, 0.3},
                           Row{"birch-plywood-6.5mm", 5, 1.4, 0.3}, Row{"birch-plywood-9mm", 7, 1.4, 0.3},
                           Row{"birch-plywood-12mm", 9, 1.4, 0.3}, Row{"birch-plywood-15mm", 11, 1.4, 0.3},
                           Row{"birch-plywood-18mm", 13, 1.4, 0.3}}) {
        SCOPED_TRACE(row.id);
        const Panel* panel = findPanel(row.id);
        ASSERT_NE(panel, nullptr);
        const PlyBeam along = plyBeam(row.plies, row.ply, row.sanded, true);
        const PlyBeam across = plyBeam(row.plies, row.ply, row.sanded, false);
        EXPECT_NEAR(panel->stiffnessAlong_MPa, along.stiffness, 0.51);
        EXPECT_NEAR(panel->stiffnessAcross_MPa, across.stiffness, 0.51);
        EXPECT_NEAR(panel->bendingAlong_MPa, along.bending, 0.051);
        EXPECT_NEAR(panel->bendingAcross_MPa, across.bending, 0.051);
        EXPECT_NEAR(panel->planarShearAlong_MPa.value_or(0), along.shear, 0.0051);
        EXPECT_NEAR(panel->planarShearAcross_MPa.value_or(0), across.shear, 0.0051);
    }
}

TEST(Panels, FibreboardRowsJoin)
{
    // EN 622-5 has one class of thickness after the other, weaker as they thicken.
    const char* ids[] = {"mdf-to-6mm", "mdf-to-9mm", "mdf-to-12mm", "mdf-to-19mm", "mdf-to-30mm"};
    for (int i = 0; i + 1 < 5; ++i) {
        const Panel *thin = findPanel(ids[i]), *thick = findPanel(ids[i + 1]);
        ASSERT_TRUE(thin && thick);
        EXPECT_EQ(thin->thickest_mm, thick->thinnest_mm);
        EXPECT_GE(thin->bendingAlong_MPa, thick->bendingAlong_MPa);
        EXPECT_GE(thin->stiffnessAlong_MPa, thick->stiffnessAlong_MPa);
    }
    EXPECT_EQ(findPanel("mdf-to-19mm")->bendingAlong_MPa, 20);  // as read
}

TEST(Panels, HostileRowsAreNamed)
{
    const std::string head =
        "id,name,thinnest_mm,thickest_mm,density_kg_m3,bending_along_MPa,bending_across_MPa,"
        "stiffness_along_MPa,stiffness_across_MPa,planar_shear_along_MPa,planar_shear_across_MPa,"
        "panel_shear_MPa,source\n";
    ASSERT_TRUE(readPanels(head + "p,p,3,4,700,60,10,16000,1000,,,,s\n"));
    const Result<std::vector<Panel>> turned = readPanels(head + "p,p,4,3,700,60,10,16000,1000,,,,s\n");
    ASSERT_FALSE(turned);
    EXPECT_EQ(turned.error().where, "panels.csv, line 2, column thickest_mm");
    const Result<std::vector<Panel>> zero = readPanels(head + "p,p,3,4,700,60,0,16000,1000,,,,s\n");
    ASSERT_FALSE(zero);
    EXPECT_EQ(zero.error().where, "panels.csv, line 2, column bending_across_MPa");
}

}  // namespace
}  // namespace lidwright
