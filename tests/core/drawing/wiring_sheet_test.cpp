#include "core/drawing/wiring_sheet.h"

#include "tests/core/drawing/drawn_plans.h"
#include "tests/support/inside_plans.h"

#include "core/drawing/template_sheets.h"

#include <map>
#include <numeric>
#include <set>

namespace lidwright {
namespace {

using testing::deviceAt;
using testing::furnishedPlan;

Sheet sheetOf(const Plan& plan)
{
    return templateSheet(plan, derive(plan), TemplateKind::Wiring, unitStyle(plan));
}

Plan planOf(std::initializer_list<DeviceKind> kinds)
{
    Plan plan;
    for (const DeviceKind kind : kinds)
        plan.wiring.push_back(deviceAt(kind, DevicePlace::Lid, 200, 60));
    return plan;
}

bool says(const Sheet& sheet, const std::string& words)
{
    std::string all;
    for (const Text& t : testing::allWords(sheet))
        all += t.words + " ";
    for (std::size_t at = all.find("\xC2\xA0"); at != std::string::npos; at = all.find("\xC2\xA0"))
        all.replace(at, 2, " ");
    return all.find(words) != std::string::npos;
}

/// Which ends of wires hang together on one layer: an independent reading of the drawing by its geometry
/// alone. Wires join where an end of one lies on another.
class Net {
public:
    Net(const Sheet& sheet, const std::string& layer)
    {
        for (const Element& e : sheet.elements)
            if (const auto* s = std::get_if<Stroke>(&e.what); s && e.layer == layer)
                m_wires.push_back(s->points);
        m_root.resize(m_wires.size());
        std::iota(m_root.begin(), m_root.end(), std::size_t{0});
        for (std::size_t i = 0; i < m_wires.size(); ++i)
            for (std::size_t k = 0; k < m_wires.size(); ++k)
                for (const Point end : {m_wires[i].front(), m_wires[i].back()})
                    if (i != k && on(m_wires[k], end)) m_root[find(i)] = find(k);
    }
    /// The net that passes the point; npos for none.
    std::size_t at(Point p)
    {
        for (std::size_t i = 0; i < m_wires.size(); ++i)
            if (on(m_wires[i], p)) return find(i);
        return std::string::npos;
    }
    std::size_t nets()
    {
        std::set<std::size_t> roots;
        for (std::size_t i = 0; i < m_wires.size(); ++i)
            roots.insert(find(i));
        return roots.size();
    }

private:
    std::vector<std::vector<Point>> m_wires;
    std::vector<std::size_t> m_root;

    std::size_t find(std::size_t i)
    {
        while (m_root[i] != i)
            i = m_root[i];
        return i;
    }
    static bool on(const std::vector<Point>& wire, Point p)
    {
        for (std::size_t i = 1; i < wire.size(); ++i) {
            const Bounds b = bounds({wire[i - 1], wire[i]});
            if (b.grown(1e-6).contains(p)) return true;
        }
        return false;
    }
};

/// Middle of the largest closed line of a part's symbol.
Point middleOf(const Sheet& sheet, const std::string& part)
{
    Bounds box;
    for (const Element& e : sheet.elements)
        if (const auto* s = std::get_if<Stroke>(&e.what);
            s && e.part == part && e.layer == "wiring" && s->closed) {
            const Bounds b = bounds(s->points);
            if (box.empty() || b.width() * b.height() > box.width() * box.height()) box = b;
        }
    return box.centre();
}

TEST(WiringSheet, OnePickupPotAndSocketAreJoinedAsTheyMustBe)
{
    for (const DeviceKind kind :
         {DeviceKind::DiscPickup, DeviceKind::RodPickup, DeviceKind::MagneticPickup}) {
        const Sheet sheet = sheetOf(planOf({kind, DeviceKind::Pot, DeviceKind::Socket}));
        const Point pickup = middleOf(sheet, "wiring.1"), pot = middleOf(sheet, "wiring.2"),
                    socket = middleOf(sheet, "wiring.3");
        Net hot(sheet, "hot"), ground(sheet, "ground");
        const auto lug = [&](int number) { return pot + Point{6.0 * (number - 2), -14}; };
        // Hot: pickup to lug 1, wiper to tip; the two are not joined.
        const std::size_t in = hot.at(lug(1)), out = hot.at(lug(2));
        EXPECT_EQ(in, hot.at(pickup + Point{13, 0}));
        EXPECT_EQ(out, hot.at(socket - Point{9, 0}));
        EXPECT_NE(in, out);
        EXPECT_EQ(hot.nets(), 2U);
        EXPECT_EQ(hot.at(lug(3)), std::string::npos);
        // Ground: all in one, to sleeve, case and lug 3.
        EXPECT_EQ(ground.nets(), 1U);
        for (const Point p : {pickup - Point{13, 0}, lug(3), pot + Point{9, 0}, socket + Point{9, 0}})
            EXPECT_EQ(ground.at(p), ground.at(lug(3)));
        EXPECT_EQ(says(sheet, "to the bridge or what holds the strings"), kind == DeviceKind::MagneticPickup);
    }
}

TEST(WiringSheet, WithoutAPotItGoesStraightToTheSocket)
{
    const Sheet sheet = sheetOf(planOf({DeviceKind::DiscPickup, DeviceKind::Socket}));
    Net hot(sheet, "hot"), ground(sheet, "ground");
    EXPECT_EQ(hot.nets(), 1U);
    EXPECT_EQ(ground.nets(), 1U);
    EXPECT_EQ(hot.at(middleOf(sheet, "wiring.1") + Point{13, 0}),
              hot.at(middleOf(sheet, "wiring.2") - Point{9, 0}));
    EXPECT_FALSE(says(sheet, "lug 1"));
}

TEST(WiringSheet, TwoPickupsWithAPotEachMeetAtTheTipOnly)
{
    const Sheet sheet = sheetOf(planOf({DeviceKind::DiscPickup, DeviceKind::MagneticPickup, DeviceKind::Pot,
                                        DeviceKind::Pot, DeviceKind::Socket}));
    Net hot(sheet, "hot"), ground(sheet, "ground");
    EXPECT_EQ(hot.nets(), 3U);
    EXPECT_EQ(ground.nets(), 1U);
    const Point one = middleOf(sheet, "wiring.3"), two = middleOf(sheet, "wiring.4");
    EXPECT_EQ(hot.at(one - Point{0, 14}), hot.at(two - Point{0, 14}));
    EXPECT_NE(hot.at(one - Point{6, 14}), hot.at(two - Point{6, 14}));
    EXPECT_EQ(hot.at(middleOf(sheet, "wiring.2") + Point{13, 0}), hot.at(two - Point{6, 14}));
}

TEST(WiringSheet, TwoPickupsMayShareAPot)
{
    const Sheet sheet =
        sheetOf(planOf({DeviceKind::DiscPickup, DeviceKind::RodPickup, DeviceKind::Pot, DeviceKind::Socket}));
    Net hot(sheet, "hot");
    EXPECT_EQ(hot.nets(), 2U);
    EXPECT_EQ(hot.at(middleOf(sheet, "wiring.1") + Point{13, 0}),
              hot.at(middleOf(sheet, "wiring.2") + Point{13, 0}));
}

TEST(WiringSheet, ListAndCautionsAreThere)
{
    const Plan plan = furnishedPlan();
    const Sheet sheet = sheetOf(plan);
    for (const char* words : {"5 Output socket: treble side wall, 270 mm from the head-end wall, 30 mm below "
                              "the top edge. Hole 10 mm. "
                              "Bush 12 mm long.",
                              "6 Volume pot: head-end wall, 60 mm to the bass side", "Two wires to 5",
                              "Ground wire to the strings", "Fume", "Eyes", "battery",
                              "mains-powered equipment only by their makers' instructions", "licensed"})
        EXPECT_TRUE(says(sheet, words)) << words;
    EXPECT_TRUE(says(sheetOf(planOf({DeviceKind::Pot})), "no pickup yet"));
    EXPECT_TRUE(says(sheetOf(planOf({DeviceKind::DiscPickup})), "no output socket yet"));
}

TEST(WiringSheet, NoWordsLieOverOthersAndOrdinaryOnesFitAPage)
{
    const std::set<double> series{2.5, 3.5, 5, 7};
    std::vector<Plan> plans{furnishedPlan(),
                            planOf({DeviceKind::DiscPickup, DeviceKind::Pot, DeviceKind::Socket}),
                            planOf({DeviceKind::Socket}), planOf({DeviceKind::Pot, DeviceKind::Pot})};
    for (Plan& plan : plans)
        for (const PlanUnit unit : {PlanUnit::Millimetre, PlanUnit::InchFraction}) {
            plan.sheet.unit = unit;
            const Sheet sheet = sheetOf(plan);
            EXPECT_THAT(testing::wordsOverWords(sheet), ::testing::IsEmpty());
            // A4 between margins of 10 mm, with the page's footer; more than four parts may go on another
            // page.
            EXPECT_LE(sheet.extent.width(), 190);
            if (plan.wiring.size() <= 4) {
                EXPECT_LE(sheet.extent.height(), 263);
            }
            for (const Text& t : testing::allWords(sheet))
                EXPECT_TRUE(series.count(t.height)) << t.words;
        }
}

TEST(WiringSheet, ALongListIsDrawnInPartAndListedWhole)
{
    Plan plan;
    for (int i = 0; i < kMostPieces; ++i)
        plan.wiring.push_back(deviceAt(DeviceKind::DiscPickup, DevicePlace::Lid, 200, 60));
    const Sheet sheet = sheetOf(plan);
    EXPECT_TRUE(says(sheet, "64 Contact pickup, disc:"));
    EXPECT_TRUE(says(sheet, "not drawn (60)"));
    EXPECT_THAT(testing::wordsOverWords(sheet), ::testing::IsEmpty());
}

}  // namespace
}  // namespace lidwright
