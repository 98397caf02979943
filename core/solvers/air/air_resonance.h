#pragma once

#include "core/solvers/air/interior_correction.h"

#include <optional>
#include <vector>

namespace lidwright {

inline constexpr double kColdestAir_C = -40;
inline constexpr double kWarmestAir_C = 60;

/// Speed of sound in dry air, m/s: 331.3 sqrt(1 + T / 273.15) (a public formula for dry air, read; values of
/// 331.2 to 331.6 are in use). Moisture adds 0.1 to 0.6 %. Errors: beyond kColdestAir_C to kWarmestAir_C.
Result<double> soundSpeed_m_s(double temperature_C);

/// Density of dry air at 101 325 Pa, kg/m3: p / (R T) with R = 287.05 J/(kg K) (from memory). Errors: as
/// above.
Result<double> airDensity_kg_m3(double temperature_C);

/// End corrections of a round pipe of radius 1 at its open end, long waves: with an endless flange (J.-P.
/// Dalmont, C. J. Nederveen, N. Joly, Radiation impedance of tubes with different flanges, J. Sound Vib. 244
/// (2001) 505; introduction read), and without any (H. Levine and J. Schwinger, On the radiation of sound
/// from an unflanged circular pipe, Phys. Rev. 73 (1948) 383; abstract read).
inline constexpr double kFlangedEnd = 0.8216;
inline constexpr double kUnflangedEnd = 0.6133;

/// What airResonance() starts from.
struct AirCase {
    Conductivity opening;
    double volume = 0;          ///< mm3 of air, 1 to 1e12: less neck, blocks and all else within
    std::optional<AirBox> box;  ///< nothing: the inside counts as a half space
    double temperature_C = 20;
    double coldest_C = 10, warmest_C = 30;  ///< for the band; temperature_C lies between
};

/// Where a part of the answer's band comes from.
enum class AirDoubt {
    Thickness,    ///< flow within the hole: from lower to upper conductivity
    Outside,      ///< the lid is no endless flange: up to none at all
    Temperature,  ///< coldest to warmest
    Cells         ///< Conductivity::accuracy
};

/// The frequency at both ends of one doubt while all else is as likely.
struct AirBand {
    AirDoubt doubt = AirDoubt::Thickness;
    double low_Hz = 0, high_Hz = 0;

    bool operator==(const AirBand&) const = default;
};

/// The air resonance of a box with rigid walls.
struct AirResonance {
    double speed_m_s = 0;
    double thin_Hz = 0;   ///< lid without thickness, half spaces
    double thick_Hz = 0;  ///< with thickness, half spaces
    /// With thickness and the inside of the box; as thick_Hz without a box. The likely value for rigid walls.
    double likely_Hz = 0;
    double conductivity = 0;         ///< mm, of likely_Hz
    double interiorCorrection = 0;   ///< 1/mm, see interiorCorrection()
    std::vector<AirBand> bands;      ///< one for each AirDoubt, in its order
    double low_Hz = 0, high_Hz = 0;  ///< all doubts at their worst together
};

/// f = c / (2 pi) sqrt(K / V): Rayleigh, The Theory of Sound, vol. 2, section 304 (from memory), for an
/// opening and a box that are small against the wavelength.
///
/// `Outside` takes the share kUnflangedEnd / kFlangedEnd, which is a round pipe's, of the outer half of
/// 1/thin for all shapes: our choice; the lid itself lies between. Not in the band: walls that give way lower
/// the resonance, of a violin "by roughly a semitone" (H. T. Nia and others, Proc. R. Soc. A 471 (2015)
/// 20140905, abstract read); see core/solvers/air/lid_and_air.h. Leaks raise it. Errors: volume, temperatures
/// or conductivity out of range, as interiorCorrection().
Result<AirResonance> airResonance(const AirCase& air);

}  // namespace lidwright
