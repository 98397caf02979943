#include "core/solvers/tuning_choice.h"

#include "core/base/pitch.h"
#include "core/solvers/string_tension.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr double kThickestPlain = 0.024 * kMillimetresPerInch;

void chooseGauge(GuitarString& string, const Pitch& pitch, double length, double concertPitch_Hz)
{
    const auto frequency = pitchFrequency_Hz(pitch, concertPitch_Hz);
    if (!frequency) return;
    for (const char* id : {"plain-steel", "phosphor-bronze"}) {
        const StringKind* kind = findStringKind(id);
        if (kind == nullptr) continue;
        const auto choice = gaugeForTension(*kind, length, *frequency, kUsualPull_N);
        if (!choice || (!kind->wound() && choice->ordinaryGauge > kThickestPlain)) continue;
        string.kind = id;
        string.gauge = choice->ordinaryGauge;
        return;
    }
}

}  // namespace

std::vector<GuitarString> stringsFor(const Tuning& tuning, double length, double concertPitch_Hz, int number)
{
    std::vector<GuitarString> out;
    for (std::size_t i = tuning.strings.size(); i-- > 0;) {
        if (number > 0 && static_cast<int>(out.size()) == number) break;
        const auto& own = tuning.strings[i];
        GuitarString string;
        string.pitch = own.pitch.semitone + own.pitch.cents / 100;
        if (own.gauge_in) {
            string.kind = own.kind;
            string.gauge = *own.gauge_in * kMillimetresPerInch;
        } else {
            chooseGauge(string, own.pitch, length, concertPitch_Hz);
        }
        out.push_back(std::move(string));
    }
    return out;
}

}  // namespace lidwright
