#include "core/base/pitch.h"

#include "core/base/length_text.h"

#include <array>
#include <charconv>
#include <cmath>
#include <optional>

namespace lidwright {
namespace {

constexpr std::string_view kMend = "write a letter, a sharp or flat if any, and the octave: E4, C#3, Db3";

/// Walks through the text from its beginning.
class Scanner {
public:
    explicit Scanner(std::string_view text) : m_text(text) {}

    bool atEnd() const { return m_at >= m_text.size(); }
    std::size_t at() const { return m_at; }
    char peek() const { return atEnd() ? '\0' : m_text[m_at]; }
    void skipBlanks()
    {
        while (peek() == ' ' || peek() == '\t')
            ++m_at;
    }
    bool take(std::string_view word)
    {
        if (m_text.substr(m_at, word.size()) != word) return false;
        m_at += word.size();
        return true;
    }
    bool takeMinus() { return take("-") || take("\u2212"); }
    /// The digits from here, with one decimal mark where `decimals` is set; moves behind them.
    std::string digits(bool decimals)
    {
        std::string found;
        bool marked = !decimals;
        for (; !atEnd(); ++m_at) {
            const char c = peek();
            if ((c == '.' || c == ',') && !marked) {
                marked = true;
                found += '.';
            } else if (c >= '0' && c <= '9') {
                found += c;
            } else {
                break;
            }
        }
        return found;
    }

private:
    std::string_view m_text;
    std::size_t m_at = 0;
};

Error fault(std::string what, std::size_t at, std::string mend = std::string(kMend))
{
    return {std::move(what), "pitch, character " + std::to_string(at + 1), std::move(mend),
            static_cast<int>(at)};
}

/// Semitones above C, or nothing for other letters.
std::optional<int> letterSemitone(char letter)
{
    constexpr std::array<int, 7> kAboveC = {9, 11, 0, 2, 4, 5, 7};  // A to G
    if (letter >= 'a' && letter <= 'g') return kAboveC[static_cast<std::size_t>(letter - 'a')];
    if (letter >= 'A' && letter <= 'G') return kAboveC[static_cast<std::size_t>(letter - 'A')];
    return std::nullopt;
}

/// What the signs after the letter add, in semitones.
int takeSigns(Scanner& scan)
{
    if (scan.take("\U0001D12A") || scan.take("x")) return 2;
    if (scan.take("\U0001D12B")) return -2;
    if (scan.take("\u266E")) return 0;
    int count = 0;
    while (count < 2 && (scan.take("#") || scan.take("\u266F")))
        ++count;
    if (count > 0) return count;
    while (count < 2 && (scan.take("b") || scan.take("\u266D")))
        ++count;
    return -count;
}

Result<double> takeCents(Scanner& scan)
{
    const std::size_t begin = scan.at();
    const bool minus = scan.takeMinus();
    if (!minus && !scan.take("+"))
        return fault("this is no part of a pitch", begin, "end the pitch after its octave, or add +5 c");
    const std::string digits = scan.digits(true);
    double value = 0;
    const auto [end, code] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (digits.empty() || code != std::errc() || end != digits.data() + digits.size())
        return fault("the cents are no number", begin, "write them as +12.5 c");
    if (value > kPitchCentsLimit)
        return fault("the cents are more than a semitone", begin, "name the nearer note");
    scan.skipBlanks();
    if (!scan.take("cents") && !scan.take("cent") && !scan.take("ct") && !scan.take("c") &&
        !scan.take("\u00A2"))
        return fault("the cents have no unit", scan.at(), "write them as +12.5 c");
    return minus ? -value : value;
}

std::optional<Error> concertPitchFault(double a4_Hz)
{
    if (a4_Hz >= kLowestConcertPitch_Hz && a4_Hz <= kHighestConcertPitch_Hz) return std::nullopt;
    return Error{"the concert pitch is out of range", "concert pitch",
                 "give A4 from " + exactNumber(kLowestConcertPitch_Hz) + " to " +
                     exactNumber(kHighestConcertPitch_Hz) + " Hz"};
}

bool inRange(const Pitch& pitch)
{
    return pitch.semitone >= kLowestSemitone && pitch.semitone <= kHighestSemitone &&
           std::abs(pitch.cents) <= kPitchCentsLimit;
}

}  // namespace

Result<Pitch> parsePitch(std::string_view text)
{
    if (text.size() > static_cast<std::size_t>(kPitchTextLimit))
        return fault("the text is too long for a pitch", static_cast<std::size_t>(kPitchTextLimit));
    Scanner scan(text);
    scan.skipBlanks();
    if (scan.atEnd()) return fault("there is no pitch", 0);
    const std::size_t begin = scan.at();
    const std::optional<int> letter = letterSemitone(scan.peek());
    if (!letter && (scan.peek() == 'H' || scan.peek() == 'h'))
        return fault("H is no letter of this notation", begin, "write B for the note below C, Bb below that");
    if (!letter) return fault("a pitch begins with a letter from A to G", begin);
    scan.take(text.substr(begin, 1));
    const int signs = takeSigns(scan);

    const std::size_t octaveAt = scan.at();
    const bool below = scan.takeMinus();
    const std::string digits = scan.digits(false);
    if (digits.empty()) return fault("the octave is missing", octaveAt);
    if (digits.size() > 1 || (below && digits != "1"))
        return fault("the octave is out of range", octaveAt, "give one from -1 to 9");
    const int octave = below ? -1 : digits[0] - '0';

    Pitch pitch{12 * (octave + 1) + *letter + signs, 0};
    if (!inRange(pitch)) return fault("the pitch is out of range", begin, "give one from C-1 to B9");
    scan.skipBlanks();
    if (!scan.atEnd()) {
        const Result<double> off = takeCents(scan);
        if (!off) return off.error();
        pitch.cents = *off;
        scan.skipBlanks();
        if (!scan.atEnd()) return fault("something follows the pitch", scan.at(), "take it away");
    }
    return pitch;
}

std::string formatPitch(const Pitch& pitch, Accidentals accidentals, bool trueSigns)
{
    if (!inRange(pitch)) return "unknown";
    const bool flats = accidentals == Accidentals::Flats;
    const std::string_view letters = flats ? "CDDEEFGGAABB" : "CCDDEFFGGAAB";
    constexpr std::string_view kBlack = "010100101010";
    const auto step = static_cast<std::size_t>(pitch.semitone % 12);
    std::string text(1, letters[step]);
    if (kBlack[step] == '1') {
        if (trueSigns)
            text += flats ? "\u266D" : "\u266F";
        else
            text += flats ? "b" : "#";
    }
    text += std::to_string(pitch.semitone / 12 - 1);
    const std::string off = decimalNumber(pitch.cents, 1);
    if (off != "0") text += (off[0] == '-' ? " " : " +") + off + " c";
    return text;
}

Result<double> pitchFrequency_Hz(const Pitch& pitch, double a4_Hz)
{
    if (const auto error = concertPitchFault(a4_Hz)) return *error;
    if (!inRange(pitch)) return Error{"the pitch is out of range", "pitch", "give one from C-1 to B9"};
    return a4_Hz * std::exp2((pitch.semitone - 69 + pitch.cents / 100) / 12);
}

Result<Pitch> pitchOf(double frequency_Hz, double a4_Hz)
{
    if (const auto error = concertPitchFault(a4_Hz)) return *error;
    const Error outside{"the frequency is out of range", "frequency", "give one of a pitch from C-1 to B9"};
    if (!(frequency_Hz > 0 && std::isfinite(frequency_Hz))) return outside;
    const double semitones = 69 + 12 * std::log2(frequency_Hz / a4_Hz);
    const double nearest = std::round(semitones);
    if (nearest < kLowestSemitone || nearest > kHighestSemitone) return outside;
    return Pitch{static_cast<int>(nearest), 100 * (semitones - nearest)};
}

}  // namespace lidwright
