#include "app/commandline/plan_input.h"

#include "app/commandline/art_argument.h"
#include "app/commandline/console.h"
#include "app/commandline/drawing_input.h"
#include "app/document/safe_write.h"

#include "core/io/plan/plan_file.h"
#include "core/layout/art_place.h"
#include "core/plan/catalogue.h"

#include <array>
#include <filesystem>

namespace lidwright {

namespace {

Result<Plan> withValue(const Plan& plan, const std::string& key, const std::string& text,
                       const std::string& whole)
{
    const auto inSetting = [&](Error error) {
        error.where = whole + (error.where.empty() || error.where == key ? "" : ", " + error.where);
        return error;
    };
    const Result<ParameterRef> ref = findParameter(plan, key);
    if (!ref) return inSetting(ref.error());
    const Result<ParameterValue> value = parseValue(*ref->parameter, text, unitStyle(plan));
    if (!value) return inSetting(value.error());
    const std::array<Edit, 1> edit{Edit{key, *value}};
    Result<Plan> next = applyEdits(plan, edit);
    if (!next) return inSetting(next.error());
    return next;
}

Result<Plan> withArt(Plan plan, const std::string& word)
{
    const Result<ArtArgument> argument = parseArtArgument(word);
    if (!argument) return argument.error();
    if (plan.art.size() >= static_cast<std::size_t>(kMostPieces)) {
        return Error{"the plan holds " + std::to_string(kMostPieces) + " drawings already", "--art " + word,
                     "join drawings in one file"};
    }
    const Result<DrawingInput> drawing =
        readDrawing(argument->file, argument->perInch, argument->wide, unitStyle(plan));
    if (!drawing) return drawing.error();
    for (const std::string& message : drawing->remarks)
        remark(message);

    ArtPiece piece;
    piece.name = std::filesystem::path(argument->file).stem().string();
    piece.art = drawing->art;
    piece.uses = firstGuess(*drawing->art);
    const Point place = freePlace(plan, derive(plan));
    piece.x = place.x;
    piece.y = place.y;
    plan.art.push_back(std::move(piece));
    if (std::optional<Error> error = beyondPlanLimits(plan)) {
        error->where = "--art " + word;
        return *error;
    }

    const std::string part = "art." + std::to_string(plan.art.size()) + ".";
    for (const auto& [key, value] : argument->settings) {
        Result<Plan> next = withValue(plan, part + key, value, "--art " + word);
        if (!next) return next.error();
        plan = std::move(next).value();
    }
    return plan;
}

}  // namespace

Result<Plan> applySetting(const Plan& plan, const std::string& setting)
{
    const std::size_t equals = setting.find('=');
    if (equals == std::string::npos || equals == 0) {
        return Error{"a change needs a key and a value", "--set " + setting,
                     "write it as --set box.length=330; lidwright parameters lists the keys"};
    }
    return withValue(plan, setting.substr(0, equals), setting.substr(equals + 1), "--set " + setting);
}

Result<PlanInput> readPlanInput(const Arguments& arguments, std::size_t planWord)
{
    PlanInput input;
    input.name = "built-in plan";
    if (arguments.plain().size() > planWord) {
        input.name = arguments.plain()[planWord];
        const Result<QByteArray> bytes =
            readWholeFile(QString::fromStdString(input.name), qint64(kPlanFileLimit));
        if (!bytes) return bytes.error();
        const Result<PlanReading> reading = readPlan(bytes->toStdString(), input.name);
        if (!reading) return reading.error();
        for (const std::string& note : reading->notes)
            remark(note);
        input.plan = reading->plan;
    }
    for (const std::string& word : arguments.values("--art")) {
        Result<Plan> next = withArt(input.plan, word);
        if (!next) return next.error();
        input.plan = std::move(next).value();
    }
    for (const std::string& setting : arguments.values("--set")) {
        Result<Plan> next = applySetting(input.plan, setting);
        if (!next) return next.error();
        input.plan = std::move(next).value();
    }
    return input;
}

}  // namespace lidwright
