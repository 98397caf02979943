#include "app/actions/action_table.h"

#include <QCoreApplication>

#include <array>

namespace lidwright {

namespace {

constexpr auto kNone = QKeySequence::UnknownKey;

// clang-format off
constexpr ActionEntry kActions[] = {
    {Command::New, "new", QT_TRANSLATE_NOOP("Actions", "&New"),
     QT_TRANSLATE_NOOP("Actions", "Start a fresh plan with customary measures"), "act_new", QKeySequence::New, "Ctrl+N"},
    {Command::Open, "open", QT_TRANSLATE_NOOP("Actions", "&Open..."),
     QT_TRANSLATE_NOOP("Actions", "Open a plan from a file"), "act_open", QKeySequence::Open, "Ctrl+O"},
    {Command::Save, "save", QT_TRANSLATE_NOOP("Actions", "&Save"),
     QT_TRANSLATE_NOOP("Actions", "Save the plan; the last version stays beside it with a ~ at the end of its name"), "act_save",
     QKeySequence::Save, "Ctrl+S"},
    {Command::SaveAs, "save-as", QT_TRANSLATE_NOOP("Actions", "Sa&ve as..."),
     QT_TRANSLATE_NOOP("Actions", "Save the plan under another name"), "act_save_as", QKeySequence::SaveAs, "Ctrl+Shift+S"},
    {Command::ExportPicture, "export-picture", QT_TRANSLATE_NOOP("Actions", "&Export picture..."),
     QT_TRANSLATE_NOOP("Actions", "Write the drawing on the board as a picture (PNG) or a scalable drawing (SVG)"),
     "act_export_picture", kNone, "Ctrl+E"},
    {Command::Quit, "quit", QT_TRANSLATE_NOOP("Actions", "&Quit"),
     QT_TRANSLATE_NOOP("Actions", "Close the window; unsaved work is asked about"), "", QKeySequence::Quit, "Ctrl+Q"},
    {Command::Paper, "paper", QT_TRANSLATE_NOOP("Actions", "&Paper..."),
     QT_TRANSLATE_NOOP("Actions", "Print full-size templates or write them as PDF"), "act_paper", QKeySequence::Print,
     "Ctrl+P"},
    {Command::BenchFolder, "bench-folder", QT_TRANSLATE_NOOP("Actions", "Ever&ything for the bench..."),
     QT_TRANSLATE_NOOP("Actions", "Write templates, build sheet, lists and the cutter's file into one folder"), "", kNone,
     "Ctrl+Alt+E"},
    {Command::CutFile, "cut-file", QT_TRANSLATE_NOOP("Actions", "Lid for the &cutter..."),
     QT_TRANSLATE_NOOP("Actions", "Write the lid with its artwork as the cutter needs it: SVG, DXF or PDF"), "act_cut_file",
     kNone, "Ctrl+L"},
    {Command::BuildSheet, "build-sheet", QT_TRANSLATE_NOOP("Actions", "Build s&heet..."),
     QT_TRANSLATE_NOOP("Actions", "Write the steps of the work with their measures and cautions as a page or a PDF"),
     "act_build_sheet", kNone, "Ctrl+Shift+P"},
    {Command::PrintBuildSheet, "print-build-sheet", QT_TRANSLATE_NOOP("Actions", "Print bu&ild sheet..."),
     QT_TRANSLATE_NOOP("Actions", "Look at the pages of the build sheet and print them"), "", kNone, "Ctrl+Alt+P"},
    {Command::PrintList, "print-list", QT_TRANSLATE_NOOP("Actions", "Print &list..."),
     QT_TRANSLATE_NOOP("Actions", "Look at the table that the studies show, with its notes, and print it"), "", kNone,
     "Ctrl+Alt+L"},

    {Command::Undo, "undo", QT_TRANSLATE_NOOP("Actions", "&Undo"),
     QT_TRANSLATE_NOOP("Actions", "Take back the last change"), "act_undo", QKeySequence::Undo, "Ctrl+Z"},
    {Command::Redo, "redo", QT_TRANSLATE_NOOP("Actions", "&Redo"),
     QT_TRANSLATE_NOOP("Actions", "Do again what was taken back"), "act_redo", QKeySequence::Redo, "Ctrl+Shift+Z"},
    {Command::DeletePart, "delete-part", QT_TRANSLATE_NOOP("Actions", "&Delete part"),
     QT_TRANSLATE_NOOP("Actions", "Take the selected artwork, hole, block, bar or other piece out of the plan"), "act_delete_part",
     QKeySequence::Delete, "Del"},
    {Command::PaintUses, "paint-uses", QT_TRANSLATE_NOOP("Actions", "Uses of the &paints..."),
     QT_TRANSLATE_NOOP("Actions", "Say for each colour of the selected artwork whether it is cut, engraved or left"),
     "act_paint_uses", kNone, "Ctrl+Shift+U"},

    {Command::FitAll, "fit-all", QT_TRANSLATE_NOOP("Actions", "Fit &all"),
     QT_TRANSLATE_NOOP("Actions", "Show the whole board"), "act_fit_all", kNone, "Ctrl+0"},
    {Command::FitTop, "fit-top", QT_TRANSLATE_NOOP("Actions", "Fit &top view"),
     QT_TRANSLATE_NOOP("Actions", "Fill the board with the lid as seen from the front"), "act_fit_top", kNone, "Ctrl+1"},
    {Command::FitSection, "fit-section", QT_TRANSLATE_NOOP("Actions", "Fit long &section"),
     QT_TRANSLATE_NOOP("Actions", "Fill the board with the section along the neck"), "act_fit_section", kNone, "Ctrl+2"},
    {Command::FitHeadEnd, "fit-head-end", QT_TRANSLATE_NOOP("Actions", "Fit &head-end view"),
     QT_TRANSLATE_NOOP("Actions", "Fill the board with the head-end wall"), "act_fit_head_end", kNone, "Ctrl+3"},
    {Command::FitTailEnd, "fit-tail-end", QT_TRANSLATE_NOOP("Actions", "Fit tai&l-end view"),
     QT_TRANSLATE_NOOP("Actions", "Fill the board with the tail-end wall"), "act_fit_tail_end", kNone, "Ctrl+4"},
    {Command::ZoomIn, "zoom-in", QT_TRANSLATE_NOOP("Actions", "Zoom &in"),
     QT_TRANSLATE_NOOP("Actions", "Show the middle of the board larger"), "act_zoom_in", QKeySequence::ZoomIn, "Ctrl++"},
    {Command::ZoomOut, "zoom-out", QT_TRANSLATE_NOOP("Actions", "Zoom &out"),
     QT_TRANSLATE_NOOP("Actions", "Show more of the board, smaller"), "act_zoom_out", QKeySequence::ZoomOut, "Ctrl+-"},
    {Command::UnderView, "under-view", QT_TRANSLATE_NOOP("Actions", "&Under view"),
     QT_TRANSLATE_NOOP("Actions", "Show the lid from below, mirrored as it lies when it is turned over"), "act_under_view",
     kNone, "Ctrl+U", true},
    {Command::Snapping, "snapping", QT_TRANSLATE_NOOP("Actions", "S&nap while dragging"),
     QT_TRANSLATE_NOOP("Actions", "Let centre line, edges and stations attract what is dragged"), "act_snapping", kNone, "F9",
     true},

    {Command::PartsSide, "parts-side", QT_TRANSLATE_NOOP("Actions", "&Parts"),
     QT_TRANSLATE_NOOP("Actions", "Unfold or fold away the parts at the left"), "act_parts_side", kNone, "F7", true},
    {Command::FindingsSide, "findings-side", QT_TRANSLATE_NOOP("Actions", "&Findings"),
     QT_TRANSLATE_NOOP("Actions", "Unfold or fold away the findings at the right"), "act_findings_side", kNone, "F8", true},
    {Command::ThinPlaces, "thin-places", QT_TRANSLATE_NOOP("Actions", "Thin pla&ces"),
     QT_TRANSLATE_NOOP("Actions", "Show or hide the table of thin wood between the cuts, and what it bears"),
     "act_thin_places", kNone, "F4", true},
    {Command::Studies, "studies", QT_TRANSLATE_NOOP("Actions", "Stu&dies"),
     QT_TRANSLATE_NOOP("Actions", "Show or hide tables and plots of what the plan comes to"), "act_studies", kNone, "F5",
     true},
    {Command::FirstSteps, "first-steps", QT_TRANSLATE_NOOP("Actions", "First st&eps"),
     QT_TRANSLATE_NOOP("Actions", "Show or hide the strip of the five things to do first"), "", kNone, "", true},
    {Command::NextRegion, "next-region", QT_TRANSLATE_NOOP("Actions", "&Go to next region"),
     QT_TRANSLATE_NOOP("Actions", "Bring the keyboard from the parts to the board, the findings and back"), "", kNone,
     "F6"},

    {Command::AddArtwork, "add-artwork", QT_TRANSLATE_NOOP("Actions", "Add &artwork..."),
     QT_TRANSLATE_NOOP("Actions", "Add artwork to the lid from an SVG or DXF file"), "act_add_artwork", kNone, "Ctrl+Shift+A"},
    {Command::BoxOutline, "box-outline", QT_TRANSLATE_NOOP("Actions", "&Box outline from drawing..."),
     QT_TRANSLATE_NOOP("Actions", "Take the outline of the box from an SVG or DXF file"), "act_box_outline", kNone, "Ctrl+Shift+O"},
    {Command::AddHole, "add-hole", QT_TRANSLATE_NOOP("Actions", "Add round &hole"),
     QT_TRANSLATE_NOOP("Actions", "Add a round hole to the lid"), "act_add_hole", kNone, "Ctrl+Shift+H"},
    {Command::AddSlot, "add-slot", QT_TRANSLATE_NOOP("Actions", "Add &slot"),
     QT_TRANSLATE_NOOP("Actions", "Add a slot with round ends to the lid"), "act_add_slot", kNone, "Ctrl+Shift+L"},
    {Command::TakeTuning, "take-tuning", QT_TRANSLATE_NOOP("Actions", "Take a tunin&g..."),
     QT_TRANSLATE_NOOP("Actions", "Fill in the strings of an ordinary tuning"), "act_take_tuning", kNone, "Ctrl+Shift+J"},
    {Command::AddFixing, "add-fixing", QT_TRANSLATE_NOOP("Actions", "Add &fixing hole"),
     QT_TRANSLATE_NOOP("Actions", "Add a hole to the lid for a screw or an alignment pin"), "act_add_fixing", kNone, "Ctrl+Shift+F"},
    {Command::AddTie, "add-tie", QT_TRANSLATE_NOOP("Actions", "Add &tie"),
     QT_TRANSLATE_NOOP("Actions", "Add a tie across a cut of the artwork; drag it to where it shall stand"), "act_add_tie", kNone, "Ctrl+Shift+T"},
    {Command::AddBlock, "add-block", QT_TRANSLATE_NOOP("Actions", "Add b&lock"),
     QT_TRANSLATE_NOOP("Actions", "Add a support block along a wall, under the lid"), "act_add_block", kNone, "Ctrl+Shift+B"},
    {Command::AddBacking, "add-backing", QT_TRANSLATE_NOOP("Actions", "Add bac&king"),
     QT_TRANSLATE_NOOP("Actions", "Add a layer of wire cloth, perforated sheet or thin panel under the artwork"),
     "act_add_backing", kNone, "Ctrl+Shift+K"},
    {Command::AddHollow, "add-hollow", QT_TRANSLATE_NOOP("Actions", "Add h&ollow"),
     QT_TRANSLATE_NOOP("Actions", "Lower the stick's top in one more place under the lid"), "act_add_hollow", kNone, "Ctrl+Shift+G"},
    {Command::AddBar, "add-bar", QT_TRANSLATE_NOOP("Actions", "Add ba&r"),
     QT_TRANSLATE_NOOP("Actions", "Add a bar that is glued to the lid's underside"), "act_add_bar", kNone, "Ctrl+Shift+R"},
    {Command::AddWiring, "add-wiring", QT_TRANSLATE_NOOP("Actions", "Add part of the &wiring..."),
     QT_TRANSLATE_NOOP("Actions", "Add a pickup, a volume pot or an output socket with the sizes that are ordinary for it"),
     "act_add_wiring", kNone, "Ctrl+Shift+W"},

    {Command::KeysPage, "keys-page", QT_TRANSLATE_NOOP("Actions", "&Keys"),
     QT_TRANSLATE_NOOP("Actions", "Show every command and its keys"), "act_keys_page", QKeySequence::HelpContents, "F1"},
    {Command::WhatsThis, "whats-this", QT_TRANSLATE_NOOP("Actions", "&What's this?"),
     QT_TRANSLATE_NOOP("Actions", "Explain the thing that is clicked next"), "", QKeySequence::WhatsThis, "Shift+F1"},
    {Command::About, "about", QT_TRANSLATE_NOOP("Actions", "&About Lidwright"),
     QT_TRANSLATE_NOOP("Actions", "Version, licence and the libraries it stands on"), "", kNone, ""},
};

using K = MenuItem::Kind;
const MenuItem kFile[] = {Command::New, Command::Open, K::RecentFiles, K::Samples, K::Separator, Command::Save, Command::SaveAs,
                          K::Separator, Command::AddArtwork, Command::BoxOutline, K::Separator, Command::BenchFolder, Command::Paper,
                          Command::CutFile, Command::BuildSheet, Command::PrintBuildSheet, Command::PrintList,
                          Command::ExportPicture, K::Separator, Command::Quit};
const MenuItem kEdit[] = {Command::Undo, Command::Redo, K::Separator, Command::DeletePart, Command::PaintUses, Command::TakeTuning};
const MenuItem kView[] = {Command::FitAll, Command::FitTop, Command::FitSection, Command::FitHeadEnd, Command::FitTailEnd,
                          K::Separator, Command::ZoomIn, Command::ZoomOut, K::Separator, Command::UnderView, Command::Snapping,
                          K::Separator, Command::PartsSide, Command::FindingsSide, Command::ThinPlaces, Command::Studies,
                          Command::FirstSteps, Command::NextRegion};
const MenuItem kAdd[] = {Command::AddArtwork, Command::AddTie, Command::AddHole, Command::AddSlot, Command::AddFixing,
                         Command::AddBlock, Command::AddBacking, Command::AddHollow, Command::AddBar, Command::AddWiring};
const MenuItem kHelp[] = {Command::KeysPage, Command::WhatsThis, K::Separator, Command::About};

const MenuEntry kMenus[] = {
    {QT_TRANSLATE_NOOP("Actions", "&File"), kFile},
    {QT_TRANSLATE_NOOP("Actions", "&Edit"), kEdit},
    {QT_TRANSLATE_NOOP("Actions", "&View"), kView},
    {QT_TRANSLATE_NOOP("Actions", "&Add"), kAdd},
    {QT_TRANSLATE_NOOP("Actions", "&Help"), kHelp},
};

const MenuItem kToolBar[] = {Command::Open, Command::Save, K::Separator, Command::Undo, Command::Redo, K::Separator,
                             Command::AddArtwork, Command::AddHole, Command::AddSlot, Command::AddBlock, K::Separator,
                             Command::FitAll, Command::UnderView, Command::Snapping, K::Separator, Command::ThinPlaces, Command::Studies,
                             Command::Paper, Command::CutFile};
// clang-format on

}  // namespace

std::span<const ActionEntry> actionTable()
{
    return kActions;
}

std::span<const MenuEntry> menuTable()
{
    return kMenus;
}

std::span<const MenuItem> toolBarTable()
{
    return kToolBar;
}

QList<QKeySequence> keysOf(const ActionEntry& entry)
{
    QList<QKeySequence> keys;
    if (entry.standardKey != kNone) keys = QKeySequence::keyBindings(entry.standardKey);
    const QKeySequence own(QLatin1String(entry.keys), QKeySequence::PortableText);
    if (keys.isEmpty() && !own.isEmpty()) keys << own;
    // On most keyboards the plus sign needs Shift: the key itself is meant.
    if (entry.command == Command::ZoomIn) {
        const QKeySequence unshifted(Qt::CTRL | Qt::Key_Equal);
        if (!keys.contains(unshifted)) keys << unshifted;
    }
    return keys;
}

}  // namespace lidwright
