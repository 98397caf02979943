#include "core/plan/row_builders.h"

namespace lidwright::rows {
namespace {

constexpr ChoiceWord kHolds[] = {{"nut", "nut from the box"},
                                 {"saddle", "saddle from the tail-end wall"},
                                 {"both", "both, as they stand"}};
constexpr ChoiceWord kFretboardEnds[] = {{"at-box", "ends at the box"}, {"over-lid", "runs over the lid"}};

bool nutHeld(const Plan& plan, int)
{
    return plan.scale.hold != ScaleHold::SaddleToTail;
}
bool saddleHeld(const Plan& plan, int)
{
    return plan.scale.hold != ScaleHold::NutToBox;
}
bool overLid(const Plan& plan, int)
{
    return plan.fretboard.end == FretboardEnd::OverLid;
}
bool headCut(const Plan& plan, int)
{
    return plan.headOpening.cut;
}
bool tailCut(const Plan& plan, int)
{
    return plan.tailOpening.cut;
}

std::vector<Parameter> scaleRows()
{
    return {
        length<&Plan::scale, &Scale::length>("scale.length", "Scale length", {150, 1200}, practice(520, 660),
                                             "Nut's front edge to saddle line, without setback."),
        choice<&Plan::scale, &Scale::hold>(
            "scale.hold", "What is held", kHolds,
            "Which station stays where it is put; the other follows by the scale length."),
        length<&Plan::scale, &Scale::nutToBox>("scale.nut-to-box", "Nut to box", {0, 1200}, kNone,
                                               "Nut's front edge to the head-end wall's outer face.",
                                               nutHeld),
        length<&Plan::scale, &Scale::setback>("scale.setback", "Setback of the saddle", {-10, 20},
                                              practice(1, 4),
                                              "How far beyond the scale length the saddle stands, where the "
                                              "neck's centre line crosses it; the bridge's "
                                              "angle slants it."),
        length<&Plan::scale, &Scale::nutForward>(
            "scale.nut-forward", "Nut moved forward", {0, 6},
            {0, 1,
             "0 to about 1 mm: nut compensation of classical guitars, G. Byers, American Lutherie 47 "
             "(1996), from memory"},
            "How much nearer to the first fret the nut's front edge stands than the scale length has it; "
            "frets stay where they are.",
            [](const Plan& plan, int) {
                return !(plan.frets.zeroFret && plan.frets.kind == FretKind::Wire);
            }),
        length<&Plan::scale, &Scale::saddleToTail>(
            "scale.saddle-to-tail", "Saddle to tail-end wall", {-500, 1400}, practice(40, 130),
            "Saddle line to the tail-end wall's outer face.", saddleHeld),
    };
}

std::vector<Parameter> neckPartRows()
{
    return {
        length<&Plan::neck, &Neck::blankLength>("neck.blank-length", "Blank length", {100, 3000},
                                                practice(800, 1250), "Length of the stick as it was bought."),
        length<&Plan::neck, &Neck::width>("neck.width", "Width", {10, 150}, practice(32, 50),
                                          "Width of the stick."),
        length<&Plan::neck, &Neck::thickness>("neck.thickness", "Thickness", {6, 100}, practice(18, 30),
                                              "Thickness of the stick, without the fretboard."),
        length<&Plan::neck, &Neck::offset>(
            "neck.offset", "Side offset", {-400, 400}, kNone,
            "How far the neck's centre line lies to the treble side of the box's."),
        length<&Plan::neck, &Neck::top>(
            "neck.top", "Top above lid's underside", {-200, 60}, kNone,
            "Where the stick's untouched top lies: 0 right under the lid; the lid's thickness "
            "flush with its top, with a seat cut for it; negative lowered, in a mortise."),
        number<&Plan::neck, &Neck::tilt>(
            "neck.tilt", "Tilt", Quantity::Angle, {-3, 3}, practice(0, 1.5),
            "How far the stick leans back: its head lower, its tail higher, turned about its top at the "
            "head-end wall's outer face."),
        length<&Plan::neck, &Neck::headLength>("neck.head-length", "Head length", {20, 500},
                                               practice(100, 200),
                                               "End of the stick to the nut's front edge."),
        length<&Plan::neck, &Neck::tailLength>("neck.tail-length", "Tail length", {0, 300}, practice(10, 50),
                                               "The stub beyond the tail-end wall's outer face."),
    };
}

template <auto Opening>
std::vector<Parameter> openingRows(const char* cut, const char* centre, const char* width, const char* depth,
                                   const char* strip, ActiveTest isCut)
{
    return {
        flag<Opening, &WallOpening::cut>(
            cut, "Already cut", "Set when the opening is there; its measures are then entered below."),
        length<Opening, &WallOpening::centre>(
            centre, "Centre", {-500, 500}, kNone,
            "Middle of the opening, from the box's centre line to the treble side.", isCut),
        length<Opening, &WallOpening::width>(width, "Width", {1, 300}, kNone,
                                             "Width of the opening as it stands.", isCut),
        length<Opening, &WallOpening::depth>(depth, "Depth", {1, 400}, kNone,
                                             "From the wall's top edge down to the opening's floor.", isCut),
        length<Opening, &WallOpening::strip>(
            strip, "Strip above", {0, 300}, kNone,
            "Wood left above the opening; 0 for a notch open at the top edge.", isCut),
    };
}

std::vector<Parameter> fretboardRows()
{
    return {
        length<&Plan::fretboard, &Fretboard::blankLength>("fretboard.blank-length", "Blank length",
                                                          {50, 1500}, practice(400, 550),
                                                          "Length of the fretboard blank as it was bought."),
        length<&Plan::fretboard, &Fretboard::thickness>("fretboard.thickness", "Thickness", {0.5, 20},
                                                        practice(4, 8),
                                                        "Thickness of the fretboard without frets."),
        length<&Plan::fretboard, &Fretboard::widthAtNut>("fretboard.width-at-nut", "Width at nut", {10, 150},
                                                         practice(28, 48), "Width at the nut."),
        length<&Plan::fretboard, &Fretboard::widthAtEnd>("fretboard.width-at-end", "Width at end", {10, 150},
                                                         practice(30, 58), "Width where the fretboard ends."),
        choice<&Plan::fretboard, &Fretboard::end>("fretboard.end", "Ends", kFretboardEnds,
                                                  "Whether it ends at the box or runs over the lid."),
        length<&Plan::fretboard, &Fretboard::overLid>(
            "fretboard.over-lid", "Length over lid", {0, 800}, practice(10, 120),
            "How far it runs past the head-end wall's outer face.", overLid),
    };
}

std::vector<Parameter> bridgeRows()
{
    return {
        length<&Plan::bridge, &Bridge::length>("bridge.length", "Length", {10, 400}, practice(60, 160),
                                               "Footprint on the lid across the strings."),
        length<&Plan::bridge, &Bridge::width>(
            "bridge.width", "Width", {2, 120}, practice(8, 35),
            "Footprint on the lid along the strings; the saddle line runs over its middle."),
        length<&Plan::bridge, &Bridge::height>("bridge.height", "Height", {1, 80}, practice(6, 25),
                                               "Lid's top to the saddle's crown."),
        length<&Plan::bridge, &Bridge::artMargin>(
            "bridge.art-margin", "Margin to artwork", {0, 60}, practice(2, 6),
            "Least distance between the bridge and any artwork or hole."),
        number<&Plan::bridge, &Bridge::angle>(
            "bridge.angle", "Angle", Quantity::Angle, {-45, 45}, practice(0, 6),
            "How far the bridge is turned counter-clockwise, seen from the front."),
    };
}

}  // namespace

std::vector<Parameter> neckRows()
{
    std::vector<Parameter> all = scaleRows();
    for (auto&& group :
         {neckPartRows(),
          openingRows<&Plan::headOpening>("head-opening.cut", "head-opening.centre", "head-opening.width",
                                          "head-opening.depth", "head-opening.strip", headCut),
          openingRows<&Plan::tailOpening>("tail-opening.cut", "tail-opening.centre", "tail-opening.width",
                                          "tail-opening.depth", "tail-opening.strip", tailCut),
          fretboardRows(), bridgeRows()})
        all.insert(all.end(), group.begin(), group.end());
    return all;
}

}  // namespace lidwright::rows
