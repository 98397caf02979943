#include "core/plan/row_builders.h"

namespace lidwright::rows {
namespace {

constexpr ChoiceWord kUnits[] = {
    {"mm", "millimetres"}, {"inch", "inches, decimal"}, {"inch-fraction", "inches, fractions"}};
constexpr ChoiceWord kProjections[] = {{"first-angle", "first angle"}, {"third-angle", "third angle"}};
constexpr ChoiceWord kBoxShapes[] = {{"rectangle", "rectangle"}, {"outline", "outline from a drawing"}};
constexpr ChoiceWord kLidSeats[] = {{"on-walls", "laid on the walls"},
                                    {"let-in", "let in between the walls"}};
constexpr ChoiceWord kBaseFastenings[] = {{"glue", "glue"}, {"screws", "screws"}, {"nails", "nails"}};
constexpr ChoiceWord kLidFastenings[] = {{"glue", "glue"}, {"screws", "screws, it can be taken off"}};
constexpr ChoiceWord kHoleKinds[] = {{"circle", "circle"}, {"slot", "slot"}};

bool fastenedBase(const Plan& plan, int)
{
    return plan.box.baseFastening != BaseFastening::Glued;
}

bool rectangular(const Plan& plan, int)
{
    return plan.box.shape == BoxShape::Rectangle;
}
bool fractions(const Plan& plan, int)
{
    return plan.sheet.unit == PlanUnit::InchFraction;
}
bool slot(const Plan& plan, int index)
{
    return plan.holes[static_cast<std::size_t>(index)].kind == HoleKind::Slot;
}

const std::string& artName(const Plan& plan, int index)
{
    return plan.art[static_cast<std::size_t>(index)].name;
}
void setArtName(Plan& plan, int index, const std::string& value)
{
    plan.art[static_cast<std::size_t>(index)].name = value;
}

Parameter artNameRow()
{
    Parameter p{"art.#.name",
                "Name",
                Quantity::Text,
                0,
                200,
                0,
                0,
                "",
                "What this drawing is called on the paper.",
                {}};
    p.getText = artName;
    p.setText = setArtName;
    p.size = sizeOf<&Plan::art>;
    return p;
}

std::vector<Parameter> sheetRows()
{
    return {
        text<&Plan::sheet, &Sheetwork::title>("sheet.title", "Title", 200,
                                              "Name of the instrument, shown on every sheet."),
        text<&Plan::sheet, &Sheetwork::maker>("sheet.maker", "Maker", 200,
                                              "Who builds it, shown on every sheet."),
        text<&Plan::sheet, &Sheetwork::notes>("sheet.notes", "Notes", 20000,
                                              "Anything worth keeping with the plan."),
        choice<&Plan::sheet, &Sheetwork::unit>(
            "sheet.unit", "Unit", kUnits,
            "Unit of all lengths on screen and paper, and of numbers typed without one."),
        number<&Plan::sheet, &Sheetwork::fraction>("sheet.fraction", "Finest fraction", Quantity::Count,
                                                   {16, 64}, kNone,
                                                   "Finest part of an inch shown: 16, 32 or 64.", fractions),
        choice<&Plan::sheet, &Sheetwork::projection>("sheet.projection", "Views", kProjections,
                                                     "How the views are laid round the top view: first angle "
                                                     "(ISO practice) or third angle (American practice)."),
    };
}

std::vector<Parameter> boxRows()
{
    return {
        choice<&Plan::box, &Box::shape>("box.shape", "Shape", kBoxShapes,
                                        "A rectangular box, or a body whose outline comes from a drawing."),
        length<&Plan::box, &Box::length>("box.length", "Length", {60, 1500}, practice(180, 450),
                                         "Outside length along the neck, from end wall to end wall."),
        length<&Plan::box, &Box::width>("box.width", "Width", {40, 1000}, practice(120, 320),
                                        "Outside width across the neck."),
        length<&Plan::box, &Box::cornerRadius>("box.corner-radius", "Corner radius", {0, 400},
                                               practice(0, 30), "Rounding of the four outside corners.",
                                               rectangular),
        length<&Plan::box, &Box::height>(
            "box.height", "Height", {15, 400}, practice(35, 110),
            "Outside, from under the base to the walls' top edge; a lid laid on the walls adds to it."),
        length<&Plan::box, &Box::endWall>("box.end-wall", "End wall", {1, 60}, practice(3, 15),
                                          "Thickness of the two walls that the neck crosses.", rectangular),
        length<&Plan::box, &Box::sideWall>(
            "box.side-wall", "Side wall", {1, 60}, practice(3, 15),
            "Thickness of the side walls; of the whole wall where the outline is free."),
        length<&Plan::box, &Box::base>("box.base", "Base", {0.5, 40}, practice(2, 8),
                                       "Thickness of the base."),
        idChoice<&Plan::box, &Box::material, materialWords>("box.material", "Material",
                                                            "Of walls and base; the weight goes by it."),
        choice<&Plan::box, &Box::baseFastening>("box.base-fastening", "Base held by", kBaseFastenings,
                                                "What holds the base to the walls."),
        length<&Plan::box, &Box::baseSpacing>(
            "box.base-spacing", "From screw to screw", {10, 500}, practice(50, 120),
            "Of the base's screws or nails, through the walls into its edge, at most.", fastenedBase),
    };
}

std::vector<Parameter> lidRows()
{
    return {
        length<&Plan::lid, &Lid::thickness>("lid.thickness", "Thickness", {0.5, 25}, practice(2, 6),
                                            "Thickness of the lid, which is the soundboard."),
        choice<&Plan::lid, &Lid::seat>(
            "lid.seat", "Seat", kLidSeats,
            "Whether the lid lies on the walls' top edges or between the walls, flush with them."),
        choice<&Plan::lid, &Lid::fastening>(
            "lid.fastening", "Held by", kLidFastenings,
            "Glue clamps the lid's edge; screws let it be taken off and hold it as a hinge does."),
        length<&Plan::lid, &Lid::edgeMargin>("lid.edge-margin", "Edge margin", {0, 150}, practice(6, 25),
                                             "Artwork and holes stay at least this far from the lid's edge."),
    };
}

std::vector<Parameter> artRows()
{
    return {
        artNameRow(),
        eachLength<&Plan::art, &ArtPiece::x>(
            "art.#.x", "From head-end wall", {-1000, 2500}, kNone,
            "Middle of the drawing, along the neck from the head-end wall's outer face."),
        eachLength<&Plan::art, &ArtPiece::y>(
            "art.#.y", "From centre line", {-1000, 1000}, kNone,
            "Middle of the drawing, from the centre line to the treble side."),
        eachNumber<&Plan::art, &ArtPiece::turn>("art.#.turn", "Turn", Quantity::Angle, {-360, 360}, kNone,
                                                "Turned counter-clockwise, seen from the front."),
        eachNumber<&Plan::art, &ArtPiece::scale>("art.#.scale", "Scale", Quantity::Ratio, {0.01, 100}, kNone,
                                                 "1 is the size that the file gave."),
        [] {
            Parameter p = eachNumber<&Plan::art, &ArtPiece::mirrored>(
                "art.#.mirrored", "Mirrored", Quantity::Flag, {0, 1}, kNone,
                "Left and right changed before it is turned.");
            return p;
        }(),
    };
}

std::vector<Parameter> holeRows()
{
    return {
        count<&Plan::holes>("hole.count", "Plain holes", "How many plain sound holes the lid has."),
        eachChoice<&Plan::holes, &SoundHole::kind>("hole.#.kind", "Kind", kHoleKinds,
                                                   "A round hole or a slot with round ends."),
        eachLength<&Plan::holes, &SoundHole::x>(
            "hole.#.x", "From head-end wall", {-1000, 2500}, kNone,
            "Centre, along the neck from the head-end wall's outer face."),
        eachLength<&Plan::holes, &SoundHole::y>("hole.#.y", "From centre line", {-1000, 1000}, kNone,
                                                "Centre, from the centre line to the treble side."),
        eachLength<&Plan::holes, &SoundHole::width>("hole.#.width", "Width", {0.5, 500}, practice(6, 100),
                                                    "Diameter of a circle, width of a slot."),
        eachLength<&Plan::holes, &SoundHole::length>("hole.#.length", "Length", {0.5, 1000},
                                                     practice(15, 200),
                                                     "Length of a slot over its round ends.", slot),
        eachNumber<&Plan::holes, &SoundHole::turn>("hole.#.turn", "Turn", Quantity::Angle, {-360, 360}, kNone,
                                                   "Direction of a slot against the centre line.", slot),
    };
}

void append(std::vector<Parameter>& to, std::vector<Parameter> what)
{
    to.insert(to.end(), what.begin(), what.end());
}

}  // namespace

std::vector<Parameter> bodyRows()
{
    std::vector<Parameter> all = sheetRows();
    append(all, boxRows());
    append(all, lidRows());
    append(all, lidWoodRows());
    append(all, artRows());
    append(all, artMendRows());
    append(all, tieRows());
    append(all, holeRows());
    append(all, fixingRows());
    append(all, backingRows());
    return all;
}

}  // namespace lidwright::rows
