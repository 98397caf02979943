#include "app/commandline/command.h"
#include "app/commandline/console.h"
#include "app/commandline/drawing_session.h"
#include "app/commandline/plan_input.h"
#include "app/document/safe_write.h"
#include "app/exchange/cut_file.h"

#include "core/base/near_word.h"

#include <filesystem>
#include <memory>

namespace lidwright {

namespace {

constexpr qint64 kPresetFileLimit = 1 << 20;

constexpr OptionSpec kOptions[] = {
    {"-o", "FILE.svg|FILE.dxf|FILE.pdf", "the file to write"},
    {"--preset", "NAME", "how the shop wants its lines; the first of the table where not said"},
    {"--presets", "FILE.csv", "a table of presets of your own"},
    {"--dxf", "r12|r2000", "which DXF; r2000 where not said"},
    {"--underside", nullptr, "mirrored, to be cut with the underside up"},
    {"--no-marks", nullptr, "without the layer that is not cut"},
    {"--print-presets", nullptr, "the table of presets, to be edited; nothing is written"},
    kSetOption,
    kArtOption,
};

Result<std::vector<CutPreset>> presetsFor(const Arguments& arguments)
{
    const auto file = arguments.value("--presets");
    if (!file) return cutPresets();
    const Result<QByteArray> bytes = readWholeFile(QString::fromStdString(*file), kPresetFileLimit);
    if (!bytes) return bytes.error();
    Result<std::vector<CutPreset>> presets = readCutPresets(bytes->toStdString());
    if (!presets) {
        Error error = presets.error();
        error.where = *file + (error.where.empty() ? "" : ", " + error.where);
        return error;
    }
    return presets;
}

Result<CutPreset> presetNamed(const std::vector<CutPreset>& all, const std::optional<std::string>& name)
{
    if (all.empty()) return Error{"the table has no presets", "--presets", "see --print-presets"};
    if (!name) return all.front();
    std::vector<std::string> known;
    for (const CutPreset& preset : all) {
        if (preset.name == *name) return preset;
        known.push_back(preset.name);
    }
    const std::string near = nearestWord(*name, known);
    std::string mend = near.empty() ? "known are" : "did you mean \"" + near + "\"?";
    for (const std::string& k : known)
        if (near.empty()) mend += " \"" + k + "\"";
    return Error{"there is no such preset", "--preset " + *name, mend};
}

Result<DxfVersion> dxfVersion(const std::optional<std::string>& name)
{
    if (!name || *name == word(DxfVersion::R2000)) return DxfVersion::R2000;
    if (*name == word(DxfVersion::R12)) return DxfVersion::R12;
    return Error{"there is no such version", "--dxf " + *name, "choose r12 or r2000"};
}

int run(const Arguments& arguments)
{
    const Result<std::vector<CutPreset>> presets = presetsFor(arguments);
    if (!presets) return refuse(presets.error());
    if (arguments.has("--print-presets")) return finish(print(writeCutPresets(*presets)), kExitFine);
    const auto file = arguments.value("-o");
    if (!file || file->empty())
        return refuse({"where to?", "lid", "name the file to write: lidwright lid PLAN -o lid.svg"});
    const Result<CutPreset> preset = presetNamed(*presets, arguments.value("--preset"));
    if (!preset) return refuse(preset.error());
    const Result<DxfVersion> version = dxfVersion(arguments.value("--dxf"));
    if (!version) return refuse(version.error());
    const auto format = cutFormatOf(QString::fromStdString(*file), *version);
    if (!format)
        return refuse({"this kind of file is not known", *file, "end the name in .svg, .dxf or .pdf"});
    const Result<PlanInput> input = readPlanInput(arguments);
    if (!input) return refuse(input.error());

    CutJob job = cutJobOf(input->plan, *preset);
    job.mirrored = arguments.has("--underside");
    job.marks = job.checkLine = !arguments.has("--no-marks");
    const Result<CutDrawing> drawing = composeCutDrawing(input->plan, derive(input->plan), job);
    if (!drawing) return refuse(drawing.error());
    for (const Sentence& message : drawing->messages)
        remark(spoken(message, unitStyle(input->plan)));
    const auto session = *format == CutFormat::Pdf ? std::make_unique<DrawingSession>() : nullptr;
    const Result<QByteArray> bytes = cutFileBytes(*drawing, *format);
    if (!bytes) return refuse(bytes.error());
    if (const auto error = writeFileSafely(QString::fromStdString(*file), *bytes)) return refuse(*error);
    const std::string named = cutFileName(std::filesystem::path(*file).stem().string(), job);
    std::string kerf = job.compensate ? "half the kerf is taken off each line" : "no kerf is taken off";
    return finish(print(*file + ": written; " + kerf + " (a name that says so: " + named + ")\n" +
                        "Laser and saw: ventilation, eye protection; never leave a laser alone; follow the "
                        "makers' instructions.\n"),
                  kExitFine);
}

}  // namespace

constinit const Command kLidCommand{
    "lid",
    "the cutter's file of the lid: SVG, DXF or PDF",
    "PLAN -o FILE.svg|FILE.dxf|FILE.pdf [--preset NAME] [--presets FILE.csv] [--dxf r12|r2000]\n"
    "              [--underside] [--no-marks] [--set KEY=VALUE]... [--art FILE.svg]...",
    "Everything that is cut or engraved, in millimetres at full size: what lies inside before what lies "
    "around it,\n"
    "engraving, cuts and what is only to be seen on layers of their own, no line twice, nothing filled that "
    "is cut.\n"
    "Kerf: cutter.kerf, taken off where cutter.compensate says so. Shops differ: print the presets, edit a "
    "copy, and\n"
    "give it with --presets.\n"
    "Exit code: 0 written, 2 the input cannot be used or the file not written.",
    kOptions,
    1,
    run};

}  // namespace lidwright
