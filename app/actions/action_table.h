#pragma once

#include <QKeySequence>

#include <span>

namespace lidwright {

/// Everything that the window can be told to do.
enum class Command {
    New,
    Open,
    Save,
    SaveAs,
    ExportPicture,
    Quit,
    Paper,
    BenchFolder,
    CutFile,
    BuildSheet,
    PrintBuildSheet,
    PrintList,
    Undo,
    Redo,
    DeletePart,
    PaintUses,
    FitAll,
    FitTop,
    FitSection,
    FitHeadEnd,
    FitTailEnd,
    ZoomIn,
    ZoomOut,
    UnderView,
    Snapping,
    PartsSide,
    FindingsSide,
    ThinPlaces,
    Studies,
    FirstSteps,
    NextRegion,
    AddArtwork,
    BoxOutline,
    AddHole,
    AddSlot,
    AddFixing,
    AddTie,
    TakeTuning,
    AddBlock,
    AddBacking,
    AddHollow,
    AddBar,
    AddWiring,
    KeysPage,
    WhatsThis,
    About,
};

/// One command as menus, tool bar and the page of keys show it.
struct ActionEntry {
    Command command;
    const char* id;                         ///< stable, the QAction's object name
    const char* text;                       ///< marked English with its mnemonic
    const char* help;                       ///< one marked sentence: what it does
    const char* icon;                       ///< resources/icons/<icon>.svg, or "" for none
    QKeySequence::StandardKey standardKey;  ///< UnknownKey for none
    const char* keys;                       ///< portable; used where the platform has no standard key
    bool checkable = false;
};

/// Every command, once each.
std::span<const ActionEntry> actionTable();

/// A menu of the menu bar: its marked title and its commands. Separators and sub-menus stand as MenuItem
/// kinds.
struct MenuItem {
    enum class Kind { Action, Separator, RecentFiles, Samples };
    Kind kind = Kind::Action;
    Command command = Command::New;

    MenuItem(Command c) : command(c) {}
    MenuItem(Kind k) : kind(k) {}
};
struct MenuEntry {
    const char* title;
    std::span<const MenuItem> items;
};
std::span<const MenuEntry> menuTable();

/// The tool bar's commands in order.
std::span<const MenuItem> toolBarTable();

/// The keys that an entry has on this platform.
QList<QKeySequence> keysOf(const ActionEntry& entry);

}  // namespace lidwright
