#include "core/materials/panel.h"
#include "core/materials/wood.h"
#include "core/plan/row_builders.h"

namespace lidwright::rows {
namespace {

constexpr ChoiceWord kGrains[] = {{"along", "along the neck"}, {"across", "across the neck"}};
constexpr ChoiceWord kSawn[] = {{"quarter", "quarter-sawn, rings upright"},
                                {"flat", "flat-sawn, rings lying"}};
constexpr ChoiceWord kBackingKinds[] = {
    {"wire-cloth", "wire cloth"}, {"perforated", "perforated sheet"}, {"panel", "thin panel"}};
constexpr ChoiceWord kFixingKinds[] = {{"screw", "screw"}, {"pin", "alignment pin"}};
constexpr ChoiceWord kWeaves[] = {{"woven", "woven"}, {"welded", "welded"}};
constexpr ChoiceWord kHolePatterns[] = {{"round-staggered", "round, staggered at 60°"},
                                        {"round-square", "round, in square rows"},
                                        {"square", "square, in square rows"}};

bool isKind(const Plan& plan, int index, BackingKind kind)
{
    return plan.backingLayers[static_cast<std::size_t>(index)].kind == kind;
}
bool cloth(const Plan& plan, int index)
{
    return isKind(plan, index, BackingKind::WireCloth);
}
bool perforated(const Plan& plan, int index)
{
    return isKind(plan, index, BackingKind::Perforated);
}
bool panel(const Plan& plan, int index)
{
    return isKind(plan, index, BackingKind::Panel);
}
bool notCloth(const Plan& plan, int index)
{
    return !cloth(plan, index);
}

template <auto Member>
Parameter layerLength(const char* key, const char* label, Range range, Customary customary, const char* help,
                      ActiveTest active)
{
    return eachLength<&Plan::backingLayers, Member>(key, label, range, customary, help, active);
}

template <auto Member>
Parameter layerChoice(const char* key, const char* label, std::span<const ChoiceWord> words, const char* help,
                      ActiveTest active = nullptr)
{
    Parameter p = eachChoice<&Plan::backingLayers, Member>(key, label, words, help);
    p.active = active;
    return p;
}

}  // namespace

std::span<const ChoiceWord> materialWords()
{
    static const std::vector<ChoiceWord> words = [] {
        std::vector<ChoiceWord> all = wordsOf(woods());
        const std::vector<ChoiceWord> boards = wordsOf(panels());
        all.insert(all.end(), boards.begin(), boards.end());
        return all;
    }();
    return words;
}

std::vector<Parameter> lidWoodRows()
{
    return {
        idChoice<&Plan::lid, &Lid::material, materialWords>(
            "lid.material", "Material", "What the lid is made of; thin places are judged by its strength."),
        choice<&Plan::lid, &Lid::grain>("lid.grain", "Grain", kGrains,
                                        "Which way the lid's grain runs; of plywood that of the face ply."),
        choice<&Plan::lid, &Lid::sawn>(
            "lid.sawn", "Sawn", kSawn,
            "How a solid lid was sawn: its stiffness across the grain goes by the growth rings.",
            [](const Plan& plan, int) { return findWood(plan.lid.material) != nullptr; }),
    };
}

std::vector<Parameter> artMendRows()
{
    return {
        zeroForNone(eachLength<&Plan::art, &ArtPiece::strengthen>(
            "art.#.strengthen", "Strengthen to", {0, 50}, practice(2, 8),
            "Thin wood between the cuts is made this wide by "
            "pulling the cuts' edges back there; 0 leaves the "
            "drawing as it is.")),
        zeroForNone(eachNumber<&Plan::art, &ArtPiece::ties>(
            "art.#.ties", "Ties", Quantity::Count, {0, 8}, practice(2, 4),
            "How many ties hold each piece that would drop out; 0 lets it fall.")),
    };
}

std::vector<Parameter> tieRows()
{
    return {
        count<&Plan::ties>("tie.count", "Ties at picked places",
                           "How many ties stand where they were picked; each bridges the cut at its place."),
        eachNumber<&Plan::ties, &TieSpot::art>("tie.#.art", "Artwork number", Quantity::Count,
                                               {1, kMostPieces}, kNone,
                                               "Which drawing it belongs to; it moves with that one."),
        eachLength<&Plan::ties, &TieSpot::x>("tie.#.x", "Along the drawing", {-2500, 2500}, kNone,
                                             "From the drawing's middle to its right, at the size that the "
                                             "file gave."),
        eachLength<&Plan::ties, &TieSpot::y>(
            "tie.#.y", "Up the drawing", {-2500, 2500}, kNone,
            "From the drawing's middle to its top, at the size that the file gave."),
        eachLength<&Plan::ties, &TieSpot::width>("tie.#.width", "Width", {0.2, 50}, practice(3, 8),
                                                 "Wood left across the cut."),
    };
}

std::vector<Parameter> fixingRows()
{
    return {
        count<&Plan::fixings>("fixing.count", "Fixing holes",
                              "How many holes the lid has for screws and pins."),
        eachChoice<&Plan::fixings, &LidFixing::kind>(
            "fixing.#.kind", "Kind", kFixingKinds,
            "A screw that holds the lid down, or a pin that keeps it in place while it is cut or glued."),
        eachLength<&Plan::fixings, &LidFixing::x>(
            "fixing.#.x", "From head-end wall", {-1000, 2500}, kNone,
            "Centre, along the neck from the head-end wall's outer face."),
        eachLength<&Plan::fixings, &LidFixing::y>("fixing.#.y", "From centre line", {-1000, 1000}, kNone,
                                                  "Centre, from the centre line to the treble side."),
        eachLength<&Plan::fixings, &LidFixing::diameter>(
            "fixing.#.diameter", "Diameter", {0.3, 50}, practice(2, 6),
            "Of the hole; for a screw its clearance hole, a little more than the screw's own diameter."),
    };
}

std::vector<Parameter> backingRows()
{
    return {
        length<&Plan::backing, &Backing::overlap>(
            "backing-fit.overlap", "Overlap", {0, 100}, practice(6, 20),
            "How far the backing reaches beyond the cuts, to be glued there."),
        length<&Plan::backing, &Backing::room>(
            "backing-fit.room", "Room", {0, 50}, practice(0.5, 3),
            "Kept free between the backing and walls, blocks, neck and bridge area."),
        count<&Plan::backingLayers>("backing.count", "Backing layers",
                                    "How many layers lie under the artwork; the first against the lid."),
        layerChoice<&BackingLayer::kind>("backing.#.kind", "Kind", kBackingKinds,
                                         "Wire cloth, perforated sheet, or a thin panel with one opening."),
        layerLength<&BackingLayer::opening>("backing.#.opening", "Opening", {0.02, 100}, practice(0.5, 12),
                                            "Clear width between two wires.", cloth),
        layerLength<&BackingLayer::wire>("backing.#.wire", "Wire", {0.01, 10}, practice(0.2, 1.2),
                                         "Diameter of the wire.", cloth),
        layerChoice<&BackingLayer::weave>("backing.#.weave", "Weave", kWeaves,
                                          "Whether the wires are woven or welded where they cross.", cloth),
        layerChoice<&BackingLayer::holes>("backing.#.holes", "Holes", kHolePatterns,
                                          "Shape of the holes and how they stand.", perforated),
        layerLength<&BackingLayer::hole>("backing.#.hole", "Hole", {0.05, 100}, practice(1, 10),
                                         "Diameter, or side of a square hole.", perforated),
        layerLength<&BackingLayer::pitch>("backing.#.pitch", "Pitch", {0.05, 200}, practice(2, 15),
                                          "From the middle of one hole to the next.", perforated),
        layerLength<&BackingLayer::thickness>("backing.#.thickness", "Thickness", {0.05, 20},
                                              practice(0.5, 3), "Of the sheet or panel.", notCloth),
        layerLength<&BackingLayer::rim>(
            "backing.#.rim", "Rim", {0, 60}, practice(1, 6),
            "How much larger than the artwork the panel's own opening is, all round.", panel),
    };
}

std::vector<Parameter> cutterRows()
{
    return {
        length<&Plan::cutter, &Cutter::kerf>(
            "cutter.kerf", "Kerf", {0, 5}, practice(0.1, 1.2),
            "Width that the beam or blade takes away: about 0.1 to 0.3 mm for a laser, 0.5 to 1.2 mm for a "
            "scroll saw; ask your cutter for a test strip."),
        flag<&Plan::cutter, &Cutter::compensate>(
            "cutter.compensate", "Take off the kerf",
            "The cutter's file moves each line by half the kerf, so that the finished part has the drawn "
            "size; only where the cutter does not do it."),
        length<&Plan::cutter, &Cutter::leastWeb>(
            "cutter.least-web", "Narrowest web", {0.1, 50}, practice(2, 8),
            "Wood left between two cuts, or a cut and an edge, is asked to be this wide; not less than the "
            "lid's thickness."),
        number<&Plan::cutter, &Cutter::press>(
            "cutter.press", "Finger press", Quantity::Force, {1, 500},
            {10, 50, "IEC 62368-1 (2018), Annex V: a rigid test finger is pressed with 30 N"},
            "Force of a finger on a thin place, square to the lid."),
        number<&Plan::cutter, &Cutter::safety>("cutter.safety", "Factor of safety", Quantity::Ratio,
                                               {0.5, 20}, practice(2, 4),
                                               "How many times the finger press a thin place must stand: "
                                               "woods scatter, knots and notches weaken."),
        length<&Plan::cutter, &Cutter::tieWidth>("cutter.tie-width", "Tie width", {0.2, 50}, practice(3, 8),
                                                 "Width of the ties that hold pieces which would drop out."),
    };
}

}  // namespace lidwright::rows
