#include "core/plan/row_builders.h"

/// What the end of the stick beyond the nut is like.
namespace lidwright::rows {
namespace {

constexpr ChoiceWord kShapes[] = {
    {"thinned", "straight, thinned"}, {"scarfed", "angled, scarf joint"}, {"tree", "straight, string tree"}};
constexpr ChoiceWord kSides[] = {{"both", "both sides, an odd one bass"},
                                 {"both-odd-treble", "both sides, an odd one treble"},
                                 {"bass", "in line on the bass side"},
                                 {"treble", "in line on the treble side"}};

bool scarfed(const Plan& plan, int)
{
    return plan.head.shape == HeadShape::Scarfed;
}
bool stepped(const Plan& plan, int)
{
    return plan.head.shape != HeadShape::Scarfed;
}
bool withTree(const Plan& plan, int)
{
    return plan.head.shape == HeadShape::Tree;
}

std::vector<Parameter> shapeRows()
{
    return {
        choice<&Plan::head, &Head::shape>("head.shape", "Shape", kShapes,
                                          "How the head comes lower than the strings at the nut."),
        length<&Plan::head, &Head::width>(
            "head.width", "Width", {0, 200}, kNone,
            "Width of the head; 0 takes the neck's. Ears are glued on where it is wider than the stick."),
        length<&Plan::head, &Head::thickness>("head.thickness", "Thickness left", {3, 100}, practice(13, 18),
                                              "Wood left where the tuners sit; not more than the stick has."),
        length<&Plan::head, &Head::step>(
            "head.step", "Step behind the nut", {0, 200}, practice(6, 15),
            "Nut's front edge to where the head begins to go down, or where a string tree's head is thinned "
            "from behind."),
        length<&Plan::head, &Head::ramp>("head.ramp", "Slope of the step", {0, 200}, practice(0, 25),
                                         "Length of the slope by which the head is thinned.", stepped),
        number<&Plan::head, &Head::angle>(
            "head.angle", "Angle of the head", Quantity::Angle, {2, 40}, practice(10, 17),
            "How far a scarfed head leans back; the stick is sawn across at this angle.", scarfed),
        length<&Plan::head, &Head::treeAt>(
            "head.tree-at", "String tree behind the nut", {2, 400}, practice(15, 40),
            "Nut's front edge to the bar that holds the strings down.", withTree),
        length<&Plan::head, &Head::treeHeight>(
            "head.tree-height", "Strings under the tree", {0, 30}, practice(1.5, 4),
            "Head's face to the tree's underside, against which the strings lie.", withTree),
    };
}

std::vector<Parameter> tunerRows()
{
    return {
        choice<&Plan::tuners, &Tuners::side>(
            "tuners.side", "Tuners on", kSides,
            "At which edge of the head the tuners sit; the outer strings go to the nearest posts."),
        length<&Plan::tuners, &Tuners::first>("tuners.first", "First post behind the nut", {5, 400},
                                              practice(35, 60),
                                              "Nut's front edge to the nearest post, along the head."),
        length<&Plan::tuners, &Tuners::spacing>("tuners.spacing", "Post to post", {1, 200}, practice(24, 45),
                                                "Along the head, from one post of a row to the next."),
        length<&Plan::tuners, &Tuners::edge>("tuners.edge", "Posts from the edge", {0, 150}, practice(9, 16),
                                             "Head's edge to the middles of the posts that sit at it."),
        length<&Plan::tuners, &Tuners::hole>("tuners.hole", "Post hole", {2, 20}, practice(6.5, 10),
                                             "Diameter drilled through the head; measure the tuner in hand."),
        length<&Plan::tuners, &Tuners::bush>("tuners.bush", "Bush collar", {2, 30}, practice(8, 15),
                                             "Diameter of the bush where it lies on the head's face."),
        length<&Plan::tuners, &Tuners::bushLength>("tuners.bush-length", "Bush length", {0, 40},
                                                   practice(5, 12),
                                                   "How deep the bush reaches into the hole."),
        length<&Plan::tuners, &Tuners::post>("tuners.post", "Post", {2, 15}, practice(5, 6.5),
                                             "Diameter of the post where the string winds on."),
        length<&Plan::tuners, &Tuners::reach>(
            "tuners.reach", "Plate to string hole", {3, 80}, practice(19, 26),
            "From the head's back, where the plate lies, to the middle of the hole for the string."),
        length<&Plan::tuners, &Tuners::tip>("tuners.tip", "Post above its hole", {0, 20}, practice(2, 5),
                                            "Middle of the string hole to the post's end."),
        number<&Plan::tuners, &Tuners::windings>(
            "tuners.windings", "Turns on the post", Quantity::Count, {0, 12}, practice(2, 4),
            "Turns of a tuned string; each lies below the one before, so the string leaves the post lower."),
        length<&Plan::tuners, &Tuners::plateLength>("tuners.plate-length", "Plate length", {3, 120},
                                                    practice(25, 40),
                                                    "Of the gear plate behind the head, along the head."),
        length<&Plan::tuners, &Tuners::plateWidth>(
            "tuners.plate-width", "Plate width", {3, 80}, practice(10, 18),
            "Of the gear plate, across the head; the post stands in its middle."),
        length<&Plan::tuners, &Tuners::plateBefore>(
            "tuners.plate-before", "Plate toward the nut", {0, 100}, practice(6, 20),
            "From the post's middle to the plate's end on the nut's side."),
        number<&Plan::tuners, &Tuners::mass_kg>(
            "tuners.mass", "Weight of one", Quantity::Mass, {0.001, 0.3}, practice(0.02, 0.06),
            "Of one tuner with its button and screws; weigh the tuner in hand."),
    };
}

}  // namespace

std::vector<Parameter> headRows()
{
    std::vector<Parameter> all = shapeRows();
    auto tuners = tunerRows();
    all.insert(all.end(), tuners.begin(), tuners.end());
    return all;
}

}  // namespace lidwright::rows
